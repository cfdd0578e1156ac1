import { withArticle } from "./kinds.js";
import type { AnyQuantity } from "./quantity-type.js";

/**
 * A measured value: an estimate, its standard uncertainty (one standard deviation), and the degrees of
 * freedom behind that uncertainty (Infinity when it is taken as known).
 *
 * `Measured<Length>` is a length; `Measured<number>` a plain ratio such as a taper.
 *
 * @source JCGM 100:2008 (GUM), 2.3.1 and G.6.4
 */
export interface Measured<V extends AnyQuantity | number> {
  readonly kind: "measured";
  readonly value: V;
  readonly standardUncertainty: V;
  readonly degreesOfFreedom: number;
}

/**
 * Puts a measured value together.
 *
 * @param value                the estimate: a quantity, or a plain number [-]
 * @param standardUncertainty  one standard deviation, of the same kind, ≥ 0
 * @param degreesOfFreedom     > 0, Infinity (default) when the uncertainty is taken as known [-]
 * @returns the two and the degrees of freedom, frozen
 * @throws RangeError  a number is not finite, the uncertainty is negative, or the degrees of freedom are
 * not positive
 * @throws TypeError   the uncertainty is of another kind than the value
 * @example measured(inch(2.4332), inch(0.0001)).standardUncertainty.in("thou") // 0.1
 * @source JCGM 100:2008 (GUM), 2.3.1 and G.6.4
 */
export function measured<V extends AnyQuantity | number>(
  value: V,
  standardUncertainty: V,
  degreesOfFreedom: number = Number.POSITIVE_INFINITY,
): Measured<V> {
  const [kind, kindOfUncertainty] = [kindOfValue(value), kindOfValue(standardUncertainty)];
  if (kind !== kindOfUncertainty)
    throw new TypeError(
      `measured: value and uncertainty must be of one kind, got ${withArticle(kind)} and ${withArticle(kindOfUncertainty)}`,
    );
  if (!Number.isFinite(value.valueOf()))
    throw new RangeError(`measured: value must be a finite number, got ${value}`);
  const uncertainty = Number(standardUncertainty.valueOf());
  if (!(uncertainty >= 0 && uncertainty < Number.POSITIVE_INFINITY))
    throw new RangeError(`measured: standard uncertainty must be 0 or more, got ${standardUncertainty}`);
  if (!(degreesOfFreedom > 0))
    throw new RangeError(`measured: degrees of freedom must be more than 0, got ${degreesOfFreedom}`);
  return Object.freeze({ kind: "measured", value, standardUncertainty, degreesOfFreedom });
}

function kindOfValue(value: AnyQuantity | number): string {
  return typeof value === "number" ? "number" : value.dimension;
}
