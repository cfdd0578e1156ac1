import { spawnSync } from "node:child_process";
import { appendFileSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { packageRoot, packageVersion } from "../../kernel-helpers/record/package-root.js";
import { ensureBuilt } from "../support/built.js";
import { temporaryFolder } from "../support/temporary-folder.js";

beforeAll(() => ensureBuilt(), 120_000);

function journalbox(
  args: readonly string[],
  cwd = packageRoot(),
): { code: number; out: string; err: string } {
  const program = join(packageRoot(), "dist", "cli", "main.js");
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    cwd,
    encoding: "utf8",
    env: { ...process.env, NO_COLOR: "1", NODE_OPTIONS: "" },
  });
  return { code: status ?? -1, out: stdout, err: stderr };
}

describe("journalbox", () => {
  it("lists its commands without one, and for help", () => {
    for (const args of [[], ["help"], ["--help"]]) {
      const { code, out } = journalbox(args);
      expect(code).toBe(0);
      expect(out).toMatch(/journalbox run .*\n.*journalbox kernel /s);
    }
  });
  it("tells how a command is called", () => {
    expect(journalbox(["help", "run"]).out).toMatch(/^journalbox run \[folder\]/);
    expect(journalbox(["kernel", "--help"]).out).toMatch(/^journalbox kernel install/);
  });
  it("tells its version", () => {
    expect(journalbox(["--version"]).out.trim()).toBe(packageVersion());
  });
  it("answers a call that is off with the reason, how it should be, and exit code 2", () => {
    expect(journalbox(["rin"])).toMatchObject({ code: 2, err: expect.stringMatching(/"rin" is no command/) });
    const { code, err } = journalbox(["kernel", "instal"]);
    expect(code).toBe(2);
    expect(err).toMatch(/"instal" is none of install, where, remove\n\njournalbox kernel install/);
    expect(journalbox(["run", "--tolerence"]).err).toMatch(/--tolerence/);
    expect(journalbox(["run", temporaryFolder()]).err).toMatch(/no rebuild\.json in/);
  });
});

describe("journalbox kernel install, where, remove", () => {
  it("write the kernelspec under a prefix, tell where it is, and take it back", () => {
    const prefix = temporaryFolder();
    const file = join(prefix, "share", "jupyter", "kernels", "journalbox", "kernel.json");
    expect(journalbox(["kernel", "where", "--prefix", prefix]).code).toBe(1);
    expect(journalbox(["kernel", "install", "--prefix", prefix])).toMatchObject({ code: 0 });
    const { argv, language } = JSON.parse(readFileSync(file, "utf8"));
    expect(language).toBe("typescript");
    expect(existsSync(argv[1])).toBe(true);
    expect(journalbox(["kernel", "where", "--prefix", prefix])).toMatchObject({ code: 0 });
    expect(journalbox(["kernel", "remove", "--prefix", prefix]).out).toMatch(/removed/);
    expect(existsSync(file)).toBe(false);
  });
});

describe("journalbox run", () => {
  it("runs only what is stale and tells why; all with --all", () => {
    const cell = (id: string, source: string) => ({
      cell_type: "code",
      id,
      metadata: {},
      execution_count: null,
      outputs: [],
      source,
    });
    const sheet = (...sources: string[]): string =>
      JSON.stringify({
        nbformat: 4,
        nbformat_minor: 5,
        metadata: {},
        cells: sources.map((s, i) => cell(`c${i}`, s)),
      });
    const open = 'import { openRebuild } from "journalbox";\nconst rebuild = openRebuild();';
    const folder = temporaryFolder({
      "rebuild.json": '{ "schema": 1, "title": "Two sheets", "units": "inch" }',
      "tables/t.csv": "station [in], diameter [in]\n1, 2.5\n",
      // By name the first, but it takes over from the other.
      "sheets/01-takes.ipynb": sheet(open, 'const made = rebuild.recall("made", "taper");'),
      "sheets/02-makes.ipynb": sheet(
        open,
        'const t = rebuild.table("t");',
        'rebuild.publish({ made: { kind: "taper", first: t.columns[1].text[0] } })',
      ),
    });
    const lines = (...args: string[]): string[] =>
      journalbox(["run", folder, ...args])
        .out.split("\n")
        .filter((line) => /^ {2,4}(0[12]|Since|nothing)/.test(line));
    expect(lines().map((line) => line.replace(/\s+[\d.]+ s$/, ""))).toEqual([
      "  02-makes                 ok",
      "  01-takes                 ok",
    ]);
    expect(lines()).toEqual([
      "  02-makes                 fresh, not run again",
      "  01-takes                 fresh, not run again",
      expect.stringMatching(/^ {2}nothing to run/),
    ]);
    writeFileSync(join(folder, "tables", "t.csv"), "station [in], diameter [in]\n1, 2.6\n");
    const changed = lines().join("\n");
    expect(changed).toMatch(
      /02-makes .*\n.*tables\/t\.csv has changed \(line 2, diameter: 2\.5 became 2\.6\)\./,
    );
    expect(changed).toMatch(/01-takes .*\n.*"made" from 02-makes has changed\./);
    expect(lines("--all").filter((line) => / ok /.test(line))).toHaveLength(2);
    appendFileSync(join(folder, "out", "01-takes.ipynb"), "\n");
    expect(lines().join("\n")).toMatch(/01-takes .*\n.*out\/01-takes\.ipynb was altered or has gone/);
  });
  it("exits with 1 and names file, line and cell when a sheet fails", () => {
    const folder = temporaryFolder({
      "rebuild.json": '{ "schema": 1, "title": "Broken", "units": "inch" }',
      "tables/t.csv": "station, diameter [in]\n1, 2.5\n",
      "sheets/01-t.ipynb": JSON.stringify({
        nbformat: 4,
        nbformat_minor: 5,
        metadata: {},
        cells: [
          {
            cell_type: "code",
            id: "read",
            metadata: {},
            execution_count: null,
            outputs: [],
            source: 'import { openRebuild } from "journalbox";\nopenRebuild().table("t")',
          },
        ],
      }),
    });
    const { code, out, err } = journalbox(["run", folder]);
    expect(code).toBe(1);
    expect(out).toMatch(/01-t +failed/);
    expect(err).toMatch(/01-t: cell read/);
    expect(err).toMatch(/t\.csv line 1/);
    expect(existsSync(join(folder, "out", "report.html"))).toBe(true);
  });
});
