import { describe, expect, it } from "vitest";
import { inch, measured, thou } from "../../../kernel-helpers/quantity/index.js";
import { monteCarlo, normalAbout } from "../../../kernel-helpers/statistics/index.js";
import type { FigureBlock, Presentation, VerdictBlock } from "../../../kernel-helpers/view/blocks.js";
import { finishFigure } from "../../../kernel-helpers/view/finish-figure.js";
import { present } from "../../../kernel-helpers/view/present.js";

const clearance = monteCarlo(
  (x) => x.bore.minus(x.shaft),
  { bore: measured(inch(2.4405), thou(0.3)), shaft: measured(inch(2.4375), thou(0.4)) },
  { seed: 1, draws: 20_000, digits: 1 },
);
const square = monteCarlo((x) => x.z ** 2, { z: normalAbout(0, 1) }, { seed: 1, draws: 20_000 });
const shown = (value: unknown): Presentation => present(value)!;
const verdict = (value: unknown): VerdictBlock => shown(value).blocks.find((b) => b.type === "verdict")!;
const figure = (value: unknown): FigureBlock => shown(value).blocks.find((b) => b.type === "figure")!;

describe("present(simulation)", () => {
  it("says the intervals with their unit, and linear propagation beside them", () => {
    const [facts] = shown(clearance).blocks;
    // 3 ± 1.96 × 0.5 thou: 0.00202 to 0.00398 in; chance moves the ends by some hundredths of a thou.
    const nearby = /^0\.00(19[5-9]|20\d) to 0\.00(39\d|40[0-4]) in$/;
    expect(facts).toMatchObject({
      type: "facts",
      facts: [
        {
          label: "shortest interval, 95 %",
          value: expect.stringMatching(nearby),
        },
        {
          label: "interval with equal tails, 95 %",
          value: expect.stringMatching(nearby),
        },
        { label: "standard uncertainty", value: "0.50 thou" },
        { label: "linear propagation", value: "0.00300 ± 0.00098 in (95 %, k = 2.0)" },
        { label: "draws", value: "20000", note: "seed 1: the same seed gives the same result" },
      ],
    });
  });

  it("answers whether linear propagation will do, with the reason", () => {
    expect(verdict(clearance)).toMatchObject({ outcome: "yes", because: clearance.linear.verdict });
    expect(verdict(square)).toMatchObject({ outcome: "no", because: square.linear.verdict });
  });

  it("draws where the values fell in a figure that the page can draw", () => {
    const { figure: spec } = figure(clearance);
    expect(() => finishFigure(spec)).not.toThrow();
    const { x, y } = spec.data[0] as { x: number[]; y: number[] };
    expect(y).toEqual(clearance.histogram.counts);
    expect(x[0]).toBeGreaterThan(clearance.histogram.from.in("inch"));
    expect(x.at(-1)!).toBeLessThan(clearance.histogram.to.in("inch"));
    expect(spec.layout.shapes).toHaveLength(4);
    expect(() => finishFigure(figure(square).figure)).not.toThrow();
  });
});
