import { type AnyQuantity, isQuantity, type Measured, type Quantity } from "../quantity/index.js";
import { requireFinite } from "./check.js";
import { coverageFactor } from "./coverage-factor.js";
import { asMeasured, type Distribution, distributionOf, isDistribution } from "./monte-carlo-distribution.js";
import { correlateColumns, type Filler, fillerOf } from "./monte-carlo-draw.js";
import { type Recording, recordingOf } from "./monte-carlo-recording.js";
import type { Histogram, MonteCarlo, MonteCarloOptions } from "./monte-carlo-types.js";
import { verdictOf } from "./monte-carlo-verdict.js";
import { type RandomGenerator, randomGenerator } from "./random-generator.js";
import { type Interval, shortestIntervalOf } from "./shortest-interval.js";
import { correlated } from "./uncertain/correlated.js";
import { type Correlation, choleskyFactor, correlationMatrix } from "./uncertain/correlation.js";
import { alike, dimensionOf, isPlain, type Plain, siOf } from "./uncertain/plain-value.js";
import { type PlainInputs, propagate } from "./uncertain/propagate.js";

/** What a simulated function may be given: something uncertain, or an exact value. */
export type MonteCarloInput = Measured<Plain> | Distribution<Plain> | Plain;

/** The value that a simulation gives, of the kind that the function gives. */
export type Simulated<R> = R extends number
  ? number
  : R extends Quantity<infer K>
    ? Quantity<K>
    : AnyQuantity;

/** Draws are made, and the function evaluated, in blocks of so many. */
const blockSize = 4096;

/**
 * Simulates a function of uncertain inputs: draws each input again and again, and looks where the results fall.
 * Compares with linear propagation and says whether that will do.
 *
 * Valid when: the inputs are independent but for the correlations given (normal inputs only), and f is a
 * function: the same for the same inputs. The object handed to f is used again in the next draw; do not keep it.
 * A model of nothing but the arithmetic of quantities is called for the first draws alone: its operations are then done
 * for thousands of draws at once, which gives the same numbers.
 * A measured value with finite degrees of freedom is drawn from a t distribution, whose standard deviation is
 * larger than its standard uncertainty: with few degrees of freedom the two ways differ for that alone.
 *
 * @param f       takes an object of plain values by name
 * @param inputs  measured values, distributions and exact values by name, at least one of them uncertain
 * @param options.draws  1000 to 10 000 000, default 100 000; for a 95 % interval to two digits take 1 000 000 [-]
 * @param options.seed   whole number from 0 to 2⁵³ − 1 [-]
 * @param options.coverage  share covered by the intervals, between 0 and 1, default 0.95 [-]
 * @param options.correlations  pairs of names and correlation coefficients, −1 to 1 [-]
 * @param options.digits  digits of the uncertainty that matter for the verdict, 1 or 2 (default) [-]
 * @returns estimate, standard uncertainty, shortest and symmetric interval, histogram, comparison
 * @throws TypeError   an input is of none of these forms, or f does not give values of one kind
 * @throws RangeError  an option is out of its range, nothing is uncertain, f gives no finite number in a draw, or one value in all, or
 * has a kink at the estimates, or an input that is correlated is not normal
 * @example
 * const inputs = { side: rectangularAbout(0, 1) };
 * monteCarlo((x) => x.side ** 2, inputs, { seed: 1, draws: 1000 }).linear.agrees // "no": it is no straight line
 * @source JCGM 101:2008, clauses 7 and 8
 */
export function monteCarlo<
  I extends Readonly<Record<string, MonteCarloInput>>,
  R extends AnyQuantity | number,
