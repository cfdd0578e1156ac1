import { describe, expect, it } from "vitest";
import {
  identifyThread,
  predictHand,
  type ThreadReadings,
  threadHand,
} from "../../../kernel-helpers/joint/index.js";
import { degree, inch, measured } from "../../../kernel-helpers/quantity/index.js";
import type { Block, Presentation } from "../../../kernel-helpers/view/blocks.js";
import type { Shape } from "../../../kernel-helpers/view/drawing/drawing.js";
import { drawingSvg } from "../../../kernel-helpers/view/drawing/drawing-svg.js";
import { leastWidth } from "../../../kernel-helpers/view/drawing/least-width.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";

const readings: ThreadReadings = {
  kind: "thread readings",
  title: "nut-thread",
  file: "tables/nut-thread.csv",
  majorDiameter: measured(inch(1.487), inch(0.0015)),
  pitch: measured(inch(1 / 6), inch(0.0002)),
  overThreads: 8,
  lengthUncertainty: inch(0.0016),
  flankAngle: undefined,
  unitSystem: "inch",
  warnings: [],
};

function blockOf<T extends Block["type"]>(shown: Presentation, type: T): Extract<Block, { type: T }> {
  return shown.blocks.find((block) => block.type === type) as Extract<Block, { type: T }>;
}

describe("the look of a thread's identity", () => {
  it("says what cannot be told and which reading would tell", () => {
    const shown = present(identifyThread(readings))!;
    expect(blockOf(shown, "verdict").outcome).toBe("cannot tell yet");
    const text = renderText(shown);
    expect(text).toMatch(/hold a 55° and a 60° gauge/);
    expect(text).toMatch(/not taken/);
    expect(text).toMatch(/1\.4870 ± 0\.0029 in/);
  });
  it("gives the one that agrees with its root, and what is off with the others", () => {
    const shown = present(identifyThread({ ...readings, flankAngle: measured(degree(55), degree(1)) }))!;
    expect(blockOf(shown, "verdict")).toMatchObject({ outcome: "yes", text: "1 1/2 in BSW." });
    const [first, second] = blockOf(shown, "table").rows;
    expect(first!.cells).toEqual(["1 1/2 in BSW", "55°", "6 per in", "13.0", "0.0", "0.0", "0.0", "yes"]);
    expect(second!.cells.slice(-2)).toEqual(["−5.0", "no"]);
    // Source: BS 84, core of 1 1/2 in BSW 1.2866 in.
    expect(renderText(shown)).toMatch(/root 1\.287 in/);
  });
  it("says so where none agrees", () => {
    const shown = present(identifyThread({ ...readings, majorDiameter: measured(inch(1.6), inch(0.001)) }))!;
    expect(blockOf(shown, "verdict").outcome).toBe("no");
  });
  it("shows the readings by themselves", () => {
    expect(renderText(present(readings)!)).toMatch(/6 threads per inch; over up to 8 threads/);
  });
});

describe("the card of a thread's hand", () => {
  const card = (rotation: "clockwise" | "counter-clockwise"): Presentation => {
    const prediction = predictHand({ driver: "wheel", rotation, seenFrom: "nut side" });
    return present(threadHand(prediction, { seen: prediction.hand }))!;
  };
  const pull = (shown: Presentation): Extract<Shape, { type: "arrow" }> =>
    blockOf(shown, "drawing").drawing.shapes.find((shape) => shape.type === "arrow")!;

  it("is read whole on a telephone 390 px wide, whichever way it turns", () => {
    for (const rotation of ["clockwise", "counter-clockwise"] as const)
      expect(leastWidth(blockOf(card(rotation), "drawing").drawing)).toBeLessThanOrEqual(358);
  });
  it("pulls an upright wrench to the left to undo a right-hand nut, to the right for a left-hand one", () => {
    const [right, left] = [pull(card("clockwise")), pull(card("counter-clockwise"))];
    expect(right.to[0]).toBeLessThan(right.from[0]);
    expect(left.to[0]).toBeGreaterThan(left.from[0]);
  });
  it("draws the threads rising to their hand", () => {
    for (const [rotation, sign] of [
      ["clockwise", 1],
      ["counter-clockwise", -1],
    ] as const) {
      const lines = blockOf(card(rotation), "drawing").drawing.shapes.flatMap((shape) =>
        shape.type === "line" && shape.from[0] > 300 ? [shape] : [],
      );
      expect(lines.length).toBe(8);
      for (const { from, to } of lines) expect(Math.sign((from[1] - to[1]) * (to[0] - from[0]))).toBe(sign);
    }
  });
  it("draws the way round as the words say it: the loosening arc turns the way of the verdict", () => {
    for (const rotation of ["clockwise", "counter-clockwise"] as const) {
      const shown = card(rotation);
      const arcs = blockOf(shown, "drawing").drawing.shapes.flatMap((shape) =>
        shape.type === "arc" ? [shape] : [],
      );
      const turn = (pen: string): string => {
        const arc = arcs.find((one) => one.pen === pen)!;
        return arc.to > arc.from ? "counter-clockwise" : "clockwise";
      };
      expect(blockOf(shown, "verdict").text).toBe(`Undo ${turn("force")}, facing the nut.`);
      expect(turn("warn")).not.toBe(turn("force"));
      expect(turn("thin")).toBe(rotation);
      expect(blockOf(shown, "drawing").alt).toContain(`pulls the wrench ${turn("force")}`);
      expect(drawingSvg(blockOf(shown, "drawing").drawing)).toContain(`UNDO ${turn("force").toUpperCase()}`);
    }
  });
  it("warns before anything else where prediction and thread disagree", () => {
    const prediction = predictHand({
      driver: "wheel",
      rotation: "clockwise",
      seenFrom: "nut side",
      brake: "driver",
    });
    const shown = present(threadHand(prediction, { seen: "left", resolved: "traced twice with a needle" }))!;
    expect(shown.blocks.slice(0, 2).map(({ type }) => type)).toEqual(["verdict", "warning"]);
    const text = renderText(shown);
    expect(text).toMatch(/traced twice with a needle/);
    expect(text).toMatch(/braking calls for\s+left-hand\s+\(agrees with the thread\)/);
    const right = renderText(present(threadHand(prediction, { seen: "right" }))!);
    expect(right.replace(/\s+/g, " ")).toMatch(
      /braking calls for left-hand \(braking works this nut loose: expect a key, a pin or a second nut/,
    );
  });
  it("shows a prediction by itself, and that it has no published source", () => {
    const shown = present(predictHand({ driver: "shaft", rotation: "clockwise", seenFrom: "nut side" }))!;
    expect(shown.title).toBe("Running calls for a left-hand thread");
    expect(renderText(shown)).toMatch(/without a published source/);
  });
});
