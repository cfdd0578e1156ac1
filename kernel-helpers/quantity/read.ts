import type { KindName } from "./kinds.js";
import { type Quantity, quantity, withArticle } from "./quantity.js";
import { type Temperature, type TemperatureScale, temperature } from "./temperature.js";
import { type UnitName, type UnitOf, unitNamed, unitSpelled, unitsOf } from "./units.js";

/**
 * Reads a quantity as an engineer writes it: `2 7/16 in`, `2.4375"`, `61.9 mm`, `2 thou`, `1 ft 3 in`,
 * `½ in`, `1200 lbf`. The unit must stand there, unless one is given for texts that bare it.
 *
 * @param text  what was written
 * @param kind  what it must measure, e.g. "length"
 * @param bareUnit  the unit of a number without one (a table column's); without it such a number is an error
 * @returns the quantity, shown in the unit it was written in
 * @throws SyntaxError   the text is not a number with a unit; the message says what is wrong with it
 * @throws TypeError     the unit measures something else
 * @example readQuantity("2 7/16 in", "length").in("inch") // 2.4375
 */
export function readQuantity<K extends KindName>(text: string, kind: K, bareUnit?: UnitOf<K>): Quantity<K> {
  const parts = splitParts(text);
  let total: Quantity<K> | undefined;
  for (const { number, spelling } of parts) {
    const value = readNumber(number);
    const unit = spelling === "" ? bareUnit : unitSpelled(spelling);
    if (unit === undefined) throw new SyntaxError(unitFault(text, spelling, kind));
    const { kind: found, symbol } = unitNamed(unit);
    if (found !== kind)
      throw new TypeError(
        `"${text}": ${symbol} measures ${withArticle(found)}, but ${withArticle(kind)} was expected${massOrForce(found, kind)}`,
      );
    const part = quantity(value, unit) as unknown as Quantity<K>;
    // In "-1 ft 3 in" the sign belongs to the whole.
    total = total === undefined ? part : /^\s*[-−]/.test(text) ? total.minus(part) : total.plus(part);
  }
  return total!;
}

/** Reads a length. @example readLength("2 7/16 in").in("inch") // 2.4375 */
export function readLength(text: string): Quantity<"length"> {
  return readQuantity(text, "length");
}

/** Reads an angle. @example readAngle("90 deg").in("turn") // 0.25 */
export function readAngle(text: string): Quantity<"angle"> {
  return readQuantity(text, "angle");
}

/**
 * Reads a temperature with its scale: `54 °F`, `20 degC`. A temperature difference is no temperature.
 *
 * @example readTemperature("68 °F").in("degC") // 20
 */
export function readTemperature(text: string): Temperature {
  const match = /^(.*?)\s*(°\s*C|°\s*F|deg\s*C|deg\s*F|C|F|K|kelvin)$/.exec(text.trim());
  if (match === null)
    throw new SyntaxError(`"${text}": a temperature with its scale was expected, e.g. 68 °F or 20 °C`);
  const letter = match[2]!.replace(/°|deg|\s/g, "")[0]!.toUpperCase();
  const scale: TemperatureScale = letter === "C" ? "degC" : letter === "F" ? "degF" : "kelvin";
  return temperature(readNumber(match[1]!), scale);
}

