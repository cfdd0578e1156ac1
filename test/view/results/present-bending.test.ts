import { describe, expect, it } from "vitest";
import { material } from "../../../kernel-helpers/handbook/index.js";
import { degree, inch, lbf, measured, pound, rpm } from "../../../kernel-helpers/quantity/index.js";
import { criticalSpeeds, type ShaftModel, shaftBending } from "../../../kernel-helpers/shaft/index.js";
import type { FigureBlock } from "../../../kernel-helpers/view/blocks.js";
import { finishFigure } from "../../../kernel-helpers/view/finish-figure.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";

const model: ShaftModel = {
  stretches: [{ from: inch(-4), to: inch(70), diameter: inch(2.4375) }],
  material: material("steel"),
  supports: [
    { name: "near <box>", at: inch(10) },
    { name: "far box", at: inch(62) },
  ],
  wheels: [{ name: "pulley", at: inch(36), mass: pound(60) }],
  pulls: [{ name: "belt", at: inch(-2), force: measured(lbf(700), lbf(80)), direction: degree(30) }],
};
const bent = shaftBending(model);
const figureOf = (value: unknown): FigureBlock =>
  present(value)!.blocks.find((block) => block.type === "figure") as FigureBlock;

describe("present(shaft bending)", () => {
  const { figure } = figureOf(bent);
  it("draws shear, moment and deflection under the shaft, in its units", () => {
    const layout = JSON.stringify(finishFigure(figure).layout);
    for (const title of ["shear (lbf)", "moment (lbf·in)", "deflection (thou)"])
      expect(layout).toContain(title);
    const shear = figure.data.find(({ yaxis }) => yaxis === "y4") as unknown as { x: number[]; y: number[] };
    // Overhung: outside the first bearing the belt's pull and what the shaft weighs there.
    const before = shear.x.findLastIndex((x) => x < 9);
    const own = 0.284 * (Math.PI / 4) * 2.4375 ** 2 * (shear.x[before]! + 4);
    expect(shear.y[before]! / Math.hypot(700 * Math.cos(Math.PI / 6), 350 - own)).toBeCloseTo(1, 2);
  });
  it("names every force in two short lines, on the side of its clock that has more room", () => {
    const labels = (figure.layout.annotations as { text: string; xanchor?: string }[]).filter(
      ({ text }) => text,
    );
    expect(labels.map(({ text, xanchor }) => [text, xanchor])).toEqual([
      ["pulley,<br>60 lbf to 270°", "right"],
      ["belt,<br>700 lbf to 30°", "left"],
      [expect.stringMatching(/^far box holds<br>with \d+ lbf to [\d.]+°$/), "right"],
      [expect.stringMatching(/^near &lt;box&gt; holds<br>with \d+ lbf to [\d.]+°$/), "left"],
    ]);
  });
  it("says what each bearing bears and how the shaft leans in it", () => {
    expect(renderText(present(bent)!)).toMatch(/far box[^\n]* lbf [^\n]* in 1000/);
  });
});

describe("present(critical speeds)", () => {
  it("ends the pointer of a name below the name of the row above, which a narrow screen would else hide", () => {
    const { figure } = figureOf(criticalSpeeds(model, { speed: rpm(110) }));
    const marks = figure.layout.annotations as { text: string; yshift?: number; ay?: number }[];
    const names = marks.filter(({ text }) => text !== "");
    const pointers = marks.filter(({ text }) => text === "");
    expect(names).toHaveLength(3);
    // Half a line of 11 px with its padding about the middle of the name above.
    names.slice(1).forEach(({ yshift }, row) => {
      expect(-pointers[row]!.ay!).toBeLessThanOrEqual(yshift! - 8);
    });
  });
});
