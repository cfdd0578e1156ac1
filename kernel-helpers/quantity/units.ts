import type { KindName } from "./kinds.js";
import type { UnitKinds, UnitName } from "./unit-kinds.js";

/** Inch or metric: the system a rebuild is written in. */
export type UnitSystem = "inch" | "metric";

/** One unit: what it measures, how it is written, and how many SI units it is. */
export interface Unit {
  readonly kind: KindName;
  /** The system that uses it, or both. */
  readonly system: UnitSystem | "both";
  /** As printed after a number. */
  readonly symbol: string;
  /** One of this unit in SI base units (and radians). */
  readonly si: number;
  /** Other spellings read from a table or a text. */
  readonly also: readonly string[];
}

function unit<K extends KindName>(
  system: UnitSystem | "both",
  kind: K,
  symbol: string,
  si: number,
  ...also: readonly string[]
): Unit & { readonly kind: K } {
  return Object.freeze({ kind, system, symbol, si, also: Object.freeze(also) });
}

// Exact by definition.
const inch = 0.0254;
const foot = 12 * inch;
const pound = 0.45359237;
const ounce = pound / 16;
const gravity = 9.80665;
const poundForce = pound * gravity;
const psi = poundForce / inch ** 2;
const degree = Math.PI / 180;
const turn = 2 * Math.PI;

/**
 * The units of the trade with their factors to SI. Each factor is exact by definition or the product or
 * quotient of some that are; only π and the arithmetic round (to a few parts in 10¹⁶).
 *
 * @source A. Thompson & B. N. Taylor, Guide for the Use of the International System of Units (SI), NIST
 * Special Publication 811, 2008, Appendix B.8 (inch, foot, pound, ounce, horsepower of 550 ft·lbf/s, metric
 * horsepower, ton-force of 2000 lbf, reyn as lbf·s/in²) and its footnote on standard gravity 9.806 65 m/s²
 */
const units: { readonly [N in UnitName]: Unit & { readonly kind: UnitKinds[N] } } = {
  // length
  metre: unit("metric", "length", "m", 1, "metres", "meter", "meters"),
  mm: unit("metric", "length", "mm", 1e-3, "millimetre", "millimetres", "millimeter", "millimeters"),
  cm: unit("metric", "length", "cm", 1e-2, "centimetre", "centimetres", "centimeter", "centimeters"),
  micrometre: unit("metric", "length", "µm", 1e-6, "um", "micron", "microns", "micrometres"),
  inch: unit("inch", "length", "in", inch, "in.", "inches", '"', "″", "”"),
  thou: unit("inch", "length", "thou", inch / 1000, "mil", "mils"),
  foot: unit("inch", "length", "ft", foot, "ft.", "feet", "'", "′", "’"),
  // area, volume, section
  mm2: unit("metric", "area", "mm²", 1e-6),
  m2: unit("metric", "area", "m²", 1),
  inch2: unit("inch", "area", "in²", inch ** 2, "sq in"),
  mm3: unit("metric", "volume", "mm³", 1e-9),
  litre: unit("metric", "volume", "L", 1e-3, "l", "litres", "liter", "liters"),
  m3: unit("metric", "volume", "m³", 1),
  inch3: unit("inch", "volume", "in³", inch ** 3, "cu in"),
  mm4: unit("metric", "second moment of area", "mm⁴", 1e-12),
  inch4: unit("inch", "second moment of area", "in⁴", inch ** 4),
  // angle, time, motion
  radian: unit("both", "angle", "rad", 1, "radians"),
  degree: unit("both", "angle", "°", degree, "deg", "degrees", "º"),
  arcMinute: unit("both", "angle", "arcmin", degree / 60),
  arcSecond: unit("both", "angle", "arcsec", degree / 3600),
  turn: unit("both", "angle", "turn", turn, "turns", "rev"),
  second: unit("both", "time", "s", 1, "sec", "seconds"),
  minute: unit("both", "time", "min", 60, "minutes"),
  hour: unit("both", "time", "h", 3600, "hr", "hours"),
  metrePerSecond: unit("metric", "speed", "m/s", 1),
  footPerMinute: unit("inch", "speed", "ft/min", foot / 60, "fpm"),
  footPerSecond: unit("inch", "speed", "ft/s", foot),
  metrePerSecondSquared: unit("both", "acceleration", "m/s²", 1),
  radianPerSecond: unit("both", "rotational speed", "rad/s", 1),
  rpm: unit("both", "rotational speed", "rpm", turn / 60, "rev/min", "r/min"),
  turnPerSecond: unit("both", "rotational speed", "rev/s", turn, "rps"),
  hertz: unit("both", "frequency", "Hz", 1),
  // mass
  kilogram: unit("metric", "mass", "kg", 1, "kilograms"),
  gram: unit("metric", "mass", "g", 1e-3, "grams"),
  pound: unit("inch", "mass", "lb", pound, "lbs", "lbm", "pounds"),
  ounce: unit("inch", "mass", "oz", ounce, "ounces"),
  kilogramPerCubicMetre: unit("metric", "density", "kg/m³", 1),
  poundPerCubicInch: unit("inch", "density", "lb/in³", pound / inch ** 3),
  gramMillimetre: unit("metric", "mass unbalance", "g·mm", 1e-6),
  ounceInch: unit("inch", "mass unbalance", "oz·in", ounce * inch),
  kilogramSquareMetre: unit("metric", "moment of inertia", "kg·m²", 1),
  poundSquareInch: unit("inch", "moment of inertia", "lb·in²", pound * inch ** 2),
  // force, pressure, torque, power
  newton: unit("metric", "force", "N", 1, "newtons"),
  kilonewton: unit("metric", "force", "kN", 1e3),
  lbf: unit("inch", "force", "lbf", poundForce),
  kgf: unit("metric", "force", "kgf", gravity),
  shortTonForce: unit("inch", "force", "short tonf", 2000 * poundForce, "US tonf"),
  longTonForce: unit("inch", "force", "long tonf", 2240 * poundForce, "UK tonf"),
  pascal: unit("metric", "pressure", "Pa", 1),
  kilopascal: unit("metric", "pressure", "kPa", 1e3),
  megapascal: unit("metric", "pressure", "MPa", 1e6, "N/mm²"),
  gigapascal: unit("metric", "pressure", "GPa", 1e9),
  bar: unit("metric", "pressure", "bar", 1e5),
  psi: unit("inch", "pressure", "psi", psi, "lbf/in²"),
  ksi: unit("inch", "pressure", "ksi", 1000 * psi, "kpsi"),
  newtonMetre: unit("metric", "torque or energy", "N·m", 1, "Nm"),
  joule: unit("metric", "torque or energy", "J", 1),
  lbfInch: unit("inch", "torque or energy", "lbf·in", poundForce * inch, "in·lbf", "in·lb", "lb·in"),
  lbfFoot: unit("inch", "torque or energy", "lbf·ft", poundForce * foot, "ft·lbf", "ft·lb", "lb·ft"),
  watt: unit("metric", "power", "W", 1),
  kilowatt: unit("metric", "power", "kW", 1e3),
  hp: unit("inch", "power", "hp", 550 * foot * poundForce, "HP"),
  metricHp: unit("metric", "power", "metric hp", 75 * gravity, "PS"),
  newtonPerMillimetre: unit("metric", "stiffness or line load", "N/mm", 1e3),
  lbfPerInch: unit("inch", "stiffness or line load", "lbf/in", poundForce / inch),
  // heat and flow
  deltaC: unit("metric", "temperature difference", "°C (difference)", 1, "K", "delta degC"),
  deltaF: unit("inch", "temperature difference", "°F (difference)", 5 / 9, "delta degF"),
  perC: unit("metric", "thermal expansion", "/°C", 1, "1/°C", "/degC", "per degC", "/K", "1/K"),
  perF: unit("inch", "thermal expansion", "/°F", 9 / 5, "1/°F", "/degF", "per degF"),
  pascalSecond: unit("both", "dynamic viscosity", "Pa·s", 1),
  millipascalSecond: unit("both", "dynamic viscosity", "mPa·s", 1e-3, "cP"),
  reyn: unit("inch", "dynamic viscosity", "reyn", psi, "psi·s"),
  centistokes: unit("both", "kinematic viscosity", "mm²/s", 1e-6, "cSt"),
  litrePerMinute: unit("both", "volume flow", "L/min", 1e-3 / 60, "l/min"),
  cm3PerHour: unit("both", "volume flow", "cm³/h", 1e-6 / 3600, "cm3/h", "mL/h", "ml/h"),
};

