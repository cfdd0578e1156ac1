/**
 * A number for reading: at most `significant` significant digits (default 6), trailing zeros dropped, no
 * thousands mark, powers of ten only below 10⁻⁴ and from 10⁹ on; a true minus sign.
 *
 * @example formatNumber(2.4375)        // "2.4375"
 * @example formatNumber(-0.00043210001) // "−0.0004321"
 */
export function formatNumber(value: number, significant = 6): string {
  if (!Number.isFinite(value)) return String(value);
  const rounded = Number(value.toPrecision(significant));
  const size = Math.abs(rounded);
  const text =
    size !== 0 && (size < 1e-4 || size >= 1e9)
      ? rounded.toExponential().replace(/e([+-])(\d+)/, (_, sign: string, digits: string) => {
          return `×10^${sign === "-" ? "-" : ""}${digits}`;
        })
      : plainDecimal(rounded, significant);
  return withMinus(text);
}

/** A number with a fixed count of decimals (0 or more) and a true minus sign; never "−0.00". */
export function formatFixed(value: number, decimals: number): string {
  const text = value.toFixed(Math.max(0, Math.min(15, decimals)));
  return withMinus(Number(text) === 0 ? text.replace("-", "") : text);
}

/**
 * How many decimals a value is given, so that its uncertainty keeps two significant digits.
 *
 * @example decimalsFor(0.000238) // 5, so that 2.43317 stands beside ± 0.00024
 * @source JCGM 100:2008 (GUM), 7.2.6: at most two significant digits
 */
export function decimalsFor(uncertainty: number, digits = 2): number {
  if (!(uncertainty > 0) || !Number.isFinite(uncertainty))
    throw new RangeError(`decimalsFor: uncertainty must be more than 0, got ${uncertainty}`);
  // toExponential rounds first, so that 0.0996 counts as 0.10.
  const exponent = Number(uncertainty.toExponential(digits - 1).split("e")[1]);
  return Math.max(0, digits - 1 - exponent);
}

/** A value and its uncertainty rounded to the same place, e.g. ["2.43317", "0.00024"]. */
export function formatWithUncertainty(value: number, uncertainty: number): [string, string] {
  if (uncertainty === 0) return [formatNumber(value, 10), "0"];
  const decimals = decimalsFor(uncertainty);
  return [formatFixed(value, decimals), formatFixed(uncertainty, decimals)];
}

function plainDecimal(value: number, significant: number): string {
  if (value === 0) return "0";
  const decimals = Math.max(0, significant - 1 - Math.floor(Math.log10(Math.abs(value))));
  const text = value.toFixed(Math.min(decimals, 20));
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

function withMinus(text: string): string {
  return text.replace(/^-/, "−");
}
