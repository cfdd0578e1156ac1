import { spawn, spawnSync } from "node:child_process";
import { chmodSync, cpSync, existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { beforeAll, describe, expect, it } from "vitest";
import { runRebuild } from "../../kernel-helpers/notebook/run-rebuild.js";
import { filesOfRebuild, packageRoot, verifyRebuild } from "../../kernel-helpers/record/index.js";
import { ensureBuilt } from "../support/built.js";
import { temporaryFolder } from "../support/temporary-folder.js";

beforeAll(() => ensureBuilt(), 120_000);

const sheet = (...sources: string[]): string =>
  JSON.stringify({
    nbformat: 4,
    nbformat_minor: 5,
    metadata: {},
    cells: sources.map((source, i) => ({
      cell_type: "code",
      id: `c${i}`,
      metadata: {},
      execution_count: null,
      outputs: [],
      source,
    })),
  });
const open = 'import { openRebuild } from "journalbox";\nconst rebuild = openRebuild();';
const many = "Array.from({ length: 20000 }, (_, i) => i / 7)";

/** Two sheets with long records, run once; then the table is changed, so that a run has everything to write anew. */
function rebuildFiles(reading = "2.5"): Record<string, string> {
  return {
    "rebuild.json": '{ "schema": 1, "title": "Two sheets", "units": "inch" }',
    "tables/t.csv": `station [in], diameter [in]\n1, ${reading}\n`,
    "sheets/01-makes.ipynb": sheet(
      open,
      'const t = rebuild.table("t");',
      `rebuild.publish({ made: { kind: "taper", first: t.columns[1].text[0], many: ${many} } })`,
    ),
    "sheets/02-takes.ipynb": sheet(
      open,
      'const made = rebuild.recall("made", "taper");\nrebuild.publish({ again: made })',
    ),
  };
}

const program = join(packageRoot(), "dist", "cli", "main.js");
/** A record that is not sealed yet, or a manifest of what there is so far: neither old nor new, but whole. */
const isWhole = (file: string, text: string): boolean => {
  if (file.endsWith(".json")) {
    const record = JSON.parse(text) as { schema?: unknown; sheet?: unknown };
    return text.endsWith("}\n") && record.schema !== undefined && record.sheet !== undefined;
  }
  return /manifest-sha256\.txt$/.test(file) && /^(?:[0-9a-f]{64} {1,2}\S.*\n)+$/.test(text);
};

const contents = (folder: string): Map<string, string> =>
  new Map(
    filesOfRebuild(folder)
      .filter((file) => file.startsWith("record/") || file.startsWith("out/"))
      .map((file) => [file, readFileSync(join(folder, file), "utf8")]),
  );

describe("a run that is killed", () => {
  it("leaves whole files only, never half of one, and the next run mends all", async () => {
    const before = temporaryFolder(rebuildFiles("2.5"));
    await runRebuild({ directory: before });
    const after = temporaryFolder();
    cpSync(before, after, { recursive: true });
    cpSync(temporaryFolder(rebuildFiles("2.6")), after, { recursive: true });
    await runRebuild({ directory: after });
    const [old, fresh] = [contents(before), contents(after)];
    let mixed = 0;
    // Killed when so many files have changed: a moment in the run, however fast the machine is.
    for (const changed of [1, 3, 5, 8]) {
      const folder = temporaryFolder();
      cpSync(before, folder, { recursive: true });
      cpSync(join(after, "tables"), join(folder, "tables"), { recursive: true });
      const run = spawn(process.execPath, [program, "run", folder], { stdio: "ignore", detached: true });
      const ended = new Promise((resolve) => run.once("exit", resolve));
      const soFar = (): number =>
        [...contents(folder)].filter(([file, text]) => text !== old.get(file)).length;
      while (run.exitCode === null && soFar() < changed) await pause(5);
      // The kernel too: all that the run has started.
      if (run.exitCode === null) process.kill(-run.pid!, "SIGKILL");
      await ended;
      for (const [file, text] of contents(folder)) {
        const known = text === old.get(file) || text === fresh.get(file);
        expect(known || isWhole(file, text), `${file}, killed after ${changed} changes`).toBe(true);
        if (text !== old.get(file)) mixed += 1;
      }
      await runRebuild({ directory: folder, only: "stale" });
      expect(verifyRebuild(folder).findings).toEqual([]);
      for (const file of ["record/01-makes.json", "record/02-takes.json", "out/report.html"])
        expect(readFileSync(join(folder, file), "utf8") === fresh.get(file), file).toBe(true);
    }
    // Else every run was killed before it wrote anything, and nothing was shown.
    expect(mixed).toBeGreaterThan(0);
  }, 240_000);
});

/** Runs all sheets of a rebuild by the program. */
function run(folder: string): Promise<{ readonly code: number | null; readonly said: string }> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [program, "run", folder, "--all"]);
    let said = "";
    for (const stream of [child.stdout, child.stderr])
      stream.setEncoding("utf8").on("data", (text: string) => {
        said += text;
      });
    child.once("close", (code) => resolve({ code, said }));
  });
}

