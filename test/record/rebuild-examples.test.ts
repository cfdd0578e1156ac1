import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readRebuildFile } from "../../kernel-helpers/record/index.js";
import { temporaryFolder } from "../support/temporary-folder.js";

function factsWith(examples: readonly string[]): ReturnType<typeof readRebuildFile> {
  const json = JSON.stringify({
    schema: 1,
    title: "T",
    units: "inch",
    examples,
    dimensions: { "shaft nominal": "2 in" },
  });
  return readRebuildFile(join(temporaryFolder({ "rebuild.json": json }), "rebuild.json"));
}

describe("readRebuildFile(path), the list of examples", () => {
  it("gives the entries that are still examples", () => {
    expect(factsWith(["dimensions.shaft nominal"]).examples).toEqual(["dimensions.shaft nominal"]);
    expect(factsWith([]).examples).toEqual([]);
  });

  it("refuses a name that is no entry, for the example it meant would be taken for a size of the machine", () => {
    for (const wrong of ["dimensions.shaft", "shaft nominal", "sizes.shaft nominal", "title.x"])
      expect(() => factsWith([wrong]), wrong).toThrow(
        /examples\.0: found ".*", expected the section and name/,
      );
  });
});
