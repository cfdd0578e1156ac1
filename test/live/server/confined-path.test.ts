import { mkdirSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { confinedPath, isPlainName } from "../../../kernel-helpers/live/server/confined-path.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

describe("isPlainName(name)", () => {
  it("takes names of files as people write them", () => {
    for (const name of [
      "survey.csv",
      "04-shaft-survey.ipynb",
      "Welle 2.csv",
      "Läufer.csv",
      "console.csv",
      "com.csv",
      "a..b",
    ])
      expect(isPlainName(name), name).toBe(true);
  });
  // Source of the device names: Microsoft Learn, "Naming Files, Paths, and Namespaces", naming conventions.
  it("refuses paths, hidden files, devices of Windows, and endings and signs Windows drops or keeps", () => {
    const devices = [
      "CON",
      "con.csv",
      "Prn.txt",
      "aux",
      "NUL.tar.gz",
      "com1",
      "COM9.csv",
      "lpt1.csv",
      "com¹",
      "conin$",
    ];
    const paths = ["", ".", "..", "a/b", "a\\b", "/a", "C:a", "a:b", "a\0b", "a\nb"];
    for (const name of [
      ...devices,
      ...paths,
      ".hidden",
      "a.",
      "a ",
      "a*",
      'a"',
      "a<b",
      "a|b",
      "a?",
      "x".repeat(121),
    ])
      expect(isPlainName(name), JSON.stringify(name)).toBe(false);
  });
});

describe("confinedPath(folder, ...names)", () => {
  it("gives the place of a file, there or not, with links inside the folder followed", () => {
    const folder = temporaryFolder({ "tables/a.csv": "1" });
    expect(confinedPath(folder, "tables", "a.csv")).toBe(join(folder, "tables", "a.csv"));
    expect(confinedPath(folder, "out", "new", "b.csv")).toBe(join(folder, "out", "new", "b.csv"));
    symlinkSync(join(folder, "tables"), join(folder, "same"));
    expect(confinedPath(folder, "same", "a.csv")).toBe(join(folder, "tables", "a.csv"));
  });
  it("refuses a link out of the folder, to a file, a folder or nothing, and to a folder that begins alike", () => {
    const [folder, outside] = [join(temporaryFolder(), "a"), temporaryFolder({ "s.csv": "secret" })];
    mkdirSync(folder);
    mkdirSync(`${folder}b`);
    symlinkSync(join(outside, "s.csv"), join(folder, "file"));
    symlinkSync(outside, join(folder, "folder"));
    symlinkSync(`${folder}b`, join(folder, "alike"));
    expect(() => confinedPath(folder, "file")).toThrow("file leads out of the folder");
    expect(() => confinedPath(folder, "folder", "s.csv")).toThrow("folder/s.csv leads out of the folder");
    expect(() => confinedPath(folder, "alike", "x")).toThrow("leads out");
    symlinkSync(join(outside, "nothing"), join(folder, "nowhere"));
    expect(() => confinedPath(folder, "nowhere")).toThrow("nowhere leads nowhere");
  });
});
