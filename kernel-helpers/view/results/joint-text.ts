import type { Spread } from "../../joint/spread.js";
import {
  type AnyQuantity,
  type Force,
  formatLimit,
  formatNumber,
  type Length,
  type Pressure,
  quantityFromSi,
  type TemperatureDifference,
  type Time,
  type Torque,
  type UnitName,
  type UnitSystem,
  unitNamed,
  unitSystem,
} from "../../quantity/index.js";
import { alike } from "./alike.js";
import { systemOfLength } from "./shown-units.js";

/** The units in which a press and a fit are spoken of. */
export interface JointUnits {
  readonly system: UnitSystem;
  readonly force: UnitName;
  readonly stress: UnitName;
  readonly torque: UnitName;
  readonly small: UnitName;
  readonly size: UnitName;
  readonly warmer: UnitName;
}

const units: Readonly<Record<UnitSystem, JointUnits>> = Object.freeze({
  inch: {
    system: "inch",
    force: "lbf",
    stress: "ksi",
    torque: "lbfFoot",
    small: "thou",
    size: "inch",
    warmer: "deltaF",
  },
  metric: {
    system: "metric",
    force: "kilonewton",
    stress: "megapascal",
    torque: "newtonMetre",
    small: "micrometre",
    size: "mm",
    warmer: "deltaC",
  },
});

/** The units of the rebuild, where one is open; else those the size was written in. */
export function jointUnits(size: Length): JointUnits {
  return units[unitSystem() ?? systemOfLength(size) ?? "metric"];
}

/** A figure in a unit, to so many digits: "45000 lbf". */
export function inUnit(value: AnyQuantity, unit: UnitName, digits: number): string {
  return `${number(value, unit, digits)} ${symbolOf(unit)}`;
}

/** The ends of a range in a unit: "21000 to 83000 lbf". One figure where both ends come out alike. */
export function rangeText(
  { low, high }: { readonly low: AnyQuantity; readonly high: AnyQuantity },
  unit: UnitName,
  digits: number,
): string {
  const [from, to] = alike([number(low, unit, digits), number(high, unit, digits)], digits);
  return from === to ? `${from} ${symbolOf(unit)}` : `${from} to ${to} ${symbolOf(unit)}`;
}

/** A range with its middle: "21000 to 83000 lbf, middle case 45000". */
export function spreadText(spread: Spread<AnyQuantity>, unit: UnitName, digits: number): string {
  const ends = [spread.low, spread.high, spread.middle].map((value) => number(value, unit, digits));
  const [from, to, middle] = alike(ends, digits);
  const symbol = symbolOf(unit);
  return from === to ? `${from} ${symbol}` : `${from} to ${to} ${symbol}, middle case ${middle}`;
}

/** A press force as it is spoken of: pounds with short tons, or kilonewtons with tonnes. */
export function forceText(force: Force, { system }: JointUnits): string {
  return system === "inch"
    ? `${inUnit(force, "lbf", 2)} (${inUnit(force, "shortTonForce", 2)})`
    : `${inUnit(force, "kilonewton", 2)} (${formatNumber(force.si / 9806.65, 2)} t)`;
}

/** A press force that must not be passed: cut down, never rounded up. */
export function mostForceText(limit: Force, { system }: JointUnits): string {
  return system === "inch"
    ? `${mostIn(limit, "lbf", 2)} (${mostIn(limit, "shortTonForce", 2)})`
    : `${mostIn(limit, "kilonewton", 2)} (${formatLimit(limit.si / 9806.65, 2, "at most")} t)`;
}

/** A limit in a unit, to so many digits and never past it. */
export function mostIn(limit: AnyQuantity, unit: UnitName, digits: number): string {
  return `${formatLimit(limit.si / unitNamed(unit).si, digits, "at most")} ${symbolOf(unit)}`;
}

/** What must at least be there, in a unit, to so many digits and never less. */
export function leastIn(limit: AnyQuantity, unit: UnitName, digits: number): string {
  return `${formatLimit(limit.si / unitNamed(unit).si, digits, "at least")} ${symbolOf(unit)}`;
}

/** What is permitted from the low to the high end, each taken inwards: "85.1 to 114 µm". */
export function permittedText(
  { low, high }: { readonly low: AnyQuantity; readonly high: AnyQuantity },
  unit: UnitName,
  digits: number,
): string {
  const { si } = unitNamed(unit);
  const ends = [formatLimit(low.si / si, digits, "at least"), formatLimit(high.si / si, digits, "at most")];
  return `${alike(ends, digits).join(" to ")} ${symbolOf(unit)}`;
}

/** A range of press forces, likewise. */
export function forceRange(range: { readonly low: Force; readonly high: Force }, of: JointUnits): string {
  return of.system === "inch"
    ? `${rangeText(range, "lbf", 2)} (${rangeText(range, "shortTonForce", 2)})`
    : `${rangeText(range, "kilonewton", 2)} (${rangeText({ low: range.low.over(9806.65), high: range.high.over(9806.65) }, "newton", 2).replace(" N", " t")})`;
}

/** A stress: "6.4 ksi", "44 MPa". */
export function stressText(stress: Pressure, { stress: unit }: JointUnits): string {
  return inUnit(stress, unit, 3);
}

/** A temperature difference: "118 °F". */
export function warmerText(warmer: TemperatureDifference, { warmer: unit }: JointUnits): string {
  return inUnit(warmer, unit, 3);
}

/** The most that a temperature difference comes to, cut down, so that one which falls short is not shown as reached. */
export function mostWarmerText(warmer: TemperatureDifference, { warmer: unit }: JointUnits): string {
  return mostIn(warmer, unit, 3);
}

/** A temperature difference that must be reached, taken up: "87 °F". */
export function leastWarmerText(warmer: TemperatureDifference, { warmer: unit }: JointUnits): string {
  return leastIn(warmer, unit, 3);
}

/** A time as it is waited: "40 s", "3.5 min". */
export function timeText(time: Time): string {
  return time.si < 90 ? inUnit(time, "second", 2) : inUnit(time, "minute", 2);
}

/**
 * Energy as something that can be pictured: a sledge of 10 lb or 5 kg falling so far.
 *
 * fall = E/(m g)
 */
export function energyText(energy: Torque, { system }: JointUnits): string {
  const inch = system === "inch";
  const metres = energy.si / (9.80665 * (inch ? 10 * 0.45359237 : 5));
  const fall = quantityFromSi("length", metres);
  const height = inch ? inUnit(fall, "foot", 2) : inUnit(fall, "metre", 2);
  return `${inch ? inUnit(energy, "lbfFoot", 2) : inUnit(energy, "joule", 2)}: a sledge of ${inch ? "10 lb" : "5 kg"} falling ${height}`;
}

function number(value: AnyQuantity, unit: UnitName, digits: number): string {
  return formatNumber(value.si / unitNamed(unit).si, digits);
}

function symbolOf(unit: UnitName): string {
  const { symbol } = unitNamed(unit);
  return symbol.replace(" (difference)", "");
}
