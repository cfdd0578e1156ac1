import { describe, expect, it } from "vitest";
import { inch, measured, thou } from "../../../kernel-helpers/quantity/index.js";
import {
  drawnChance,
  type WeighingStep,
  type WeighOptionsInput,
  weighOptions,
  weighOptionsInSteps,
} from "../../../kernel-helpers/shaft/index.js";
import { twoBoxes } from "../../../kernel-helpers/shaft/salvage/two-box-loads.js";
import { normalCdf } from "../../../kernel-helpers/statistics/index.js";
import { presentResult } from "../../../kernel-helpers/view/results/present-result.js";
import { expectClose } from "../../support/expect-close.js";

/** Stress and strength, the case of every book: P(strength − load ≥ 0) = Φ(1/√(0.3² + 0.4²)) = Φ(2). */
const limits: WeighOptionsInput["limits"] = [
  {
    name: "strength",
    kind: "number",
    margin: ({ strength, load }, option) => (option === "new" ? strength! + 1 : strength!) - load!,
  },
  {
    name: "cleans up",
    kind: "length",
    unit: "thou",
    margin: ({ size }, option) => (option === "new" ? undefined : size! - inch(2.425).si),
  },
];
const input: WeighOptionsInput = {
  inputs: {
    strength: measured(3, 0.3),
    load: measured(2, 0.4),
    size: measured(inch(2.4257), thou(0.35)),
    idle: 5,
  },
  options: ["turn", "new"],
  limits,
  draws: 40_000,
  seed: 7,
};

