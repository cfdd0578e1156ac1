import { type KindName, withArticle } from "./kinds.js";
import { quantity } from "./quantity.js";
import type { AnyQuantity, Quantity } from "./quantity-type.js";
import { letterFault, plainText, readNumber } from "./read-number.js";
import { type Temperature, type TemperatureScale, temperature } from "./temperature.js";
import type { UnitName, UnitOf } from "./unit-kinds.js";
import { unitButForCapitals, unitNamed, unitSpelled, unitsOf } from "./units.js";

/**
 * Reads a quantity as an engineer writes it: `2 7/16 in`, `2.4375"`, `61.9 mm`, `2 thou`, `5'-6 1/2"`,
 * `1 ft 3 in`, `½ in`, `1200 lbf`; an angle also as `2° 23' 10"`. The unit must stand there, unless one is
 * given for texts without.
 *
 * @param text      what was written
 * @param kind      what it must measure, e.g. "length"
 * @param bareUnit  the unit of a number without one (a table column's); without it such a number is an error
 * @returns the quantity, shown in the unit it was written in
 * @throws SyntaxError  the text is not a number with a unit; the message says what is wrong with it
 * @throws TypeError    the unit measures something else
 * @example readQuantity("2 7/16 in", "length")       // 2.4375 in
 * @example readQuantity("0.0043", "length", "inch")  // 0.0043 in
 */
export function readQuantity<K extends KindName>(text: string, kind: K, bareUnit?: UnitOf<K>): Quantity<K> {
  const parts = splitParts(text).map(({ number, spelling }) => {
    const unit = spelling === "" ? bareUnit : unitFor(spelling, kind);
    if (unit === undefined) throw new SyntaxError(unitFault(text, spelling, kind));
    const { kind: found, symbol } = unitNamed(unit);
    if (found !== kind)
      throw new TypeError(
        `"${text.trim()}": ${symbol} measures ${withArticle(found)}, but ${withArticle(kind)} was expected${massOrForce(found, kind)}`,
      );
    return { number, factor: unitNamed(unit).si, value: quantity(readNumber(number), unit) };
  });
  const [first, ...rest] = parts;
  const negative = first!.number.startsWith("-");
  let total = first!.value as unknown as Quantity<K>;
  for (const [i, part] of rest.entries()) {
    if (/^[+-]/.test(part.number))
      throw new SyntaxError(`"${text.trim()}": only the first number may have a sign`);
    if (part.factor >= parts[i]!.factor)
      throw new SyntaxError(`"${text.trim()}": write each unit once, the larger first`);
    // In "-1 ft 3 in" the sign belongs to the whole.
    const value = part.value as unknown as Quantity<K>;
    total = negative ? total.minus(value) : total.plus(value);
  }
  return total;
}

/**
 * Reads a quantity of whatever kind its unit measures, e.g. `12 hp`, `110 rpm`, `180 lb`. Angles in minutes and
 * seconds of arc are read by `readAngle`: ' and " are feet and inches here.
 *
 * @param text  what was written
 * @returns the quantity, shown in the unit it was written in
 * @throws SyntaxError  the text is not a number with a known unit
 * @throws TypeError    two parts measure different things
 * @example readAnyQuantity("12 hp").dimension // "power"
 */
export function readAnyQuantity(text: string): AnyQuantity {
  const [first] = splitParts(text);
  const unit = unitSpelled(first!.spelling);
  if (unit === undefined) {
    const meant = unitButForCapitals(first!.spelling);
    throw new SyntaxError(
      first!.spelling === ""
        ? `"${text.trim()}" has no unit: write it behind the number, e.g. 12 hp, 110 rpm or 180 lb`
        : `"${text.trim()}": "${first!.spelling}" is not a known unit${meant === undefined ? "" : `; did you mean ${unitNamed(meant).symbol}?`}`,
    );
  }
  return readQuantity(text, unitNamed(unit).kind as KindName);
}

/**
 * Reads a length.
 *
 * @throws SyntaxError  the text is not a number with a unit
 * @throws TypeError    the unit measures something else
 * @example readLength("2 7/16 in").in("inch") // 2.4375
 */
export function readLength(text: string): Quantity<"length"> {
  return readQuantity(text, "length");
}

/**
 * Reads an angle, in degrees with minutes and seconds too.
 *
 * @throws SyntaxError  the text is not a number with a unit
 * @throws TypeError    the unit measures something else
 * @example readAngle("90 deg").in("turn")     // 0.25
 * @example readAngle("2° 30' 36\"").in("degree") // 2.51
 */
