import { describe, expect, it } from "vitest";
import type { Execution } from "../../../kernel-helpers/live/server/kernels/execution-log.js";
import { outcomeOfPage } from "../../../kernel-helpers/live/server/outcome-of-page.js";
import type { Cell, Output } from "../../../kernel-helpers/notebook/index.js";

function codeCell(id: string, source: string, outputs: readonly Output[] = []): Cell {
  return { cell_type: "code", id, metadata: {}, source, outputs, execution_count: null };
}

const words: Cell = { cell_type: "markdown", id: "words", metadata: {}, source: "# Bore" };
const [a, b] = [codeCell("a", "1"), codeCell("b", "2\n")];
const sheet = { metadata: {}, cells: [words, a, codeCell("empty", " "), b] };

function ran(cellId: string, code: string, status: Execution["status"] = "ok", message?: string): Execution {
  return { cellId, code, ...(status && { status }), ...(message && { message }) };
}

describe("outcomeOfPage(notebook, executions)", () => {
  it("is ok when the last that was run is every code cell, in order", () => {
    expect(outcomeOfPage(sheet, [ran("a", "1"), ran("b", "2")])).toEqual({ status: "ok" });
    const second = [ran("b", "2"), ran("a", "1"), ran("a", "1"), ran("b", "2")];
    expect(outcomeOfPage(sheet, second)).toEqual({ status: "ok" });
    expect(outcomeOfPage({ metadata: {}, cells: [words] }, [])).toEqual({ status: "ok" });
  });
  it("is undefined for a part, another order, something run after, or a cell still running", () => {
    for (const executions of [
      [],
      [ran("a", "1")],
      [ran("b", "2"), ran("a", "1")],
      [ran("a", "1"), ran("b", "2"), ran("a", "1")],
      [ran("a", "1"), ran("b", "2"), ran("b", "2")],
      [ran("a", "1"), { cellId: "b", code: "2" }],
    ])
      expect(outcomeOfPage(sheet, executions)).toBeUndefined();
  });
  it("is undefined when this kernel has run code that the sheet does not hold", () => {
    expect(outcomeOfPage(sheet, [ran("a", "const old = 1"), ran("a", "1"), ran("b", "2")])).toBeUndefined();
    expect(outcomeOfPage(sheet, [ran("gone", "1"), ran("a", "1"), ran("b", "2")])).toBeUndefined();
  });
  it("has failed with the cell's message, by id and by place among all cells", () => {
    expect(outcomeOfPage(sheet, [ran("a", "1"), ran("b", "2", "error", "RangeError: too deep")])).toEqual({
      status: "failed",
      failure: { cell: { id: "b", number: 4 }, message: "RangeError: too deep" },
    });
    // Mended since, or changed: no failure of the sheet as it stands.
    expect(outcomeOfPage(sheet, [ran("b", "2", "error", "E"), ran("a", "1"), ran("b", "2")])).toEqual({
      status: "ok",
    });
    expect(outcomeOfPage(sheet, [ran("b", "old", "error", "E")])).toBeUndefined();
  });
  it("has failed when an error came after its cell had ended, or on the error output", () => {
    const late: Output = { output_type: "error", ename: "TypeError", evalue: "late", traceback: [] };
    const loud: Output = { output_type: "stream", name: "stderr", text: "careful\nmore" };
    const withOutput = (output: Output) => ({ metadata: {}, cells: [codeCell("a", "1", [output])] });
    expect(outcomeOfPage(withOutput(late), [ran("a", "1")])?.failure?.message).toBe("TypeError: late");
    expect(outcomeOfPage(withOutput(loud), [ran("a", "1")])?.failure?.message).toMatch(
      /error output: careful$/,
    );
    expect(outcomeOfPage(withOutput(late), [])).toBeUndefined(); // from an earlier kernel
  });
});
