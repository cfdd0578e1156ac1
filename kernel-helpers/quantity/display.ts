import type { KindName } from "./kinds.js";
import type { UnitName } from "./units.js";

/** Inch or metric: the system a rebuild is written in. */
export type UnitSystem = "inch" | "metric";

// What a quantity is shown in when nobody says otherwise.
const usual: Readonly<Record<UnitSystem, Partial<Readonly<Record<KindName, UnitName>>>>> = {
  inch: {
    length: "inch",
    area: "inch2",
    volume: "inch3",
    "second moment of area": "inch4",
    mass: "pound",
    speed: "footPerMinute",
    density: "poundPerCubicInch",
    "mass unbalance": "ounceInch",
    "moment of inertia": "poundSquareInch",
    force: "lbf",
    pressure: "psi",
    "torque or energy": "lbfFoot",
    power: "hp",
    "stiffness or line load": "lbfPerInch",
    "temperature difference": "deltaF",
    "thermal expansion": "perF",
  },
  metric: {
    length: "mm",
    area: "mm2",
    volume: "mm3",
    "second moment of area": "mm4",
    mass: "kilogram",
    speed: "metrePerSecond",
    density: "kilogramPerCubicMetre",
    "mass unbalance": "gramMillimetre",
    "moment of inertia": "kilogramSquareMetre",
    force: "newton",
    pressure: "megapascal",
    "torque or energy": "newtonMetre",
    power: "kilowatt",
    "stiffness or line load": "newtonPerMillimetre",
    "temperature difference": "deltaC",
    "thermal expansion": "perC",
  },
};
const usualInBoth: Partial<Readonly<Record<KindName, UnitName>>> = {
  angle: "degree",
  time: "second",
  "rotational speed": "rpm",
  frequency: "hertz",
  acceleration: "metrePerSecondSquared",
  "dynamic viscosity": "millipascalSecond",
  "kinematic viscosity": "centistokes",
  "volume flow": "litrePerMinute",
};

/** The unit a kind of quantity is usually shown in, or undefined where the trade has none. */
export function usualUnit(kind: string, system: UnitSystem): UnitName | undefined {
  const name = kind as KindName;
  return usual[system][name] ?? usualInBoth[name];
}

/** Whether a unit belongs to one system only. */
export function systemOf(unit: UnitName): UnitSystem | "both" {
  return metricOnly.has(unit) ? "metric" : inchOnly.has(unit) ? "inch" : "both";
}

const metricOnly: ReadonlySet<UnitName> = new Set<UnitName>([
  "metre",
  "mm",
  "cm",
  "micrometre",
  "mm2",
  "m2",
  "mm3",
  "litre",
  "m3",
  "mm4",
  "metrePerSecond",
  "kilogram",
  "gram",
  "kilogramPerCubicMetre",
  "gramMillimetre",
  "kilogramSquareMetre",
  "newton",
  "kilonewton",
  "kgf",
  "pascal",
  "kilopascal",
  "megapascal",
  "gigapascal",
  "bar",
  "newtonMetre",
  "joule",
  "watt",
  "kilowatt",
  "metricHp",
  "newtonPerMillimetre",
  "deltaC",
  "perC",
]);
const inchOnly: ReadonlySet<UnitName> = new Set<UnitName>([
  "inch",
  "thou",
  "foot",
  "inch2",
  "inch3",
  "inch4",
  "footPerMinute",
  "footPerSecond",
  "pound",
  "ounce",
  "poundPerCubicInch",
  "ounceInch",
  "poundSquareInch",
  "lbf",
  "shortTonForce",
  "longTonForce",
  "psi",
  "ksi",
  "lbfInch",
  "lbfFoot",
  "hp",
  "lbfPerInch",
  "deltaF",
  "perF",
  "reyn",
]);

let shownSystem: UnitSystem | undefined;

/**
 * Sets the unit system in which quantities show themselves in this process; undefined shows each in the
 * unit it was written in. Opening a rebuild sets it. It changes no value, only how one is printed.
 */
export function setUnitSystem(system: UnitSystem | undefined): void {
  shownSystem = system;
}

/** The unit system in which quantities show themselves, if one is set. */
export function unitSystem(): UnitSystem | undefined {
  return shownSystem;
}
