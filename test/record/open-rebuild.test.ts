import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { inch, setUnitSystem } from "../../kernel-helpers/quantity/index.js";
import { canonicalJson } from "../../kernel-helpers/record/canonical-json.js";
import { fileHash } from "../../kernel-helpers/record/file-hash.js";
import { openRebuild } from "../../kernel-helpers/record/open-rebuild.js";
import { resetSession, setSession } from "../../kernel-helpers/record/session.js";
import { readReads } from "../../kernel-helpers/record/sheet-reads.js";
import { storeValue } from "../../kernel-helpers/record/stored-value.js";
import { profileOf, TableFaults, wearBands } from "../../kernel-helpers/survey/index.js";
import { temporaryFolder } from "../support/temporary-folder.js";

afterEach(() => {
  resetSession();
  setUnitSystem(undefined);
});

const survey = `# instrument diameter: mic
# instrument station: rule
station [in], diameter [in]
1, 2.4375
2, 2.4374
3, 2.4376
4, 2.4375
`;
const rebuildJson = JSON.stringify({
  schema: 1,
  title: "Test shaft",
  units: "inch",
  dimensions: { "shaft nominal": "2.4375 in" },
  instruments: {
    mic: { title: "micrometer", resolution: "0.0001 in", repeatability: "0.0001 in" },
    rule: { title: "rule", resolution: "1/64 in", repeatability: "0.01 in" },
  },
});
const folderWithSurvey = (): string =>
  temporaryFolder({ "rebuild.json": rebuildJson, "tables/shaft-survey.csv": survey, "sheets/notes.txt": "" });

describe("openRebuild(options)", () => {
  it("finds the rebuild above the sheet's folder", () => {
    const folder = folderWithSurvey();
    setSession({ directory: join(folder, "sheets"), sheet: "04-shaft-survey" });
    const rebuild = openRebuild();
    expect(rebuild.directory).toBe(folder);
    expect(rebuild.notice).toBe("");
    expect(rebuild.tables).toEqual(["shaft-survey"]);
    expect(rebuild.length("shaft nominal").in("inch")).toBe(2.4375);
  });
  it("opens the demo and says so where no rebuild lies above", () => {
    setSession({ directory: temporaryFolder() });
    const rebuild = openRebuild();
    expect(rebuild.notice).toMatch(/demo rebuild with invented readings/);
    expect(rebuild.facts.invented).toBe(true);
  });
  it("shows quantities in the rebuild's unit system from then on", () => {
    openRebuild({ folder: folderWithSurvey() });
    expect(String(inch(1).plus(inch(1)))).toBe("2 in");
  });
  it("says which tables and dimensions there are when one is asked for that is not", () => {
    const rebuild = openRebuild({ folder: folderWithSurvey() });
    expect(() => rebuild.table("survey")).toThrow(/no tables\/survey\.csv .* there is shaft-survey/);
    expect(() => rebuild.length("bore")).toThrow(/no "bore".*given are shaft nominal/);
    expect(rebuild.lengthIfGiven("bore")).toBeUndefined();
    expect(() => openRebuild({ folder: temporaryFolder() })).toThrow(/no rebuild\.json/);
  });
});