describe("weighOptions({ inputs, options, limits, seed })", () => {
  const weighed = weighOptions(input);
  const [turn, fresh] = weighed.options;
  const scatter = { abs: 0.004, because: "40 000 draws: three standard deviations of the share" };
  it("gives the chance that the normal distribution gives: two limits at two deviations each", () => {
    expectClose(turn!.limits[0]!.chance, normalCdf(2), scatter);
    expectClose(turn!.limits[1]!.chance, normalCdf(2), scatter);
    // The limits share no input: their chances multiply.
    expectClose(turn!.chance, normalCdf(2) ** 2, scatter);
    expectClose(turn!.limits[0]!.inDeviations, 2, { rel: 0.02, because: "40 000 draws" });
    expectClose(turn!.limits[1]!.margin.value.valueOf() as number, thou(0.7).si, {
      rel: 1e-9,
      because: "at the estimates",
    });
  });
  it("leaves out a limit that has no meaning for an option", () => {
    expect(fresh!.limits.map(({ name }) => name)).toEqual(["strength"]);
    expectClose(fresh!.chance, normalCdf(4), scatter);
  });
  it("takes the first option that keeps all limits with the chance wanted", () => {
    expect(weighed.stands).toBe("turn");
    expect(weighOptions({ ...input, wanted: 0.99 }).stands).toBe("new");
  });
  it("tells how far each input alone must move, in its own uncertainties, and what then breaks", () => {
    const moves = Object.fromEntries(weighed.flips.map((flip) => [flip.input, flip]));
    const bisection = { rel: 1e-9, because: "bisected to the last digits" };
    expectClose(moves.load!.moves!, 1 / 0.4, bisection);
    expectClose(moves.strength!.moves!, -1 / 0.3, bisection);
    expectClose(moves.size!.moves!, -2, bisection);
    expect(moves.size!.breaks).toBe("cleans up");
    expect(weighed.flips.map(({ input: name }) => name)).toEqual(["size", "load", "strength"]);
    expect(moves.idle).toBeUndefined();
  });
  it("tells which input the doubt comes from: its share of the variance, and the chance without it", () => {
    const narrow = weighOptions({ ...input, limits: [limits[0]!] });
    expect(narrow.measure.map(({ input: name }) => name).slice(0, 2)).toEqual(["load", "strength"]);
    expectClose(narrow.measure[0]!.share, 0.16 / 0.25, { rel: 0.02, because: "40 000 draws" });
    expectClose(narrow.measure[0]!.chanceIfKnown, normalCdf(1 / 0.3), scatter);
  });
  it("shows what another assumption would change", () => {
    const other = weighOptions({
      ...input,
      assumptions: [{ name: "it is iron", inputs: { strength: 1.5 } }],
    });
    expectClose(other.assumptions[0]!.options[0]!.chance, normalCdf(-1) * normalCdf(2), {
      abs: 0.011,
      because: "10 000 draws, a quarter: three standard deviations",
    });
    expect(other.assumptions[0]!.flips).toBe(true);
    expect(() =>
      weighOptions({ ...input, assumptions: [{ name: "typing", inputs: { strenght: 1 } }] }),
    ).toThrow(/changes "strenght", which is none of the inputs \(strength, load/);
  });
  it("is the same to the last digit for the same seed, all at once and in steps that count every draw", () => {
    const assumptions = [{ name: "it is iron", inputs: { strength: 1.5 } }];
    const steps = weighOptionsInSteps({ ...input, assumptions });
    const told: WeighingStep[] = [];
    let step = steps.next();
    for (; step.done !== true; step = steps.next()) told.push(step.value);
    expect(step.value).toEqual(weighOptions({ ...input, assumptions }));
    expect(told[0]).toEqual({ what: "shafts drawn", done: 500, of: 50_000 });
    expect(told.at(-1)!.done).toBe(50_000);
    told.forEach(({ done }, i) => {
      expect(done).toBe(500 * (i + 1));
    });
  });
  it("weighs assumptions alone where the rest was weighed before, to the last digit the same, and refuses another's", () => {
    const assumptions = [{ name: "it is iron", inputs: { strength: 1.5 } }];
    const weighedBefore = weighOptions(input);
    const steps = weighOptionsInSteps({ ...input, assumptions, weighed: weighedBefore });
    expect(steps.next().value).toEqual({ what: "shafts drawn", done: 500, of: 10_000 });
    expect(weighOptions({ ...input, assumptions, weighed: weighedBefore })).toEqual(
      weighOptions({ ...input, assumptions }),
    );
    expect(() => weighOptions({ ...input, seed: 99, assumptions, weighed: weighedBefore })).toThrow(
      /weighed must be of the same options, choice, chance wanted, draws and seed, .*99\], got .*\]/,
    );
  });
  it("tells what the draws leave open: the chances of many seeds scatter by that", () => {
    const few = { ...input, draws: 1000, limits: [limits[0]!] };
    const chances = Array.from({ length: 60 }, (_, seed) => weighOptions({ ...few, seed }).options[0]!);
    const mean = chances.reduce((sum, { chance }) => sum + chance, 0) / chances.length;
    const spread = Math.sqrt(
      chances.reduce((sum, { chance }) => sum + (chance - mean) ** 2, 0) / (chances.length - 1),
    );
    // 60 seeds tell a spread to 9 %: two of that, and 5 % for p and P being not the same.
    expectClose(chances[0]!.chanceUncertainty, spread, { rel: 0.23, because: "60 seeds" });
  });
  it("cannot tell a chance from the one wanted within two of its uncertainties, and takes neither side", () => {
    // Both limits of turn together hold with Φ(2)² = 0.9550 exactly.
    const close = weighOptions({ ...input, draws: 2000, wanted: 0.955 });
    expect(close.options[0]!.verdict).toBe("cannot tell yet");
    expect(close.stands).toBe("new");
    const { blocks } = presentResult({ ...close, chosen: "turn" })!;
    expect(blocks[0]).toMatchObject({
      outcome: "cannot tell yet",
      because: expect.stringMatching(
        /hold together with 9\d\.\d ± (0\.9|1\.0) %; 95\.5 % is wanted, which 2000 draws do not/,
      ),
    });
    expect(weighOptions({ ...input, wanted: 0.94 }).options[0]!.verdict).toBe("holds");
    expect(weighOptions({ ...input, wanted: 0.97 }).options[0]!.verdict).toBe("does not hold");
  });
  it("sets a limit apart that no option keeps: it decides nothing between them, and is told first", () => {
    const span = {
      name: "span",
      kind: "number",
      margin: ({ load }: Record<string, number>) => 1 - load!,
    } as const;
    const apart = weighOptions({ ...input, limits: [...limits, span] });
    expect(apart.beyondChoice).toEqual(["span"]);
    expect(apart.stands).toBe("turn");
    expect(apart.options[0]!.chance).toBe(weighed.options[0]!.chance);
    expectClose(apart.options[1]!.limits.at(-1)!.chance, normalCdf(-1 / 0.4), scatter);
    expect(apart.flips.map(({ breaks }) => breaks)).not.toContain("span");
    expect(presentResult(apart)!.blocks[0]).toMatchObject({
      outcome: "no",
      text: "No option keeps “span”; “turn” keeps every other limit weighed here",
    });
    // One that some option keeps is no such limit, nor is any where there is nothing to choose between.
    expect(weighed.beyondChoice).toEqual([]);
    expect(weighOptions({ ...input, options: ["turn"], limits: [...limits, span] }).beyondChoice).toEqual([]);
  });
  it("refuses what cannot be weighed, and says what is missing", () => {
    expect(() => weighOptions({ ...input, options: [] })).toThrow(/at least one option/);
    expect(() => weighOptions({ ...input, limits: [] })).toThrow(/at least one limit/);
    expect(() => weighOptions({ ...input, chosen: "sleeve" })).toThrow(/chosen must be one of turn, new/);
    expect(() => weighOptions({ ...input, draws: 10 })).toThrow(/draws must be/);
    expect(() => weighOptions({ ...input, wanted: 1 })).toThrow(/wanted must be/);
    const wrong = {
      name: "wrong",
      kind: "number",
      margin: ({ absent }: Record<string, number>) => absent! - 1,
    } as const;
    expect(() => weighOptions({ ...input, limits: [wrong] })).toThrow(
      /margin of "wrong" for "turn" is not a number at strength = 3/,
    );
  });
  it("shows verdict, one figure, margins, flips and what to measure", () => {
    const { blocks } = presentResult(weighed)!;
    expect(blocks.map(({ type }) => type)).toEqual(["verdict", "figure", "table", "table", "table", "text"]);
    expect(blocks[0]).toMatchObject({
      outcome: "yes",
      because: expect.stringMatching(/nearest single change: size, 2\.0 of its standard uncertainties down/),
    });
  });
});

