import type { RandomGenerator } from "./random-generator.js";

/**
 * A number from Student's t.
 *
 * t = z / √(χ²/ν), z standard normal, χ² = twice a gamma number of shape ν/2
 *
 * @param random  where to draw from
 * @param dof     degrees of freedom ν, > 0, whole or not [-]
 * @returns t [-]
 * @source JCGM 101:2008, 6.4.9; G. Marsaglia, W. W. Tsang, A simple method for generating gamma variables, ACM
 * Transactions on Mathematical Software 26 (2000) 363-372 (from memory)
 */
export function drawStudentT(random: RandomGenerator, dof: number): number {
  return random.normal() / Math.sqrt((2 * drawGamma(random, dof / 2)) / dof);
}

/** A number from the gamma distribution of that shape and scale 1. */
function drawGamma(random: RandomGenerator, shape: number): number {
  // Below shape 1, from the next higher shape.
  if (shape < 1) return drawGamma(random, shape + 1) * random.uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = random.normal();
    const root = 1 + c * z;
    if (root <= 0) continue;
    const cube = root * root * root;
    if (Math.log(random.uniform()) < (z * z) / 2 + d * (1 - cube + Math.log(cube))) return d * cube;
  }
}
