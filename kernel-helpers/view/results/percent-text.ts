/** A probability in whole percent; near 0 and 1 it is not rounded to them: "97 %", "over 99 %", "under 1 %". */
export function percentText(probability: number): string {
  if (probability > 0.99) return "over 99\u00a0%";
  if (probability < 0.01) return "under 1\u00a0%";
  return `${Math.round(100 * probability)}\u00a0%`;
}
