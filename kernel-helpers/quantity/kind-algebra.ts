import type { Exponents, KindName, kinds } from "./kinds.js";

/**
 * The kind of a product, e.g. `Product<"force", "length">` is `"torque or energy"`. A product without a
 * name of its own is spelled out by its exponents.
 */
export type Product<A extends string, B extends string> = NameOf<Settle<Add<ExponentsOf<A>, ExponentsOf<B>>>>;

/** The kind of a quotient, e.g. `Quotient<"force", "area">` is `"pressure"`. */
export type Quotient<A extends string, B extends string> = NameOf<
  Settle<Add<ExponentsOf<A>, Negate<ExponentsOf<B>>>>
>;

/** The kind of a square root, e.g. `SquareRoot<"area">` is `"length"`; `never` where an exponent is odd. */
export type SquareRoot<A extends string> = NameOf<Halve<ExponentsOf<A>>>;

/** A product without a name of its own, spelled out by its exponents. */
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

// Sums of small whole numbers by look-up: row a, column b, from -6 to 6; what leaves that range is `never`.
// Arithmetic on tuple lengths would be too deep for the compiler.
type ColumnOfSums = {
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
  ? `${B}` extends keyof ColumnOfSums
    ? Sums[`${A}`][ColumnOfSums[`${B}`]]
    : never
  : never;
type Minuses = [6, 5, 4, 3, 2, 1, 0, -1, -2, -3, -4, -5, -6];
type Minus<A extends number> = `${A}` extends keyof ColumnOfSums ? Minuses[ColumnOfSums[`${A}`]] : never;
type Halves = { "-6": -3; "-4": -2; "-2": -1; "0": 0; "2": 1; "4": 2; "6": 3 };
type Half<A extends number> = `${A}` extends keyof Halves ? Halves[`${A}`] : never;
