import {
  type AnyQuantity,
  isQuantity,
  type KindName,
  type Measured,
  measured,
  quantityFromSi,
} from "../../quantity/index.js";
import { randomGenerator } from "../../statistics/index.js";
import type {
  Flip,
  LimitKept,
  OptionsWeighed,
  OptionWeighed,
  PlainNumbers,
  WeighedLimit,
  WeighOptionsInput,
  WorthMeasuring,
} from "./weigh-types.js";

const block = 500;
/** An input is moved by up to so many standard uncertainties to see what it flips. */
const farthest = 10;
const scanSteps = 200;

/**
 * Holds every option against every limit in many shafts drawn from what is known, and tells what the choice hangs on.
 *
 * 1. Each draw takes every uncertain input anew (normal) and asks every limit for its margin; all options see the same
 *    draws. Chance = share of draws with margin ≥ 0; of the option: with all its margins ≥ 0.
 * 2. What would flip the choice: each input alone is moved from its estimate, the others held, to both sides up to 10 of
 *    its standard uncertainties, until a margin of the chosen option changes sign.
 * 3. What to measure: share of the variance of the weakest limit's margin, r² of margin and input over the draws; were
 *    the input known to be as estimated, the chance is the share of draws that keep the limit once the straight part of
 *    what the input does to the margin is taken away.
 * 4. Each assumption is put in place of what is taken for true, and everything drawn again with the same seed, a quarter
 *    of the draws.
 *
 * Valid when: inputs are independent and about normal; what is shared must be an input of its own. r² sees the straight
 * part of a dependence. A chance has a standard deviation of √(P(1 − P)/draws): 0.2 % at 95 % of 10 000.
 *
 * @param input.inputs   by name: measured ones are drawn, plain ones held [SI inside]
 * @param input.options  at least one, the one to prefer first
 * @param input.limits   at least one; margins in SI
 * @param input.chosen   one of the options
 * @param input.wanted   0.5 to 0.9999, default 0.95 [-]
 * @param input.draws    1000 to 1 000 000, default 10 000 [-]
 * @param input.seed     the same gives the same to the last digit [-]
 * @returns margins in their own units, chances [-], flips in standard uncertainties [-]
 * @throws RangeError  nothing to weigh, a number out of its range, an option not among them, a margin that is no number
 * @example
 * const limits = [{ name: "strength", kind: "number", margin: ({ load }, option) => (option === "new" ? 2 : 1) - load }];
 * const weighed = weighOptions({ inputs: { load: measured(0.8, 0.1) }, options: ["old", "new"], limits: limits, seed: 1 });
 * weighed.flips[0].moves // 2
 * @source JCGM 101:2008 (GUM, supplement 1), 5.9 to 7.7
 */
export function weighOptions(input: WeighOptionsInput): OptionsWeighed {
  const { options, limits, wanted = 0.95, draws = 10_000, seed, assumptions = [] } = input;
  checkInput(input, wanted, draws);
  const given = Object.entries(input.inputs).map(([name, value]) => plainInput(name, value));
  const estimates = Object.fromEntries(given.map(({ name, si }) => [name, si]));
  const drawn = simulate(input, given, estimates, draws, true);
  const fewer = Math.max(1000, Math.round(draws / 4));
  const weighed = options.map((name, o) => weighedOption(input, estimates, drawn, name, o));
  const stands = weighed.find(({ chance }) => chance >= wanted)?.name;
  const chosen = input.chosen ?? stands ?? weighed.reduce((a, b) => (b.chance > a.chance ? b : a)).name;
  const ofChosen = weighed[options.indexOf(chosen)]!;
  return Object.freeze<OptionsWeighed>({
    kind: "options weighed",
    draws,
    seed,
    wanted,
    options: Object.freeze(weighed),
    stands,
    chosen,
    flips: Object.freeze(
      given
        .filter(({ u }) => u > 0)
        .map((one) => flipOf(one, estimates, limits, chosen))
        .sort((a, b) => Math.abs(a.moves ?? 1e9) - Math.abs(b.moves ?? 1e9)),
    ),
    measure: Object.freeze(worthMeasuring(given, drawn, ofChosen, options.indexOf(chosen), limits)),
    assumptions: Object.freeze(
      assumptions.map(({ name, inputs }) => {
        for (const key of Object.keys(inputs))
          if (!(key in estimates))
            throw new RangeError(
              `weighOptions: the assumption "${name}" changes "${key}", which is none of the inputs (${Object.keys(estimates).join(", ")})`,
            );
        const moved = { ...estimates, ...inputs };
        const again = simulate(input, given, moved, fewer, false);
        const others = options.map((option, o) => {
          const { chance, weakest } = weighedOption(input, moved, again, option, o);
          return Object.freeze({ name: option, chance, weakest });
        });
        const then = others.find(({ chance }) => chance >= wanted)?.name;
        return Object.freeze({ name, options: Object.freeze(others), flips: then !== stands });
      }),
    ),
  });
}

