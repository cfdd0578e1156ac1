import { describe, expect, it } from "vitest";
import { inch, measured, thou } from "../../../kernel-helpers/quantity/index.js";
import { type WeighOptionsInput, weighOptions } from "../../../kernel-helpers/shaft/index.js";
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
  it("is the same to the last digit for the same seed, and tells its progress", () => {
    const told: number[] = [];
    const again = weighOptions({ ...input, progress: (done) => told.push(done) });
    expect(again).toEqual(weighed);
    expect([told[0], told.at(-1)]).toEqual([500, 40_000]);
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
