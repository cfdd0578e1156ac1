import { type AnyQuantity, readAnyQuantity } from "../quantity/index.js";

/** A fact of rebuild.json, with how far it may be off where a ± says so. */
export interface FactWithLimits {
  /** The text of the value, with its unit. */
  readonly value: string;
  /** Half the width of the limits. */
  readonly limits?: AnyQuantity;
}

/**
 * Divides "180 ± 10 lb" into the value "180 lb" and the limits 10 lb. As in the remarks of tables, behind the ± stand
 * limits: any value between them is as likely as another, so that u = 10/√3 lb. Written "180 lb ± 10 lb" and
 * "180 +- 10 lb" too; a text without ± is left as it is.
 *
 * @param text  as it stands in rebuild.json
 * @returns the value's text and the limits, in the unit behind the ±
 * @throws SyntaxError  the value or the limits are missing, are not above 0, or are of a temperature
 * @throws TypeError    both have units, and of different kinds
 * @example readWithLimits("180 ± 10 lb").value // "180 lb"
 * @source JCGM 100:2008 (GUM), 4.3.7 (limits ±a of a rectangular distribution: u = a/√3)
 */
export function readWithLimits(text: string): FactWithLimits {
  const parts = text.split(/±|\+\/?-/).map((part) => part.trim());
  if (parts.length === 1) return { value: text };
  const [value, limit] = parts as [string, string];
  if (parts.length > 2 || value === "" || limit === "")
    throw new SyntaxError(`"${text}": a value and one ± with its limits were expected, e.g. 180 ± 10 lb`);
  if (/[°º]|deg\s*[CFK]|\d\s*[CFK]$/.test(limit))
    throw new SyntaxError(
      `"${text}": limits of a temperature are written as a quantity of their own, e.g. "thermometer uncertainty": "2 delta degF"`,
    );
  const limits = readAnyQuantity(limit);
  if (!(limits.si > 0)) throw new SyntaxError(`"${text}": the limits behind ± must be above 0`);
  const unit = /[^\d\s.,/+½¼¾-].*$/.exec(limit)?.[0] ?? "";
  const whole = /^[\d\s.,/+½¼¾-]+$/.test(value) ? `${value} ${unit}` : value;
  const found = readAnyQuantity(whole);
  if (found.dimension !== limits.dimension)
    throw new TypeError(`"${text}": value and limits must be of one kind, got ${found} and ${limits}`);
  return { value: whole, limits };
}