describe("rebuild.tableIfGiven(name)", () => {
  const header = "station [in], diameter [in]\n";
  const open = (files: Record<string, string>) =>
    openRebuild({
      folder: temporaryFolder({ "rebuild.json": rebuildJson, ...files }),
      sheet: "04-shaft-survey",
    });

  it("is undefined while there is no file, or nothing under its header", () => {
    expect(open({}).tableIfGiven("t")).toBeUndefined();
    expect(open({ "tables/t.csv": `# by: AB\n${header}\n` }).tableIfGiven("t")).toBeUndefined();
    expect(open({ "tables/t.csv": `${header}1, 2.4\n` }).tableIfGiven("t")!.rowCount).toBe(1);
  });
  it("is undefined for nothing else: a fault stays a fault", () => {
    for (const text of [
      "",
      "station, diameter [in]\n",
      `# instrument diameter: tape\n${header}`,
      `${header}1, 2.4O\n`,
    ])
      expect(() => open({ "tables/t.csv": text }).tableIfGiven("t"), text).toThrow(TableFaults);
  });
  it("notes what it found, so that readings that come later make the sheet stale", () => {
    const rebuild = open({ "tables/t.csv": header });
    rebuild.tableIfGiven("t");
    rebuild.tableIfGiven("u");
    rebuild.publish({ x: 1 });
    const { inputs } = readReads(rebuild.directory, "04-shaft-survey");
    expect(inputs["tables/t.csv"]).toBe(fileHash(join(rebuild.directory, "tables/t.csv")));
    expect(inputs["tables/u.csv"]).toBeNull();
  });
});

describe("rebuild.publish(results) and rebuild.recall(name, kind)", () => {
  const wearOf = (rebuild: ReturnType<typeof openRebuild>) =>
    wearBands(profileOf(rebuild.table("shaft-survey")), { nominal: rebuild.length("shaft nominal") });

  it("hand a result from one sheet to the next, the same to the last bit", () => {
    const folder = folderWithSurvey();
    const first = openRebuild({ folder, sheet: "04-shaft-survey" });
    const wear = wearOf(first);
    const published = first.publish({ wear });
    expect(published).toMatchObject({ names: ["wear"], sheet: "04-shaft-survey" });
    const recalled = openRebuild({ folder, sheet: "05-taper" }).recall("wear", "wear bands");
    expect(canonicalJson(storeValue(recalled))).toBe(canonicalJson(storeValue(wear)));
    expect(recalled.bands[0]!.diameter.value.si).toBe(wear.bands[0]!.diameter.value.si);
  });
  it("record the hashes of what was read, the versions, and what was recalled", () => {
    const folder = folderWithSurvey();
    const first = openRebuild({ folder, sheet: "04" });
    first.publish({ wear: wearOf(first) });
    const second = openRebuild({ folder, sheet: "05" });
    second.publish({ again: second.recall("wear", "wear bands") });
    const read = (sheet: string) => JSON.parse(readFileSync(join(folder, "record", `${sheet}.json`), "utf8"));
    expect(Object.keys(read("04").inputs)).toEqual(["rebuild.json", "tables/shaft-survey.csv"]);
    expect(read("04").inputs["tables/shaft-survey.csv"]).toMatch(/^[0-9a-f]{64}$/);
    expect(Object.keys(read("05").recalled)).toEqual(["04: wear"]);
    expect(read("05").versions.node).toBe(process.versions.node);
  });
  it("write the same bytes for the same readings", () => {
    const folder = folderWithSurvey();
    const write = (): string => {
      const rebuild = openRebuild({ folder, sheet: "04" });
      rebuild.publish({ wear: wearOf(rebuild) });
      return readFileSync(join(folder, "record", "04.json"), "utf8");
    };
    expect(write()).toBe(write());
  });
  it("say what is missing, of another kind, or taken", () => {
    const folder = folderWithSurvey();
    const rebuild = openRebuild({ folder, sheet: "04" });
    expect(() => rebuild.recall("wear", "wear bands")).toThrow(
      /no sheet has published "wear".*published are none/,
    );
    rebuild.publish({ wear: wearOf(rebuild) });
    expect(() => rebuild.recall("wear", "taper")).toThrow(/from sheet 04 is of kind wear bands, not taper/);
    const other = openRebuild({ folder, sheet: "05" });
    expect(() => other.publish({ wear: wearOf(other) })).toThrow(/already published by sheet 04/);
    expect(() => openRebuild({ folder }).publish({ x: 1 })).toThrow(/does not tell which sheet is running/);
    expect(() => rebuild.publish({})).toThrow(/nothing was given/);
  });
});
