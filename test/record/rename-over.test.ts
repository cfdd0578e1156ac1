import { existsSync, readFileSync, renameSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { renameOver } from "../../kernel-helpers/record/rename-over.js";
import { temporaryFolder } from "../support/temporary-folder.js";

/** A rename that is refused so often before it is done. */
function refused(code: string, times: number): { rename: typeof renameSync; readonly asked: () => number } {
  let asked = 0;
  const rename: typeof renameSync = (from, to) => {
    asked += 1;
    if (asked <= times) throw Object.assign(new Error(`${code}: refused`), { code });
    renameSync(from, to);
  };
  return { rename, asked: () => asked };
}

describe("renameOver(from, to)", () => {
  const folderOfTwo = (): string => temporaryFolder({ old: "old", new: "new" });

  it("puts one file in the place of another", () => {
    const folder = folderOfTwo();
    renameOver(join(folder, "new"), join(folder, "old"));
    expect(readFileSync(join(folder, "old"), "utf8")).toBe("new");
    expect(existsSync(join(folder, "new"))).toBe(false);
  });

  it.each(["EPERM", "EACCES", "EBUSY"])("waits on Windows while %s passes by", (code) => {
    const folder = folderOfTwo();
    const { rename, asked } = refused(code, 3);
    renameOver(join(folder, "new"), join(folder, "old"), { rename, platform: "win32" });
    expect(asked()).toBe(4);
    expect(readFileSync(join(folder, "old"), "utf8")).toBe("new");
  });

  it("gives up when it does not pass, at once on other platforms and for other reasons", () => {
    for (const [code, platform, most] of [
      ["EPERM", "win32", 20],
      ["EPERM", "linux", 1],
      ["ENOSPC", "win32", 1],
    ] as const) {
      const folder = folderOfTwo();
      const { rename, asked } = refused(code, 1000);
      expect(() => renameOver(join(folder, "new"), join(folder, "old"), { rename, platform })).toThrow(code);
      expect(asked()).toBe(most);
      expect(readFileSync(join(folder, "old"), "utf8")).toBe("old");
    }
  });
});
