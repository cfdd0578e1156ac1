import { afterEach, describe, expect, it } from "vitest";
import { material } from "../../../kernel-helpers/handbook/index.js";
import {
  degree,
  hp,
  inch,
  measured,
  pound,
  rpm,
  setUnitSystem,
} from "../../../kernel-helpers/quantity/index.js";
import {
  assumedSteel,
  beltPulls,
  compareShafts,
  type ShaftCase,
  turnedDown,
} from "../../../kernel-helpers/shaft/index.js";
import type { Block } from "../../../kernel-helpers/view/blocks.js";
import { finishFigure } from "../../../kernel-helpers/view/finish-figure.js";
import { present } from "../../../kernel-helpers/view/present.js";

const shaft: ShaftCase = {
  loadCase: "5 hp",
  boxes: [
    { name: "near <box>", from: inch(5), to: inch(13) },
    { name: "far box", from: inch(45), to: inch(53) },
  ],
  wheels: [
    {
      name: "pulley",
      station: inch(29),
      mass: pound(60),
      belt: beltPulls({
        power: measured(hp(5), hp(0.5)),
        speed: rpm(110),
        diameter: inch(30),
        wrap: degree(170),
        friction: { low: 0.25, high: 0.4 },
        towards: degree(180),
      }),
    },
  ],
  seats: [],
  duty: { steel: assumedSteel("mild steel of the period"), surface: "machined", demanded: 1.5 },
};
const bar = [{ from: inch(0), to: inch(58), diameter: inch(2.4375) }];
const of = (slopeAllowed: number, to = 2.3) =>
  compareShafts({
    shaft,
    before: bar,
    after: turnedDown(bar, { from: inch(5), to: inch(13), diameter: inch(to) }),
    material: material("steel"),
    speed: rpm(110),
    slopeAllowed,
  });
const one = <T extends Block["type"]>(value: unknown, type: T): Extract<Block, { type: T }> =>
  present(value)!.blocks.find((block) => block.type === type) as Extract<Block, { type: T }>;

const unlimited = (value: unknown): readonly (readonly string[])[] =>
  present(value)!
    .blocks.filter((block) => block.type === "table")[1]!
    .rows.map(({ cells }) => cells);

afterEach(() => setUnitSystem(undefined));

describe("present(shafts compared)", () => {
  it("answers whether the cut breaks a limit, or what was broken as made", () => {
    const [kept, before, cut] = [of(0.01), of(0.0001), of(0.005, 0.4)].map((found) => one(found, "verdict"));
    expect([kept!.outcome, kept!.text]).toEqual(["yes", "After the cut the shaft keeps every limit."]);
    expect([before!.outcome, before!.text]).toEqual([
      "no",
      "A limit is broken, but not by the cut: the shaft broke it as made.",
    ]);
    expect(before!.because).toMatch(
      /slope in far box, .* in 1000, at most 0\.1 in 1000 \(as made .* in 1000\)/,
    );
    expect(cut!.text).toBe("The cut breaks a limit that the shaft kept as made.");
  });
  it("has a row for every figure, with its change, and marks what does not hold", () => {
    const { rows } = one(of(0.0001), "table");
    const slope = rows.find(({ cells }) => cells[0] === "slope in far box")!;
    expect(slope.mark).toBe("bad");
    expect(slope.cells[5]).toBe("does not hold, nor did it as made");
    const free = unlimited(of(0.0001));
    expect(free.find(([name]) => name === "largest moment")![3]).toMatch(/^(none|[+−])/);
    expect(free.find(([name]) => name === "first critical speed")![1]).toMatch(/rpm/);
  });
  it("is shown in the units of the rebuild", () => {
    setUnitSystem("metric");
    expect(unlimited(of(0.001)).find(([name]) => name === "largest deflection")![1]).toMatch(/µm/);
  });
  it("draws a mark for every limit of both states, and takes foreign names for text", () => {
    const { figure, alt } = one(of(0.001), "figure");
    const finished = finishFigure(figure);
    expect(finished.data).toHaveLength(2);
    // Two slopes and one distance from a whirl.
    expect((finished.data[1] as { x: readonly number[] }).x).toHaveLength(3);
    expect(JSON.stringify(finished.layout)).toContain("near &lt;box&gt;");
    expect(alt).toMatch(/3 limits/);
  });
});
