const fractions: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
  "⅓": "1/3",
  "⅔": "2/3",
};
const raised: Readonly<Record<string, string>> = Object.fromEntries(
  [..."⁻⁰¹²³⁴⁵⁶⁷⁸⁹"].map((c, i) => [c, "-0123456789"[i]!]),
);

/**
 * A text with one minus sign, one slash, ordinary spaces, fractions and powers of ten spelled out.
 *
 * @example plainText("−2 ½") // "-2 1/2"
 */
export function plainText(text: string): string {
  return text
    .replace(/(?<=\d)\s*(?=[½¼¾⅛⅜⅝⅞⅓⅔])/g, " ")
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (c) => fractions[c]!)
    .replace(
      /\s*×\s*10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)/g,
      (_, power: string) => `e${[...power].map((c) => raised[c]).join("")}`,
    )
    .replace(/[−–]/g, "-")
    .replace(/[⁄∕]/g, "/")
    .replace(/\s+/g, " ")
    .replace(/ ?\/ ?/g, "/")
    .trim();
}

const decimal = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i;
const fraction = /^([+-]?)(?:(\d+)[ -])?(\d+)\/(\d+)$/;

/**
 * Reads a number as written in a table or on paper: decimals with a point, fractions (`7/16`, `2 7/16`,
 * `2-7/16`, `2½`), powers of ten (`1.2e-3`, `1.2×10⁻³`), either minus sign. A comma is refused, for it means
 * a decimal mark to one reader and thousands to another.
 *
 * @param text  what was written
 * @returns the number [-]
 * @throws SyntaxError  it is no such number; the message says what was found and what to write
 * @example readNumber("2 7/16") // 2.4375
 */
export function readNumber(text: string): number {
  const fault = numberFault(text);
  if (fault !== undefined) throw new SyntaxError(fault);
  const plain = plainText(text);
  const parts = fraction.exec(plain);
  if (parts === null) return Number(plain);
  const [, sign, whole = "0", over, under] = parts;
  const size = Number(whole) + Number(over) / Number(under);
  return sign === "-" ? -size : size;
}

/**
 * What keeps a text from being a number, in words with the mend; undefined when it is one.
 *
 * @example numberFault("2.5O3") // "\"2.5O3\" holds the letter O for a zero: write 2.503"
 * @example numberFault("2.503") // undefined
 */
export function numberFault(text: string): string | undefined {
  const plain = plainText(text);
  const shown = `"${text.trim()}"`;
  if (plain === "") return "nothing stands here, a number was expected";
  if (decimal.test(plain))
    return Number.isFinite(Number(plain)) ? undefined : `${shown} is too large a number`;
  const parts = fraction.exec(plain);
  if (parts !== null) {
    const [, , whole, over, under] = parts;
    if (Number(under) === 0) return `${shown} divides by zero`;
    if (whole !== undefined && Number(over) >= Number(under))
      return `${shown} has a fraction of 1 or more behind the whole number: check its digits`;
    return undefined;
  }
  return (
    groupFault(plain, shown) ?? commaFault(plain, shown) ?? letterFault(text) ?? `${shown} is not a number`
  );
}

/**
 * What is wrong with a text that is a number but for the letter O or l in it; undefined otherwise.
 *
 * @example letterFault("l2.5") // "\"l2.5\" holds a letter for a one: write 12.5"
 */
export function letterFault(text: string): string | undefined {
  const plain = plainText(text);
  const mended = plain.replace(/[oO]/g, "0").replace(/[lI]/g, "1");
  if (mended === plain || !decimal.test(mended)) return undefined;
  const which = /[oO]/.test(plain) ? "the letter O for a zero" : "a letter for a one";
  return `"${text.trim()}" holds ${which}: write ${mended}`;
}

function groupFault(plain: string, shown: string): string | undefined {
  return /^[+-]?\d{1,3}( \d{3})+(\.\d*)?$/.test(plain)
    ? `${shown} holds a space: write ${plain.replaceAll(" ", "")}`
    : undefined;
}

function commaFault(plain: string, shown: string): string | undefined {
  const asDecimal = plain.replaceAll(".", "").replace(",", ".");
  const asThousands = plain.replaceAll(",", "");
  if (/^[+-]?\d{1,3},\d{3}$/.test(plain))
    return `${shown} holds a comma, which may mean thousands or decimals: write ${asThousands} or ${asDecimal}, whichever is meant`;
  if (/^[+-]?\d{1,3}(,\d{3})+(\.\d*)?$/.test(plain)) return `${shown} holds a comma: write ${asThousands}`;
  if (/^[+-]?(\d*|\d{1,3}(\.\d{3})+),\d+$/.test(plain))
    return `${shown} holds a comma: write ${asDecimal} with a decimal point`;
  return undefined;
}
