import type { ConvertResult } from "tslab/dist/converter.js";
import { describe, expect, it } from "vitest";
import { CompiledCells } from "../../../kernel-helpers/notebook/kernel/compiled-cells.js";

const compiled = (parts: Partial<ConvertResult> = {}): ConvertResult => ({
  output: "compiled;",
  declOutput: "",
  diagnostics: [],
  hasToplevelAwait: false,
  ...parts,
});

describe("CompiledCells", () => {
  it("finds a cell by its source and the declarations before it, and neither alone", () => {
    const cells = new CompiledCells();
    cells.keep("declare let a: number;", "a", { converted: compiled(), steps: [] });
    expect(cells.find("declare let a: number;", "a")?.converted.output).toBe("compiled;");
    expect(cells.find("declare let a: string;", "a")).toBeUndefined();
    expect(cells.find("declare let a: number;", "a;")).toBeUndefined();
    cells.forget();
    expect(cells.find("declare let a: number;", "a")).toBeUndefined();
  });

  it.each([
    ["a cell at fault", "", "1", compiled({ diagnostics: [{} as ConvertResult["diagnostics"][number]] })],
    ["one that brought a compiled file", "", "1", compiled({ sideOutputs: [{ path: "/a.js", data: "" }] })],
    ["one that imports a file", "", 'import { a } from "./a"', compiled()],
    ["one that loads a file", "", "const a = require('../a')", compiled()],
    ["one after a cell that imports a file", 'import { a } from "./a";', "a", compiled()],
  ])("does not keep %s", (_what, declarations, source, converted) => {
    const cells = new CompiledCells();
    cells.keep(declarations, source, { converted, steps: [] });
    expect(cells.find(declarations, source)).toBeUndefined();
  });

  it("keeps no more than it needs: the oldest goes", () => {
    const cells = new CompiledCells();
    for (let i = 0; i < 500; i += 1) cells.keep("", `${i}`, { converted: compiled(), steps: [] });
    expect(cells.find("", "0")).toBeUndefined();
    expect(cells.find("", "499")).toBeDefined();
  });
});
