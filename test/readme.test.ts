import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { readNotebook } from "../kernel-helpers/notebook/file/notebook-file.js";
import { setUnitSystem } from "../kernel-helpers/quantity/index.js";
import { findSheets, templateFolder } from "../kernel-helpers/record/find-sheets.js";
import { openRebuild } from "../kernel-helpers/record/open-rebuild.js";
import { packageRoot } from "../kernel-helpers/record/package-root.js";
import { profileOf, wearBands } from "../kernel-helpers/survey/index.js";
import type { FigureBlock, VerdictBlock } from "../kernel-helpers/view/blocks.js";
import { drawSvg } from "../kernel-helpers/view/picture/index.js";
import { present } from "../kernel-helpers/view/present.js";

// Files made from the project itself. `npx vitest run test/readme.test.ts -u` writes them anew.

afterEach(() => setUnitSystem(undefined));

describe("worksheets/README.md", () => {
  it("lists every worksheet with its question", async () => {
    const rows = findSheets(join(templateFolder(), "demo")).map(({ name, path }) => {
      const text = readNotebook(path).cells[0]!.source;
      const title = /^# (.+)$/m.exec(text)?.[1];
      const question = /\*\*(.+?)\*\*/.exec(text)?.[1];
      if (title === undefined || question === undefined)
        throw new Error(`${path}: the first cell must hold a title and, in bold, the question`);
      return `| [${title}](${name}.ipynb) | ${question} |`;
    });
    const index = [
      "# Worksheets",
      "",
      "Made from the worksheets themselves; do not edit.",
      "",
      "| sheet | question |",
      "|---|---|",
      ...rows,
      "",
      "Each sheet names in its first cells the tables it reads. Sheet 04 also reads, where they are there, three that try the instrument: `instrument-repeat.csv` (one place read again and again: `reading [in]`), `instrument-compare.csv` (two people or two instruments: `station [in], first [in], second [in]`) and `instrument-check.csv` (gauges of known size: `reference [in], reading [in]`); see [Trying the instruments](../README.md#trying-the-instruments).",
      "",
      "The folders [demo](demo) (inches) and [demo-metric](demo-metric) (millimetres) are whole rebuilds with invented readings. The sheets take sizes by name from a rebuild's `rebuild.json`, so the same sheet serves both.",
      "",
    ].join("\n");
    await expect(index).toMatchFileSnapshot(join(templateFolder(), "README.md"));
  });
});

describe("README.md", () => {
  it("shows the wear bands, and says the probability, as the demo gives them today", async () => {
    const rebuild = openRebuild({ folder: join(templateFolder(), "demo") });
    const wear = wearBands(profileOf(rebuild.table("shaft-survey")), {
      nominal: rebuild.length("shaft nominal"),
      wornBeyond: rebuild.length("making tolerance"),
      limit: rebuild.length("smallest diameter allowed"),
    });
    const { blocks } = present(wear)!;
    const verdict = blocks.find((block): block is VerdictBlock => block.type === "verdict");
    const said = /with a probability of ([\d.]+ %)/.exec(
      readFileSync(join(packageRoot(), "README.md"), "utf8"),
    )?.[1];
    expect(verdict?.outcome).toBe("no");
    expect(verdict?.because).toContain(said);
    const figure = blocks.find((block): block is FigureBlock => block.type === "figure");
    await expect(await drawSvg(figure!.figure)).toMatchFileSnapshot(
      join(templateFolder(), "demo", "wear-bands.svg"),
    );
  });
  it("lists the worksheets with the questions they ask", () => {
    const text = readFileSync(join(packageRoot(), "README.md"), "utf8");
    const index = readFileSync(join(templateFolder(), "README.md"), "utf8");
    const rows = [...index.matchAll(/^\| \[\d\d .*$/gm)].map(([row]) => row.replace("](", "](worksheets/"));
    expect(rows.length).toBeGreaterThan(10);
    expect(rows.filter((row) => !text.includes(row))).toEqual([]);
  });
  it("shows tables of the instruments with the columns that the demo's have", () => {
    const text = readFileSync(join(packageRoot(), "README.md"), "utf8");
    for (const name of ["repeat", "compare", "check"]) {
      const file = `instrument-${name}.csv`;
      const table = readFileSync(join(templateFolder(), "demo", "tables", file), "utf8");
      const header = /^(?!#).+$/m.exec(table)![0].replace(", remark", "");
      expect(text).toContain(`| \`${file}\` | \`${header}\` |`);
    }
  });
  it("points only at files that are there", () => {
    for (const file of ["README.md", "DEVELOPERS.md"]) {
      const text = readFileSync(join(packageRoot(), file), "utf8");
      const targets = [...text.matchAll(/\]\(([^)#:]+)\)/g)].map(([, target]) => target!);
      expect(targets.filter((target) => !existsSync(join(packageRoot(), target)))).toEqual([]);
    }
  });
  it("names only npm scripts that there are", () => {
    const { scripts } = JSON.parse(readFileSync(join(packageRoot(), "package.json"), "utf8"));
    for (const file of ["README.md", "DEVELOPERS.md"]) {
      const text = readFileSync(join(packageRoot(), file), "utf8");
      const named = [...text.matchAll(/npm (?:run )?(start|test|[a-z]+(?=`))/g)].map(([, name]) => name!);
      const builtIn = ["ci", "pack", "install"];
      expect(named.filter((name) => !(name in scripts) && !builtIn.includes(name))).toEqual([]);
    }
  });
});
