import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openRebuild } from "../../kernel-helpers/record/index.js";
import { RebuildFileFaults, readRebuildFile } from "../../kernel-helpers/record/rebuild-file.js";
import { temporaryFolder } from "../support/temporary-folder.js";

const folderWith = (angles: unknown): string =>
  temporaryFolder({
    "rebuild.json": JSON.stringify({
      schema: 1,
      title: "Test shaft",
      units: "inch",
      ...(angles === undefined ? {} : { angles }),
    }),
  });

describe("rebuild.angleIfGiven(name)", () => {
  it("gives a direction of rebuild.json, and undefined where there is none", () => {
    const rebuild = openRebuild({ folder: folderWith({ "load direction": "90 deg" }) });
    expect(rebuild.angleIfGiven("load direction")!.in("degree")).toBe(90);
    expect(rebuild.angleIfGiven("keyway")).toBeUndefined();
    expect(openRebuild({ folder: folderWith(undefined) }).angleIfGiven("load direction")).toBeUndefined();
  });
});

describe("readRebuildFile(path), angles", () => {
  it("reports an angle without a unit, and a length in its place, each with its place", () => {
    const path = join(folderWith({ "load direction": "90", keyway: "2 in" }), "rebuild.json");
    expect(() => readRebuildFile(path)).toThrow(RebuildFileFaults);
    expect(() => readRebuildFile(path)).toThrow(/angles\.load direction: [\s\S]*angles\.keyway: /);
  });
});