>(f: (inputs: PlainInputs<I>) => R, inputs: I, options: MonteCarloOptions): MonteCarlo<Simulated<R>> {
  type V = Simulated<R>;
  const { draws = 100_000, seed, coverage = 0.95, correlations = [], digits = 2 } = options;
  if (!Number.isInteger(draws) || draws < 1000 || draws > 10_000_000)
    throw new RangeError(`monteCarlo: draws must be a whole number from 1000 to 10000000, got ${draws}`);
  if (digits !== 1 && digits !== 2) throw new RangeError(`monteCarlo: digits must be 1 or 2, got ${digits}`);
  const distributions = distributionsOf(inputs);
  const random = randomGenerator(seed);
  const fillers = correlatedFillers(distributions, correlations, random);
  const linear = linearly(f, inputs, correlations);
  const pattern = linear.value as Plain;
  const values = evaluated(f as (plain: never) => unknown, inputs, fillers, draws, dimensionOf(pattern));

  const summary = summaryOf(values);
  const { mean, standardDeviation } = summary;
  if (standardDeviation === 0)
    throw new RangeError(
      `monteCarlo: the results must differ from draw to draw, got ${alike(pattern, mean)} in all ${draws}; give an input that the function uses a standard uncertainty above 0`,
    );
  const intervals = shortestIntervalOf("monteCarlo", values, coverage);
  const counted = histogramOf(values, summary);
  const u = siOf(linear.standardUncertainty as Plain);
  const expanded = coverageFactor(coverage, linear.degreesOfFreedom) * u;
  const value = siOf(pattern);
  const shown = (si: number): V => alike(pattern, si) as V;
  const between = ({ low, high }: Interval): { readonly low: V; readonly high: V } =>
    Object.freeze({ low: shown(low), high: shown(high) });
  return Object.freeze({
    kind: "monte carlo",
    draws,
    seed,
    coverage,
    estimate: shown(mean),
    standardUncertainty: shown(standardDeviation),
    shortest: between(intervals.shortest),
    symmetric: between(intervals.symmetric),
    histogram: Object.freeze({ from: shown(counted.from), to: shown(counted.to), counts: counted.counts }),
    linear: Object.freeze({
      value: shown(value),
      standardUncertainty: shown(u),
      degreesOfFreedom: linear.degreesOfFreedom,
      low: shown(value - expanded),
      high: shown(value + expanded),
      ...verdictOf(
        { value, expanded },
        { intervals, standardUncertainty: standardDeviation },
        digits,
        shown(value) as Plain as V & Plain,
      ),
    }),
  });
}

/** The distribution of each uncertain input, by name. */
function distributionsOf(
  inputs: Readonly<Record<string, MonteCarloInput>>,
): ReadonlyMap<string, Distribution<Plain>> {
  const found = new Map<string, Distribution<Plain>>();
  for (const [name, input] of Object.entries(inputs)) {
    if (isPlain(input)) continue;
    if (isDistribution(input)) {
      requireUncertainty(name, input.centre, input.width);
      found.set(name, input);
    } else if ((input as { kind?: unknown } | undefined)?.kind === "measured") {
      requireUncertainty(name, input.value, input.standardUncertainty);
      found.set(name, distributionOf(input));
    } else
      throw new TypeError(
        `monteCarlo: ${name} must be a measured value, a distribution, a quantity or a finite number, got ${String(input)}`,
      );
  }
  if (found.size === 0)
    throw new RangeError(
      `monteCarlo: at least one input must be uncertain, got only exact ones: ${Object.keys(inputs).join(", ")}`,
    );
  return found;
}

/** Plain objects may have come past the functions that check them. */
function requireUncertainty(name: string, value: Plain, u: Plain): void {
  requireFinite("monteCarlo", name, siOf(value));
  if (!(siOf(u) >= 0 && siOf(u) < Number.POSITIVE_INFINITY))
    throw new RangeError(`monteCarlo: ${name} must have an uncertainty of 0 or more and finite, got ${u}`);
}

function tiedNames(correlations: readonly Correlation[]): string[] {
  const names = new Set<string>();
  for (const [a, b] of correlations) names.add(a).add(b);
  return [...names];
}

/** What fills the columns of a block, one column an uncertain input. */
interface Fillers {
  readonly names: readonly string[];
  readonly fill: (columns: readonly Float64Array[]) => void;
}

