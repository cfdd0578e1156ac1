import type { KindName } from "./kinds.js";

/** One unit: what it measures, how it is written, and how many SI units it is. */
export interface Unit {
  readonly kind: KindName;
  /** As printed after a number. */
  readonly symbol: string;
  /** One of this unit in SI base units (and radians). */
  readonly si: number;
  /** Other spellings read from a table or a text. */
  readonly also: readonly string[];
}

/** What each unit measures. */
export interface UnitKinds {
  readonly metre: "length";
  readonly mm: "length";
  readonly cm: "length";
  readonly micrometre: "length";
  readonly inch: "length";
  readonly thou: "length";
  readonly foot: "length";
  readonly mm2: "area";
  readonly m2: "area";
  readonly inch2: "area";
  readonly mm3: "volume";
  readonly litre: "volume";
  readonly m3: "volume";
  readonly inch3: "volume";
  readonly mm4: "second moment of area";
  readonly inch4: "second moment of area";
  readonly radian: "angle";
  readonly degree: "angle";
  readonly arcMinute: "angle";
  readonly arcSecond: "angle";
  readonly turn: "angle";
  readonly second: "time";
  readonly minute: "time";
  readonly hour: "time";
  readonly metrePerSecond: "speed";
  readonly footPerMinute: "speed";
  readonly footPerSecond: "speed";
  readonly metrePerSecondSquared: "acceleration";
  readonly radianPerSecond: "rotational speed";
  readonly rpm: "rotational speed";
  readonly turnPerSecond: "rotational speed";
  readonly hertz: "frequency";
  readonly kilogram: "mass";
  readonly gram: "mass";
  readonly pound: "mass";
  readonly ounce: "mass";
  readonly kilogramPerCubicMetre: "density";
  readonly poundPerCubicInch: "density";
  readonly gramMillimetre: "mass unbalance";
  readonly ounceInch: "mass unbalance";
  readonly kilogramSquareMetre: "moment of inertia";
  readonly poundSquareInch: "moment of inertia";
  readonly newton: "force";
  readonly kilonewton: "force";
  readonly lbf: "force";
  readonly kgf: "force";
  readonly shortTonForce: "force";
  readonly longTonForce: "force";
  readonly pascal: "pressure";
  readonly kilopascal: "pressure";
  readonly megapascal: "pressure";
  readonly gigapascal: "pressure";
  readonly bar: "pressure";
  readonly psi: "pressure";
  readonly ksi: "pressure";
  readonly newtonMetre: "torque or energy";
  readonly joule: "torque or energy";
  readonly lbfInch: "torque or energy";
  readonly lbfFoot: "torque or energy";
  readonly watt: "power";
  readonly kilowatt: "power";
  readonly hp: "power";
  readonly metricHp: "power";
  readonly newtonPerMillimetre: "stiffness or line load";
  readonly lbfPerInch: "stiffness or line load";
  readonly deltaC: "temperature difference";
  readonly deltaF: "temperature difference";
  readonly perC: "thermal expansion";
  readonly perF: "thermal expansion";
  readonly pascalSecond: "dynamic viscosity";
  readonly millipascalSecond: "dynamic viscosity";
  readonly reyn: "dynamic viscosity";
  readonly centistokes: "kinematic viscosity";
  readonly litrePerMinute: "volume flow";
}

/** The name of a unit, as used in `quantity.in("inch")`. */
export type UnitName = keyof UnitKinds;

// Exact by definition.
const inchInMetres = 0.0254;
const poundInKilograms = 0.45359237;
const standardGravity = 9.80665;
const poundForce = poundInKilograms * standardGravity;
const psi = poundForce / inchInMetres ** 2;
const degree = Math.PI / 180;
const fahrenheitStep = 5 / 9;

/**
 * The units of the trade with their factors to SI. Each factor is exact by definition or the quotient of
 * two that are; only π and the division round (to 1 part in 10¹⁵).
 *
 * @source B. N. Taylor & A. Thompson, Guide for the Use of the International System of Units, NIST Special
 * Publication 811, 2008, Appendix B (inch 25.4 mm, pound 0.453 592 37 kg, standard gravity 9.806 65 m/s²,
 * all exact; horsepower as 550 ft·lbf/s); 1 metric horsepower = 75 kgf·m/s
 */
