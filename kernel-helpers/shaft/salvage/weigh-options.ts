import { beyondChoice, weighedOption } from "./weigh-chance.js";
import { type Drawn, type PlainInput, plainInput, simulate } from "./weigh-draws.js";
import { flipOf, worthMeasuring } from "./weigh-flips.js";
import type { OptionsWeighed, PlainNumbers, WeighingStep, WeighOptionsInput } from "./weigh-types.js";

/**
 * Holds every option against every limit in many shafts drawn from what is known, and tells what the choice hangs on.
 *
 * 1. Each draw takes every uncertain input anew (normal) and asks every limit for its margin; all options see the same
 *    draws. Chance = share of draws with margin ≥ 0; of the option: with all its margins ≥ 0. Beside it
 *    stands what so many draws leave open: a chance they do not tell from the one wanted is neither above nor below it.
 *    A limit that no option keeps is told apart: it decides nothing between them, and must be met in another way.
 * 2. What would flip the choice: each input alone is moved from its estimate, the others held, to both sides up to 10 of
 *    its standard uncertainties, until a margin of the chosen option changes sign.
 * 3. What to measure: share of the variance of the weakest limit's margin, r² of margin and input over the draws; were
 *    the input known to be as estimated, the chance is the share of draws that keep the limit once the straight part of
 *    what the input does to the margin is taken away.
 * 4. Each assumption is put in place of what is taken for true, and everything drawn again with the same seed, a quarter
 *    of the draws.
 *
 * Chances: see `drawnChance`; 0.2 % of standard uncertainty at 95 % of 10 000.
 *
 * Valid when: inputs are independent and about normal; what is shared must be an input of its own. r² sees the straight
 * part of a dependence.
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
  const steps = weighOptionsInSteps(input);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/**
 * As `weighOptions`, in steps: it rests after each block of draws and tells how far it is, so that whoever waits may see it.
 *
 * Valid when: as `weighOptions`, which gives the same to the last digit.
 *
 * @param input  as `weighOptions`
 * @returns steps { what, done, of } [-], and in the end what `weighOptions` returns
 * @throws RangeError  as `weighOptions`, at the first step
 * @example
 * const limits = [{ name: "strength", kind: "number", margin: ({ load }) => 1 - load }];
 * const steps = weighOptionsInSteps({ inputs: { load: measured(0.8, 0.1) }, options: ["old"], limits: limits, draws: 1000, seed: 1 });
 * steps.next().value.done // 500
 * @source see `weighOptions`
 */
export function* weighOptionsInSteps(input: WeighOptionsInput): Generator<WeighingStep, OptionsWeighed> {
  const { wanted = 0.95, draws = 10_000, assumptions = [] } = input;
  checkInput(input, wanted, draws);
  const given = Object.entries(input.inputs).map(([name, value]) => plainInput(name, value));
  const estimates = Object.fromEntries(given.map(({ name, si }) => [name, si]));
  checkAssumptions(assumptions, estimates);
  const fewer = Math.max(1000, Math.round(draws / 4));
  const known = input.weighed;
  if (known !== undefined) checkWeighed(known, input, wanted, draws);
  const before = known === undefined ? draws : 0;
  const counted = { what: "shafts drawn", done: 0, of: before + fewer * assumptions.length };
  const weighed = known ?? (yield* weighAsGiven(input, given, estimates, { wanted, draws, counted }));
  const asked = { wanted, beyond: weighed.beyondChoice, stands: weighed.stands };
  const others: OptionsWeighed["assumptions"][number][] = [];
  for (const [i, { name, inputs }] of assumptions.entries()) {
    const moved = { ...estimates, ...inputs };
    const again = yield* simulate(input, given, moved, fewer, { ...counted, done: before + i * fewer });
    others.push(assumed(name, input, moved, again, asked));
  }
  return Object.freeze<OptionsWeighed>({ ...weighed, assumptions: Object.freeze(others) });
}

