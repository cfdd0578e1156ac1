import { type AnyQuantity, type Measured, measured } from "../../quantity/index.js";
import { compensatedSum } from "../compensated-sum.js";
import { alike, dimensionOf, isPlain, siOf } from "./plain-value.js";

/**
 * The mean of repeated readings of one thing (type A).
 *
 * x̄ = Σ xᵢ / n, u = s/√n, s² = Σ (xᵢ − x̄)² / (n − 1), ν = n − 1
 *
 * Valid when: the readings are independent and nothing drifts. What all share (the zero of the instrument, the
 * temperature) does not show in their scatter and needs a source of its own.
 *
 * @param readings  two or more, of one kind
 * @returns mean with its standard uncertainty and degrees of freedom
 * @throws RangeError  fewer than two readings, one that is not finite, or all alike: readings that do not scatter
 * show the resolution of the instrument, see `fromResolution`
 * @throws TypeError   the readings are of different kinds
 * @example fromReadings([thou(1), thou(3), thou(5)]).standardUncertainty.in("thou") // 1.1547
 * @source JCGM 100:2008 (GUM), 4.2.1 to 4.2.3
 */
export function fromReadings<V extends AnyQuantity | number>(readings: readonly V[]): Measured<V> {
  const [first] = readings;
  if (readings.length < 2 || first === undefined)
    throw new RangeError(`fromReadings: two or more readings are needed, got ${readings.length}`);
  readings.forEach((reading, i) => {
    if (!isPlain(reading))
      throw new RangeError(
        `fromReadings: readings[${i}] must be a quantity or a finite number, got ${reading}`,
      );
    if (dimensionOf(reading) !== dimensionOf(first))
      throw new TypeError(`fromReadings: readings must be of one kind, got ${first} and ${reading}`);
  });
  const values = readings.map(siOf);
  const n = values.length;
  // From the first reading on, so that equal ones give exactly 0.
  const offsets = values.map((value) => value - values[0]!);
  const meanOffset = compensatedSum(offsets) / n;
  const variance = compensatedSum(offsets.map((offset) => (offset - meanOffset) ** 2)) / (n - 1);
  if (variance === 0)
    throw new RangeError(
      `fromReadings: readings must differ (else take the resolution, fromResolution), got ${first} for all of them`,
    );
  return measured(
    alike(first, values[0]! + meanOffset) as V,
    alike(first, Math.sqrt(variance / n)) as V,
    n - 1,
  );
}