const units: { readonly [N in UnitName]: Unit & { readonly kind: UnitKinds[N] } } = {
  // length
  metre: { kind: "length", symbol: "m", si: 1, also: ["metres", "meter", "meters"] },
  mm: {
    kind: "length",
    symbol: "mm",
    si: 1e-3,
    also: ["millimetre", "millimetres", "millimeter", "millimeters"],
  },
  cm: { kind: "length", symbol: "cm", si: 1e-2, also: ["centimetre", "centimetres"] },
  micrometre: {
    kind: "length",
    symbol: "µm",
    si: 1e-6,
    also: ["μm", "um", "micron", "microns", "micrometres"],
  },
  inch: { kind: "length", symbol: "in", si: inchInMetres, also: ["in.", "inches", '"', "″", "”"] },
  thou: { kind: "length", symbol: "thou", si: inchInMetres / 1000, also: ["mil", "mils"] },
  foot: { kind: "length", symbol: "ft", si: 12 * inchInMetres, also: ["ft.", "feet", "'", "′", "’"] },
  // area, volume, section
  mm2: { kind: "area", symbol: "mm²", si: 1e-6, also: ["mm2", "mm^2"] },
  m2: { kind: "area", symbol: "m²", si: 1, also: ["m2", "m^2"] },
  inch2: { kind: "area", symbol: "in²", si: inchInMetres ** 2, also: ["in2", "in^2", "sq in"] },
  mm3: { kind: "volume", symbol: "mm³", si: 1e-9, also: ["mm3", "mm^3"] },
  litre: { kind: "volume", symbol: "L", si: 1e-3, also: ["l", "liter", "litres", "liters"] },
  m3: { kind: "volume", symbol: "m³", si: 1, also: ["m3", "m^3"] },
  inch3: { kind: "volume", symbol: "in³", si: inchInMetres ** 3, also: ["in3", "in^3", "cu in"] },
  mm4: { kind: "second moment of area", symbol: "mm⁴", si: 1e-12, also: ["mm4", "mm^4"] },
  inch4: { kind: "second moment of area", symbol: "in⁴", si: inchInMetres ** 4, also: ["in4", "in^4"] },
  // angle, time, motion
  radian: { kind: "angle", symbol: "rad", si: 1, also: ["radians"] },
  degree: { kind: "angle", symbol: "°", si: degree, also: ["deg", "degree", "degrees"] },
  arcMinute: { kind: "angle", symbol: "arcmin", si: degree / 60, also: [] },
  arcSecond: { kind: "angle", symbol: "arcsec", si: degree / 3600, also: [] },
  turn: { kind: "angle", symbol: "turn", si: 2 * Math.PI, also: ["turns", "rev"] },
  second: { kind: "time", symbol: "s", si: 1, also: ["sec", "seconds"] },
  minute: { kind: "time", symbol: "min", si: 60, also: ["minutes"] },
  hour: { kind: "time", symbol: "h", si: 3600, also: ["hr", "hour", "hours"] },
  metrePerSecond: { kind: "speed", symbol: "m/s", si: 1, also: [] },
  footPerMinute: { kind: "speed", symbol: "ft/min", si: (12 * inchInMetres) / 60, also: ["fpm"] },
  footPerSecond: { kind: "speed", symbol: "ft/s", si: 12 * inchInMetres, also: [] },
  metrePerSecondSquared: { kind: "acceleration", symbol: "m/s²", si: 1, also: ["m/s2", "m/s^2"] },
  radianPerSecond: { kind: "rotational speed", symbol: "rad/s", si: 1, also: [] },
  rpm: { kind: "rotational speed", symbol: "rpm", si: (2 * Math.PI) / 60, also: ["rev/min", "r/min"] },
  turnPerSecond: { kind: "rotational speed", symbol: "rev/s", si: 2 * Math.PI, also: ["rps"] },
  hertz: { kind: "frequency", symbol: "Hz", si: 1, also: ["hz"] },
  // mass
  kilogram: { kind: "mass", symbol: "kg", si: 1, also: ["kilograms"] },
  gram: { kind: "mass", symbol: "g", si: 1e-3, also: ["grams"] },
  pound: { kind: "mass", symbol: "lb", si: poundInKilograms, also: ["lbs", "lbm", "pound", "pounds"] },
  ounce: { kind: "mass", symbol: "oz", si: poundInKilograms / 16, also: ["ounces"] },
  kilogramPerCubicMetre: { kind: "density", symbol: "kg/m³", si: 1, also: ["kg/m3", "kg/m^3"] },
  poundPerCubicInch: {
    kind: "density",
    symbol: "lb/in³",
    si: poundInKilograms / inchInMetres ** 3,
    also: ["lb/in3", "lb/in^3"],
  },
  gramMillimetre: { kind: "mass unbalance", symbol: "g·mm", si: 1e-6, also: ["g mm", "gmm"] },
  ounceInch: {
    kind: "mass unbalance",
    symbol: "oz·in",
    si: (poundInKilograms / 16) * inchInMetres,
    also: ["oz in", "oz-in"],
  },
  kilogramSquareMetre: { kind: "moment of inertia", symbol: "kg·m²", si: 1, also: ["kg m2", "kg·m2"] },
  poundSquareInch: {
    kind: "moment of inertia",
    symbol: "lb·in²",
    si: poundInKilograms * inchInMetres ** 2,
    also: ["lb in2", "lb·in2"],
  },
  // force, pressure, torque, power
  newton: { kind: "force", symbol: "N", si: 1, also: ["newtons"] },
  kilonewton: { kind: "force", symbol: "kN", si: 1e3, also: [] },
  lbf: { kind: "force", symbol: "lbf", si: poundForce, also: [] },
  kgf: { kind: "force", symbol: "kgf", si: standardGravity, also: [] },
  shortTonForce: { kind: "force", symbol: "short tonf", si: 2000 * poundForce, also: ["US tonf"] },
  longTonForce: { kind: "force", symbol: "long tonf", si: 2240 * poundForce, also: ["UK tonf"] },
  pascal: { kind: "pressure", symbol: "Pa", si: 1, also: [] },
  kilopascal: { kind: "pressure", symbol: "kPa", si: 1e3, also: [] },
  megapascal: { kind: "pressure", symbol: "MPa", si: 1e6, also: ["N/mm2", "N/mm²"] },
  gigapascal: { kind: "pressure", symbol: "GPa", si: 1e9, also: [] },
  bar: { kind: "pressure", symbol: "bar", si: 1e5, also: [] },
  psi: { kind: "pressure", symbol: "psi", si: psi, also: ["lbf/in2", "lbf/in²"] },
  ksi: { kind: "pressure", symbol: "ksi", si: 1000 * psi, also: ["kpsi"] },
  newtonMetre: { kind: "torque or energy", symbol: "N·m", si: 1, also: ["Nm", "N m"] },
  joule: { kind: "torque or energy", symbol: "J", si: 1, also: [] },
  lbfInch: {
    kind: "torque or energy",
    symbol: "lbf·in",
    si: poundForce * inchInMetres,
    also: ["lbf in", "in-lbf", "lbf-in"],
  },
  lbfFoot: {
    kind: "torque or energy",
    symbol: "lbf·ft",
    si: poundForce * 12 * inchInMetres,
    also: ["lbf ft", "ft-lbf", "lbf-ft"],
  },
  watt: { kind: "power", symbol: "W", si: 1, also: [] },
  kilowatt: { kind: "power", symbol: "kW", si: 1e3, also: [] },
  hp: { kind: "power", symbol: "hp", si: 550 * 12 * inchInMetres * poundForce, also: ["HP"] },
  metricHp: { kind: "power", symbol: "metric hp", si: 75 * standardGravity, also: ["PS"] },
  newtonPerMillimetre: { kind: "stiffness or line load", symbol: "N/mm", si: 1e3, also: [] },
  lbfPerInch: { kind: "stiffness or line load", symbol: "lbf/in", si: poundForce / inchInMetres, also: [] },
  // heat and flow
  deltaC: { kind: "temperature difference", symbol: "°C (difference)", si: 1, also: ["K", "delta degC"] },
  deltaF: {
    kind: "temperature difference",
    symbol: "°F (difference)",
    si: fahrenheitStep,
    also: ["delta degF"],
  },
  perC: { kind: "thermal expansion", symbol: "1/°C", si: 1, also: ["/degC", "1/K", "per degC"] },
  perF: { kind: "thermal expansion", symbol: "1/°F", si: 1 / fahrenheitStep, also: ["/degF", "per degF"] },
  pascalSecond: { kind: "dynamic viscosity", symbol: "Pa·s", si: 1, also: ["Pa s"] },
  millipascalSecond: { kind: "dynamic viscosity", symbol: "mPa·s", si: 1e-3, also: ["cP", "mPa s"] },
  reyn: { kind: "dynamic viscosity", symbol: "reyn", si: psi, also: ["psi·s"] },
  centistokes: { kind: "kinematic viscosity", symbol: "mm²/s", si: 1e-6, also: ["cSt", "mm2/s"] },
  litrePerMinute: { kind: "volume flow", symbol: "L/min", si: 1e-3 / 60, also: ["l/min"] },
};

/** The names of the units that measure one kind of quantity. */
export type UnitOf<K extends string> = {
  [N in UnitName]: UnitKinds[N] extends K ? N : never;
}[UnitName];

/** The unit of that name, as plain data. */
export function unitNamed(name: UnitName): Unit {
  return units[name];
}

/** The names of all units of one kind, in the order of the table. */
export function unitsOf(kind: string): UnitName[] {
  return (Object.keys(units) as UnitName[]).filter((name) => units[name].kind === kind);
}

const bySpelling = new Map<string, UnitName>();
for (const name of Object.keys(units) as UnitName[]) {
  const unit: Unit = units[name];
  for (const spelling of [name, unit.symbol, ...unit.also]) bySpelling.set(spelling, name);
}

/**
 * The unit a spelling stands for, or undefined: `in`, `inch`, `"`, `thou`, `mm`, `µm`, `lbf·ft`, …
 * Capitals count where two units differ only by them; a unit in an unexpected case is not guessed.
 *
 * @example unitSpelled("in.") // "inch"
 */
export function unitSpelled(spelling: string): UnitName | undefined {
  return bySpelling.get(spelling.trim());
}