interface PlainInput {
  readonly name: string;
  readonly si: number;
  readonly u: number;
  /** Of the same kind and unit as the input. */
  readonly like: (si: number) => AnyQuantity | number;
}

function plainInput(name: string, value: Measured<AnyQuantity | number> | AnyQuantity | number): PlainInput {
  const [of, u] =
    typeof value === "object" && "kind" in value && value.kind === "measured"
      ? [value.value, Number(value.standardUncertainty.valueOf())]
      : [value as AnyQuantity | number, 0];
  const si = Number(of.valueOf());
  if (!Number.isFinite(si))
    throw new RangeError(`weighOptions: the input "${name}" must be a finite value, got ${String(of)}`);
  const like = (number: number): AnyQuantity | number =>
    isQuantity(of) ? (quantityFromSi(of.dimension, number, of.writtenIn as never) as AnyQuantity) : number;
  return { name, si, u, like };
}

function checkInput(
  { options, limits, chosen, seed }: WeighOptionsInput,
  wanted: number,
  draws: number,
): void {
  const where = "weighOptions";
  if (options.length === 0 || new Set(options).size < options.length)
    throw new RangeError(
      `${where}: at least one option is needed, each with a name of its own, got ${options.join(", ") || "none"}`,
    );
  if (limits.length === 0)
    throw new RangeError(`${where}: at least one limit is needed: without one every option is as good`);
  if (chosen !== undefined && !options.includes(chosen))
    throw new RangeError(`${where}: chosen must be one of ${options.join(", ")}, got ${chosen}`);
  if (!(wanted >= 0.5 && wanted <= 0.9999))
    throw new RangeError(`${where}: wanted must be from 0.5 to 0.9999, got ${wanted}`);
  if (!Number.isInteger(draws) || draws < 1000 || draws > 1_000_000)
    throw new RangeError(`${where}: draws must be a whole number from 1000 to 1 000 000, got ${draws}`);
  if (!Number.isFinite(seed)) throw new RangeError(`${where}: seed must be a number, got ${seed}`);
}

interface Drawn {
  /** Margins by option and limit; undefined where the limit has no meaning. */
  readonly margins: readonly (readonly (Float64Array | undefined)[])[];
  /** The uncertain inputs as drawn, in the order given. */
  readonly inputs: readonly (Float64Array | undefined)[];
}

function simulate(
  { options, limits, seed, progress }: WeighOptionsInput,
  given: readonly PlainInput[],
  estimates: PlainNumbers,
  draws: number,
  tells: boolean,
): Drawn {
  const random = randomGenerator(seed);
  const margins = options.map((option) =>
    limits.map((limit) =>
      marginOf(limit, estimates, option) === undefined ? undefined : new Float64Array(draws),
    ),
  );
  const inputs = given.map(({ u }) => (u > 0 ? new Float64Array(draws) : undefined));
  for (let row = 0; row < draws; row++) {
    // A new object for each shaft, so that limits may keep what they have worked out for it.
    const numbers: Record<string, number> = { ...estimates };
    given.forEach(({ name, u }, i) => {
      if (u > 0) inputs[i]![row] = numbers[name] = estimates[name]! + u * random.normal();
    });
    for (const [o, option] of options.entries())
      for (const [l, limit] of limits.entries()) {
        const target = margins[o]![l];
        if (target !== undefined) target[row] = marginOf(limit, numbers, option)!;
      }
    if (tells && (row + 1) % block === 0) progress?.(row + 1, draws);
  }
  return { margins, inputs };
}

function marginOf(limit: WeighedLimit, numbers: PlainNumbers, option: string): number | undefined {
  const margin = limit.margin(numbers, option);
  if (margin !== undefined && Number.isNaN(margin))
    throw new RangeError(
      `weighOptions: the margin of "${limit.name}" for "${option}" is not a number at ${Object.entries(
        numbers,
      )
        .map(([name, value]) => `${name} = ${value.toPrecision(6)}`)
        .join(", ")}`,
    );
  return margin;
}

