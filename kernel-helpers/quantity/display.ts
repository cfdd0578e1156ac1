import type { KindName } from "./kinds.js";
import type { UnitName, UnitOf } from "./unit-kinds.js";
import { type UnitSystem, unitNamed } from "./units.js";

type UnitByKind = { readonly [K in KindName]?: UnitOf<K> };

// What a quantity is shown in when nobody says otherwise: common practice, no source.
const usualInBoth: UnitByKind = {
  angle: "degree",
  time: "second",
  "rotational speed": "rpm",
  frequency: "hertz",
  acceleration: "metrePerSecondSquared",
  "dynamic viscosity": "millipascalSecond",
  "kinematic viscosity": "centistokes",
  "volume flow": "litrePerMinute",
};
const usual: Readonly<Record<UnitSystem, UnitByKind>> = {
  inch: {
    ...usualInBoth,
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
    ...usualInBoth,
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

/**
 * The unit a kind of quantity is usually shown in, or undefined where the trade has none.
 *
 * @example usualUnit("pressure", "inch")          // "psi"
 * @example usualUnit("bending stiffness", "inch") // undefined
 */
export function usualUnit(kind: string, system: UnitSystem): UnitName | undefined {
  const table: Readonly<Record<string, UnitName | undefined>> = usual[system];
  return Object.hasOwn(table, kind) ? table[kind] : undefined;
}

/**
 * The system a unit belongs to, or "both".
 *
 * @example systemOf("thou") // "inch"
 */
export function systemOf(unit: UnitName): UnitSystem | "both" {
  return unitNamed(unit).system;
}

let shownSystem: UnitSystem | undefined;

/**
 * Sets the unit system in which quantities show themselves in this process; undefined shows each in the
 * unit it was written in. Opening a rebuild sets it. It changes no value, only how one is printed.
 *
 * @throws RangeError  it is neither "inch" nor "metric" nor undefined
 * @example setUnitSystem("metric"); String(inch(1)) // "25.4 mm"
 */
export function setUnitSystem(system: UnitSystem | undefined): void {
  if (system !== undefined && !Object.hasOwn(usual, system))
    throw new RangeError(
      `setUnitSystem: system must be "inch", "metric" or undefined, got ${String(system)}`,
    );
  shownSystem = system;
}

/**
 * The unit system in which quantities show themselves, if one is set.
 *
 * @example unitSystem() // undefined, until a rebuild is opened
 */
export function unitSystem(): UnitSystem | undefined {
  return shownSystem;
}

/**
 * The unit a quantity shows itself in: the one it was written in, unless that belongs to the other system
 * than the one set; then the usual one. Without either, the usual metric one.
 *
 * @param kind       the kind of quantity
 * @param writtenIn  the unit it was written in, if any
 * @returns the unit, or undefined where the kind has no usual one
 * @example shownUnit("length", "thou") // "thou"
 */
export function shownUnit(kind: string, writtenIn?: UnitName): UnitName | undefined {
  if (writtenIn !== undefined) {
    const system = systemOf(writtenIn);
    if (shownSystem === undefined || system === "both" || system === shownSystem) return writtenIn;
  }
  return usualUnit(kind, shownSystem ?? "metric");
}