const vulgar: Readonly<Record<string, string>> = {
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

/**
 * Reads a number as written in a table or on paper: decimals with a point, whole numbers with a fraction
 * (`2 7/16`, `2-7/16`, `2½`), powers of ten (`1.2e-3`), either minus sign. A comma is refused, for it means
 * a decimal mark to one reader and thousands to another.
 *
 * @throws SyntaxError it is no such number; the message says what was found and what to write
 * @example readNumber("2 7/16") // 2.4375
 */
export function readNumber(text: string): number {
  const fault = numberFault(text);
  if (fault !== undefined) throw new SyntaxError(fault);
  const plain = normalise(text);
  const mixed = /^([+-]?)(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(plain);
  if (mixed === null) return Number(plain);
  const [, sign, whole = "0", over, under] = mixed;
  const size = Number(whole) + Number(over) / Number(under);
  return sign === "-" ? -size : size;
}

/** What keeps a text from being a number, in words with the mend; undefined when it is one. */
export function numberFault(text: string): string | undefined {
  const plain = normalise(text);
  if (plain === "") return "nothing stands here, a number was expected";
  if (/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i.test(plain))
    return Number.isFinite(Number(plain)) ? undefined : `"${text.trim()}" is too large for a number`;
  const mixed = /^[+-]?(?:\d+[ -])?(\d+)\/(\d+)$/.exec(plain);
  if (mixed !== null) {
    if (Number(mixed[2]) === 0) return `"${text.trim()}" divides by zero`;
    return undefined;
  }
  const shown = `"${text.trim()}"`;
  if (/^[+-]?\d{1,3}(,\d{3})+(\.\d*)?$/.test(plain))
    return `${shown} holds a comma, which may mean thousands or decimals: write ${plain.replaceAll(",", "")} or ${plain.replace(",", ".")}, whichever is meant`;
  if (/^[+-]?\d*,\d+$/.test(plain))
    return `${shown} holds a comma: write ${plain.replace(",", ".")} with a decimal point`;
  if (/[oO]/.test(plain) && isPlain(plain.replace(/[oO]/g, "0")))
    return `${shown} holds the letter O for a zero: write ${plain.replace(/[oO]/g, "0")}`;
  if (/[lI]/.test(plain) && isPlain(plain.replace(/[lI]/g, "1")))
    return `${shown} holds a letter for a one: write ${plain.replace(/[lI]/g, "1")}`;
  return `${shown} is not a number`;
}

function isPlain(text: string): boolean {
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(text);
}

/** One minus sign, one slash, ordinary spaces, vulgar fractions spelled out. */
function normalise(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (c) => ` ${vulgar[c]}`)
    .replace(/[−–]/g, "-")
    .replace(/[⁄∕]/g, "/")
    .replace(/[\s\u00a0\u2009\u202f]+/g, " ")
    .replace(/\s*\/\s*/g, "/")
    .trim();
}

/** "1 ft 3 in" into numbers and unit spellings. */
function splitParts(text: string): { number: string; spelling: string }[] {
  const plain = normalise(text);
  const parts: { number: string; spelling: string }[] = [];
  // A number (with fraction or power of ten), then everything up to the next number that follows a space or a quote mark.
  const pattern =
    /([+-]?(?:\d+[ -]\d+\/\d+|\d+\/\d+|(?:[\d.,]*\d[\d.,]*)(?:e[+-]?\d+(?![a-z]))?))\s*([^\d\s].*?)?(?=\s+[+-]?[\d.]|(?<=['"′″’”])[\d.]|$)/giy;
  let end = 0;
  while (end < plain.length) {
    pattern.lastIndex = end;
    const match = pattern.exec(plain);
    if (match === null)
      throw new SyntaxError(
        `"${text.trim()}" is not a number with its unit: write e.g. 2.4375 in, 2 7/16 in or 61.9 mm`,
      );
    parts.push({ number: match[1]!, spelling: (match[2] ?? "").trim() });
    end = pattern.lastIndex;
    while (plain[end] === " ") end++;
  }
  if (parts.length === 0) throw new SyntaxError("nothing stands here, a number with its unit was expected");
  if (parts.length > 1 && parts.some((part) => part.spelling === ""))
    throw new SyntaxError(`"${text.trim()}": each number needs its unit`);
  return parts;
}

function unitFault(text: string, spelling: string, kind: KindName): string {
  const known = unitsOf(kind)
    .map((name) => unitNamed(name).symbol)
    .join(", ");
  return spelling === ""
    ? `"${text.trim()}" has no unit: write one of ${known} behind the number`
    : `"${text.trim()}": "${spelling}" is not a known unit; ${withArticle(kind)} is written in ${known}`;
}

function massOrForce(found: string, kind: string): string {
  if (found === "mass" && kind === "force") return "; a force in pounds is written lbf";
  if (found === "force" && kind === "mass") return "; a mass in pounds is written lb";
  return "";
}

/** The unit of a spelling such as `in`, or undefined; for table headers. */
export function readUnit(spelling: string): UnitName | undefined {
  return unitSpelled(spelling);
}
