import { requireFinite } from "./check.js";
import type { LineFit } from "./line-fit.js";

/** A value with its standard uncertainty, both in one unit. */
export interface Estimate {
  readonly value: number;
  readonly standardUncertainty: number;
}

/**
 * Height of a fitted line at a position (of the mean line, not of a new reading).
 *
 * y = ȳ + b(x−x̄); u²(y) = u²(ȳ) + (x−x̄)² u²(b) + b² u²(x), which equals u²(a) + x² u²(b) + 2x cov(a, b) +
 * b² u²(x)
 *
 * Valid when: x is independent of the readings fitted. Beyond them the line is only as good as the belief
 * that it goes on straight.
 *
 * @param fit a fitted line
 * @param x position [unit of x]
 * @param options.ux standard uncertainty of the position, default 0 [unit of x]
 * @returns height and its standard uncertainty [unit of y]
 * @throws RangeError x is not finite or ux is negative
 * @example predictLine(fitLine([0, 1, 2], [1, 3, 5], { u: 1 }), 1) // { value: 3, standardUncertainty: 0.5773502691896257 }
 * @source ISO/TS 28037:2010, clause 11.2 (forward evaluation)
 */
export function predictLine(fit: LineFit, x: number, options: { readonly ux?: number } = {}): Estimate {
  const { ux = 0 } = options;
  requireFinite("predictLine", "x", x);
  requireNotNegative("predictLine", "ux", ux);
  const away = x - fit.centre.x;
  return Object.freeze({
    value: fit.centre.y + fit.slope * away,
    standardUncertainty: Math.hypot(fit.uCentre, away * fit.uSlope, fit.slope * ux),
  });
}

/**
 * Position at which a fitted line has a given height.
 *
 * x = x̄ + (y−ȳ)/b; u²(x) = [u²(ȳ) + (x−x̄)² u²(b) + u²(y)] / b²
 *
 * Valid when: the slope is many times its standard uncertainty (the formula is of first order), and y is
 * independent of the readings fitted.
 *
 * @param fit a fitted line
 * @param y height [unit of y]
 * @param options.uy standard uncertainty of the height, default 0 [unit of y]
 * @returns position and its standard uncertainty [unit of x]
 * @throws RangeError y is not finite, uy is negative, or the line is level
 * @example inverseLine(fitLine([0, 1, 2], [1, 3, 5], { u: 1 }), 3).value // 1
 * @source ISO/TS 28037:2010, clause 11.1 (inverse evaluation)
 */
export function inverseLine(fit: LineFit, y: number, options: { readonly uy?: number } = {}): Estimate {
  const { uy = 0 } = options;
  requireFinite("inverseLine", "y", y);
  requireNotNegative("inverseLine", "uy", uy);
  if (fit.slope === 0)
    throw new RangeError("inverseLine: the line must not be level, got slope 0, which has no one position");
  const away = (y - fit.centre.y) / fit.slope;
  return Object.freeze({
    value: fit.centre.x + away,
    standardUncertainty: Math.hypot(fit.uCentre, away * fit.uSlope, uy) / Math.abs(fit.slope),
  });
}

function requireNotNegative(where: string, name: string, value: number): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
    throw new RangeError(`${where}: ${name} must be 0 or greater and finite, got ${value}`);
}
