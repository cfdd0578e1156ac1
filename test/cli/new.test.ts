import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { packageRoot } from "../../kernel-helpers/record/package-root.js";
import { ensureBuilt } from "../support/built.js";
import { temporaryFolder } from "../support/temporary-folder.js";

beforeAll(() => ensureBuilt(), 120_000);

function journalbox(args: readonly string[], cwd: string): { code: number | null; out: string; err: string } {
  const program = join(packageRoot(), "dist", "cli", "main.js");
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    cwd,
    encoding: "utf8",
  });
  return { code: status, out: stdout, err: stderr };
}

describe("journalbox new <folder>", () => {
  it("makes a rebuild and says what to do next", () => {
    const folder = temporaryFolder();
    const { code, out } = journalbox(["new", "sheave", "--units", "mm", "--title", "Rope sheave"], folder);
    expect(code).toBe(0);
    expect(out).toMatch(/in metric units/);
    expect(out).toMatch(/journalbox check sheave/);
    expect(readdirSync(join(folder, "sheave")).sort()).toEqual(["rebuild.json", "sheets", "tables"]);
    expect(JSON.parse(readFileSync(join(folder, "sheave", "rebuild.json"), "utf8")).title).toBe(
      "Rope sheave",
    );
  });

  it("never writes over anything", () => {
    const folder = temporaryFolder({ "mine/rebuild.json": "mine" });
    const { code, err } = journalbox(["new", "mine", "--units", "mm"], folder);
    expect(code).toBe(2);
    expect(err).toMatch(/mine is there and is not empty/);
    expect(readFileSync(join(folder, "mine", "rebuild.json"), "utf8")).toBe("mine");
    expect(readdirSync(join(folder, "mine"))).toEqual(["rebuild.json"]);
  });

  it("asks nothing where nobody can answer, and names what is missing or wrong", () => {
    const folder = temporaryFolder();
    expect(journalbox(["new", "a"], folder)).toMatchObject({
      code: 2,
      err: expect.stringMatching(/say --units/),
    });
    expect(journalbox(["new", "a", "--units", "cubits"], folder).err).toMatch(/inch or mm, got cubits/);
    expect(journalbox(["new"], folder)).toMatchObject({ code: 2 });
    expect(readdirSync(folder)).toEqual([]);
  });
});