const unitNames = Object.keys(units) as readonly UnitName[];

// Looked up for every computed quantity: a map finds a name sooner than an object of so many.
const byName: ReadonlyMap<string, Unit> = new Map(Object.entries(units));

/**
 * The unit of that name, as plain data.
 *
 * @throws RangeError  there is no such unit
 * @example unitNamed("psi").symbol // "psi"
 */
export function unitNamed(name: UnitName): Unit {
  const found = byName.get(name);
  if (found === undefined)
    throw new RangeError(`unitNamed: unit must be one of the known units, got ${String(name)}`);
  return found;
}

/**
 * The names of all units of one kind, in the order of the table.
 *
 * @example unitsOf("rotational speed") // ["radianPerSecond", "rpm", "turnPerSecond"]
 */
export function unitsOf(kind: string): UnitName[] {
  return unitNames.filter((name) => units[name].kind === kind);
}

const bySpelling: ReadonlyMap<string, UnitName> = new Map(
  unitNames.flatMap((name) =>
    [name, units[name].symbol, ...units[name].also].map((spelling) => [onePattern(spelling), name] as const),
  ),
);

/**
 * The unit a spelling stands for, or undefined: `in`, `inch`, `"`, `thou`, `mm`, `µm`, `lbf·ft`, `mm^2`, …
 * Powers may be raised or not, factors joined by a dot, a dash or a space. Capitals count, for some units
 * differ only by them: a unit in an unexpected case is not guessed.
 *
 * @example unitSpelled("in.")    // "inch"
 * @example unitSpelled("lbf-ft") // "lbfFoot"
 * @example unitSpelled("MM")     // undefined
 */
export function unitSpelled(spelling: string): UnitName | undefined {
  return bySpelling.get(onePattern(spelling));
}

/**
 * The one unit that a spelling would stand for but for its capitals, for a hint; undefined when there is
 * none or more than one.
 *
 * @example unitButForCapitals("RPM") // "rpm"
 */
export function unitButForCapitals(spelling: string): UnitName | undefined {
  const lower = onePattern(spelling).toLowerCase();
  const found = new Set([...bySpelling].filter(([s]) => s.toLowerCase() === lower).map(([, name]) => name));
  return found.size === 1 ? [...found][0] : undefined;
}

/** The same unit written in one way: powers as plain digits, factors joined by a dot, one letter µ. */
function onePattern(spelling: string): string {
  return spelling
    .trim()
    .replace(/[²³⁴]/g, (c) => ({ "²": "2", "³": "3", "⁴": "4" })[c]!)
    .replace(/\^/g, "")
    .replace(/\s*[·⋅*-]\s*|\s+/g, "·")
    .replace(/μ/g, "µ");
}
