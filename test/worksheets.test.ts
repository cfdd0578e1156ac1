import { cpSync, existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { readNotebook } from "../kernel-helpers/notebook/file/notebook-file.js";
import { notebookJson } from "../kernel-helpers/notebook/file/notebook-json.js";
import { type RebuildRun, runRebuild } from "../kernel-helpers/notebook/run-rebuild.js";
import { failureText } from "../kernel-helpers/notebook/runner/failure-text.js";
import { inch, type Length, mm } from "../kernel-helpers/quantity/index.js";
import { findSheets, templateFolder } from "../kernel-helpers/record/find-sheets.js";
import { filesOfRebuild } from "../kernel-helpers/record/index.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import type { TaperFit, TaperIdentity, WearBands } from "../kernel-helpers/survey/index.js";
import { ensureBuilt } from "./support/built.js";
import { expectClose } from "./support/expect-close.js";
import { copyOfDemo, copyOfDemoRun } from "./support/run-demo.js";
import { temporaryFolder } from "./support/temporary-folder.js";

// What the invented readings were made from: the truth the worksheets have to find again.
const truths = [
  {
    demo: "demo",
    length: inch,
    asMade: 2.4372,
    wornFrom: [5, 58],
    wornTo: [14, 67],
    grossLine: 26,
    tapers: ["3/4 in per foot", "1:16"],
    asMadeBound: 0.0003,
  },
  {
    demo: "demo-metric",
    length: mm,
    asMade: 59.985,
    wornFrom: [40, 280],
    wornTo: [130, 370],
    grossLine: 66,
    tapers: ["1:10"],
    asMadeBound: 0.01,
  },
] as const;

describe.each(truths)("the worksheets on $demo", (truth) => {
  let folder: string;
  let run: RebuildRun;
  let wear: WearBands;

  beforeAll(async () => {
    await ensureBuilt();
    folder = copyOfDemo(truth.demo);
    run = await runRebuild({ directory: folder });
    const failed = run.results.filter(({ status }) => status === "failed");
    if (failed.length > 0) throw new Error(failed.map(failureText).join("\n"));
    wear = published("04-shaft-survey", "wear") as WearBands;
  }, 240_000);

  const published = (sheet: string, name: string): unknown => {
    const record = readSheetRecord(folder, sheet);
    if (record === undefined) throw new Error(`${sheet} left no record`);
    return publishedValue(record, name);
  };

  it("all run, from a clean kernel, without a word on the error output", () => {
    // In the order of what they take over from each other, which need not be that of their names.
    const byName = [...run.results].sort((a, b) => (a.sheet < b.sheet ? -1 : 1));
    expect(byName.map(({ sheet, status, stderr }) => ({ sheet, status, stderr }))).toEqual(
      findSheets(folder).map(({ name }) => ({ sheet: name, status: "ok", stderr: "" })),
    );
    expect(run.results.length).toBeGreaterThanOrEqual(2);
  });

  it("find the two worn stretches the readings were made with, and the slip of one turn", () => {
    const worn = wear.bands.filter(({ state }) => state === "worn");
    const at = (length: Length): number => length.si / truth.length(1).si;
    expect(worn.length).toBe(2);
    worn.forEach((band, i) => {
      expect(at(band.from)).toBeGreaterThan(truth.wornFrom[i]!);
      expect(at(band.to)).toBeLessThan(truth.wornTo[i]!);
    });
    expect(wear.gross.map(({ reading }) => wear.profile.readings[reading]!.line)).toEqual([truth.grossLine]);
    expect(wear.gross[0]!.likely).toMatch(/one turn of the thimble/);
  });

  it("find the diameter the shaft was made to within its stated uncertainty", () => {
    for (const band of wear.bands.filter(({ state }) => state === "as made"))
      expectClose(band.diameter.value.si, truth.length(truth.asMade).si, {
        abs: truth.length(truth.asMadeBound).si,
        because: "three times the expanded uncertainty the demo's instruments allow a band",
      });
  });

  it("name the taper the readings were made with among those they allow", () => {
    const identity = published("05-taper", "identity") as TaperIdentity;
    const agreeing = identity.matches.filter(({ agrees }) => agrees).map(({ name }) => name);
    expect(agreeing).toEqual(expect.arrayContaining([...truth.tapers]));
    const taper = published("05-taper", "taper") as TaperFit;
    expect(taper.method).toBe("errors in both");
  });

  it("leave a report that stands alone: every address in it is inside it", () => {
    const html = readFileSync(run.report, "utf8");
    expect(html).toContain(run.facts.title);
    const fetched = html.match(
      /<(?:script|link|img|iframe|source|video|audio)\b[^>]*?(?:src|href)="(?!data:|#)[^"]*"/g,
    );
    expect(fetched).toBeNull();
    expect(html).not.toContain(folder);
  });

  it("give the same bytes when they are run in another folder", async () => {
    const other = await copyOfDemoRun(truth.demo);
    const files = filesOfRebuild(folder).filter((file) => /^(?:record|out)\//.test(file));
    expect(files.length).toBeGreaterThan(2 * run.results.length);
    for (const file of files)
      expect(readFileSync(join(folder, file)).equals(readFileSync(join(other, file))), file).toBe(true);
  }, 240_000);
});

describe.each(findSheets(join(templateFolder(), "demo")))("$name", ({ path }) => {
  it("is in the canonical form, so that a diff shows a change of thought and nothing else", () => {
    expect(readFileSync(path, "utf8")).toBe(notebookJson(readNotebook(path)));
  });
  it("holds cells of a few lines, named in words, and no outputs", () => {
    for (const cell of readNotebook(path).cells) {
      expect(cell.id).toMatch(/^[a-z]+(-[a-z0-9]+)*$/);
      if (cell.cell_type !== "code") continue;
      expect(cell.outputs).toEqual([]);
      expect(cell.source.split("\n").filter((line) => line.trim() !== "").length).toBeLessThanOrEqual(6);
    }
  });
});

describe("a rebuild whose sheet fails", () => {
  it("still leaves the executed notebook and a report that says where and why", async () => {
    const folder = temporaryFolder({ "tables/shaft-survey.csv": "station [in], diameter\n1, 2.5\n" });
    cpSync(join(templateFolder(), "demo", "rebuild.json"), join(folder, "rebuild.json"));
    const sheet = "04-shaft-survey.ipynb";
    cpSync(join(templateFolder(), sheet), join(folder, "sheets", sheet));
    const run = await runRebuild({ directory: folder });
    expect(run.results[0]!.status).toBe("failed");
    expect(run.results[0]!.error!.message).toMatch(/shaft-survey\.csv line 1.*unit/s);
    expect(existsSync(run.results[0]!.path!)).toBe(true);
    expect(readFileSync(run.report, "utf8")).toMatch(/shaft-survey\.csv line 1/);
  }, 60_000);
});