function correlatedFillers(
  distributions: ReadonlyMap<string, Distribution<Plain>>,
  correlations: readonly Correlation[],
  random: RandomGenerator,
): Fillers {
  const names = [...distributions.keys()];
  const tied = tiedNames(correlations);
  const matrix = correlationMatrix("monteCarlo", names, correlations);
  for (const name of tied)
    if (distributions.get(name)!.shape !== "normal")
      throw new RangeError(
        `monteCarlo: inputs that are correlated must be normal, got ${name}, which is ${distributions.get(name)!.shape}`,
      );
  const places = tied.map((name) => names.indexOf(name));
  const factor = choleskyFactor(
    "monteCarlo",
    tied,
    places.map((i) => places.map((j) => matrix[i]![j]!)),
  );
  const standard: Distribution<Plain> = { kind: "distribution", shape: "normal", centre: 0, width: 1 };
  const fillers: readonly Filler[] = names.map((name) =>
    fillerOf(tied.includes(name) ? standard : distributions.get(name)!, random),
  );
  return {
    names,
    fill: (columns) => {
      for (const [i, filler] of fillers.entries()) filler(columns[i]!);
      if (tied.length === 0) return;
      const group = places.map((i) => columns[i]!);
      correlateColumns(group, factor);
      for (const [i, column] of group.entries()) {
        const { centre, width } = distributions.get(tied[i]!)!;
        for (let row = 0; row < column.length; row++) column[row] = siOf(centre) + siOf(width) * column[row]!;
      }
    },
  };
}

/** The function at every draw, in SI units. */
function evaluated(
  f: (plain: never) => unknown,
  inputs: Readonly<Record<string, MonteCarloInput>>,
  { names, fill }: Fillers,
  draws: number,
  dimension: string,
): Float64Array {
  const values = new Float64Array(draws);
  const block = names.map(() => new Float64Array(blockSize));
  const place: Place = { row: 0, columns: block, centres: names.map((name) => centreOf(inputs[name]!)) };
  const plain = viewOf(inputs, names, place);
  let recording = recordingFor(f, inputs, names, dimension);
  for (let start = 0; start < draws; start += blockSize) {
    const rows = Math.min(blockSize, draws - start);
    fill(rows === blockSize ? block : block.map((column) => column.subarray(0, rows)));
    const target = values.subarray(start, start + rows);
    // The first block is evaluated in both ways: a recording that gives anything else than the function is dropped.
    const recorded = recording?.evaluate(block, target) === true;
    if (recorded && start > 0) continue;
    const inColumns = recorded ? target.slice() : null;
    if (dimension === "number") evaluateNumbers(f, plain, place, target);
    else evaluateQuantities(f, plain, place, target, dimension);
    if (inColumns?.some((value, row) => value !== target[row])) recording = null;
  }
  return values;
}

/** The operations of the function, where they tell all of it and give the kind that it gives. */
function recordingFor(
  f: (plain: never) => unknown,
  inputs: Readonly<Record<string, MonteCarloInput>>,
  names: readonly string[],
  dimension: string,
): Recording | null {
  const centres = Object.entries(inputs).map(([name, input]) => [name, centreOf(input)] as const);
  const recording = recordingOf(f, names, Object.fromEntries(centres));
  return recording?.dimension === dimension ? recording : null;
}

function evaluateNumbers(
  f: (plain: never) => unknown,
  plain: object,
  place: Place,
  target: Float64Array,
): void {
  for (let row = 0; row < target.length; row++) {
    place.row = row;
    const result = f(plain as never);
    if (typeof result !== "number") throw notOfKind(result, "number");
    if (!Number.isFinite(result)) throw notFinite(result, plain);
    target[row] = result;
  }
}

function evaluateQuantities(
  f: (plain: never) => unknown,
  plain: object,
  place: Place,
  target: Float64Array,
  dimension: string,
): void {
  for (let row = 0; row < target.length; row++) {
    place.row = row;
    const result = f(plain as never);
    if (!isQuantity(result) || result.dimension !== dimension) throw notOfKind(result, dimension);
    if (!Number.isFinite(result.si)) throw notFinite(result.si, plain);
    target[row] = result.si;
  }
}

/** Where the simulation stands, and what was drawn. */
interface Place {
  row: number;
  readonly columns: readonly Float64Array[];
  readonly centres: readonly Plain[];
}

const placeOf: unique symbol = Symbol("place");
type View = { readonly [placeOf]: Place };

