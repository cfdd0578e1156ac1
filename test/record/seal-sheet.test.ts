import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import {
  filesOfRebuild,
  forgetReads,
  manifestFile,
  noteShown,
  openRebuild,
  readManifest,
  readOutcome,
  readSheetRecord,
  resetSession,
  sealSheet,
  setSession,
  sheetStates,
  tagManifestFile,
  writeManifest,
} from "../../kernel-helpers/record/index.js";
import { dropUnused } from "../../kernel-helpers/record/kept-inputs.js";
import { codeHash } from "../../kernel-helpers/record/sheet-code.js";
import { temporaryFolder } from "../support/temporary-folder.js";

afterEach(() => resetSession());

const table = "station [in],diameter [in]\n1,2.4375\n2,2.4370\n";
const rebuildFolder = (): string =>
  temporaryFolder({
    "rebuild.json": '{ "schema": 1, "title": "T", "units": "inch" }',
    "tables/a.csv": table,
    "sheets/01.ipynb": "{}",
  });
const cells = [{ cell_type: "code", id: "open", source: "openRebuild()" }];
const decision = {
  name: "shaft",
  question: "?",
  options: [{ name: "leave it", figures: {}, breaks: [] }],
  choice: "leave it",
  reason: "sound",
  by: "AB",
  on: "2026-05-04",
};

/** A run of a sheet as the kernel and the runner make it. */
function run(
  folder: string,
  work: (rebuild: ReturnType<typeof openRebuild>) => void,
  status: "ok" | "failed" = "ok",
) {
  resetSession();
  forgetReads(folder, "01");
  setSession({ directory: folder, sheet: "01" });
  work(openRebuild());
  sealSheet(folder, { sheet: "01", status, cells });
  writeManifest(folder, "written");
  return readSheetRecord(folder, "01");
}

describe("sealSheet(directory, run)", () => {
  it("writes the code as run, all that was read, cautions and sources into the record, also of a sheet that hands on nothing", () => {
    const folder = rebuildFolder();
    const record = run(folder, (rebuild) => {
      rebuild.table("a");
      const blocks = [{ type: "caution", title: "Hot metal", points: ["Keep water away."] }];
      noteShown({ deep: [{ source: "ISO 1:2022" }] }, blocks);
      noteShown({ source: "ISO 1:2022" }, blocks);
    })!;
    expect(record.ended).toBe("ran through");
    expect(Object.keys(record.inputs)).toEqual(["rebuild.json", "tables/a.csv"]);
    expect(record.cautions).toEqual([{ title: "Hot metal", points: ["Keep water away."] }]);
    expect(record.sources).toEqual(["ISO 1:2022"]);
    expect(readFileSync(join(folder, `record/inputs/01.${record.code!.slice(0, 12)}.ts`), "utf8")).toBe(
      "// %% open\nopenRebuild()\n",
    );
  });
  it("notes no executed notebook while that of this run is still to come, though an older one lies there", () => {
    const folder = rebuildFolder();
    mkdirSync(join(folder, "out"), { recursive: true });
    writeFileSync(join(folder, "out/01.ipynb"), "{}");
    run(folder, () => {});
    const written = readOutcome(folder, "01")!.output;
    expect(written).toMatch(/^[0-9a-f]{64}$/);
    sealSheet(folder, { sheet: "01", status: "ok", cells, output: "to come" });
    expect(readOutcome(folder, "01")!.output).toBeNull();
    sealSheet(folder, { sheet: "01", status: "ok", cells, output: "written" });
    expect(readOutcome(folder, "01")!.output).toBe(written);
  });
  it("drops what a later run does not hand on any more, and keeps its decisions as withdrawn", () => {
    const folder = rebuildFolder();
    run(folder, (rebuild) => {
      rebuild.publish({ x: 1 });
      rebuild.decide(decision);
    });
    expect(readSheetRecord(folder, "01")!.decisions.shaft!.withdrawn).toBeUndefined();
    const later = run(folder, () => {})!;
    expect(later.published).toEqual({});
    expect(later.decisions.shaft).toMatchObject({ choice: "leave it", withdrawn: true });
    expect(run(folder, (rebuild) => rebuild.decide(decision))!.decisions.shaft!.withdrawn).toBeUndefined();
  });
  it("leaves decisions alone when a run failed before it came to them", () => {
    const folder = rebuildFolder();
    run(folder, (rebuild) => rebuild.decide(decision));
    const failed = run(folder, (rebuild) => rebuild.publish({ x: 1 }), "failed")!;
    expect(failed.ended).toBe("failed");
    expect(failed.decisions.shaft!.withdrawn).toBeUndefined();
  });
  it("gives a decision the code it was made by, and leaves it that when the code changes", () => {
    const folder = rebuildFolder();
    const first = run(folder, (rebuild) => rebuild.decide(decision))!;
    expect(first.decisions.shaft!.basis.code).toEqual({ "01": first.code });
    cells.push({ cell_type: "code", id: "more", source: "2" });
    const second = run(folder, (rebuild) => rebuild.decide(decision))!;
    cells.pop();
    expect(second.code).not.toBe(first.code);
    expect(second.decisions.shaft!.basis.code).toEqual({ "01": first.code });
  });
  it("lets a stale sheet name the row that changed", () => {
    const folder = rebuildFolder();
    run(folder, (rebuild) => rebuild.table("a"));
    writeFileSync(join(folder, "tables/a.csv"), table.replace("2.4370", "2.4380"));
    expect(sheetStates(folder, [{ name: "01", code: codeHash(cells) }])[0]!.why).toBe(
      "Since the last run tables/a.csv has changed (line 3, diameter: 2.4370 became 2.4380).",
    );
  });
});

