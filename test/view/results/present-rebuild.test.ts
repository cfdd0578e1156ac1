import { cpSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import {
  degF,
  degree,
  inch,
  type Length,
  mm,
  pound,
  setUnitSystem,
} from "../../../kernel-helpers/quantity/index.js";
import { openRebuild } from "../../../kernel-helpers/record/index.js";
import { profileOf, wearBands } from "../../../kernel-helpers/survey/index.js";
import type { Presentation } from "../../../kernel-helpers/view/blocks.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderHtml } from "../../../kernel-helpers/view/render-html.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";
import type { ShownRebuild } from "../../../kernel-helpers/view/results/present-rebuild.js";
import { hostileRemark } from "../../support/sample-results.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

afterEach(() => setUnitSystem(undefined));

const bare: ShownRebuild = {
  kind: "rebuild",
  title: "Line shaft",
  notice: "",
  tables: [],
  facts: {
    invented: false,
    machine: [],
    dimensions: {},
    angles: {},
    quantities: {},
    numbers: {},
    words: {},
    limits: {},
  },
};
const withSizes = (dimensions: Readonly<Record<string, Length>>): ShownRebuild => ({
  ...bare,
  facts: { ...bare.facts, dimensions },
});
const factsOf = ({ blocks }: Presentation): string[] =>
  blocks.flatMap((block) => (block.type === "table" ? block.rows : [])).map(({ cells }) => cells[1]!);

/** The demo in a folder of its own, where its sheets may write. */
function demoCopy(): string {
  const folder = temporaryFolder();
  cpSync(join(__dirname, "..", "..", "..", "worksheets", "demo"), folder, { recursive: true });
  return folder;
}

describe("present(rebuild)", () => {
  it("shows the angles rebuild.json gives beside the sizes", () => {
    const shown = present({ ...bare, facts: { ...bare.facts, angles: { "load direction": degree(90) } } });
    expect(factsOf(shown!)).toEqual(["90°"]);
  });
  it("says a size in inches as a fraction too, where it is one", () => {
    const sizes = {
      shaft: inch(2.4375),
      pin: inch(0.5),
      limit: inch(2.4325),
      length: inch(36),
      bush: mm(62),
    };
    expect(factsOf(present(withSizes(sizes))!)).toEqual([
      "2 7/16 in (2.4375 in)",
      "1/2 in (0.5 in)",
      "2.4325 in",
      "36 in",
      "62 mm",
    ]);
  });

  it("shows the machine's facts first, then the facts worksheets ask for, by name, and how many", () => {
    const rebuild = withSizes({ "shaft nominal": inch(2.4375) });
    const machine = [{ label: "speed", value: "110 rpm" }];
    const angles = { "load direction": degree(90), wrap: degree(165) };
    const [first, second] = present({ ...rebuild, facts: { ...rebuild.facts, machine, angles } })!.blocks;
    expect(first).toEqual({ type: "facts", facts: machine });
    expect(second).toMatchObject({
      caption: "Facts that worksheets ask for by name, as rebuild.json gives them: 1 dimension, 2 angles.",
      rows: [
        { cells: ["shaft nominal", "2 7/16 in (2.4375 in)"] },
        { cells: ["load direction", "90°"] },
        { cells: ["wrap", "165°"] },
      ],
      showRows: 3,
    });
  });

  it("says a fact with limits as value ± limits, in the unit the value is shown in", () => {
    const facts = {
      ...bare.facts,
      dimensions: { reach: inch(20) },
      quantities: { mass: pound(180), shop: degF(65) },
      limits: { "quantities.mass": pound(10), "dimensions.reach": mm(0.254), "quantities.reach": mm(99) },
    };
    expect(factsOf(present({ ...bare, facts })!)).toEqual(["20 ± 0.01 in", "180 ± 10 lb", "65 °F"]);
    setUnitSystem("metric");
    expect(factsOf(present({ ...bare, facts })!)[0]).toBe("508 ± 0.254 mm");
  });

  it("says the reason of a number with it", () => {
    const facts = { ...bare.facts, numbers: { "demanded factor": { value: 1.3, because: "jams" } } };
    expect(factsOf(present({ ...bare, facts })!)).toEqual(["1.3: jams"]);
    expect(renderText(present({ ...bare, facts })!)).toMatch(/1\s+number\b/);
  });

  it("folds a long list: in HTML under its caption, not in print; in text its length is said", () => {
    const sizes = Object.fromEntries(Array.from({ length: 13 }, (_, i) => [`size ${i}`, inch(i + 1)]));
    const presentation = present(withSizes(sizes))!;
    const html = renderHtml(presentation, { picture: () => "", withStyle: true });
    expect(html).toContain('<details class="jb-folded"><summary>Facts that worksheets ask for');
    expect(html).not.toContain("<details open");
    expect(html.match(/<td[^>]*>size \d+<\/td>/g)).toHaveLength(13);
    expect(html).toMatch(/@media print\{.*\.jb-folded>\.jb-scroll\{display:none\}/);
    const text = renderText(presentation);
    expect(text).toMatch(/13\s+dimensions/);
    expect(text).toContain("… 13 rows, not listed here");
    expect(text).not.toContain("size 3");
  });

  it("warns where another rebuild than the sheet's own was opened, and says that a demo is invented", () => {
    const demo = { ...bare, notice: "This is the demo.", facts: { ...bare.facts, invented: true } };
    expect(present(demo)!.blocks.slice(0, 2)).toEqual([
      { type: "warning", text: "This is the demo." },
      { type: "text", text: "A demonstration: the machine and its readings are invented." },
    ]);
    expect(renderText(present(bare)!)).not.toMatch(/WARNING|invented/);
  });

  it("names the tables, and says so where there is none", () => {
    expect(present(bare)!.blocks).toEqual([{ type: "text", text: "There are no tables yet." }]);
    expect(renderText(present({ ...bare, tables: ["shaft", "taper"] })!)).toContain(
      "Tables of readings: shaft, taper.",
    );
  });

  it("shows texts full of markup as they stand, and they do nothing in HTML", () => {
    const hostile: ShownRebuild = {
      ...withSizes({ [hostileRemark]: inch(1) }),
      title: hostileRemark,
      notice: hostileRemark,
      tables: [hostileRemark],
    };
    const machine = [{ label: hostileRemark, value: hostileRemark }];
    const presentation = present({ ...hostile, facts: { ...hostile.facts, machine } })!;
    expect(presentation.title).toBe(hostileRemark);
    expect(presentation.blocks[1]).toMatchObject({ facts: machine });
    expect(presentation.blocks[2]).toMatchObject({ rows: [{ cells: [hostileRemark, "1 in"] }] });
    const html = renderHtml(presentation, { picture: () => "", withStyle: false });
    // Title and name of the section, warning, machine's label and value, the size's label, the table.
    expect(html.match(/&lt;img/g)).toHaveLength(7);
    expect(html).not.toMatch(/<img|<b>/);
  });
});

describe("present(published)", () => {
  const published = { kind: "published", sheet: "04-shaft-survey", file: "record/04-shaft-survey.json" };

  it.each([
    { names: ["wear"], title: "Handed on: wear", word: "it" },
    { names: ["wear", "journal"], title: "Handed on: wear, journal", word: "them" },
  ])("says what is handed on, from which sheet and where it is kept: $names", ({ names, title, word }) => {
    expect(present({ ...published, names })).toEqual({
      title,
      blocks: [
        {
          type: "text",
          text: `Later sheets take ${word} over from 04-shaft-survey by name; kept in record/04-shaft-survey.json.`,
        },
      ],
    });
  });
});

describe("what a sheet shows of a rebuild", () => {
  it("never says where on this computer it lies", () => {
    const folder = demoCopy();
    const rebuild = openRebuild({ folder, sheet: "90-test" });
    const table = rebuild.table("shaft-survey");
    const profile = profileOf(table);
    const wear = wearBands(profile, { nominal: rebuild.length("shaft nominal") });
    const values = [rebuild, table, profile, wear, rebuild.publish({ "test wear": wear })];
    expect(rebuild.directory).toBe(folder);
    for (const value of values) {
      const shown = JSON.stringify(present(value));
      expect(shown.length).toBeGreaterThan(100);
      expect(shown).not.toContain(JSON.stringify(folder).slice(1, -1));
      // Nor any other path from the root of a disk.
      expect(shown).not.toMatch(/"(?:[A-Z]:\\\\|\/[a-z])|[\s(]\/(?:home|tmp|usr|root|work|var)\//);
    }
  });
});