function weighedOption(
  { limits }: WeighOptionsInput,
  estimates: PlainNumbers,
  { margins }: Drawn,
  name: string,
  o: number,
): OptionWeighed {
  const rows = margins[o]!;
  const kept = limits.flatMap((limit, l): LimitKept[] => {
    const drawn = rows[l];
    if (drawn === undefined) return [];
    const { mean, deviation } = spreadOf(drawn);
    const shown = (si: number): AnyQuantity | number =>
      limit.kind === "number"
        ? si
        : (quantityFromSi(limit.kind as KindName, si, limit.unit as never) as AnyQuantity);
    return [
      Object.freeze({
        name: limit.name,
        margin: measured(shown(marginOf(limit, estimates, name)!), shown(deviation)),
        chance: shareKept([drawn]),
        inDeviations:
          deviation === 0
            ? mean >= 0
              ? Number.POSITIVE_INFINITY
              : Number.NEGATIVE_INFINITY
            : mean / deviation,
      }),
    ];
  });
  const weakest = kept.reduce<LimitKept | undefined>(
    (worst, next) =>
      worst === undefined ||
      next.chance < worst.chance ||
      (next.chance === worst.chance && next.inDeviations < worst.inDeviations)
        ? next
        : worst,
    undefined,
  );
  return Object.freeze({
    name,
    chance: shareKept(rows.filter((drawn) => drawn !== undefined)),
    limits: Object.freeze(kept),
    weakest: weakest?.name,
  });
}

/** The share of draws in which all margins are 0 or above. */
function shareKept(margins: readonly Float64Array[]): number {
  const first = margins[0];
  if (first === undefined) return 1;
  let kept = 0;
  for (let row = 0; row < first.length; row++) if (margins.every((margin) => margin[row]! >= 0)) kept++;
  return kept / first.length;
}

function spreadOf(values: Float64Array): { readonly mean: number; readonly deviation: number } {
  let mean = 0;
  let squares = 0;
  values.forEach((value, i) => {
    const off = value - mean;
    mean += off / (i + 1);
    squares += off * (value - mean);
  });
  return { mean, deviation: Math.sqrt(squares / (values.length - 1)) };
}

function flipOf(
  { name, si, u, like }: PlainInput,
  estimates: PlainNumbers,
  limits: readonly WeighedLimit[],
  option: string,
): Flip {
  const at = (moves: number): PlainNumbers => ({ ...estimates, [name]: si + moves * u });
  const signs = limits.map((limit) => signOf(marginOf(limit, estimates, option)));
  const flipped = (moves: number): string | undefined =>
    limits.find((limit, l) => signOf(marginOf(limit, at(moves), option)) !== signs[l])?.name;
  let found: { moves: number; breaks: string } | undefined;
  for (let i = 1; i <= scanSteps && found === undefined; i++)
    for (const side of [-1, 1]) {
      let high = (side * farthest * i) / scanSteps;
      if (flipped(high) === undefined) continue;
      let low = (side * farthest * (i - 1)) / scanSteps;
      for (let k = 0; k < 50; k++) {
        const middle = (low + high) / 2;
        if (flipped(middle) === undefined) low = middle;
        else high = middle;
      }
      if (found === undefined || Math.abs(high) < Math.abs(found.moves))
        found = { moves: high, breaks: flipped(high)! };
    }
  return Object.freeze({
    input: name,
    value: like(si),
    standardUncertainty: like(u),
    moves: found?.moves,
    to: found === undefined ? undefined : like(si + found.moves * u),
    breaks: found?.breaks,
  });
}

function signOf(margin: number | undefined): boolean | undefined {
  return margin === undefined ? undefined : margin >= 0;
}

function worthMeasuring(
  given: readonly PlainInput[],
  { margins, inputs }: Drawn,
  { weakest }: OptionWeighed,
  o: number,
  limits: readonly WeighedLimit[],
): WorthMeasuring[] {
  const l = limits.findIndex(({ name }) => name === weakest);
  const margin = l === -1 ? undefined : margins[o]![l];
  if (margin === undefined) return [];
  const { mean, deviation } = spreadOf(margin);
  if (deviation === 0) return [];
  return given
    .flatMap(({ name, si }, i): WorthMeasuring[] => {
      const drawn = inputs[i];
      if (drawn === undefined) return [];
      const own = spreadOf(drawn);
      let both = 0;
      for (let row = 0; row < margin.length; row++) both += (margin[row]! - mean) * (drawn[row]! - own.mean);
      const slope = both / (margin.length - 1) / own.deviation ** 2;
      let kept = 0;
      for (let row = 0; row < margin.length; row++)
        if (margin[row]! - slope * (drawn[row]! - si) >= 0) kept++;
      return [
        Object.freeze({
          input: name,
          share: Math.min(1, ((slope * own.deviation) / deviation) ** 2),
          chanceIfKnown: kept / margin.length,
        }),
      ];
    })
    .sort((a, b) => b.share - a.share);
}