/** The object handed to the function: each input as drawn, read from the row where the simulation stands. */
function viewOf(
  inputs: Readonly<Record<string, MonteCarloInput>>,
  names: readonly string[],
  place: Place,
): object {
  const view = Object.defineProperty({}, placeOf, { value: place });
  for (const [name, input] of Object.entries(inputs)) {
    const column = names.indexOf(name);
    const centre = centreOf(input);
    if (column === -1) Object.defineProperty(view, name, { enumerable: true, value: centre });
    else Object.defineProperty(view, name, { enumerable: true, get: readerOf(column, typeof centre) });
  }
  return Object.freeze(view);
}

/** Readers of a column, made once: objects with the same readers are alike to the engine, and so quick to read. */
const readers = new Map<string, (this: View) => Plain>();

function readerOf(column: number, type: string): (this: View) => Plain {
  const key = `${type} ${column}`;
  const known = readers.get(key);
  if (known !== undefined) return known;
  const number = function (this: View): Plain {
    const { row, columns } = this[placeOf];
    return columns[column]![row]!;
  };
  const quantity = function (this: View): Plain {
    const { row, columns, centres } = this[placeOf];
    return alike(centres[column]!, columns[column]![row]!);
  };
  const made = type === "number" ? number : quantity;
  readers.set(key, made);
  return made;
}

function notFinite(value: number, plain: object): RangeError {
  const at = Object.entries(plain).map(([name, input]) => `${name} = ${input}`);
  return new RangeError(
    `monteCarlo: the function must give a finite number in every draw, got ${value} for ${at.join(", ")}; give inputs whose draws stay where the function is defined (limits, as rectangularAbout, bound them), or a function that is`,
  );
}

function centreOf(input: MonteCarloInput): Plain {
  if (isPlain(input)) return input;
  return input.kind === "measured" ? input.value : input.centre;
}

function notOfKind(result: unknown, dimension: string): TypeError {
  return new TypeError(
    `monteCarlo: the function must give values of one kind (${dimension}), got ${String(result)}`,
  );
}

/** Linear propagation of the same inputs with the same correlations. */
function linearly<I extends Readonly<Record<string, MonteCarloInput>>, R extends AnyQuantity | number>(
  f: (inputs: PlainInputs<I>) => R,
  inputs: I,
  correlations: readonly Correlation[],
): { readonly value: unknown; readonly standardUncertainty: unknown; readonly degreesOfFreedom: number } {
  const tied = tiedNames(correlations);
  const measuredOnes = Object.fromEntries(
    Object.entries(inputs)
      .filter(([name]) => tied.includes(name))
      .map(([name, input]) => [name, isDistribution(input) ? asMeasured(input) : (input as Measured<Plain>)]),
  );
  return propagate(f as (plain: object) => R, { ...inputs, ...correlated(measuredOnes, correlations) });
}

interface Summary {
  readonly mean: number;
  readonly standardDeviation: number;
  readonly lowest: number;
  readonly highest: number;
}

/** In two passes, so that a small spread about a large mean keeps its digits. */
function summaryOf(values: Float64Array): Summary {
  const first = values[0]!;
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]! - first;
  const mean = first + sum / values.length;
  let squares = 0;
  let [lowest, highest] = [first, first];
  for (let i = 0; i < values.length; i++) {
    const value = values[i]!;
    squares += (value - mean) * (value - mean);
    if (value < lowest) lowest = value;
    else if (value > highest) highest = value;
  }
  return { mean, standardDeviation: Math.sqrt(squares / (values.length - 1)), lowest, highest };
}

const steps = 60;

/** Counts within four standard deviations of the mean, or as far as the values reach. */
function histogramOf(values: Float64Array, of: Summary): Histogram<number> {
  const from = Math.max(of.lowest, of.mean - 4 * of.standardDeviation);
  const to = Math.min(of.highest, of.mean + 4 * of.standardDeviation);
  const counts = new Uint32Array(steps);
  const perUnit = to > from ? steps / (to - from) : 0;
  for (let i = 0; i < values.length; i++) {
    const step = Math.floor((values[i]! - from) * perUnit);
    if (step >= 0 && values[i]! <= to) counts[Math.min(step, steps - 1)]!++;
  }
  return { from, to, counts: Object.freeze([...counts]) };
}
