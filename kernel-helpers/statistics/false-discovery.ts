import { requireProbability } from "./check.js";

/**
 * Which of many tests are to be called found, so that of all those called so only a small share is false in the mean.
 *
 * Of the chances in order p₍₁₎ ≤ … ≤ p₍ₘ₎ the largest k with p₍ₖ₎ ≤ k·share/m; those up to p₍ₖ₎ are found. Where
 * nothing is there at all, anything is called found in at most `share` of cases.
 *
 * Valid when: the tests are independent, or depend on each other positively (tests that share a reference do).
 *
 * @param chances  chance of each finding by noise alone, 0 to 1 [-]
 * @param share  share of false ones among those called found, in the mean, between 0 and 1 [-]
 * @returns for each, in the order given, whether it is found
 * @throws RangeError  a chance outside 0 to 1, or a share not between 0 and 1
 * @example foundAmong([0.6, 0.001, 0.04, 0.008], 0.05) // [false, true, false, true]
 * @source Y. Benjamini, Y. Hochberg, Journal of the Royal Statistical Society B 57 (1995) 289-300
 */
export function foundAmong(chances: readonly number[], share: number): readonly boolean[] {
  requireProbability("foundAmong", "share", share);
  chances.forEach((chance, i) => {
    if (!(chance >= 0 && chance <= 1))
      throw new RangeError(`foundAmong: chances[${i}] must lie from 0 to 1, got ${chance}`);
  });
  const sorted = [...chances].sort((a, b) => a - b);
  const last = sorted.findLastIndex((chance, i) => chance <= ((i + 1) * share) / sorted.length);
  return Object.freeze(chances.map((chance) => last >= 0 && chance <= sorted[last]!));
}
