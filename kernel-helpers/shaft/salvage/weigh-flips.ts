import { spreadOf } from "./weigh-chance.js";
import { type Drawn, marginOf, type PlainInput } from "./weigh-draws.js";
import type { Flip, OptionWeighed, PlainNumbers, WeighedLimit, WorthMeasuring } from "./weigh-types.js";

/** An input is moved by up to so many standard uncertainties to see what it flips. */
const farthest = 10;
const scanSteps = 200;

/** How far one input alone must move until an option changes what it does with a limit. */
export function flipOf(
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

/** What an exact reading of each input would bring to the limit most likely to break. */
export function worthMeasuring(
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
