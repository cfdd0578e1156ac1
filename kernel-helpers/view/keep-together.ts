/**
 * A text whose lines do not break between a number and its unit, before an uncertainty, or within what tells how sure it is.
 * For short texts in narrow columns.
 *
 * @example keepTogether("60 mm") // "60\u00a0mm"
 */
export function keepTogether(text: string): string {
  return text
    .replace(/\((\d+) %, k = ([\d.]+)\)/g, "($1\u00a0%,\u00a0k\u00a0=\u00a0$2)")
    .replace(/± (?=\d)/g, "±\u00a0")
    .replace(/(\d) (in|mm|µm|thou|lb|kg|lbf|N|kN|°C|°F|%|rpm|psi|ksi|MPa)(?![\p{L}\d])/gu, "$1\u00a0$2");
}
