import { describe, expect, it } from "vitest";
import type { CodeCell, Output } from "../../../kernel-helpers/notebook/file/notebook-format.js";
import { completeCells } from "../../../kernel-helpers/notebook/runner/complete-cells.js";
import type { CellsRun } from "../../../kernel-helpers/notebook/runner/run-cells.js";
import { blocksMimeType } from "../../../kernel-helpers/view/blocks.js";
import { owingBundleOf } from "../../../kernel-helpers/view/bundle.js";
import type { Painter } from "../../../kernel-helpers/view/picture/painter.js";
import { heatFigure } from "../../view/typical-figure.js";

const presentation = { title: "Shaft", blocks: [{ type: "figure", figure: heatFigure, alt: "two cells" }] };
const shown: Output = { output_type: "execute_result", execution_count: 1, ...owingBundleOf(presentation)! };
const printed: Output = { output_type: "stream", name: "stdout", text: "hello" };

function runOf(...outputs: readonly Output[]): CellsRun {
  const cell: CodeCell = {
    cell_type: "code",
    id: "show",
    metadata: {},
    source: "wear",
    outputs,
    execution_count: 1,
  };
  return { notebook: { metadata: {}, cells: [cell] }, stderr: "", notRun: [] };
}

const draws: Painter = { svg: async () => "<svg/>", png: async () => undefined };
const fails: Painter = {
  ...draws,
  svg: async () => {
    throw new RangeError("drawSvg: too long");
  },
};

function outputsOf({ notebook }: CellsRun): readonly Output[] {
  return (notebook.cells[0] as CodeCell).outputs;
}

describe("completeCells(run, painter)", () => {
  it("puts the pictures in, and leaves everything else as it is", async () => {
    const [text, result] = outputsOf(await completeCells(runOf(printed, shown), draws));
    expect(text).toEqual(printed);
    expect(JSON.stringify(result)).toContain(Buffer.from("<svg/>").toString("base64"));
  });
  it("lets a cell fail whose picture cannot be drawn, and shows why in its place", async () => {
    const run = await completeCells(runOf(printed, shown), fails);
    expect(run.failure).toEqual({
      cell: { id: "show", index: 0, source: "wear" },
      error: {
        name: "RangeError",
        message: "drawSvg: too long",
        traceback: ["RangeError: drawSvg: too long"],
      },
    });
    expect(outputsOf(run)).toMatchObject([printed, { output_type: "error", evalue: "drawSvg: too long" }]);
  });
  it("keeps the failure a run has already", async () => {
    const failure = {
      cell: { id: "a", index: 3, source: "" },
      error: { name: "E", message: "m", traceback: [] },
    };
    expect((await completeCells({ ...runOf(shown), failure }, fails)).failure).toBe(failure);
  });
  it("refuses blocks that are no presentation, which a cell may have sent by itself", async () => {
    const forged = {
      ...shown,
      data: { ...(shown as { data: object }).data, [blocksMimeType]: { blocks: 7 } },
    } as Output;
    expect((await completeCells(runOf(forged), draws)).failure?.error.message).toMatch(
      /must be those of a presentation/,
    );
  });
});
