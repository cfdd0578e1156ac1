import { cpSync, readFileSync, rmSync, unlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { runRebuild } from "../../kernel-helpers/notebook/run-rebuild.js";
import {
  filesOfRebuild,
  manifestFile,
  tagManifestFile,
  templateFolder,
  verifyRebuild,
} from "../../kernel-helpers/record/index.js";
import { ensureBuilt } from "../support/built.js";
import { temporaryFolder } from "../support/temporary-folder.js";

// The demo, run: survey, taper (which takes over from the survey) and handover (which takes over from both).
let demo: string;

beforeAll(async () => {
  await ensureBuilt();
  demo = temporaryFolder();
  for (const part of ["rebuild.json", "tables"])
    cpSync(join(templateFolder(), "demo", part), join(demo, part), { recursive: true });
  for (const sheet of ["04-shaft-survey", "05-taper", "12-handover"])
    cpSync(join(templateFolder(), `${sheet}.ipynb`), join(demo, "sheets", `${sheet}.ipynb`));
  await runRebuild({ directory: demo });
}, 240_000);

/** The same reading with its digit one further: never the same digit. */
const otherDigit = (digit: string): string => String((Number(digit) + 1) % 10);

/** Changes each digit of a file in turn (every one, or one in so many), and tells how often. */
function mutateDigits(file: string, oneIn: number, check: (line: number) => void): number {
  const path = join(demo, file);
  const text = readFileSync(path, "utf8");
  const places = [...text.matchAll(/\d/g)].map(({ index }) => index).filter((_, i) => i % oneIn === 0);
  try {
    for (const place of places) {
      writeFileSync(path, text.slice(0, place) + otherDigit(text[place]!) + text.slice(place + 1));
      check(text.slice(0, place).split("\n").length);
    }
  } finally {
    writeFileSync(path, text);
  }
  return places.length;
}

// With JOURNALBOX_EVERY_DIGIT=1 every digit is tried of tables and rebuild.json (2897 of them when this was written), of
// records, kept copies and manifests (20 912), and one in 997 of the outputs: all were found, in the right file. The same on
// all twelve sheets of the demo, by hand: every digit of tables and rebuild.json (2897, each with its line or parameter), one
// in 11 of the records (8047) and one in 997 of the outputs (1669): none was missed.
const all = process.env.JOURNALBOX_EVERY_DIGIT === "1";

describe("verifyRebuild(directory)", () => {
  it("finds nothing in a rebuild as its run left it", () => {
    const { files, findings } = verifyRebuild(demo);
    expect(findings).toEqual([]);
    expect(files).toBe(filesOfRebuild(demo).length);
  });

  it("finds a change of any single digit in a table or rebuild.json, and names file and line or parameter", () => {
    let tried = 0;
    for (const file of filesOfRebuild(demo).filter(
      (path) => path.startsWith("tables/") || path === "rebuild.json",
    ))
      tried += mutateDigits(file, all ? 1 : 13, (line) => {
        const { findings } = verifyRebuild(demo);
        expect(findings.map((finding) => finding.file)).toEqual([file]);
        // Tables that no sheet reads are not kept: that they changed is known, and not where.
        const kept = /shaft-survey|taper-survey/.test(file);
        if (kept) expect(findings[0]!.changes.map((change) => change.line)).toEqual([line]);
        if (file === "rebuild.json") expect(findings[0]!.changes.length).toBeGreaterThan(0);
      });
    expect(tried).toBeGreaterThan(all ? 1500 : 100);
    if (all) console.log(`${tried} digits of tables and rebuild.json`);
  }, 600_000);

  it("finds a change of a single digit in a record, a kept copy or a manifest, and names the file", () => {
    let tried = 0;
    const files = [
      ...filesOfRebuild(demo).filter((path) => path.startsWith("record/")),
      manifestFile,
      tagManifestFile,
    ];
    for (const file of files)
      tried += mutateDigits(file, all ? 1 : 151, () => {
        const { findings } = verifyRebuild(demo);
        const altered = findings.filter(({ what }) => what !== "does not fit");
        expect([...new Set(altered.map((finding) => finding.file))]).toEqual([file]);
      });
    expect(tried).toBeGreaterThan(all ? 18_000 : 110);
    if (all) console.log(`${tried} digits of records, copies and manifests`);
  }, 600_000);

  it("finds a change of a single digit in an executed notebook or the report, and names the file", () => {
    let tried = 0;
    for (const file of filesOfRebuild(demo).filter((path) => path.startsWith("out/")))
      tried += mutateDigits(file, all ? 997 : 29_989, () => {
        expect(verifyRebuild(demo).findings.map((finding) => finding.file)).toEqual([file]);
      });
    expect(tried).toBeGreaterThan(all ? 500 : 15);
    if (all) console.log(`${tried} digits of outputs`);
  }, 600_000);

  it("names the cell of an executed notebook that was altered, has come or has gone", () => {
    const folder = temporaryFolder();
    cpSync(demo, folder, { recursive: true });
    const path = join(folder, "out/05-taper.ipynb");
    const left = readFileSync(path, "utf8");
    const told = (
      alter: (notebook: { cells: { id: string; source: string[] }[]; metadata: object }) => void,
    ): string => {
      const notebook = JSON.parse(left);
      alter(notebook);
      writeFileSync(path, JSON.stringify(notebook));
      return verifyRebuild(folder).findings[0]!.text;
    };
    const fit = JSON.parse(left).cells.findIndex(({ id }: { id: string }) => id === "fit");
    expect(told(({ cells }) => void cells[fit]!.source.push("\n"))).toBe(
      "out/05-taper.ipynb was altered after the last run: cell fit: it is not as the run left it.",
    );
    expect(told(({ cells }) => void cells.splice(fit, 1))).toMatch(/: cell fit: it has gone\.$/);
    expect(told(({ cells }) => void cells.push({ ...cells[fit]!, id: "more" }))).toMatch(
      /: cell more: it has come\.$/,
    );
    expect(told(({ metadata }) => void Object.assign(metadata, { other: 1 }))).toMatch(
      /, outside its cells: /,
    );
    expect(told((notebook) => void Object.assign(notebook, { metadata: {} }))).toBe(
      "out/05-taper.ipynb was altered after the last run.",
    );
  });

  it("finds what has gone and what has come", () => {
    const folder = temporaryFolder();
    cpSync(demo, folder, { recursive: true });
    unlinkSync(join(folder, "tables/taper-survey.csv"));
    writeFileSync(join(folder, "tables/other.csv"), "station [in]\n1\n");
    expect(verifyRebuild(folder).findings.map(({ file, what }) => [file, what])).toEqual([
      ["tables/taper-survey.csv", "missing"],
      ["tables/other.csv", "added"],
    ]);
  });

  it("finds text changed in a sheet to be text only, and code changed by its cell", () => {
    const folder = temporaryFolder();
    cpSync(demo, folder, { recursive: true });
    const path = join(folder, "sheets/05-taper.ipynb");
    const text = readFileSync(path, "utf8");
    writeFileSync(path, text.replace("What taper is it", "Which taper is it"));
    expect(verifyRebuild(folder).findings[0]!.text).toMatch(/in its text or form only/);
    writeFileSync(
      path,
      text.replace(
        "const taper = fitTaper(profileOf(readings));",
        "const taper = fitTaper(profileOf(readings), {});",
      ),
    );
    expect(verifyRebuild(folder).findings[0]!.text).toMatch(
      /cell fit: “const taper = .*” became “const taper = /,
    );
  });

  it("compares what records say of their inputs and of each other where there is no manifest", () => {
    const folder = temporaryFolder();
    cpSync(demo, folder, { recursive: true });
    rmSync(join(folder, manifestFile));
    const table = join(folder, "tables/taper-survey.csv");
    writeFileSync(table, readFileSync(table, "utf8").replace("2.1407", "2.1417"));
    const record = join(folder, "record/04-shaft-survey.json");
    const wear = readFileSync(record, "utf8");
    writeFileSync(
      record,
      wear.replace(/"degreesOfFreedom": (\d)/, (_, digit) => `"degreesOfFreedom": ${otherDigit(digit)}`),
    );
    const texts = verifyRebuild(folder).findings.map((finding) => finding.text);
    expect(texts[0]).toMatch(/There is no manifest/);
    expect(texts.join("\n")).toMatch(
      /tables\/taper-survey\.csv is not what record\/05-taper\.json was computed from: line \d+, diameter: 2\.1407 became 2\.1417/,
    );
    expect(texts.join("\n")).toMatch(
      /record\/05-taper\.json took over “wear” from 04-shaft-survey, and that is another by now/,
    );
  });
});