describe("two runs at once", () => {
  it("both end well, and leave what one leaves", async () => {
    const alone = temporaryFolder(rebuildFiles());
    await runRebuild({ directory: alone });
    const folder = temporaryFolder(rebuildFiles());
    const runs = await Promise.all([run(folder), run(folder)]);
    expect(
      runs.map(({ code }) => code),
      runs.map(({ said }) => said).join("\n"),
    ).toEqual([0, 0]);
    expect(runs.map(({ said }) => said).join("")).toContain("Another run of this rebuild is under way");
    expect(contents(folder)).toEqual(contents(alone));
    expect(verifyRebuild(folder).findings).toEqual([]);
  }, 120_000);
});

/** What a program is started by so that the modes of folders hold for it: the superuser is let past them else. */
function withoutPrivilege(): readonly string[] | undefined {
  if (process.getuid?.() !== 0) return [];
  const plain = ["setpriv", "--bounding-set", "-dac_override,-dac_read_search"];
  const folder = temporaryFolder();
  chmodSync(folder, 0o555);
  const [command, ...args] = [...plain, "touch", join(folder, "probe")];
  const { error, status } = spawnSync(command!, args);
  return error === undefined && status !== 0 && !existsSync(join(folder, "probe")) && started(plain)
    ? plain
    : undefined;
}

function started([command, ...args]: readonly string[]): boolean {
  return spawnSync(command!, [...args, "true"]).status === 0;
}

describe("a run in a folder that cannot be written", () => {
  it("says so and leaves what was there", ({ skip }) => {
    const plain = withoutPrivilege();
    if (plain === undefined)
      return skip("every folder can be written by the superuser, and there is no setpriv to do without that");
    const folder = temporaryFolder(rebuildFiles());
    chmodSync(folder, 0o555);
    const [command, ...args] = [...plain, process.execPath, program, "run", folder];
    const { status, stderr, stdout } = spawnSync(command!, args, { encoding: "utf8" });
    chmodSync(folder, 0o755);
    expect(status).toBe(1);
    expect(stderr + stdout).toMatch(/cannot be written: .*EACCES/);
    expect(existsSync(join(folder, "record"))).toBe(false);
    expect(existsSync(join(folder, "out"))).toBe(false);
  });
});

/** A file system of one megabyte, where the user of the test may make one. */
function smallDisk(): string | undefined {
  const folder = temporaryFolder();
  mkdirSync(join(folder, "disk"));
  const { status } = spawnSync("mount", ["-t", "tmpfs", "-o", "size=1m", "tmpfs", join(folder, "disk")]);
  return status === 0 ? join(folder, "disk") : undefined;
}

describe("a run on a full disk", () => {
  it("says so, and leaves no half file", ({ skip }) => {
    const disk = smallDisk();
    if (disk === undefined) return skip("no small file system can be mounted here");
    try {
      cpSync(temporaryFolder(rebuildFiles()), disk, { recursive: true });
      const { status, stderr, stdout } = spawnSync(process.execPath, [program, "run", disk], {
        encoding: "utf8",
      });
      expect(status).toBe(1);
      expect(stderr + stdout).toMatch(/cannot be written: .*ENOSPC/);
      const left = ["record", "out"].flatMap((part) =>
        existsSync(join(disk, part)) ? readdirSync(join(disk, part)) : [],
      );
      expect(left.filter((name) => name.endsWith(".tmp"))).toEqual([]);
      for (const file of left.filter((name) => /^\d\d.*\.json$/.test(name)))
        expect(() => JSON.parse(readFileSync(join(disk, "record", file), "utf8"))).not.toThrow();
    } finally {
      spawnSync("umount", [disk]);
    }
  });
});
