import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { checkRebuild, describeCheckFault } from "../../../kernel-helpers/notebook/check/index.js";
import { jsonLine } from "../../../kernel-helpers/notebook/check/json-line.js";
import { demoFolder, templateFolder } from "../../../kernel-helpers/record/index.js";
import { ensureBuilt } from "../../support/built.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

beforeAll(() => ensureBuilt(), 120_000);

const rebuildJson = '{\n "schema": 1,\n "title": "T",\n "units": "inch"\n}\n';

function sheet(...cells: readonly (readonly [id: string, source: string])[]): string {
  return JSON.stringify({
    nbformat: 4,
    nbformat_minor: 5,
    metadata: {},
    cells: cells.map(([id, source]) => ({
      cell_type: "code",
      id,
      metadata: {},
      execution_count: null,
      outputs: [],
      source,
    })),
  });
}

function faultsOf(files: Readonly<Record<string, string>>): readonly string[] {
  return checkRebuild(temporaryFolder({ "rebuild.json": rebuildJson, ...files }))
    .faults.filter(({ severity }) => severity === "fault")
    .map(describeCheckFault);
}

describe("checkRebuild(directory)", () => {
  it.each(["demo", "demo-metric"])("finds nothing at fault with %s, and leaves it as it was", (demo) => {
    const folder = temporaryFolder();
    const source = join(templateFolder(), demo);
    cpSync(source, folder, { recursive: true, filter: (path) => !/[/\\](?:out|record)$/.test(path) });
    const before = readdirSync(folder, { recursive: true });
    const check = checkRebuild(folder);
    expect(check.faults).toEqual([]);
    expect(check).toMatchObject({ passes: true, kind: "rebuild-check" });
    expect(check.sheets).toBeGreaterThan(1);
    expect(readdirSync(folder, { recursive: true })).toEqual(before);
  });

  it("has nothing against a table without readings that the worksheets do without, and says so", () => {
    const open = ["a", 'import { openRebuild } from "journalbox";\nconst rebuild = openRebuild();'] as const;
    const files = (call: string) => ({
      "rebuild.json": rebuildJson,
      "tables/t.csv": "station [in], diameter [in]\n",
      "sheets/01-a.ipynb": sheet(open, ["b", `rebuild.${call}("t")`]),
    });
    const { faults, passes } = checkRebuild(temporaryFolder(files("tableIfGiven")));
    expect(passes).toBe(true);
    expect(faults.map(describeCheckFault).join()).toMatch(
      /^tables\/t\.csv, line 1: nothing is written under/,
    );
    expect(faultsOf(files("table")).join()).toMatch(/^tables\/t\.csv, line 1: found a header and no rows/);
  });

  it("runs no cell", () => {
    const mark = join(temporaryFolder(), "ran");
    const source = `import { writeFileSync } from "node:fs";\nwriteFileSync(${JSON.stringify(mark)}, "ran");`;
    expect(faultsOf({ "sheets/01-a.ipynb": sheet(["a", source]) })).toEqual([]);
    expect(existsSync(mark)).toBe(false);
  });

  it("tells every fault of every file at once, each with its place", () => {
    const faults = faultsOf({
      "rebuild.json":
        '{\n "schema": 1,\n "title": "T",\n "units": "inch",\n "dimensions": {\n  "bore": "2 hp"\n }\n}',
      "tables/t.csv": "station [in], diameter\n1, 2.5O\n",
      "sheets/01-a.ipynb": sheet(
        ["open", 'import { openRebuild, wearBand } from "journalbox";\nconst rebuild = openRebuild();'],
        ["read", 'const t = rebuild.table("u");\nconst size: number = "x";'],
        ["later", "t\nwearBand"],
      ),
      "sheets/02-b.ipynb": "{",
      "sheets/03-c.ipynb": sheet(["c", 'import { x } from "no-such-package";']),
    });
    const told = faults.join("\n");
    expect(told).toMatch(/^rebuild\.json, line 6: dimensions\.bore: /m);
    expect(told).toMatch(/^tables\/t\.csv, line 1, column 2: diameter: found "diameter", expected a unit/m);
    expect(told).toMatch(/^sheets\/01-a\.ipynb, cell open, line 1, column 23: .*wearBand/m);
    expect(told).toMatch(
      /^sheets\/01-a\.ipynb, cell read, line 1, column 18: there is no tables\/u\.csv; there are t/m,
    );
    expect(told).toMatch(/^sheets\/02-b\.ipynb: .*JSON/m);
    expect(told).toMatch(/^sheets\/03-c\.ipynb, cell c, line 1, column \d+: .*no-such-package/m);
  });

  it("blames no later cell for a name that a cell at fault would have declared", () => {
    const faults = faultsOf({
      "sheets/01-a.ipynb": sheet(["first", 'const size: number = "x";'], ["second", "size + other"]),
    });
    expect(faults).toHaveLength(2);
    expect(faults[0]).toMatch(/cell first/);
    expect(faults[1]).toMatch(/cell second, line 1, column 8: other is not known/);
  });

  it("says what is taken over and handed on by nobody, and what goes round in a ring", () => {
    const open = 'import { openRebuild } from "journalbox";\nconst rebuild = openRebuild();\n';
    expect(
      faultsOf({ "sheets/01-a.ipynb": sheet(["a", `${open}rebuild.recall("wear", "wear bands")`]) }).join(
        "\n",
      ),
    ).toMatch(/^sheets\/01-a\.ipynb: .*wear/m);
    const ring = faultsOf({
      "sheets/01-a.ipynb": sheet(["a", `${open}rebuild.recall("y", "taper");\nrebuild.publish({ x: 1 })`]),
      "sheets/02-b.ipynb": sheet(["b", `${open}rebuild.recall("x", "taper");\nrebuild.publish({ y: 1 })`]),
    });
    expect(ring.join("\n")).toMatch(/01-a.*02-b|02-b.*01-a/);
  });

  it("names examples that are left and a sheet that is not canonical, and passes all the same", () => {
    const folder = temporaryFolder();
    cpSync(demoFolder(), folder, { recursive: true, filter: (path) => !/[/\\](?:out|record)$/.test(path) });
    const facts = JSON.parse(readFileSync(join(folder, "rebuild.json"), "utf8"));
    const text = JSON.stringify({ ...facts, examples: ["dimensions.sine bar"] }, null, 2);
    writeFileSync(join(folder, "rebuild.json"), text);
    cpSync(join(templateFolder(), "04-shaft-survey.ipynb"), join(folder, "sheets", "04-shaft-survey.ipynb"));
    const path = join(folder, "sheets", "04-shaft-survey.ipynb");
    writeFileSync(path, JSON.stringify(JSON.parse(readFileSync(path, "utf8"))));
    const { passes, faults } = checkRebuild(folder);
    expect(passes).toBe(true);
    const line = text.split("\n").findIndex((each) => each.includes('"sine bar"')) + 1;
    expect(faults.map(({ file, line }) => [file, line])).toEqual([
      ["rebuild.json", line],
      ["sheets/04-shaft-survey.ipynb", 0],
    ]);
  });
});

describe("jsonLine(text, path)", () => {
  const text = '{\n "a": {\n  "b": "c: \\"b\\"",\n  "c": [1, {"b": 2}]\n },\n "b": 3,\n "d": {}\n}';
  it("finds an entry by its names, however often a name stands elsewhere", () => {
    expect([["a"], ["a", "b"], ["a", "c"], ["b"]].map((path) => jsonLine(text, path))).toEqual([2, 3, 4, 6]);
  });
  it("gives 0 for one that is not there", () => {
    expect([["c"], ["d", "b"], ["a", "d"], ["x"]].map((path) => jsonLine(text, path))).toEqual([0, 0, 0, 0]);
  });
});
