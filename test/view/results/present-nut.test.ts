import { describe, expect, it } from "vitest";
import { threadNamed } from "../../../kernel-helpers/handbook/index.js";
import { heatNut, nutRemoval } from "../../../kernel-helpers/joint/index.js";
import { degF, inch, lbf, psi, setUnitSystem } from "../../../kernel-helpers/quantity/index.js";
import type { DrawingBlock, VerdictBlock } from "../../../kernel-helpers/view/blocks.js";
import type { Drawing } from "../../../kernel-helpers/view/drawing/drawing.js";
import { drawingSvg } from "../../../kernel-helpers/view/drawing/drawing-svg.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";
import { expectClose } from "../../support/expect-close.js";
import { expectNarrowLayout } from "../../support/fits-telephone.js";

const thread = threadNamed("1 1/2 in BSW");
const stud = { thread, yield: psi(30000), state: "rusted" };

describe("the look of a nut's removal", () => {
  it("gives the verdict of what comes first", () => {
    const outcome = (state: string, low: number, high: number): string =>
      (
        present(nutRemoval({ ...stud, state, preload: { low: lbf(low), high: lbf(high) } }))!
          .blocks[0] as VerdictBlock
      ).outcome;
    expect(outcome("anti-seize", 1000, 5000)).toBe("yes");
    expect(outcome("seized", 20000, 34000)).toBe("no");
    expect(outcome("rusted", 5000, 20000)).toBe("cannot tell yet");
  });
  it("draws the stop limit across every bar, at its place on the scale", () => {
    const found = nutRemoval(stud);
    const { drawing, alt } = present(found)!.blocks.find(({ type }) => type === "drawing") as DrawingBlock;
    const stop = drawing.shapes.find((shape) => shape.type === "line" && shape.pen === "warn");
    const bars = drawing.shapes.flatMap((shape) => (shape.type === "polygon" ? [shape.points] : []));
    expect(bars.length).toBe(2 + found.wrenches.length);
    if (stop?.type !== "line") throw new Error("no stop line");
    // The second bar runs from break-loose low to high: the line stands between in proportion.
    const [from, to] = [bars[1]![0]![0], bars[1]![1]![0]];
    const share = (stop.from[0] - from) / (to - from);
    const { low, high } = found.breakLoose;
    expectClose(share, (found.stopLimit.si - low.si) / (high.si - low.si), {
      rel: 1e-9,
      because: "one scale",
    });
    expect(stop.to[1]).toBeGreaterThan(Math.max(...bars.flat().map(([, y]) => y)));
    expect(alt).toMatch(/stop limit of the stud at 340 lbf·ft/);
    expect(drawingSvg(drawing)).toContain("stop at 340 lbf·ft");
  });
  it("has a layout for a telephone, on which every bar keeps its share of the scale", () => {
    const found = present(nutRemoval(stud))!;
    const wide = (found.blocks.find(({ type }) => type === "drawing") as DrawingBlock).drawing;
    const widths = ({ shapes }: Drawing): readonly number[] =>
      shapes.flatMap((shape) =>
        shape.type === "polygon" ? [shape.points[1]![0] - shape.points[0]![0]] : [],
      );
    const [of, narrow] = [widths(wide), widths(expectNarrowLayout(found))];
    expect(narrow).toHaveLength(of.length);
    expectClose(narrow[0]! / narrow[1]!, of[0]! / of[1]!, { rel: 1e-9, because: "both bars on one scale" });
  });
  it("marks the wrenches on which one person can pass the limit", () => {
    const text = renderText(present(nutRemoval(stud))!);
    expect(text).toMatch(/48 in .*can pass the limit: use a spring balance/);
    expect(text).toMatch(/12 in .*cannot pass the limit/);
    expect(text).toMatch(/common practice, no source/);
  });
  it("speaks metric in a metric rebuild", () => {
    setUnitSystem("metric");
    try {
      expect(renderText(present(nutRemoval(stud))!)).toMatch(/stop limit\s+460 N·m/);
    } finally {
      setUnitSystem(undefined);
    }
  });
});

describe("the look of a warmed nut", () => {
  const heat = heatNut({
    thread,
    acrossFlats: inch(2.41),
    height: inch(1.5),
    shop: degF(65),
    neighbours: [
      { name: "paint", share: 0.5 },
      { name: "Babbitt 2", share: 0.2 },
    ],
  });
  it("names what stops the heat, and gives growth and times", () => {
    const text = renderText(present(heat)!);
    expect(text).toMatch(/may be made 435 °F hot, and no hotter: paint stops it/);
    expect(text).toMatch(/3\.6 thou/);
    expect(text).toMatch(/down to 140 °F/);
    expect(text.indexOf("blisters")).toBeLessThan(text.indexOf("begins to melt"));
  });
});
