import { cpSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { auditRebuild } from "../../../kernel-helpers/notebook/audit/audit-rebuild.js";
import { runRebuild } from "../../../kernel-helpers/notebook/run-rebuild.js";
import { templateFolder } from "../../../kernel-helpers/record/index.js";
import type { Audit } from "../../../kernel-helpers/view/results/audit-types.js";
import { ensureBuilt } from "../../support/built.js";
import { expectClose } from "../../support/expect-close.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

/** A notebook of code cells, given by id. */
function notebook(cells: Readonly<Record<string, string>>): string {
  return JSON.stringify({
    nbformat: 4,
    nbformat_minor: 5,
    metadata: {},
    cells: Object.entries(cells).map(([id, source]) => ({
      cell_type: "code",
      id,
      metadata: {},
      execution_count: null,
      outputs: [],
      source,
    })),
  });
}

const decideSheet = notebook({
  open: 'import { deepestBand, inch, openRebuild } from "journalbox";\nconst rebuild = openRebuild();\nconst wear = rebuild.recall("wear", "wear bands");',
  options:
    'const { diameter, from, to } = deepestBand(wear);\nconst there = wear.profile.readings.filter(({ station }) => station >= from && station <= to);\nconst smallest = there.reduce((least, one) => (one.diameter < least.diameter ? one : least));\nconst limit = inch(2.4315);\nconst low = smallest.diameter < limit ? ["the smallest reading is below 2.4315 in"] : [];',
  decide:
    'rebuild.decide({ name: "shaft", question: "What becomes of the journal?", choice: "turn down", reason: "enough is left", by: "AB", on: "2026-05-04", limits: { smallest: limit },\n  options: [{ name: "turn down", figures: { "worn band": diameter, "smallest reading": smallest.diameter }, breaks: low }, { name: "sleeve", figures: { days: 3 }, breaks: [] }] })',
});

const change = (folder: string, file: string, from: string | RegExp, to: string): void => {
  const path = join(folder, file);
  const before = readFileSync(path, "utf8");
  const after = before.replace(from, to);
  if (after === before) throw new Error(`${file}: nothing to change`);
  writeFileSync(path, after);
};

let asRun: string;
const copy = (): string => {
  const folder = temporaryFolder();
  cpSync(asRun, folder, { recursive: true });
  return folder;
};
const audit = (folder: string, options: { explain?: boolean; rerun?: boolean } = {}): Promise<Audit> =>
  auditRebuild({ directory: folder, ...options });

beforeAll(async () => {
  await ensureBuilt();
  asRun = temporaryFolder({ "sheets/06-decide.ipynb": decideSheet });
  for (const part of ["rebuild.json", "tables"])
    cpSync(join(templateFolder(), "demo", part), join(asRun, part), { recursive: true });
  cpSync(join(templateFolder(), "04-shaft-survey.ipynb"), join(asRun, "sheets", "04-shaft-survey.ipynb"));
  const { results } = await runRebuild({ directory: asRun });
  expect(results.map(({ status }) => status)).toEqual(["ok", "ok"]);
}, 240_000);

describe("auditRebuild(options)", () => {
  it("finds that all is as it was left, and the decision stands", async () => {
    const { files, decisions, results, failed } = await audit(asRun);
    expect(files.findings).toEqual([]);
    expect(files.compared).toBeGreaterThan(10);
    expect(decisions).toMatchObject([{ name: "shaft", verdict: "stands", moved: [], because: [] }]);
    expect([results, failed]).toEqual([[], []]);
  });

  it("says of one reading changed by a thousandth what moved, by how much against its uncertainty, because of which reading, and that the choice stands", async () => {
    const folder = copy();
    change(folder, "tables/shaft-survey.csv", "2.4319", "2.4329");
    const { files, decisions } = await audit(folder);
    expect(files.findings).toMatchObject([
      {
        file: "tables/shaft-survey.csv",
        what: "altered",
        text: expect.stringMatching(/line 13, diameter @ 90 deg: 2\.4319 became 2\.4329/),
      },
    ]);
    const [shaft] = decisions;
    expect(shaft).toMatchObject({
      verdict: "stands, figures moved",
      because: ["tables/shaft-survey.csv line 13, diameter @ 90 deg: 2.4319 became 2.4329"],
    });
    const moved = shaft!.moved.find(({ figure }) => figure === "worn band")!;
    expect(moved.of).toBe("turn down");
    // One of the band's 16 readings moved by one thousandth: its mean by a sixteenth of that, or a little less, for as long
    // as the reading stood out from its band its weight was in some doubt.
    const [, by] = /^\+(\d\.\d+) thou, 0\.\d+ times its standard uncertainty$/.exec(moved.by!)!;
    expectClose(Number(by), 1 / 16, { rel: 0.1, because: "the doubt whether it was a gross error" });
  });

  it("says the same where the rebuild was run again in between: the decision keeps the figures of its day", async () => {
    const folder = copy();
    change(folder, "tables/shaft-survey.csv", "2.4319", "2.4329");
    await runRebuild({ directory: folder, only: "stale" });
    const { files, decisions, results } = await audit(folder);
    expect(files.findings).toEqual([]);
    expect(results).toEqual([]);
    expect(decisions).toMatchObject([
      {
        verdict: "stands, figures moved",
        because: ["tables/shaft-survey.csv line 13, diameter @ 90 deg: 2.4319 became 2.4329"],
      },
    ]);
  });

  it("says that a decision follows no longer when its choice comes to break a limit", async () => {
    const folder = copy();
    change(folder, "tables/shaft-survey.csv", "2.4319", "2.4309");
    const [shaft] = (await audit(folder)).decisions;
    expect(shaft).toMatchObject({
      verdict: "no longer follows",
      why: expect.stringMatching(/refused: "turn down" breaks a limit \(the smallest reading is below/),
      because: ["tables/shaft-survey.csv line 13, diameter @ 90 deg: 2.4319 became 2.4309"],
    });
  });

  it("tells of several changes which of them moved a figure", async () => {
    const folder = copy();
    change(folder, "tables/shaft-survey.csv", "2.4319", "2.4329");
    change(folder, "tables/shaft-survey.csv", "shaft on two vee blocks", "shaft on vee blocks");
    change(folder, "rebuild.json", '"Line shaft of a grist mill"', '"Line shaft of a mill"');
    const { because } = (await audit(folder)).decisions[0]!;
    expect(because).toHaveLength(1);
    expect(because[0]).toMatch(
      /^tables\/shaft-survey\.csv line 13.*: moves worn band of “turn down” by \+0\.0\d+ thou/,
    );
  });

  it("names the cell whose code was changed, and the record that was altered by hand", async () => {
    const coded = copy();
    change(coded, "sheets/06-decide.ipynb", "breaks: low", "breaks: []");
    change(coded, "sheets/06-decide.ipynb", "days: 3", "days: 4");
    const [byCode] = (await audit(coded)).decisions;
    expect(byCode!.because).toMatchObject([expect.stringMatching(/^the code of 06-decide \(cell decide: /)]);
    const altered = copy();
    change(altered, "record/06-decide.json", /("figure": "days", "value": )3/, "$17");
    const { files, decisions } = await audit(altered);
    expect(files.findings.map(({ file }) => file)).toEqual(["record/06-decide.json"]);
    expect(decisions[0]).toMatchObject({
      verdict: "stands, figures moved",
      moved: [{ of: "sleeve", figure: "days", before: "7", after: "3" }],
      because: [expect.stringMatching(/record\/06-decide\.json, which was altered after the run/)],
    });
  });

  it("says what is missing where a decision cannot be checked", async () => {
    const folder = copy();
    rmSync(join(folder, "tables/shaft-survey.csv"));
    const { files, decisions, failed } = await audit(folder);
    expect(files.findings).toMatchObject([{ file: "tables/shaft-survey.csv", what: "missing" }]);
    expect(failed[0]).toMatchObject({
      sheet: "04-shaft-survey",
      why: expect.stringMatching(/no tables\/shaft-survey/),
    });
    expect(decisions[0]).toMatchObject({
      verdict: "cannot be checked",
      why: expect.stringMatching(/stops before it: cell open: .*"wear"/),
    });
  });

  it("explains by the cells that lead up to the decision which readings carry it, and confirms it with all", async () => {
    const { carried } = (await audit(asRun, { explain: true })).decisions[0]!;
    const table = readFileSync(join(asRun, "tables/shaft-survey.csv"), "utf8");
    // The limit of 2.4315 in is set against the smallest reading of the worn band, from 6 to 13 in, slip or not.
    const ofBand = table
      .split("\n")
      .filter((line) => /^(?:[6-9]|1[0-3]),/.test(line))
      .flatMap((line) =>
        line
          .split(",")
          .slice(1, 3)
          .map((cell) => cell.trim()),
      )
      .sort();
    expect(ofBand).toHaveLength(16);
    expect(carried!.overturning.map(({ reading, flipsBelow }) => [reading, flipsBelow])).toEqual(
      ofBand.map((reading) => [reading, "2.4314"]),
    );
    expect(carried!.apart).toBeGreaterThan(0); // the run-out, which no cell on the way to the decision reads
    expect(carried!.cells).toMatch(
      /^Each time the \d+ cells that lead up to it were run, of \d+ .* confirmed with all/,
    );
  }, 240_000);

  it("runs the sheets whole where the cells on the way, as names tell them, do not give the same", async () => {
    const folder = temporaryFolder({
      "rebuild.json": '{ "schema": 1, "title": "One pin", "units": "inch" }',
      "tables/t.csv": "diameter [in]\n2.4320\n",
      "sheets/01-pin.ipynb": notebook({
        open: 'import { inch, openRebuild } from "journalbox";\nconst rebuild = openRebuild();\nconst first = Number(rebuild.table("t").columns[0]!.text[0]);',
        limit: "const kept = { limit: 2.3 };",
        // The limit is raised under another name than the one that decides.
        alias: "const same = kept;",
        raise: "same.limit = 2.4315;",
        decide:
          'const breaks = first < kept.limit ? ["too small"] : [];\nrebuild.decide({ name: "pin", question: "Keep it?", choice: "keep", reason: "sound", by: "AB", on: "2026-05-04", limits: { least: inch(kept.limit) },\n  options: [{ name: "keep", figures: { diameter: inch(first) }, breaks: breaks }] })',
      }),
    });
    await runRebuild({ directory: folder });
    const { carried } = (await audit(folder, { explain: true })).decisions[0]!;
    expect(carried!.cells).toBe("All 5 cells of the sheets behind it were run each time.");
    expect(carried!.overturning).toMatchObject([{ reading: "2.4320", flipsBelow: "2.4314" }]);
  }, 120_000);

  it("executes nothing when it is not to run again", async () => {
    const folder = copy();
    change(folder, "tables/shaft-survey.csv", "2.4319", "2.4329");
    const { rerun, files, decisions } = await audit(folder, { rerun: false });
    expect(rerun).toBe(false);
    expect(files.findings).toHaveLength(1);
    expect(decisions).toMatchObject([
      { verdict: "cannot be checked", why: "The sheets were not run again." },
    ]);
  });

  it("writes nothing into the folder it audits", async () => {
    const folder = copy();
    const before = readFileSync(join(folder, "record/manifest-sha256.txt"), "utf8");
    await audit(folder);
    expect((await audit(folder, { rerun: false })).files.findings).toEqual([]);
    expect(readFileSync(join(folder, "record/manifest-sha256.txt"), "utf8")).toBe(before);
  });
});
