import { spawnSync } from "node:child_process";
import { appendFileSync, cpSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { packageRoot } from "../../kernel-helpers/record/package-root.js";
import { ensureBuilt } from "../support/built.js";
import { temporaryFolder } from "../support/temporary-folder.js";

const program = join(packageRoot(), "dist", "cli", "main.js");

function verify(cwd: string, ...places: string[]): { code: number | null; lines: string[]; err: string } {
  const options = { cwd, encoding: "utf8", timeout: 100_000 } as const;
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, "verify", ...places], options);
  return { code: status, lines: stdout.trimEnd().split("\n"), err: stderr };
}

/** A rebuild of two files with manifests made by sha256sum, a program that is not ours. */
function rebuildIn(folder: string, name: string): string {
  const rebuild = join(folder, name);
  mkdirSync(join(rebuild, "tables"), { recursive: true });
  mkdirSync(join(rebuild, "record"));
  writeFileSync(join(rebuild, "rebuild.json"), '{ "name": "a rebuild" }\n');
  writeFileSync(join(rebuild, "tables", "survey.csv"), "station [in],diameter [in]\n0,2.4375\n");
  const make =
    "sha256sum rebuild.json tables/survey.csv > record/manifest-sha256.txt && sha256sum record/manifest-sha256.txt > record/tagmanifest-sha256.txt";
  spawnSync("sh", ["-c", make], { cwd: rebuild });
  return rebuild;
}

beforeAll(() => ensureBuilt(), 180_000);

describe("journalbox verify of several", () => {
  const folder = temporaryFolder();
  const whole = rebuildIn(folder, "whole");
  appendFileSync(join(rebuildIn(folder, "altered"), "tables", "survey.csv"), "1,2.4370\n");
  mkdirSync(join(folder, "empty"));

  it("tells of one rebuild what was altered", () => {
    expect(verify(folder, "whole")).toMatchObject({
      code: 0,
      lines: ["whole is as its last run left it: 2 files"],
    });
    const { code, lines } = verify(folder, "altered");
    expect([code, lines.length]).toEqual([1, 2]);
    expect(lines[1]).toMatch(/^ {2}tables\/survey\.csv was altered after the last run/);
  });
  it("has a line each in the order given, a count, and the exit code of the worst", () => {
    const two = verify(folder, "altered", "whole");
    expect(two.code).toBe(1);
    expect(two.lines.map((line) => line.split(";")[0])).toEqual([
      "altered is not as its last run left it: 2 files",
      "whole is as its last run left it: 2 files",
      "1 of 2 whole, 1 not",
    ]);
    const three = verify(folder, "whole", "empty", "altered", "gone");
    expect(three.code).toBe(2);
    expect(three.lines[1]).toMatch(/^empty is no bundle and no rebuild: neither/);
    expect(three.lines[3]).toMatch(/^gone is no bundle and no rebuild: nothing is there/);
    expect(three.lines[4]).toBe("1 of 4 whole, 1 not, 2 neither bundle nor rebuild");
  });
  it("finds the one altered among so many that several threads check them, and keeps their order", () => {
    const names = Array.from({ length: 40 }, (_, i) => `r${i}`);
    for (const name of names) cpSync(whole, join(folder, name), { recursive: true });
    appendFileSync(join(folder, "r23", "rebuild.json"), "\n");
    const { code, lines } = verify(folder, ...names);
    expect(code).toBe(1);
    expect(lines.slice(0, 40).map((line) => line.split(" ")[0])).toEqual(names);
    expect(lines.filter((line) => / is not /.test(line))).toEqual([expect.stringMatching(/^r23 is not/)]);
    expect(lines[40]).toBe("39 of 40 whole, 1 not");
  });
  it("wants something named", () => {
    expect(verify(folder)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/name a bundle or a rebuild's folder/),
    });
  });
});
