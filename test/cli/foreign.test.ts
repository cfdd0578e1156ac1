import { spawnSync } from "node:child_process";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { bytesOf, type Files, makeBag, writeZip } from "../../kernel-helpers/record/bundle/index.js";
import { packageRoot } from "../../kernel-helpers/record/package-root.js";
import { ensureBuilt } from "../support/built.js";
import { temporaryFolder } from "../support/temporary-folder.js";

const source = 'import { openRebuild } from "journalbox";\nopenRebuild();\nprocess.stdout.write("it ran");';
const sheet = JSON.stringify({
  nbformat: 4,
  nbformat_minor: 5,
  metadata: {},
  cells: [{ cell_type: "code", id: "a", metadata: {}, execution_count: null, outputs: [], source }],
});
const bag = makeBag(
  new Map([
    ["rebuild.json", bytesOf('{ "schema": 1, "title": "T", "units": "inch" }')],
    ["sheets/01-a.ipynb", bytesOf(sheet)],
  ]),
  [],
);

function archiveIn(folder: string, files: Files): string {
  const inFolder = new Map([...files].map(([path, content]) => [`t/${path}`, content]));
  writeFileSync(join(folder, "t.zip"), writeZip(inFolder, "2026-05-04"));
  return "t.zip";
}

function journalbox(args: readonly string[], cwd: string): { code: number | null; out: string; err: string } {
  const program = join(packageRoot(), "dist", "cli", "main.js");
  const options = { cwd, encoding: "utf8", timeout: 100_000 } as const;
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], options);
  return { code: status, out: stdout, err: stderr };
}

beforeAll(() => ensureBuilt(), 180_000);

describe("journalbox on somebody else's bundle", () => {
  const folder = temporaryFolder();
  const bundle = archiveIn(folder, bag);

  it("verify tells whether it is whole, and runs nothing", () => {
    expect(journalbox(["verify", bundle], folder)).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^t is whole: 2 files/),
    });
    const altered = temporaryFolder();
    archiveIn(altered, new Map([...bag, ["data/sheets/01-a.ipynb", bytesOf("{}")] as const]));
    const { code, out } = journalbox(["verify", "t.zip", "--json"], altered);
    expect(code).toBe(1);
    expect(JSON.parse(out).faults.map(({ file }: { file: string }) => file)).toContain(
      "data/sheets/01-a.ipynb",
    );
  });

  it("run without the word tells what would run, in what sandbox, and runs nothing", () => {
    const { code, out } = journalbox(["run", bundle], folder);
    expect(code).toBe(2);
    expect(out).toMatch(
      /somebody else's rebuild; it is whole[\s\S]*01-a\.ipynb {2}1 code cells[\s\S]*The sandbox/,
    );
    expect(out).toMatch(/Nothing was run\. To run it, say --run-their-code\./);
    expect(existsSync(join(folder, "t-run"))).toBe(false);
  });

  it("run with the word runs it in a folder of its own, which stays foreign", () => {
    const { code, out } = journalbox(["run", bundle, "--run-their-code", "--network-may-stay-open"], folder);
    expect([code, out]).toEqual([0, expect.stringMatching(/01-a +ok/)]);
    expect(existsSync(join(folder, "t-run", "out", "01-a.ipynb"))).toBe(true);
    expect(journalbox(["run", "t-run"], folder)).toMatchObject({
      code: 2,
      out: expect.stringMatching(/Nothing was run/),
    });
    const opened = journalbox(["open", "t-run", "--no-browser"], folder);
    expect(opened).toMatchObject({ code: 2, err: expect.stringMatching(/runs code without a sandbox/) });
  });

  it("audit compares hashes, and runs again on the word only", () => {
    const without = journalbox(["audit", bundle], folder);
    expect(without.err).toMatch(/Nothing of it is run/);
    expect(without.out).toMatch(/not computed again/);
    const { err, out } = journalbox(["audit", bundle, "--run-their-code", "--network-may-stay-open"], folder);
    expect(err).toMatch(/run again in a sandbox/);
    expect(out).not.toMatch(/not computed again/);
  });

  it("audits a bundle of the first version: its records are read as ones that say less, and an altered table is named", () => {
    const older = join(packageRoot(), "test", "reference", "rebuild-of-schema-1");
    const files = [
      "rebuild.json",
      "tables/shaft-survey.csv",
      "record/04-shaft-survey.json",
      "record/05-taper.json",
    ];
    const content = new Map(files.map((file) => [file, readFileSync(join(older, file))] as const));
    const told = (changed: Files): string => {
      const place = temporaryFolder();
      const { out, code } = journalbox(["audit", archiveIn(place, makeBag(changed, []))], place);
      expect(code).toBe(3); // the first version left no manifest, which is told
      return out;
    };
    expect(told(content)).toMatch(/There is no manifest/);
    expect(told(content)).not.toMatch(/unreadable|is not what/);
    const table = content.get("tables/shaft-survey.csv")!.toString("utf8");
    const altered = new Map<string, Uint8Array>(content);
    altered.set("tables/shaft-survey.csv", bytesOf(table.replace("2.4351", "2.4361")));
    expect(told(altered)).toMatch(
      /shaft-survey\.csv\s+what was found: is not what\s+record\/04-shaft-survey\.json was computed from/,
    );
  });
});
