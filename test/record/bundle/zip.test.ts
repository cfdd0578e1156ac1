import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { deflateRawSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { crc32 } from "../../../kernel-helpers/record/bundle/crc32.js";
import {
  bytesOf,
  type Files,
  readZip,
  textOf,
  writeZip,
} from "../../../kernel-helpers/record/bundle/index.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

const files: Files = new Map([
  ["bag/data/b.txt", bytesOf("second\n")],
  ["bag/data/Ünter.csv", bytesOf("ä\n")],
  ["bag/a.txt", new Uint8Array()],
]);

function isThere(program: string, args: readonly string[]): boolean {
  return spawnSync(program, args).status === 0;
}

/** An archive with one entry, as somebody who means harm could write it. */
function archive(
  path: string,
  { mode = 0o100644, method = 0, size = 1, content = bytesOf("x"), flags = 0x0800 } = {},
): Uint8Array {
  const name = bytesOf(path);
  const fields = Buffer.alloc(26);
  fields.writeUInt16LE(20, 0);
  fields.writeUInt16LE(flags, 2);
  fields.writeUInt16LE(method, 4);
  fields.writeUInt32LE(crc32(bytesOf("x")), 10);
  fields.writeUInt32LE(content.length, 14);
  fields.writeUInt32LE(size, 18);
  fields.writeUInt16LE(name.length, 22);
  const after = Buffer.alloc(14);
  after.writeUInt32LE((mode << 16) >>> 0, 6);
  const local = Buffer.concat([Buffer.from("PK\x03\x04", "latin1"), fields, name, content]);
  const central = Buffer.concat([Buffer.from("PK\x01\x02\x14\x03", "latin1"), fields, after, name]);
  const end = Buffer.alloc(22);
  end.write("PK\x05\x06", 0, "latin1");
  end.writeUInt16LE(1, 8);
  end.writeUInt16LE(1, 10);
  end.writeUInt32LE(central.length, 12);
  end.writeUInt32LE(local.length, 16);
  return Buffer.concat([local, central, end]);
}

describe("crc32(bytes)", () => {
  // The check value that the catalogue of parametrised CRC algorithms prints for CRC-32/ISO-HDLC.
  it("gives the published check value of 123456789", () => {
    expect(crc32(bytesOf("123456789"))).toBe(0xcbf43926);
    expect(crc32(new Uint8Array())).toBe(0);
  });
});

describe("writeZip(files, date)", () => {
  const zip = writeZip(files, "2026-05-04");

  it("gives the same bytes in whatever order the files come, and nothing of the clock", () => {
    expect(writeZip(new Map([...files].reverse()), "2026-05-04")).toEqual(zip);
  });

  it.runIf(isThere("unzip", ["-v"]))("is whole for unzip, which unpacks the same files", () => {
    const folder = temporaryFolder({ "a.zip": zip });
    expect(spawnSync("unzip", ["-tqq", "a.zip"], { cwd: folder }).status).toBe(0);
    expect(
      spawnSync("unzip", ["-qq", "a.zip"], { cwd: folder, env: { ...process.env, LC_ALL: "C.UTF-8" } })
        .status,
    ).toBe(0);
    for (const [path, content] of files)
      expect(new Uint8Array(readFileSync(join(folder, path)))).toEqual(content);
  });

  it.runIf(isThere("python3", ["--version"]))(
    "is whole for Python's zipfile, with the date and the names given",
    () => {
      const folder = temporaryFolder({ "a.zip": zip });
      const program = `import zipfile
z = zipfile.ZipFile("a.zip")
print(z.testzip(), sorted(ascii(i.filename) for i in z.infolist()), {i.date_time for i in z.infolist()})`;
      const { stdout } = spawnSync("python3", ["-c", program], { cwd: folder, encoding: "utf8" });
      expect(stdout.trim()).toBe(
        `None ["'bag/a.txt'", "'bag/data/\\\\xdcnter.csv'", "'bag/data/b.txt'"] {(2026, 5, 4, 0, 0, 0)}`,
      );
    },
  );

  it("refuses a date the format cannot hold, and a path that leads outside", () => {
    for (const date of ["1979-12-31", "2026-13-01", "today", "2026-5-4"])
      expect(() => writeZip(files, date)).toThrow(/writeZip: the date .* got/);
    expect(() => writeZip(new Map([["../a", bytesOf("")]]), "2026-05-04")).toThrow(/writeZip: each path/);
  });
});

describe("readZip(archive)", () => {
  it("gives back what was written", () => {
    const read = readZip(writeZip(files, "2026-05-04"));
    expect([...read].map(([path, content]) => [path, textOf(content)]).sort()).toEqual(
      [...files].map(([path, content]) => [path, textOf(content)]).sort(),
    );
  });

  it.runIf(isThere("zip", ["-v"]))("reads what zip has packed and compressed, folders left out", () => {
    const folder = temporaryFolder({ "bag/data/long.txt": "abc".repeat(5000), "bag/bagit.txt": "x" });
    expect(spawnSync("zip", ["-qr", "a.zip", "bag"], { cwd: folder }).status).toBe(0);
    const read = readZip(readFileSync(join(folder, "a.zip")));
    expect([...read.keys()].sort()).toEqual(["bag/bagit.txt", "bag/data/long.txt"]);
    expect(textOf(read.get("bag/data/long.txt")!)).toBe("abc".repeat(5000));
  });

  it("refuses paths that lead outside or mean something else on another machine", () => {
    for (const path of [
      "../x",
      "a/../../x",
      "/etc/x",
      "a\\b",
      "C:x",
      "con.txt",
      "a//b",
      "a\u0000b",
      "x ",
      "a/./b",
    ])
      expect(() => readZip(archive(path)), path).toThrow(/readZip: the path .* is not taken/);
    expect(readZip(archive("a/x")).size).toBe(1);
  });

  it("refuses links, encrypted and unknown entries", () => {
    expect(() => readZip(archive("x", { mode: 0o120777 }))).toThrow(/x is a link/);
    expect(() => readZip(archive("x", { flags: 0x0801 }))).toThrow(/x is encrypted/);
    expect(() => readZip(archive("x", { method: 12 }))).toThrow(/packed in a way/);
  });

  it("refuses two files of one name, capitals apart", () => {
    const two = writeZip(
      new Map([
        ["a/X.txt", bytesOf("1")],
        ["a/x.txt", bytesOf("2")],
      ]),
      "2026-05-04",
    );
    expect(() => readZip(two)).toThrow(/two files/);
  });

  it("unpacks no more than the archive announces, and no more than the limits", () => {
    const bomb = deflateRawSync(Buffer.alloc(10_000_000, "x"));
    expect(() => readZip(archive("x", { method: 8, content: bomb, size: 1 }))).toThrow(/x is damaged/);
    expect(() => readZip(archive("x", { method: 8, content: bomb, size: 600e6 }))).toThrow(
      /more than 500 MB/,
    );
    expect(() => readZip(writeZip(files, "2026-05-04"), { bytes: 1e6, files: 2 })).toThrow(/at most 2 files/);
  });

  it("finds every single byte altered in a content, and never reads beyond the end", () => {
    const zip = writeZip(new Map([["x", bytesOf("content")]]), "2026-05-04");
    for (let at = 0; at < zip.length; at++) {
      const changed = Uint8Array.from(zip);
      changed[at] = zip[at]! ^ 0xff;
      let read: Files | undefined;
      try {
        read = readZip(changed);
      } catch (error) {
        expect(error, `byte ${at}`).toBeInstanceOf(RangeError);
      }
      for (const content of read?.values() ?? []) expect(textOf(content), `byte ${at}`).toBe("content");
    }
    for (let end = 0; end < zip.length; end++)
      expect(() => readZip(zip.subarray(0, end))).toThrow(RangeError);
  });

  it("says of anything else that it is no archive", () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, "x.zip"), "no archive");
    expect(() => readZip(readFileSync(join(folder, "x.zip")))).toThrow(/no ZIP archive/);
  });
});
