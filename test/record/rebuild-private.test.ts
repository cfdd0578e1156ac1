import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readRebuildFile } from "../../kernel-helpers/record/index.js";
import { temporaryFolder } from "../support/temporary-folder.js";

function factsWith(given: unknown): ReturnType<typeof readRebuildFile> {
  const json = JSON.stringify({ schema: 1, title: "T", units: "inch", private: given });
  return readRebuildFile(join(temporaryFolder({ "rebuild.json": json }), "rebuild.json"));
}

describe("readRebuildFile(path), the list of what is private", () => {
  it("gives every section, empty where nothing is listed", () => {
    const nothing = { columns: [], remarks: [], machine: [], words: [] };
    expect(factsWith(undefined).private).toEqual(nothing);
    expect(factsWith({ columns: ["price"] }).private).toEqual({ ...nothing, columns: ["price"] });
  });

  it("names a section that is not known, and a list that is none", () => {
    expect(() => factsWith({ column: ["price"] })).toThrow(
      /private: "column" is not known here; known are columns, remarks, machine, words/,
    );
    expect(() => factsWith({ columns: "price" })).toThrow(/private\.columns: found "price", expected a list/);
  });
});
