import { createRequire } from "node:module";
import { beforeAll, describe, expect, it } from "vitest";
import type { Block, FigureBlock } from "../../../kernel-helpers/view/blocks.js";
import { finishFigure } from "../../../kernel-helpers/view/finish-figure.js";
import { drawOn } from "../../../kernel-helpers/view/picture/draw-svg.js";
import { type Engine, startEngine } from "../../../kernel-helpers/view/picture/engine.js";
import { plotlyFile } from "../../../kernel-helpers/view/plotly-file.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { sampleProfile, sampleTaper, sampleWear } from "../../support/sample-results.js";
import { heatFigure, typicalFigure } from "../typical-figure.js";

let lean: Engine;
let full: Engine;

beforeAll(async () => {
  lean = await startEngine(plotlyFile());
  full = await startEngine(createRequire(__filename).resolve("plotly.js-dist"));
});

function figureOf(value: unknown): FigureBlock["figure"] {
  const isFigure = (block: Block): block is FigureBlock => block.type === "figure";
  return present(value)!.blocks.find(isFigure)!.figure;
}

describe("the lean plotly of page and pictures", () => {
  it("is another library than the full one, of fewer traces", () => {
    const traces = ({ plotly }: Engine): string[] => Object.keys(plotly.PlotSchema.get().traces);
    expect(traces(full)).toEqual(expect.arrayContaining(traces(lean)));
    expect(traces(full)).toContain("scatterpolar");
    expect(traces(lean)).not.toContain("scatterpolar");
  });

  it.each([
    ["wear bands in inches", figureOf(sampleWear("inch"))],
    ["wear bands in millimetres with a limit", figureOf(sampleWear("metric", { withLimit: true }))],
    ["a profile in inches", figureOf(sampleProfile("inch"))],
    ["a profile in millimetres", figureOf(sampleProfile("metric"))],
    ["a straight taper", figureOf(sampleTaper())],
    ["a barrel with a gross reading", figureOf(sampleTaper({ bow: 0.6, grossAt: 4 }))],
    ["readings, a line and notes", typicalFigure],
    ["a heat map", heatFigure],
  ])("draws the figure of %s as the full one does", async (_, figure) => {
    const finished = finishFigure(figure);
    const drawing = await drawOn(lean, finished);
    expect(drawing.length).toBeGreaterThan(2000);
    expect(drawing).toBe(await drawOn(full, finished));
  });
});