/** As things are taken to be, without the assumptions. */
function* weighAsGiven(
  input: WeighOptionsInput,
  given: readonly PlainInput[],
  estimates: PlainNumbers,
  {
    wanted,
    draws,
    counted,
  }: { readonly wanted: number; readonly draws: number; readonly counted: WeighingStep },
): Generator<WeighingStep, OptionsWeighed> {
  const { options, limits, seed } = input;
  const drawn = yield* simulate(input, given, estimates, draws, counted);
  const beyond = beyondChoice(limits, drawn, wanted);
  const weighed = options.map((name, at) =>
    weighedOption(limits, estimates, drawn, { name, at }, { wanted, beyond }),
  );
  const stands = weighed.find(({ verdict }) => verdict === "holds")?.name;
  const chosen = input.chosen ?? stands ?? weighed.reduce((a, b) => (b.chance > a.chance ? b : a)).name;
  const ofChosen = weighed[options.indexOf(chosen)]!;
  const within = limits.filter(({ name }) => !beyond.includes(name));
  return Object.freeze<OptionsWeighed>({
    kind: "options weighed",
    draws,
    seed,
    wanted,
    options: Object.freeze(weighed),
    beyondChoice: Object.freeze(beyond),
    stands,
    chosen,
    flips: Object.freeze(
      given
        .filter(({ u }) => u > 0)
        .map((one) => flipOf(one, estimates, within, chosen))
        .sort((a, b) => Math.abs(a.moves ?? 1e9) - Math.abs(b.moves ?? 1e9)),
    ),
    measure: Object.freeze(worthMeasuring(given, drawn, ofChosen, options.indexOf(chosen), limits)),
    assumptions: Object.freeze([]),
  });
}

/** What the options come to were something else true. */
function assumed(
  name: string,
  { options, limits }: WeighOptionsInput,
  moved: PlainNumbers,
  drawn: Drawn,
  asked: { readonly wanted: number; readonly beyond: readonly string[]; readonly stands: string | undefined },
): OptionsWeighed["assumptions"][number] {
  const found = options.map((option, at) => weighedOption(limits, moved, drawn, { name: option, at }, asked));
  // The first that may hold: where the draws do not tell whether it does, they do not tell which is to be taken.
  const first = found.find(({ verdict }) => verdict !== "does not hold");
  return Object.freeze({
    name,
    options: Object.freeze(
      found.map(({ name: option, chance, chanceUncertainty, weakest }) =>
        Object.freeze({ name: option, chance, chanceUncertainty, weakest }),
      ),
    ),
    flips: first?.verdict === "cannot tell yet" ? undefined : first?.name !== asked.stands,
  });
}

/** What can be compared of it is: another question's answer must not pass for this one's. */
function checkWeighed(
  weighed: OptionsWeighed,
  { options, seed, chosen }: WeighOptionsInput,
  wanted: number,
  draws: number,
): void {
  const told = (names: readonly string[], of: readonly unknown[]): string => JSON.stringify([names, ...of]);
  const names = weighed.options.map(({ name }) => name);
  const found = told(names, [weighed.chosen, weighed.wanted, weighed.draws, weighed.seed]);
  const expected = told(options, [chosen ?? weighed.chosen, wanted, draws, seed]);
  if (found !== expected)
    throw new RangeError(
      `weighOptions: weighed must be of the same options, choice, chance wanted, draws and seed, ${expected}, got ${found}`,
    );
}

function checkAssumptions(
  assumptions: NonNullable<WeighOptionsInput["assumptions"]>,
  estimates: PlainNumbers,
): void {
  for (const { name, inputs } of assumptions)
    for (const key of Object.keys(inputs))
      if (!(key in estimates))
        throw new RangeError(
          `weighOptions: the assumption "${name}" changes "${key}", which is none of the inputs (${Object.keys(estimates).join(", ")})`,
        );
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
