import type { ICell, INotebookContent } from "@jupyterlab/nbformat";
import { describe, expect, it } from "vitest";
import { compareSheets } from "../../../kernel-helpers/live/page/sheet/compare-sheets.js";
import { withJoinedLines } from "../../../kernel-helpers/live/page/sheet/join-lines.js";
import {
  hasResults,
  textOf,
  withoutResults,
  withResultsOf,
} from "../../../kernel-helpers/live/page/sheet/sheet-text.js";

const notebook = (...cells: ICell[]): INotebookContent => ({
  metadata: {},
  nbformat: 4,
  nbformat_minor: 5,
  cells,
});
const code = (id: string, source: string | string[], ...outputs: object[]): ICell => ({
  cell_type: "code",
  id,
  metadata: {},
  source,
  outputs: outputs as never,
  execution_count: outputs.length === 0 ? null : 7,
});
const text = (id: string, source: string): ICell => ({
  cell_type: "markdown",
  id,
  metadata: {},
  source,
});
const shows = (data: object): object => ({ output_type: "display_data", metadata: {}, data });

describe("textOf(notebook)", () => {
  it("is the same whether a source is one text or its lines, and whatever the cells show", () => {
    const lines = notebook(code("a", ["1 +\n", "1"]));
    const ran = notebook(code("a", "1 +\n1", shows({ "text/plain": "2" })));
    expect(textOf(lines)).toBe(textOf(ran));
  });
  it("is another when a letter, a kind or the order of cells is another", () => {
    const base = textOf(notebook(code("a", "1"), text("b", "2")));
    expect(textOf(notebook(code("a", "1 "), text("b", "2")))).not.toBe(base);
    expect(textOf(notebook(text("a", "1"), text("b", "2")))).not.toBe(base);
    expect(textOf(notebook(text("b", "2"), code("a", "1")))).not.toBe(base);
  });
});

describe("withoutResults(notebook), withResultsOf(notebook, executed)", () => {
  const executed = notebook(
    code("a", "1", shows({ "text/plain": "1" })),
    code("b", "2", shows({ "text/plain": "2" })),
  );
  it("takes the results out and leaves the notebook given as it was", () => {
    const bare = withoutResults(executed);
    expect(hasResults(bare)).toBe(false);
    expect(hasResults(executed)).toBe(true);
    expect(textOf(bare)).toBe(textOf(executed));
  });
  it("gives results to the cells whose code is the same, and to no other", () => {
    const given = withResultsOf(notebook(code("a", "1"), code("b", "2 + 0"), code("c", "1")), executed);
    expect(given.cells.map(({ outputs }) => (outputs as object[]).length)).toEqual([1, 0, 0]);
  });
});

describe("withJoinedLines(notebook)", () => {
  it("joins the lines of texts and leaves JSON, in which a list is a list", () => {
    const data = {
      "text/html": ["<p>\n", "a</p>"],
      "application/vnd.any+json": ["x", "y"],
      "image/png": "AA",
    };
    const [cell] = withJoinedLines(notebook(code("a", "1", shows(data)))).cells;
    expect((cell!.outputs as { data: object }[])[0]!.data).toEqual({
      "text/html": "<p>\na</p>",
      "application/vnd.any+json": ["x", "y"],
      "image/png": "AA",
    });
  });
});

describe("compareSheets(mine, theirs)", () => {
  const base = notebook(text("head", "# A"), code("a", "1"), code("b", "2"));
  it("finds nothing between a sheet and itself, run or not", () => {
    const ran = notebook(text("head", "# A"), code("a", "1", shows({})), code("b", "2"));
    expect(compareSheets(base, ran)).toEqual([]);
  });
  it("gives both texts of a changed cell, and one of a cell that only one has", () => {
    const mine = notebook(text("head", "# A"), code("a", "1 // mine"), code("new", "3"));
    expect(compareSheets(mine, base)).toEqual([
      { place: 2, mine: "1 // mine", theirs: "1" },
      { place: 3, mine: "3", theirs: undefined },
      { place: 3, mine: undefined, theirs: "2" },
    ]);
  });
  it("tells text and code of the same letters apart", () => {
    expect(compareSheets(notebook(text("a", "1")), notebook(code("a", "1")))).toHaveLength(1);
  });
});
