import { superscript } from "./format-number.js";

/**
 * The kinds of quantity the trade meets, by name, each with its exponents of
 * [length, mass, time, temperature, angle] in SI base units and the radian.
 *
 * The angle is carried only where turning itself is meant (angle, rotational speed, angular
 * acceleration). In every other product the radian counts as 1, as in SI, so that
 * torque × rotational speed is a power, while a rotational speed is still no frequency.
 *
 * @example kinds.force // [1, 1, -2, 0, 0]
 * @source BIPM, The International System of Units (SI Brochure), 9th edition, 2019, sections 2.3.3 and
 * 2.3.4, tables 4 and 5 (the radian as a name for the number one)
 */
export const kinds = {
  number: [0, 0, 0, 0, 0],
  length: [1, 0, 0, 0, 0],
  area: [2, 0, 0, 0, 0],
  volume: [3, 0, 0, 0, 0],
  "second moment of area": [4, 0, 0, 0, 0],
  "inverse length": [-1, 0, 0, 0, 0],
  mass: [0, 1, 0, 0, 0],
  time: [0, 0, 1, 0, 0],
  "temperature difference": [0, 0, 0, 1, 0],
  angle: [0, 0, 0, 0, 1],
  "rotational speed": [0, 0, -1, 0, 1],
  "angular acceleration": [0, 0, -2, 0, 1],
  frequency: [0, 0, -1, 0, 0],
  speed: [1, 0, -1, 0, 0],
  acceleration: [1, 0, -2, 0, 0],
  density: [-3, 1, 0, 0, 0],
  "mass unbalance": [1, 1, 0, 0, 0],
  "moment of inertia": [2, 1, 0, 0, 0],
  force: [1, 1, -2, 0, 0],
  pressure: [-1, 1, -2, 0, 0],
  "torque or energy": [2, 1, -2, 0, 0],
  power: [2, 1, -3, 0, 0],
  "stiffness or line load": [0, 1, -2, 0, 0],
  "bending stiffness": [3, 1, -2, 0, 0],
  "dynamic viscosity": [-1, 1, -1, 0, 0],
  "kinematic viscosity": [2, 0, -1, 0, 0],
  "volume flow": [3, 0, -1, 0, 0],
  "mass flow": [0, 1, -1, 0, 0],
  "thermal expansion": [0, 0, 0, -1, 0],
  "heat capacity": [2, 1, -2, -1, 0],
  "specific heat": [2, 0, -2, -1, 0],
  "specific energy": [2, 0, -2, 0, 0],
  "thermal conductivity": [1, 1, -3, -1, 0],
  "heat transfer coefficient": [0, 1, -3, -1, 0],
} as const;

/** Exponents of [length, mass, time, temperature, angle]. */
export type Exponents = readonly [number, number, number, number, number];

/** The name of a kind of quantity, as it stands in error messages: `"length"`, `"force"`, … */
export type KindName = keyof typeof kinds;

const exponentsByName: ReadonlyMap<string, Exponents> = new Map(Object.entries(kinds));
const nameByExponents: ReadonlyMap<string, string> = new Map(
  Object.entries(kinds).map(([name, exponents]) => [exponents.join(), name]),
);

/**
 * The exponents of a kind of quantity, by its name or as spelled out for a kind without one.
 *
 * @param kind  e.g. "pressure"
 * @returns the exponents of [length, mass, time, temperature, angle] [-]
 * @throws RangeError  the kind is not known
 * @example exponentsOf("pressure") // [-1, 1, -2, 0, 0]
 */
export function exponentsOf(kind: string): Exponents {
  const known = exponentsByName.get(kind);
  if (known !== undefined) return known;
  const spelled =
    /^unnamed \(length (-?\d+), mass (-?\d+), time (-?\d+), temperature (-?\d+), angle (-?\d+)\)$/.exec(kind);
  if (spelled === null)
    throw new RangeError(`exponentsOf: kind must be a known kind of quantity, got ${kind}`);
  const [length, mass, time, temperature, angle] = spelled.slice(1).map(Number);
  return [length!, mass!, time!, temperature!, angle!];
}

/**
 * The kind of quantity that has these exponents. The radian is dropped where turning is not meant.
 *
 * @param exponents  of [length, mass, time, temperature, angle], whole numbers from -6 to 6 [-]
 * @returns its name, or the exponents spelled out where it has none
 * @throws RangeError  an exponent is not whole or beyond ±6
 * @example kindOf([2, 1, -3, 0, 1]) // "power", of a torque times a rotational speed
 */
export function kindOf(exponents: Exponents): string {
  if (exponents.some((e) => !Number.isInteger(e) || Math.abs(e) > 6))
    throw new RangeError(`kindOf: exponents must be whole numbers from -6 to 6, got ${exponents.join(", ")}`);
  const [length, mass, time, temperature, angle] = exponents;
  const turning = angle === 1 && length === 0 && mass === 0 && temperature === 0 && time <= 0 && time >= -2;
  const kept = turning ? 1 : 0;
  return (
    nameByExponents.get([length, mass, time, temperature, kept].join()) ??
    `unnamed (length ${length}, mass ${mass}, time ${time}, temperature ${temperature}, angle ${kept})`
  );
}

/**
 * The SI unit of a kind, spelled in base units.
 *
 * @example siSymbol("pressure") // "m⁻¹·kg·s⁻²"
 * @throws RangeError  the kind is not known
 */
export function siSymbol(kind: string): string {
  const exponents = exponentsOf(kind);
  return ["m", "kg", "s", "K", "rad"]
    .map((symbol, i) => [symbol, exponents[i]!] as const)
    .filter(([, exponent]) => exponent !== 0)
    .map(([symbol, exponent]) => (exponent === 1 ? symbol : symbol + superscript(exponent)))
    .join("·");
}

/**
 * The kind with its article, for messages.
 *
 * @example withArticle("angle") // "an angle"
 */
export function withArticle(kind: string): string {
  return /^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`;
}
