import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { TableEditor } from "../../../kernel-helpers/live/grid/table-editor.js";

const survey = "# part: shaft\nstation [in],diameter [in],remark\n1,2.4373,rust\n# box\n2,2.4371,\n";

function editorOf(text: string): TableEditor {
  const editor = new TableEditor();
  editor.open(text);
  return editor;
}

describe("TableEditor", () => {
  it("type writes into the cell one is in, and cancel takes it back", () => {
    const editor = editorOf(survey);
    editor.moveTo({ line: 0, column: 1 });
    editor.type("2.43");
    expect(editor.text).toBe(survey.replace("2.4373", "2.43"));
    editor.cancel();
    expect(editor.text).toBe(survey);
    expect(editor.canUndo).toBe(false);
  });

  it("a cell is one step, however many letters were typed", () => {
    const editor = editorOf(survey);
    for (const value of ["2", "2.", "2.4"]) editor.type(value);
    editor.step(1);
    editor.undo();
    expect(editor.text).toBe(survey);
    expect(editor.canUndo).toBe(false);
  });

  it("going on behind the last row makes a row", () => {
    const editor = editorOf(survey);
    editor.moveTo({ line: 2, column: 2 });
    for (const value of ["end", "3", "2.4370", "clean", "4"]) {
      editor.type(value);
      editor.step(1);
    }
    expect(editor.text).toBe(`${survey.replace("2.4371,", "2.4371,end")}3,2.4370,clean\n4,,\n`);
  });

  it("a new row that is emptied again while typing is none", () => {
    const editor = editorOf(survey);
    editor.moveTo({ line: 3, column: 0 });
    editor.type("3");
    editor.type("");
    editor.commit();
    expect(editor.text).toBe(survey);
  });

  it("writes into headers and remarks too", () => {
    const editor = editorOf(survey);
    editor.moveTo({ line: -1, column: 1 });
    editor.type("bore [in]");
    editor.moveTo({ line: 1, column: 0 });
    editor.type("second box");
    editor.typeRemark(0, { value: "spindle" });
    editor.commit();
    expect(editor.text).toBe(
      survey.replace("diameter", "bore").replace("# box", "# second box").replace("shaft", "spindle"),
    );
  });

  it("deletes remarks and rows, and puts rows in above and below", () => {
    const editor = editorOf(survey);
    editor.moveTo({ line: 1, column: 0 });
    editor.deleteLine();
    editor.insertRow("above");
    editor.type("1.5");
    editor.insertRow("below");
    editor.type("1.7");
    editor.commit();
    expect(editor.text).toBe(survey.replace("# box\n", "1.5,,\n1.7,,\n"));
    expect(editor.place).toEqual({ line: 2, column: 0 });
  });

  it("keeps header and new row from being deleted, and says so", () => {
    const editor = editorOf(survey);
    const said: string[] = [];
    editor.listen(({ say }) => say !== undefined && said.push(say));
    for (const line of [-1, 3]) {
      editor.moveTo({ line, column: 0 });
      editor.deleteLine();
    }
    expect(editor.text).toBe(survey);
    expect(said).toEqual(["There is no row here to delete.", "There is no row here to delete."]);
  });

  it("pastes a block over rows and on behind them", () => {
    const editor = editorOf(survey);
    editor.moveTo({ line: 2, column: 0 });
    editor.paste([
      ["2", "2.5"],
      ["3", "2.6"],
    ]);
    expect(editor.text).toBe(`${survey.replace("2.4371", "2.5")}3,2.6,\n`);
    editor.undo();
    expect(editor.text).toBe(survey);
  });

  it("leaves out the header of a pasted block, and pastes nothing that is too wide", () => {
    const editor = editorOf(survey);
    const said: string[] = [];
    editor.listen(({ say }) => say !== undefined && said.push(say));
    editor.paste([
      ["station [in]", "diameter [in]"],
      ["9", "2.4"],
    ]);
    expect(editor.text).toBe(survey.replace("1,2.4373", "9,2.4"));
    editor.moveTo({ line: 0, column: 2 });
    editor.paste([["a", "b"]]);
    expect(editor.text).toBe(survey.replace("1,2.4373", "9,2.4"));
    expect(said.at(-1)).toMatch(
      /Nothing was pasted: the block is 2 columns wide, and from here there are 1\./,
    );
  });

  it("adds a column and a remark", () => {
    const editor = editorOf(survey);
    editor.addColumn(2, "diameter @ 90 deg [in]");
    editor.addRemark("who", "first shift");
    expect(editor.text).toBe(
      "# part: shaft\n# who: first shift\nstation [in],diameter [in],diameter @ 90 deg [in],remark\n1,2.4373,,rust\n# box\n2,2.4371,,\n",
    );
  });

  it("begins an empty table", () => {
    const editor = editorOf("");
    editor.start(["station [in]", "remark"]);
    editor.type("1");
    editor.commit();
    expect(editor.text).toBe("station [in], remark\n1,\n");
  });

  it("undo goes back to the first text and redo to the last, whatever was done between", () => {
    const act = fc.constantFrom(
      (editor: TableEditor) => editor.type("2.5"),
      (editor: TableEditor) => editor.type(""),
      (editor: TableEditor) => void editor.step(1),
      (editor: TableEditor) => editor.move("down"),
      (editor: TableEditor) => editor.move("first"),
      (editor: TableEditor) => editor.insertRow("above"),
      (editor: TableEditor) => editor.insertRow("below"),
      (editor: TableEditor) => editor.deleteLine(),
      (editor: TableEditor) => editor.paste([["1", "2"]]),
      (editor: TableEditor) => editor.addColumn(1, "bore [in]"),
      (editor: TableEditor) => editor.addRemark("note"),
      (editor: TableEditor) => editor.replaceText("station [in]\n7", "other text"),
    );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 25 }), (acts) => {
        const editor = editorOf(survey);
        for (const one of acts) one(editor);
        editor.commit();
        const last = editor.text;
        while (editor.canUndo) editor.undo();
        expect(editor.text).toBe(survey);
        while (editor.canRedo) editor.redo();
        expect(editor.text).toBe(last);
      }),
      { numRuns: 500 },
    );
  });
});
