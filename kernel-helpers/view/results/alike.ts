import { formatFixed } from "../../quantity/index.js";

/**
 * Numbers that stand side by side, as `formatNumber` or `formatLimit` wrote them, with the zeros at their ends again that these
 * dropped: "45" beside "86.6" would look rougher than it is. None gets more digits than it was rounded to.
 *
 * @example alike(["45", "86.6"], 3) // ["45.0", "86.6"]
 * @example alike(["0.18", "28", "115"], 3) // ["0.18", "28.0", "115"]
 */
export function alike(texts: readonly string[], digits: number): readonly string[] {
  const own = texts
    .map((text) => /^−?\d+(?:\.(\d+))?$/.exec(text))
    .map((found) => found && (found[1]?.length ?? 0));
  const decimals = Math.max(0, ...own.filter((count) => count !== null));
  return texts.map((text, i) => {
    const value = Number(text.replace("−", "-"));
    if (decimals === 0 || own[i] === null) return text;
    const known = value === 0 ? decimals : Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))));
    return formatFixed(value, Math.max(own[i]!, Math.min(decimals, known)));
  });
}
