import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { inch } from "../../kernel-helpers/quantity/index.js";
import {
  codeHash,
  forgetReads,
  type Handover,
  noteShown,
  openRebuild,
  type Rebuild,
  resetSession,
  sealSheet,
  setSession,
  sheetStates,
} from "../../kernel-helpers/record/index.js";
import { present } from "../../kernel-helpers/view/present.js";
import { renderText } from "../../kernel-helpers/view/render-text.js";
import { temporaryFolder } from "../support/temporary-folder.js";

afterEach(() => resetSession());

const table = "station [in],diameter [in]\n1,2.4375\n2,2.4370\n";
const cells = [{ cell_type: "code", id: "open", source: "openRebuild()" }];
const sheets = ["01", "02", "12"].map((name) => ({ name, code: codeHash(cells) }));

function run<T>(folder: string, sheet: string, work: (rebuild: Rebuild) => T): T {
  resetSession();
  forgetReads(folder, sheet);
  setSession({ directory: folder, sheet });
  const result = work(openRebuild());
  sealSheet(folder, { sheet, status: "ok", cells });
  return result;
}

/** Two sheets that hand over, the second of which stands on the first. */
function rebuildFolder({ hours = 4, breaks = [] as string[] } = {}): string {
  const folder = temporaryFolder({
    "rebuild.json": '{ "schema": 1, "title": "Test shaft", "units": "inch" }',
    "tables/a.csv": table,
    ...Object.fromEntries(["01", "02", "12"].map((name) => [`sheets/${name}.ipynb`, "{}"])),
  });
  decide(folder, hours, breaks);
  return folder;
}

function decide(folder: string, hours: number, breaks: readonly string[]): void {
  run(folder, "01", (rebuild) => {
    rebuild.table("a");
    noteShown({}, [{ type: "caution", title: "Hot metal", points: ["Keep water away."] }]);
    rebuild.note({ open: [{ what: "which way does the nut turn?", waitsFor: "cleaning" }] });
    rebuild.publish({ made: { kind: "taper", hours } });
  });
  run(folder, "02", (rebuild) => {
    rebuild.recall("made", "taper");
    noteShown({}, [{ type: "caution", title: "Hot metal", points: ["Keep water away."] }]);
    rebuild.note({ parts: [{ what: "key", size: inch(0.5) }], measure: ["bore of the hub"] });
    try {
      rebuild.decide({
        name: "shaft",
        question: "What becomes of it?",
        options: [{ name: "leave it", figures: { hours }, breaks }],
        choice: "leave it",
        reason: "sound",
        by: "AB",
        on: "2026-05-04",
      });
    } catch {
      // refused, and on record as such
    }
  });
}

const handover = (folder: string): Handover => run(folder, "12", (rebuild) => rebuild.handover());
const textOf = (value: unknown): string => renderText(present(value)!);

describe("rebuild.handover()", () => {
  it("collects decisions, notes and cautions of the other sheets, each with its sheet, cautions once", () => {
    const { book, lists, cautions, sheets: ended, standings } = handover(rebuildFolder());
    expect(book.decisions).toMatchObject([{ kind: "decision", name: "shaft", sheet: "02" }]);
    expect(lists.open).toEqual([{ what: "which way does the nut turn?", waitsFor: "cleaning", sheet: "01" }]);
    expect(lists.parts).toMatchObject([{ what: "key", sheet: "02" }]);
    expect(lists.parts[0]!.size).toMatchObject({ si: inch(0.5).si });
    expect(lists.measure).toEqual([{ what: "bore of the hub", sheet: "02" }]);
    expect(cautions.cautions).toEqual([
      { title: "Hot metal", points: ["Keep water away."], sheets: ["01", "02"] },
    ]);
    expect(ended).toEqual([
      { name: "01", ended: "ran through" },
      { name: "02", ended: "ran through" },
    ]);
    expect(standings.map(({ of, holds }) => [of, holds])).toEqual([
      ["01", true],
      ["02", true],
      ["shaft", true],
    ]);
  });
  it("says which record and decision do not stand on the files as they are, and because of which reading", () => {
    const folder = rebuildFolder();
    writeFileSync(join(folder, "tables/a.csv"), table.replace("2.4370", "2.4380"));
    const { standings } = handover(folder);
    expect(standings.find(({ of }) => of === "01")).toEqual({
      of: "01",
      holds: false,
      text: "Not any more: tables/a.csv has changed (line 3, diameter: 2.4370 became 2.4380).",
    });
    expect(standings.find(({ of }) => of === "shaft")!.text).toMatch(
      /^Its figures are as they were, though tables\/a\.csv/,
    );
  });
  it("says which decision stands on figures that have moved, and which was refused", () => {
    const moved = rebuildFolder();
    decide(moved, 5, []);
    expect(handover(moved).standings.find(({ of }) => of === "shaft")).toMatchObject({
      holds: false,
      text: expect.stringMatching(/^Its figures have moved since it was decided/),
    });
    const refused = rebuildFolder({ breaks: ["the limit of 3 hours"] });
    expect(handover(refused).book).toMatchObject({
      decisions: [],
      refused: [{ sheet: "02", name: "shaft", why: expect.stringMatching(/the limit of 3 hours/) }],
    });
  });
  it("is stale as soon as another sheet hands over something else", () => {
    const folder = rebuildFolder();
    handover(folder);
    expect(sheetStates(folder, sheets).map(({ state }) => state)).toEqual(["fresh", "fresh", "fresh"]);
    decide(folder, 5, []);
    expect(sheetStates(folder, sheets)[2]).toEqual({
      name: "12",
      state: "stale",
      why: "Since the last run what other sheets hand over has changed.",
    });
  });
});

describe("present(handover) and its parts", () => {
  it("tell what there is and what is to be done", () => {
    const all = handover(rebuildFolder());
    expect(textOf(all)).toMatch(
      /worksheets\s+2 of 2 ran through[\s\S]*decisions\s+1[\s\S]*YES: all on record stands/,
    );
    expect(textOf(all.book)).toMatch(/What becomes of it\? \(shaft, in 02\)[\s\S]*leave it \(chosen\)/);
    expect(textOf(all.lists)).toMatch(/which way does the nut turn\?\s+cleaning\s+01/);
    expect(textOf(all.cautions)).toMatch(/Hot metal \(01, 02\)/);
  });
  it("say so where there is nothing", () => {
    const folder = temporaryFolder({
      "rebuild.json": '{ "schema": 1, "title": "T", "units": "inch" }',
      "sheets/12.ipynb": "{}",
    });
    const all = handover(folder);
    expect(textOf(all)).toMatch(/none is on record yet[\s\S]*CANNOT TELL YET/);
    expect(textOf(all.book)).toMatch(/No decision is on record yet/);
    expect(textOf(all.lists)).toMatch(/No sheet has noted anything yet/);
    expect(textOf(all.cautions)).toMatch(/No sheet has shown a caution yet/);
  });
});
