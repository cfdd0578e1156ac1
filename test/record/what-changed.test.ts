import { describe, expect, it } from "vitest";
import { cellsOfCodeText, codeText } from "../../kernel-helpers/record/code-text.js";
import { changesText, whatChanged } from "../../kernel-helpers/record/what-changed.js";

const table =
  "# part: shaft\nstation [in], diameter @ 90 deg [in], remark\n6, 2.4319, ridge\n7, 2.4320,\n8, 2.4321,\n";
const told = (file: string, before: string, after: string): string =>
  changesText(whatChanged(file, before, after));

describe("whatChanged(file, before, after)", () => {
  it("tells line, column and both readings of a table", () => {
    expect(told("tables/a.csv", table, table.replace("2.4319", "2.4329"))).toBe(
      "line 3, diameter @ 90 deg: 2.4319 became 2.4329",
    );
    expect(told("tables/a.csv", table, table.replace("part: shaft", "part: pin"))).toBe(
      "line 1: “# part: shaft” became “# part: pin”",
    );
    expect(told("tables/a.csv", table, table.replace("2.4320,", "2.4320, scored"))).toBe(
      "line 4, remark: nothing became scored",
    );
    expect(told("tables/a.csv", table, table.replace("7, ", "7,  "))).toBe("line 4: blanks have changed");
  });
  it("tells lines that came and went", () => {
    expect(told("tables/a.csv", table, table.replace("7, 2.4320,\n", ""))).toBe(
      "line 4: was “7, 2.4320,”, has gone",
    );
    expect(told("tables/a.csv", table, `${table}9, 2.4322,\n`)).toBe("line 6: “9, 2.4322,” has come");
  });
  it("tells the parameters of rebuild.json by name", () => {
    const json = '{ "title": "T", "dimensions": { "shaft nominal": "2 7/16 in", "bore": "1 in" } }';
    expect(told("rebuild.json", json, json.replace("2 7/16", "2 1/2").replace(', "bore": "1 in"', ""))).toBe(
      'dimensions.shaft nominal: "2 7/16 in" became "2 1/2 in"; dimensions.bore: "1 in" has gone',
    );
    expect(told("rebuild.json", json, "{")).toMatch(/cannot be read/);
    expect(whatChanged("rebuild.json", json, json.replaceAll(" }", "}"))).toEqual([]);
  });
  it("tells the cells of a sheet whose code is another, with the line", () => {
    const code = (wear: string): string =>
      codeText([
        { cell_type: "code", id: "open", source: "1" },
        { cell_type: "code", id: "wear", source: `const a = 1;\n${wear}` },
      ]);
    expect(told("04.ts", code("f(a)"), code("g(a)"))).toBe("cell wear: “f(a)” became “g(a)”");
    expect(told("04.ts", code("f(a)"), "// %% open\n1\n")).toBe("cell wear: it has gone");
  });
  it("counts what is too much to tell", () => {
    const many = table
      .replace("2.4319", "1")
      .replace("2.4320", "2")
      .replace("2.4321", "3")
      .replace("6,", "5,");
    expect(told("tables/a.csv", table, many)).toMatch(/^line 3, station.*; .*; .*; 1 more$/);
  });
});

describe("cellsOfCodeText(codeText(cells))", () => {
  it("gives the code cells that say something, as they were", () => {
    const cells = [
      { cell_type: "markdown", id: "text", source: "# words" },
      { cell_type: "code", id: "open", source: 'import { a } from "b";\n\na()\n' },
      { cell_type: "code", id: "empty", source: " \n" },
      { cell_type: "code", id: "end", source: "1" },
    ];
    expect(cellsOfCodeText(codeText(cells))).toEqual([
      { id: "open", source: 'import { a } from "b";\n\na()' },
      { id: "end", source: "1" },
    ]);
  });
});
