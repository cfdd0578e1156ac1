import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { setUnitSystem } from "../../kernel-helpers/quantity/index.js";
import { openRebuild, readRecords, resetSession, verifyRebuild } from "../../kernel-helpers/record/index.js";
import { temporaryFolder } from "../support/temporary-folder.js";

afterEach(() => {
  resetSession();
  setUnitSystem(undefined);
});

/** A copy of the rebuild that the first version left. */
function olderRebuild(): string {
  const folder = temporaryFolder();
  cpSync(join(__dirname, "..", "reference", "rebuild-of-schema-1"), folder, { recursive: true });
  return folder;
}

describe("a rebuild whose records are of schema 1", () => {
  it("is read as one that says less", () => {
    const [survey, taper] = readRecords(olderRebuild());
    expect(survey).toMatchObject({
      schema: 2,
      sheet: "04-shaft-survey",
      decisions: {},
      notes: {},
      cautions: [],
    });
    expect(Object.keys(survey!.inputs)).toEqual(["rebuild.json", "tables/shaft-survey.csv"]);
    expect(Object.keys(taper!.recalled)).toEqual(["04-shaft-survey: wear"]);
  });
  it("hands its results on to sheets of this version", () => {
    const rebuild = openRebuild({ folder: olderRebuild(), sheet: "06" });
    const wear = rebuild.recall("wear", "wear bands");
    expect(wear.bands).toHaveLength(2);
    expect(wear.nominal!.in("inch")).toBe(2.4375);
    expect(rebuild.handover().standings.map(({ of, holds }) => [of, holds])).toEqual([
      ["04-shaft-survey", true],
      ["05-taper", true],
    ]);
  });
  it("is verified by what its records say, and an altered table or record is found", () => {
    const folder = olderRebuild();
    const texts = (): readonly string[] => verifyRebuild(folder).findings.map(({ text }) => text);
    expect(texts()).toEqual([expect.stringMatching(/^There is no manifest/)]);
    const table = join(folder, "tables/shaft-survey.csv");
    writeFileSync(table, readFileSync(table, "utf8").replace("2.4351", "2.4361"));
    const record = join(folder, "record/04-shaft-survey.json");
    writeFileSync(record, readFileSync(record, "utf8").replace(/"noiseRatio": [\d.]+/, '"noiseRatio": 0.8'));
    expect(texts()[1]).toMatch(
      /^tables\/shaft-survey\.csv is not what record\/04-shaft-survey\.json was computed from/,
    );
    expect(texts()[2]).toMatch(
      /^record\/05-taper\.json took over “wear” from 04-shaft-survey, and that is another/,
    );
  });
  it("becomes one of this version when its sheet hands something on again", () => {
    const folder = olderRebuild();
    openRebuild({ folder, sheet: "05-taper" }).publish({ done: 2 });
    expect(JSON.parse(readFileSync(join(folder, "record/05-taper.json"), "utf8"))).toMatchObject({
      schema: 2,
      published: { done: 2 },
    });
  });
  it("is refused in plain words where it is newer than this version", () => {
    const folder = olderRebuild();
    const path = join(folder, "record/05-taper.json");
    writeFileSync(path, readFileSync(path, "utf8").replace('"schema": 1', '"schema": 3'));
    expect(() => readRecords(folder)).toThrow(
      /written by a newer Journalbox \(schema 3\); this one reads up to schema 2/,
    );
    expect(verifyRebuild(folder).findings.map(({ what }) => what)).toContain("unreadable");
  });
});
