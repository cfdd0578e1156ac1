import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import {
  bytesOf,
  type Files,
  makeBag,
  textOf,
  verifyBag,
} from "../../../kernel-helpers/record/bundle/index.js";
import { temporaryFolder } from "../../support/temporary-folder.js";
import { bagFaults } from "../../support/validate-bag.js";

const payload: Files = new Map([
  ["tables/shaft.csv", bytesOf("station [in], diameter [in]\n1, 2.4375\n")],
  ["rebuild.json", bytesOf("{}\n")],
  ["tables/100% of it.csv", bytesOf("ä\n")],
]);
const info = [
  { label: "Bagging-Date", value: "2026-05-04" },
  { label: "External-Description", value: "a shaft\nin two lines" },
];

function onDisk(bag: Files): string {
  const folder = temporaryFolder();
  for (const [path, content] of bag) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}

/** Whether a program of this machine can be started. */
function isThere(program: string, args: readonly string[]): boolean {
  return spawnSync(program, args).status === 0;
}

function altered(change: (bag: Map<string, Uint8Array>) => void): ReturnType<typeof verifyBag> {
  const bag = new Map(makeBag(payload, info));
  change(bag);
  return verifyBag(bag);
}

describe("makeBag(payload, info)", () => {
  const bag = makeBag(payload, info);

  // RFC 8493, 2.1.1: the declaration consists of exactly these two lines.
  it("declares version 1.0 and UTF-8, as the standard prints it", () => {
    expect(textOf(bag.get("bagit.txt")!)).toBe("BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
  });

  it("writes a tag on one line each, with the number of bytes and files at the end", () => {
    expect(textOf(bag.get("bag-info.txt")!)).toBe(
      "Bagging-Date: 2026-05-04\nExternal-Description: a shaft in two lines\nPayload-Oxum: 44.3\n",
    );
  });

  it("encodes the per cent sign of a path, and no more (RFC 8493, 2.1.3)", () => {
    expect(textOf(bag.get("manifest-sha256.txt")!)).toMatch(
      /^[0-9a-f]{64} {2}data\/tables\/100%25 of it\.csv$/m,
    );
  });

  it("does not depend on the order of the files", () => {
    const turned = makeBag(new Map([...payload].reverse()), info);
    expect([...turned.keys()].sort()).toEqual([...bag.keys()].sort());
    for (const [path, content] of turned) expect(content).toEqual(bag.get(path));
  });

  it("refuses a path that leads outside, and a label that is none", () => {
    expect(() => makeBag(new Map([["../notes.txt", bytesOf("")]]), [])).toThrow(
      /makeBag: each path .* "\.\."/,
    );
    expect(() => makeBag(payload, [{ label: "two words", value: "" }])).toThrow(
      /makeBag: a label .* two words/,
    );
  });

  // An ordinary tool of every Unix: independent of this program. It does not know the encoding of "%".
  it.runIf(isThere("sha256sum", ["--version"]))("is verified by sha256sum -c", () => {
    const plain = new Map([...payload].filter(([path]) => !path.includes("%")));
    const folder = onDisk(makeBag(plain, info));
    for (const manifest of ["manifest-sha256.txt", "tagmanifest-sha256.txt"]) {
      const { status, stderr } = spawnSync("sha256sum", ["--strict", "-c", manifest], { cwd: folder });
      expect([status, String(stderr)]).toEqual([0, ""]);
    }
    writeFileSync(join(folder, "data", "rebuild.json"), "{ }\n");
    expect(spawnSync("sha256sum", ["--strict", "-c", "manifest-sha256.txt"], { cwd: folder }).status).toBe(1);
  });

  const hasBagit = isThere("python3", ["-c", "import bagit"]);
  if (!hasBagit)
    process.stderr.write(
      "\nNOT TESTED HERE: a bag by the tool of the Library of Congress, for python3 has no bagit\n",
    );
  it.runIf(hasBagit)("is valid for the BagIt tool of the Library of Congress", () => {
    const folder = onDisk(bag);
    const check = "import bagit, sys; bagit.Bag(sys.argv[1]).validate()";
    expect(spawnSync("python3", ["-c", check, folder], { encoding: "utf8" })).toMatchObject({ status: 0 });
    writeFileSync(join(folder, "data", "rebuild.json"), "{ }\n");
    expect(spawnSync("python3", ["-c", check, folder]).status).not.toBe(0);
  });

  // Where that tool is missing, this second reading of the standard still is there.
  it("is valid for a second reading of RFC 8493", () => {
    expect(bagFaults(onDisk(bag))).toEqual([]);
  });
  it("is not, for that reading, with any single byte altered, a file gone or one come", () => {
    const folder = onDisk(bag);
    for (const [path, content] of bag) {
      for (let at = 0; at < content.length; at++) {
        const other = Uint8Array.from(content);
        other[at]! ^= 1;
        writeFileSync(join(folder, path), other);
        expect(bagFaults(folder), `${path}, byte ${at}`).not.toEqual([]);
      }
      writeFileSync(join(folder, path), content);
    }
    expect(bagFaults(folder)).toEqual([]);
    const less = new Map(bag);
    less.delete("data/rebuild.json");
    expect(bagFaults(onDisk(less)).join()).toMatch(/lists data\/rebuild\.json, which is not there/);
    expect(bagFaults(onDisk(new Map(bag).set("data/x", bytesOf("")))).join()).toMatch(
      /does not list data\/x/,
    );
  });
});

describe("verifyBag(files)", () => {
  it("finds nothing at fault in a bag as made, and counts files and bytes", () => {
    expect(verifyBag(makeBag(payload, info))).toEqual({
      kind: "bag-check",
      valid: true,
      files: 3,
      bytes: 44,
      algorithms: ["sha256"],
      faults: [],
    });
  });

  it("finds every single byte that is altered, wherever it stands", () => {
    const bag = makeBag(payload, info);
    let tried = 0;
    for (const [path, content] of bag)
      for (let at = 0; at < content.length; at++) {
        const changed = Uint8Array.from(content);
        changed[at] = content[at]! ^ 1;
        // The tag manifest vouches for the others; nothing vouches for it, but then it no longer fits them.
        expect(verifyBag(new Map([...bag, [path, changed]])).valid, `${path} byte ${at}`).toBe(false);
        tried += 1;
      }
    expect(tried).toBeGreaterThan(600);
  });

  it("names a file that is missing, altered or added", () => {
    const missing = altered((bag) => bag.delete("data/rebuild.json"));
    expect(missing.faults).toContainEqual({
      file: "data/rebuild.json",
      what: "it is missing; manifest-sha256.txt lists it",
    });
    const changed = altered((bag) => bag.set("data/rebuild.json", bytesOf("[]\n")));
    expect(changed.faults).toEqual([
      { file: "data/rebuild.json", what: "it was altered: its sha256 is not that of manifest-sha256.txt" },
    ]);
    const added = altered((bag) => bag.set("data/more.txt", bytesOf("")));
    expect(added.faults.map(({ file, what }) => `${file}: ${what}`).join("\n")).toMatch(
      /Payload-Oxum 44\.3.* 4 files\ndata\/more\.txt: it was added/,
    );
  });

  it("says that a folder without declaration or manifest is no bag", () => {
    expect(verifyBag(new Map()).faults).toEqual([
      { file: "bagit.txt", what: "it is missing, so this is no bag" },
    ]);
    expect(altered((bag) => bag.delete("manifest-sha256.txt")).faults[0]!.what).toMatch(/no manifest/);
    expect(altered((bag) => bag.set("bagit.txt", bytesOf("BagIt-Version: 2.0\n"))).faults[0]!.what).toMatch(
      /version/,
    );
  });

  it("takes a manifest of somebody else: another algorithm, capitals, stars and line ends of Windows", () => {
    const content = bytesOf("abc");
    // FIPS 180-4, example B.1 of SHA-256 for "abc"; RFC 1321, A.5, for its MD5.
    const sha = "BA7816BF8F01CFEA414140DE5DAE2223B00361A396177A9CB410FF61F20015AD";
    const bag = new Map([
      ["bagit.txt", bytesOf("BagIt-Version: 0.97\r\nTag-File-Character-Encoding: UTF-8\r\n")],
      ["manifest-sha256.txt", bytesOf(`${sha} *data/a.txt\r\n`)],
      ["manifest-md5.txt", bytesOf("900150983cd24fb0d6963f7d28e17f72  data/a.txt\n")],
      ["data/a.txt", content],
    ]);
    expect(verifyBag(bag)).toMatchObject({ valid: true, algorithms: ["sha256", "md5"] });
  });

  it("does not follow a manifest out of the bag", () => {
    const check = altered((bag) =>
      bag.set("manifest-sha256.txt", bytesOf(`${"0".repeat(64)}  data/../../x\n`)),
    );
    expect(check.faults.map(({ what }) => what).join("\n")).toMatch(/line 1: it has a part "\.\."/);
  });
});
