import type { Distribution, DistributionShape } from "./monte-carlo-distribution.js";
import type { RandomGenerator } from "./random-generator.js";
import { drawStudentT } from "./random-generator-student-t.js";
import { type Plain, siOf } from "./uncertain/plain-value.js";

/** Fills a list with independent draws. */
export type Filler = (target: Float64Array) => void;

/**
 * A filler with draws from a distribution, in SI units.
 *
 * x = c + w·z with z standard normal, Student t, 2R₁ − 1 (rectangular), R₁ + R₂ − 1 (triangular), or sin 2πR₁
 * (arcsine), R uniform on 0 to 1; with inexact limits first w + d(2R₂ − 1) for w
 *
 * @param of      the distribution
 * @param random  where to draw from
 * @source JCGM 101:2008, 6.4.2.4, 6.4.3.4, 6.4.5.4, 6.4.6.4, 6.4.7.4, 6.4.9.5
 */
export function fillerOf(of: Distribution<Plain>, random: RandomGenerator): Filler {
  const centre = siOf(of.centre);
  const width = siOf(of.width);
  const within = of.limitsWithin === undefined ? 0 : siOf(of.limitsWithin);
  const { degreesOfFreedom = Number.POSITIVE_INFINITY } = of;
  const uniform = (): number => random.uniform();
  const draw: Readonly<Record<DistributionShape, () => number>> = {
    normal: () => random.normal(),
    "student t": () => drawStudentT(random, degreesOfFreedom),
    rectangular: () => 2 * uniform() - 1,
    "inexact rectangular": () =>
      (1 + (width === 0 ? 0 : within / width) * (2 * uniform() - 1)) * (2 * uniform() - 1),
    triangular: () => uniform() + uniform() - 1,
    arcsine: () => Math.sin(2 * Math.PI * uniform()),
  };
  const standard = draw[of.shape];
  // The commonest shape, a block at a time.
  if (of.shape === "normal") return (target) => random.fillNormal(target, centre, width);
  return (target) => {
    for (let i = 0; i < target.length; i++) target[i] = centre + width * standard();
  };
}

/** Replaces columns of independent standard normal draws by correlated ones: z ← L z, row by row. */
export function correlateColumns(
  columns: readonly Float64Array[],
  factor: readonly (readonly number[])[],
): void {
  const rows = columns[0]?.length ?? 0;
  for (let row = 0; row < rows; row++)
    // From the last on: each takes only the columns before it, still untouched.
    for (let i = columns.length - 1; i >= 0; i--) {
      let sum = 0;
      for (let k = 0; k <= i; k++) sum += factor[i]![k]! * columns[k]![row]!;
      columns[i]![row] = sum;
    }
}