describe("the manifest", () => {
  const twoRuns = (): string => {
    const folder = rebuildFolder();
    run(folder, (rebuild) => rebuild.publish({ x: 1 }));
    return folder;
  };
  it("holds every file but itself and the notes on states, in the form of sha256sum", () => {
    const folder = twoRuns();
    const { files, fault } = readManifest(folder)!;
    expect(fault).toBeUndefined();
    expect([...files.keys()]).toEqual(filesOfRebuild(folder));
    expect([...files.keys()].map((path) => path.replace(/\.[0-9a-f]{12}\./, "."))).toEqual([
      "rebuild.json",
      "record/01.json",
      "record/inputs/01.ts",
      "record/inputs/rebuild.json",
      "sheets/01.ipynb",
      "tables/a.csv",
    ]);
    expect(readFileSync(join(folder, manifestFile), "utf8")).toMatch(/^([0-9a-f]{64} {2}\S+\n)+$/);
  });
  it("does not take over an alteration of a record when another sheet is run", () => {
    const folder = twoRuns();
    const before = readManifest(folder)!.files.get("record/01.json");
    const path = join(folder, "record/01.json");
    writeFileSync(path, readFileSync(path, "utf8").replace('"x": 1', '"x": 2'));
    writeManifest(folder, "written");
    expect(readManifest(folder)!.files.get("record/01.json")).toBe(before);
  });
  it("tells when it was altered itself, or what vouches for it", () => {
    for (const file of [manifestFile, tagManifestFile]) {
      const folder = twoRuns();
      const path = join(folder, file);
      writeFileSync(
        path,
        readFileSync(path, "utf8").replace(/[0-9]/, (digit) => String((Number(digit) + 1) % 10)),
      );
      expect(readManifest(folder)!.fault).toMatch(/altered/);
    }
  });
});

describe("dropUnused(directory, used, now)", () => {
  it("removes copies nothing refers to once they have lain for an hour", () => {
    const folder = rebuildFolder();
    const record = run(folder, () => {})!;
    const code = `record/inputs/01.${record.code!.slice(0, 12)}.ts`;
    const others = filesOfRebuild(folder).filter(
      (file) => file.startsWith("record/inputs/") && file !== code,
    );
    dropUnused(folder, new Set(others), Date.now());
    expect(existsSync(join(folder, code))).toBe(true);
    dropUnused(folder, new Set(others), Date.now() + 2 * 3_600_000);
    expect(existsSync(join(folder, code))).toBe(false);
    expect(others.every((file) => existsSync(join(folder, file)))).toBe(true);
  });
});
