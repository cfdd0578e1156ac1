/**
 * A probability in per cent, no finer than it is known.
 *
 * @example chanceText(0.0004) // "less than 0.1 %"
 * @example chanceText(0.034) // "3.4 %"
 */
export function chanceText(probability: number): string {
  if (probability < 0.001) return "less than 0.1 %";
  if (probability > 0.999) return "more than 99.9 %";
  const percent = 100 * probability;
  return `${percent.toFixed(percent < 10 || percent > 90 ? 1 : 0)} %`;
}
