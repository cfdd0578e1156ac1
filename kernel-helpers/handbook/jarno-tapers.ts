import { inch } from "../quantity/index.js";
import type { StandardTaper } from "./standard-taper.js";

/**
 * A Jarno taper by its number.
 *
 * large end n/8 in, small end n/10 in, length n/2 in; hence 0.6 in per foot, 1:20, for every number
 *
 * Valid when: n is a whole number from 2 to 20, the numbers the series has.
 *
 * @param number the number n of the taper [-]
 * @returns the taper; taper [-], ends and length as lengths
 * @throws RangeError n is not a whole number from 2 to 20
 * @example jarnoTaper(8).largeEnd!.in("inch") // 1
 * @source Machinery's Handbook, Jarno tapers (rule read in public reprints; range of numbers from memory)
 */
export function jarnoTaper(number: number): StandardTaper {
  if (!Number.isInteger(number) || number < 2 || number > 20)
    throw new RangeError(`jarnoTaper: number must be a whole number from 2 to 20, got ${number}`);
  return Object.freeze({
    name: `Jarno ${number}`,
    family: "Jarno",
    taper: 0.05,
    largeEnd: inch(number / 8),
    smallEnd: inch(number / 10),
    length: inch(number / 2),
    source: "Machinery's Handbook, Jarno tapers (rule)",
  });
}

/** All Jarno tapers as one: they share their taper and differ in size only. */
export const jarnoSeries: StandardTaper = Object.freeze({
  name: "Jarno",
  family: "Jarno",
  taper: 0.05,
  largeEnd: undefined,
  smallEnd: undefined,
  length: undefined,
  source: "Machinery's Handbook, Jarno tapers (rule)",
});
