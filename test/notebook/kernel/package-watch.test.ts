import { utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { PackageWatch } from "../../../kernel-helpers/notebook/kernel/package-watch.js";
import { updateNote } from "../../../kernel-helpers/notebook/kernel/update-note.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

const seconds = 1000;

function watched(): { folder: string; watch: PackageWatch } {
  const folder = temporaryFolder({ "a.js": "1", "sub/b.js": "2", "types.d.ts": "x" });
  return { folder, watch: new PackageWatch(folder, () => "9.9.9") };
}

describe("new PackageWatch(folder).look(now)", () => {
  it("says nothing while nothing changes", () => {
    const { watch } = watched();
    expect([watch.look(0), watch.look(10 * seconds)]).toEqual([undefined, undefined]);
  });
  it("tells the version there now when a program changed, in a subfolder too", () => {
    const { folder, watch } = watched();
    writeFileSync(join(folder, "sub", "b.js"), "changed");
    expect(watch.look(0)).toBe("9.9.9");
  });
  it("tells of a program that came or went", () => {
    const { folder, watch } = watched();
    writeFileSync(join(folder, "c.js"), "3");
    expect(watch.look(0)).toBe("9.9.9");
  });
  it("is silent about the same bytes written anew, and about files that are no program", () => {
    const { folder, watch } = watched();
    writeFileSync(join(folder, "a.js"), "1");
    utimesSync(join(folder, "a.js"), 1, 1);
    writeFileSync(join(folder, "types.d.ts"), "changed");
    expect(watch.look(0)).toBeUndefined();
  });
  it("looks no more often than every two seconds", () => {
    const { folder, watch } = watched();
    watch.look(0);
    writeFileSync(join(folder, "a.js"), "changed");
    expect(watch.look(1 * seconds)).toBeUndefined();
    expect(watch.look(3 * seconds)).toBe("9.9.9");
  });
});

describe("updateNote(running, installed)", () => {
  it("names both versions and what to do", () => {
    expect(JSON.stringify(updateNote("0.1.0", "0.2.0"))).toMatch(/updated from 0\.1\.0 to 0\.2\.0.*restart/);
    expect(JSON.stringify(updateNote("0.1.0", "0.1.0"))).toMatch(/rebuilt \(0\.1\.0\)/);
  });
});