describe("drawnChance(kept, draws)", () => {
  it("is the share, and lets none or all of the draws be no certainty", () => {
    expect(drawnChance(50, 200).chance).toBe(0.25);
    for (const kept of [0, 1000]) {
      const { chance, chanceUncertainty } = drawnChance(kept, 1000);
      expect(chance).toBe(kept / 1000);
      // The rule of three: with nothing seen in n draws, 3/n is the 95 % bound; two uncertainties about (k + 2)/(n + 4).
      const bound = 2 / 1004 + 1.645 * chanceUncertainty;
      expect(bound).toBeGreaterThan(3 / 1000);
      expect(bound).toBeLessThan(6 / 1000);
    }
  });
  it("falls with the root of the draws", () => {
    const [few, many] = [drawnChance(900, 1000), drawnChance(90_000, 100_000)];
    expectClose(few.chanceUncertainty / many.chanceUncertainty, 10, { rel: 0.01, because: "the two added" });
  });
});

describe("twoBoxes(first, second, forces)", () => {
  it("gives the middle moment FL/4 of a load midway, and F·a under an overhung one", () => {
    const middle = twoBoxes(0, 4, [{ position: 2, x: 0, y: -100 }]);
    expect([middle.onFirst.y, middle.onSecond.y, middle.momentAt(2)]).toEqual([-50, -50, 100]);
    const overhung = twoBoxes(1, 3, [{ position: 0, x: 60, y: -80 }]);
    expect([overhung.momentAt(1), overhung.momentAt(0)]).toEqual([100, 0]);
    expect(overhung.onSecond).toEqual({ x: -30, y: 40 });
  });
  it("balances forces and moments, and leaves no moment at a free end", () => {
    const forces = [
      { position: -0.06, x: 900, y: -400 },
      { position: 0.9, x: -1500, y: 300 },
      { position: 1.7, x: 20, y: -70 },
    ];
    const { onFirst, onSecond, momentAt } = twoBoxes(0.24, 1.58, forces);
    const sum = (of: "x" | "y"): number => forces.reduce((total, force) => total + force[of], 0);
    expectClose(onFirst.x + onSecond.x, sum("x"), { rel: 1e-12, because: "roundings" });
    expectClose(onFirst.y + onSecond.y, sum("y"), { rel: 1e-12, because: "roundings" });
    expectClose(momentAt(1.8), 0, { abs: 1e-9, because: "roundings" });
    expect(() => twoBoxes(1, 1, forces)).toThrow(/beyond the first/);
  });
});
