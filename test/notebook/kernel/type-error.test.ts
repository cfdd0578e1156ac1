import { stripVTControlCharacters } from "node:util";
import type { Diagnostic } from "tslab/dist/converter.js";
import { describe, expect, it } from "vitest";
import { typeError } from "../../../kernel-helpers/notebook/kernel/type-error.js";

const source = "const shaft = inch(2.5);\nshaft.plus(load);";

function diagnostic(code: number, messageText: string, line: number, from: number, to: number): Diagnostic {
  const offset = line * 100 + from;
  return {
    code,
    messageText,
    category: 1,
    start: { offset, line, character: from },
    end: { offset: offset + to - from, line, character: to },
  };
}

const mismatch = [
  diagnostic(
    2345,
    "Argument of type 'Quantity<\"force\">' is not assignable to parameter of type 'Quantity<\"length\">'.",
    1,
    11,
    15,
  ),
  diagnostic(2322, "Type '\"force\"' is not assignable to type '\"length\"'.", 1, 11, 15),
];

describe("typeError(diagnostics, source)", () => {
  it("says in one line what is wrong and where, then shows it, then TypeScript's own text", () => {
    const { ename, evalue, traceback } = typeError(mismatch, source);
    expect(ename).toBe("TypeCheckError");
    expect(evalue).toBe("a length was expected here, but this is a force (line 2)");
    expect(traceback.map(stripVTControlCharacters)).toEqual([
      "TypeCheckError: a length was expected here, but this is a force (line 2)",
      "  1 | const shaft = inch(2.5);",
      "> 2 | shaft.plus(load);",
      "    |            ^^^^",
      "TS2345: Argument of type 'Quantity<\"force\">' is not assignable to parameter of type 'Quantity<\"length\">'.",
      "  Type '\"force\"' is not assignable to type '\"length\"'.",
      "The cell was checked, and not run.",
    ]);
  });
  it("tells only of the grammar where that is wrong", () => {
    const { ename, traceback } = typeError(
      [...mismatch, diagnostic(1109, "Expression expected.", 1, 16, 17)],
      source,
    );
    expect(ename).toBe("SyntaxError");
    expect(traceback.join("\n")).not.toContain("a length was expected");
  });
  it("counts faults past the eighth", () => {
    const many = Array.from({ length: 11 }, (_, i) =>
      diagnostic(2304, `Cannot find name 'n${i}'.`, 1, i, i + 1),
    );
    const { traceback } = typeError(many, source);
    expect(traceback.filter((line) => line.includes("is not known here"))).toHaveLength(8);
    expect(traceback).toContain("and 3 more");
  });
  it("names the file where the fault lies in one beside the notebook", () => {
    const elsewhere = { ...mismatch[0]!, fileName: "helper.ts" };
    expect(typeError([elsewhere], source).evalue).toMatch(/\(helper\.ts, line 2\)$/);
  });
});
