import { mkdirSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { writeFile } from "../../kernel-helpers/record/write-file.js";
import { temporaryFolder } from "../support/temporary-folder.js";

describe("writeFile(path, content)", () => {
  it("writes the file, makes missing folders, and leaves nothing else behind", () => {
    const folder = temporaryFolder();
    writeFile(join(folder, "a", "b.txt"), "new");
    expect(readFileSync(join(folder, "a", "b.txt"), "utf8")).toBe("new");
    expect(readdirSync(join(folder, "a"))).toEqual(["b.txt"]);
  });
  it("keeps what stood there when it cannot write, and says which file", () => {
    const folder = temporaryFolder({ "kept/inside.txt": "old" });
    mkdirSync(join(folder, "target"));
    // A folder cannot be replaced by a file: the rename fails after the temporary file was written.
    expect(() => writeFile(join(folder, "kept"), "new")).toThrow(/kept cannot be written/);
    expect(readFileSync(join(folder, "kept", "inside.txt"), "utf8")).toBe("old");
    expect(readdirSync(folder).sort()).toEqual(["kept", "target"]);
  });
});