export function readAngle(text: string): Quantity<"angle"> {
  return readQuantity(text, "angle");
}

/**
 * Reads a temperature with its scale: `54 °F`, `20 degC`, `300 K`. A temperature difference is no temperature.
 *
 * @throws SyntaxError  the number or the scale is missing or not understood
 * @throws RangeError   it lies below absolute zero
 * @example readTemperature("68 °F").in("degC") // 20
 */
export function readTemperature(text: string): Temperature {
  const match = /^(.*?)\s*(?:[°º]\s*|deg\s*)?([CFK]|kelvin)$/.exec(text.trim());
  if (match === null)
    throw new SyntaxError(`"${text.trim()}": a temperature with its scale was expected, e.g. 68 °F or 20 °C`);
  const scale: TemperatureScale = match[2] === "C" ? "degC" : match[2] === "F" ? "degF" : "kelvin";
  return temperature(readNumber(match[1]!), scale);
}

/** The unit of a spelling; ' and " are minutes and seconds of arc where an angle is read, else feet and inches. */
function unitFor(spelling: string, kind: KindName): UnitName | undefined {
  const unit = unitSpelled(spelling);
  if (kind !== "angle" || !/^['"′″’”]$/.test(spelling)) return unit;
  return unit === "foot" ? "arcMinute" : "arcSecond";
}

// A number: with a fraction, or decimal (commas are taken up too, to be refused by name).
const numberAhead = /[+-]?(?:(?:\d+[ -])?\d+\/\d+|[\d.,]*\d[\d.,]*(?:e[+-]?\d+(?![a-z]))?)/iy;
// A unit: words that start with no digit or sign; a digit belongs to it right behind a letter (mm2), a dash before one (lbf-ft).
const unitAhead = /(?: ?[^\s\d.,+-](?:[^\s\d-]|-(?=[a-z])|(?<=[a-z^])\d)*)*/iy;

/** "1 ft 3 in" into numbers and unit spellings. */
function splitParts(text: string): { readonly number: string; readonly spelling: string }[] {
  const plain = plainText(text).replace(/(?<=['′’])-(?=\d)/, " ");
  if (plain === "") throw new SyntaxError("nothing stands here, a number with its unit was expected");
  const parts: { number: string; spelling: string }[] = [];
  let end = 0;
  const take = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = end;
    const found = pattern.exec(plain)?.[0];
    end += found?.length ?? 0;
    return found;
  };
  while (end < plain.length) {
    const number = take(numberAhead);
    if (number === undefined)
      throw new SyntaxError(
        letterInNumber(plain) ??
          `"${text.trim()}" is not a number with its unit: write e.g. 2.4375 in, 2 7/16 in or 61.9 mm`,
      );
    parts.push({ number, spelling: take(unitAhead)!.trim() });
    if (plain[end] === " ") end++;
  }
  if (parts.length > 1 && parts.some((part) => part.spelling === ""))
    throw new SyntaxError(
      `"${text.trim()}": each number needs its unit; thousands are written without a space`,
    );
  return parts;
}

/** A letter O or l that stands in a number for a digit. */
function letterInNumber(plain: string): string | undefined {
  return plain
    .split(" ")
    .map((word) => letterFault(word) ?? letterFault(/^[+-]?[\doOlI.,]*\d/.exec(word)?.[0] ?? ""))
    .find((fault) => fault !== undefined);
}

function unitFault(text: string, spelling: string, kind: KindName): string {
  const known = unitsOf(kind)
    .map((name) => unitNamed(name).symbol)
    .join(", ");
  if (spelling === "") return `"${text.trim()}" has no unit: write one of ${known} behind the number`;
  const letter = letterInNumber(plainText(text));
  if (letter !== undefined) return letter;
  const meant = unitButForCapitals(spelling);
  const hint = meant === undefined ? "" : `; did you mean ${unitNamed(meant).symbol}?`;
  return `"${text.trim()}": "${spelling}" is not a known unit${hint === "" ? `; ${withArticle(kind)} is written in ${known}` : hint}`;
}

function massOrForce(found: string, kind: string): string {
  if (found === "mass" && kind === "force") return "; a force in pounds is written lbf";
  if (found === "force" && kind === "mass") return "; a mass in pounds is written lb";
  return "";
}
