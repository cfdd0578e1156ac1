import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import {
  emptyTable,
  exampleInstruments,
  newRebuild,
  quotedTexts,
  templateSheets,
} from "../../../kernel-helpers/notebook/new/index.js";
import { textOf } from "../../../kernel-helpers/record/bundle/index.js";
import { demoFolder, readRebuildFile, templateFolder } from "../../../kernel-helpers/record/index.js";
import { readTableFile, TableFaults } from "../../../kernel-helpers/survey/index.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

function onDisk({ files }: ReturnType<typeof newRebuild>): string {
  const folder = temporaryFolder();
  for (const [path, content] of files) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}

function faultsOf(read: () => unknown): readonly string[] {
  try {
    read();
    return [];
  } catch (error) {
    if (!(error instanceof TableFaults)) throw error;
    return error.faults.map(({ found }) => found);
  }
}

describe.each(["inch", "metric"] as const)("newRebuild({ units: %j })", (units) => {
  const made = newRebuild({ title: 'Rope "sheave"', units });
  const folder = onDisk(made);
  const facts = readRebuildFile(join(folder, "rebuild.json"));

  it("makes a rebuild.json that is valid, and calls every value in it an example", () => {
    expect(facts).toMatchObject({ title: 'Rope "sheave"', unitSystem: units, invented: false });
    const entries = (
      ["dimensions", "angles", "quantities", "numbers", "words", "parts", "instruments"] as const
    ).flatMap((section) => Object.keys(facts[section]).map((name) => `${section}.${name}`));
    expect([...facts.examples].sort()).toEqual(entries.sort());
    expect(entries.length).toBeGreaterThan(5);
    expect(entries.join()).not.toContain("below the smallest diameter");
  });

  it("makes tables at which nothing is wrong but that their readings are missing", () => {
    expect(made.tables.length).toBeGreaterThan(1);
    for (const name of made.tables) {
      const read = (): unknown =>
        readTableFile(join(folder, "tables", `${name}.csv`), { ...facts, name, file: `${name}.csv` });
      expect(faultsOf(read), name).toEqual(["a header and no rows"]);
    }
  });

  it("takes the readings of the demo under its headers, with instruments and parts", () => {
    const demo = units === "inch" ? demoFolder() : join(templateFolder(), "demo-metric");
    for (const name of ["shaft-survey", "taper-survey"]) {
      const rows = readFileSync(join(demo, "tables", `${name}.csv`), "utf8")
        .split("\n")
        .filter((line) => /^\d/.test(line));
      const path = join(folder, "tables", `${name}.csv`);
      writeFileSync(path, `${readFileSync(path, "utf8")}${rows.join("\n")}\n`);
      const { rowCount, conditions, unitSystem } = readTableFile(path, { ...facts, name, file: name });
      expect([rowCount, unitSystem]).toEqual([rows.length, units]);
      expect(conditions.part).toBeDefined();
      expect(conditions.instruments.diameter).toBeDefined();
      // The temperature of the demo's shop must not count for readings taken elsewhere.
      expect(conditions.temperature).toBeUndefined();
    }
  });

  it("holds no reading and no word of the invented ones", () => {
    for (const [path, content] of made.files)
      if (path.startsWith("tables/")) expect(textOf(content), path).not.toMatch(/^\d|invented/im);
  });

  it("copies the worksheets to the byte", () => {
    for (const { name, path } of templateSheets())
      expect(Buffer.from(made.files.get(`sheets/${name}.ipynb`)!).equals(readFileSync(path)), name).toBe(
        true,
      );
  });
});

describe("newRebuild(some sheets, some instruments)", () => {
  it("takes sheets by number, with the tables these read and what they will miss", () => {
    const { sheets, tables, missing } = newRebuild({ title: "T", units: "inch", sheets: ["05"] });
    expect(sheets).toEqual(["05-taper"]);
    expect(tables).toEqual(["instrument-repeat", "taper-survey"]);
    expect(missing.join("\n")).toMatch(/05-taper takes over .*wear/);
  });

  it("takes the instruments named, and makes examples of the others in the tables", () => {
    const [first] = exampleInstruments("inch").keys();
    const { files } = newRebuild({ title: "T", units: "inch", sheets: ["04"], instruments: [first!] });
    expect(Object.keys(JSON.parse(textOf(files.get("rebuild.json")!)).instruments)).toEqual([first]);
    expect(textOf(files.get("tables/shaft-survey.csv")!)).toMatch(
      /^# example: instrument station: steel-tape$/m,
    );
  });

  it("lists what there is where a name is wrong", () => {
    expect(() => newRebuild({ title: "T", units: "inch", sheets: ["99"] })).toThrow(
      /worksheet 99; there are .*04-shaft-survey/,
    );
    expect(() => newRebuild({ title: "T", units: "metric", instruments: ["mic"] })).toThrow(
      /instrument mic; there are .*mic-50-75/,
    );
  });
});

describe("emptyTable(text, units)", () => {
  it("exchanges units of the other system in the header, and no others", () => {
    expect(
      emptyTable(
        "station [in], reading @ 0 deg [thou], angle [deg], repeat [-], remark\n1,2,3,4,\n",
        "metric",
      ).text,
    ).toBe("station [mm], reading @ 0 deg [µm], angle [deg], repeat [-], remark\n");
    expect(emptyTable("a [mm], t [degC]\n", "inch").text).toBe("a [in], t [degF]\n");
    expect(emptyTable("a [mm]\n", "metric").text).toBe("a [mm]\n");
  });
});

describe("quotedTexts(sources)", () => {
  it("finds each text once, in any quotes, on one line", () => {
    const code = [`f("a b", 'c', "a b")`, "g(`d`)"];
    expect(quotedTexts(code)).toEqual(["a b", "c", "d"]);
  });
});
