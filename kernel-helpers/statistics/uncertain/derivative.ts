import { requireFinite } from "../check.js";

/** Where a derivative is taken. */
export interface DerivativeOptions {
  /** What to call the function and the input in a message. */
  readonly where: string;
  readonly input: string;
  /** The width over which the function is meant to be straight: the standard uncertainty of the input. */
  readonly width: number;
}

const halvings = 4;
const attempts = 6;

/**
 * The derivative of a function of one number, from its values alone.
 *
 * Central differences at a step h and its halves, freed of their h², h⁴ and h⁶ terms (Richardson); of the
 * table, the entry that agrees best with those before it (Ridders). h is the width, or a thousandth of x if
 * that is more; it is made smaller where the function is not defined so far out.
 *
 * Valid when: the function is smooth about x. Relative error about 1e-11 for a function that changes over its
 * own argument; more where its values hardly change over the step.
 *
 * @param f  the function
 * @param x  where [any one unit]
 * @param options.width  the uncertainty of x, ≥ 0 [unit of x]
 * @returns df/dx [unit of f / unit of x]
 * @throws RangeError  the function has a kink or a jump at x, or is not defined about it; x or width is not
 * finite, or width is negative
 * @example derivative(Math.exp, 1, { where: "exp", input: "x", width: 0.01 }) // 2.718281828
 * @source C. J. F. Ridders, Accurate computation of F′(x) and F′(x)F″(x), Advances in Engineering Software 4
 * (1982) 75-76 (from memory)
 */
export function derivative(f: (x: number) => number, x: number, options: DerivativeOptions): number {
  const { where, input, width } = options;
  requireFinite(where, input, x);
  if (!(width >= 0 && width < Number.POSITIVE_INFINITY))
    throw new RangeError(`${where}: the width about ${input} must be 0 or more and finite, got ${width}`);
  let step = Math.max(width, Math.abs(x) / 1024) || 2 ** -20;
  for (let attempt = 1; ; attempt++) {
    try {
      return extrapolated(f, x, step, options);
    } catch (error) {
      if (error instanceof KinkError || attempt === attempts) {
        const reason = error instanceof Error ? error.message : String(error);
        throw new RangeError(
          `${where}: the function must be smooth about the estimate of ${input}, got: ${reason}`,
          { cause: error },
        );
      }
      step /= 16;
    }
  }
}

class KinkError extends Error {}

function extrapolated(
  f: (x: number) => number,
  x: number,
  step: number,
  { where, input }: DerivativeOptions,
): number {
  const at = (point: number): number => {
    const value = f(point);
    if (Number.isFinite(value)) return value;
    throw new RangeError(`${where}: the function gives ${value} for ${input} = ${point} (SI)`);
  };
  const middle = at(x);
  let largest = Math.abs(middle);
  let [best, error] = [Number.NaN, Number.POSITIVE_INFINITY];
  let before: readonly number[] = [];
  const bends: number[] = [];
  for (let i = 0, h = step; i < halvings; i++, h /= 2) {
    // The step as it comes out in floating point.
    const [low, high] = [x - h, x + h];
    const [below, above] = [at(low), at(high)];
    largest = Math.max(largest, Math.abs(below), Math.abs(above));
    bends.push(Math.abs((above - middle) / (high - x) - (middle - below) / (x - low)));
    const row = [(above - below) / (high - low)];
    if (i === 0) best = row[0]!;
    for (let j = 1, power = 4; j <= i; j++, power *= 4) {
      row.push((power * row[j - 1]! - before[j - 1]!) / (power - 1));
      const change = Math.max(Math.abs(row[j]! - row[j - 1]!), Math.abs(row[j]! - before[j - 1]!));
      if (change <= error) [best, error] = [row[j]!, change];
    }
    before = row;
  }
  // The slopes on both sides come together as the step shrinks; at a kink or a jump they stay apart.
  const smallest = step / 2 ** (halvings - 1);
  const noise = (64 * Number.EPSILON * largest) / smallest;
  const last = bends.at(-1)!;
  if (last > 0.5 * bends[0]! && last > noise && last > 1e-6 * Math.abs(best))
    throw new KinkError("a kink or a jump there; simulate it instead (monteCarlo)");
  return best;
}
