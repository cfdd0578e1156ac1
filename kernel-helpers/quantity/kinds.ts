/**
 * The kinds of quantity the trade meets, by name, each with its exponents of
 * [length, mass, time, temperature, angle] in SI base units and the radian.
 *
 * The angle is carried only where turning itself is meant (angle, rotational speed, angular
 * acceleration). In every other product the radian counts as 1, as in SI, so that
 * torque × rotational speed is a power, while a rotational speed is still no frequency.
 *
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

/**
 * The kind of a product, e.g. `Product<"force", "length">` is `"torque or energy"`. A product without a
 * name of its own is spelled out by its exponents.
 */
export type Product<A extends string, B extends string> = NameOf<Settle<Add<ExponentsOf<A>, ExponentsOf<B>>>>;

/** The kind of a quotient, e.g. `Quotient<"force", "area">` is `"pressure"`. */
export type Quotient<A extends string, B extends string> = NameOf<
  Settle<Add<ExponentsOf<A>, Negate<ExponentsOf<B>>>>
>;

/** The kind of a square root, where the exponents are even. */
export type SquareRoot<A extends string> = NameOf<Halve<ExponentsOf<A>>>;

/** A product without a name of its own. */
export type Unnamed<
  L extends number,
  M extends number,
  T extends number,
  K extends number,
  A extends number,
> = `unnamed (length ${L}, mass ${M}, time ${T}, temperature ${K}, angle ${A})`;

type ExponentsOf<N extends string> = N extends KindName
  ? (typeof kinds)[N]
  : N extends Unnamed<
        infer L extends number,
        infer M extends number,
        infer T extends number,
        infer K extends number,
        infer A extends number
      >
    ? readonly [L, M, T, K, A]
    : never;

type NameByExponents = {
  [N in KindName as `${(typeof kinds)[N][0]},${(typeof kinds)[N][1]},${(typeof kinds)[N][2]},${(typeof kinds)[N][3]},${(typeof kinds)[N][4]}`]: N;
};

type NameOf<E> = E extends readonly [
  infer L extends number,
  infer M extends number,
  infer T extends number,
  infer K extends number,
  infer A extends number,
]
  ? `${L},${M},${T},${K},${A}` extends keyof NameByExponents
    ? NameByExponents[`${L},${M},${T},${K},${A}`]
    : Unnamed<L, M, T, K, A>
  : never;

type Add<A, B> = A extends Exponents
  ? B extends Exponents
    ? readonly [Sum<A[0], B[0]>, Sum<A[1], B[1]>, Sum<A[2], B[2]>, Sum<A[3], B[3]>, Sum<A[4], B[4]>]
    : never
  : never;

type Negate<A> = A extends Exponents
  ? readonly [Minus<A[0]>, Minus<A[1]>, Minus<A[2]>, Minus<A[3]>, Minus<A[4]>]
  : never;

type Halve<A> = A extends Exponents
  ? readonly [Half<A[0]>, Half<A[1]>, Half<A[2]>, Half<A[3]>, Half<A[4]>]
  : never;

/** Keeps the radian only where turning is meant: angle to the first power over some power of time. */
type Settle<E> = E extends readonly [0, 0, 0 | -1 | -2, 0, 1]
  ? E
  : E extends readonly [
        infer L extends number,
        infer M extends number,
        infer T extends number,
        infer K extends number,
        number,
      ]
    ? readonly [L, M, T, K, 0]
    : never;

// Sums of small whole numbers by look-up: row a, column b. Arithmetic on tuple lengths is too deep for the compiler.
type Column = {
  "-6": 0;
  "-5": 1;
  "-4": 2;
  "-3": 3;
  "-2": 4;
  "-1": 5;
  "0": 6;
  "1": 7;
  "2": 8;
  "3": 9;
  "4": 10;
  "5": 11;
  "6": 12;
};
type Sums = {
  "-6": [never, never, never, never, never, never, -6, -5, -4, -3, -2, -1, 0];
  "-5": [never, never, never, never, never, -6, -5, -4, -3, -2, -1, 0, 1];
  "-4": [never, never, never, never, -6, -5, -4, -3, -2, -1, 0, 1, 2];
  "-3": [never, never, never, -6, -5, -4, -3, -2, -1, 0, 1, 2, 3];
  "-2": [never, never, -6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4];
  "-1": [never, -6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5];
  "0": [-6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6];
  "1": [-5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6, never];
  "2": [-4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6, never, never];
  "3": [-3, -2, -1, 0, 1, 2, 3, 4, 5, 6, never, never, never];
  "4": [-2, -1, 0, 1, 2, 3, 4, 5, 6, never, never, never, never];
  "5": [-1, 0, 1, 2, 3, 4, 5, 6, never, never, never, never, never];
  "6": [0, 1, 2, 3, 4, 5, 6, never, never, never, never, never, never];
};
type Sum<A extends number, B extends number> = `${A}` extends keyof Sums
  ? `${B}` extends keyof Column
    ? Sums[`${A}`][Column[`${B}`]]
    : never
  : never;
type Minuses = [6, 5, 4, 3, 2, 1, 0, -1, -2, -3, -4, -5, -6];
type Minus<A extends number> = `${A}` extends keyof Column ? Minuses[Column[`${A}`]] : never;
type Halves = { "-6": -3; "-4": -2; "-2": -1; "0": 0; "2": 1; "4": 2; "6": 3 };
type Half<A extends number> = `${A}` extends keyof Halves ? Halves[`${A}`] : never;

/** The exponents of a kind, by name or spelled out. @throws RangeError the name is not known */
export function exponentsOf(kind: string): Exponents {
  const known = (kinds as Readonly<Record<string, Exponents>>)[kind];
  if (known !== undefined) return known;
  const spelled =
    /^unnamed \(length (-?\d+), mass (-?\d+), time (-?\d+), temperature (-?\d+), angle (-?\d+)\)$/.exec(kind);
  if (spelled === null)
    throw new RangeError(`exponentsOf: kind must be a known kind of quantity, got ${kind}`);
  return spelled.slice(1).map(Number) as unknown as Exponents;
}

const nameByExponents = new Map(Object.entries(kinds).map(([name, exponents]) => [exponents.join(), name]));

/** The name of a kind from its exponents; the radian is dropped where turning is not meant. */
export function kindOf(exponents: Exponents): string {
  const [length, mass, time, temperature, angle] = exponents;
  if (exponents.some((e) => !Number.isInteger(e) || Math.abs(e) > 6))
    throw new RangeError(`kindOf: exponents must be whole numbers from -6 to 6, got ${exponents.join(", ")}`);
  const turning = angle === 1 && length === 0 && mass === 0 && temperature === 0 && time <= 0 && time >= -2;
  const settled: Exponents = [length, mass, time, temperature, turning ? 1 : 0];
  const [l, m, t, k, a] = settled;
  return (
    nameByExponents.get(settled.join()) ??
    `unnamed (length ${l}, mass ${m}, time ${t}, temperature ${k}, angle ${a})`
  );
}
