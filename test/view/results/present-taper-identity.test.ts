import { afterEach, describe, expect, it } from "vitest";
import { setUnitSystem } from "../../../kernel-helpers/quantity/index.js";
import type { TaperIdentity, TaperMatch } from "../../../kernel-helpers/survey/index.js";
import type { TableBlock } from "../../../kernel-helpers/view/blocks.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderHtml } from "../../../kernel-helpers/view/render-html.js";
import { hostileRemark, sampleIdentity } from "../../support/sample-results.js";

afterEach(() => setUnitSystem(undefined));

const identity = sampleIdentity();
const [morse, jarno] = identity.matches as [TaperMatch, TaperMatch];
const tableOf = (value: TaperIdentity): TableBlock =>
  present(value)!.blocks.find((block) => block.type === "table")!;
const lastCells = (value: TaperIdentity): (string | undefined)[] =>
  tableOf(value).rows.map(({ cells }) => cells.at(-1));

describe("present(taper identity)", () => {
  it("gives each standard its taper per foot, its ratio, and by how much the measured one is off", () => {
    expect(tableOf(identity).rows.map(({ cells }) => cells)).toEqual([
      // 1/(0.60235/12) = 19.922
      ["Morse 3", "0.60235", "19.922", "−0.00035", "−1.5", "−0.15", "yes, within the uncertainty"],
      ["Jarno", "0.60000", "20.000", "0.00200", "8.3", "0.83", "no"],
    ]);
  });

  it("says the taper per 100 mm and the misfit in micrometres in a metric rebuild", () => {
    setUnitSystem("metric");
    const { columns, rows } = tableOf(identity);
    expect(columns.map(({ title, unit }) => unit ?? title)).toEqual([
      "taper",
      "mm per 100 mm",
      "1 : x",
      "mm per 100 mm",
      "times u",
      "µm",
      "agrees",
    ]);
    // 0.60235/12 = 5.0196 %; 0.00035/12 = 0.0029 %; 0.00015 in = 3.8 µm.
    expect(rows[0]!.cells.slice(1, 6)).toEqual(["5.0196", "19.922", "−0.0029", "−1.5", "−3.8"]);
  });

  it("does not call a match what has the slope of a standard but not its diameters", () => {
    const matches = [
      { ...morse, sizeFits: false },
      { ...jarno, agrees: true, sizeFits: true },
    ];
    expect(lastCells({ ...identity, matches })).toEqual([
      "in slope, not in size",
      "yes, within the uncertainty",
    ]);
  });

  it("folds away all but those that agree and the two next, and names the sources of those that agree", () => {
    const matches = [morse, jarno, jarno, jarno];
    expect(tableOf({ ...identity, matches }).showRows).toBe(3);
    expect(present({ ...identity, matches })!.blocks.at(-1)).toEqual({
      type: "facts",
      facts: [{ label: "Morse 3", value: "table of Morse tapers" }],
    });
    const none = { ...identity, matches: [jarno, jarno] };
    expect(present(none)!.blocks.map(({ type }) => type)).toEqual(["text", "table"]);
    expect(tableOf(none).showRows).toBe(2);
  });

  it("shows the sentence of the result first, and texts full of markup as they stand", () => {
    const hostile = { ...morse, name: hostileRemark, source: hostileRemark };
    const presentation = present({ ...identity, text: hostileRemark, matches: [hostile] })!;
    expect(presentation.blocks[0]).toEqual({ type: "text", text: hostileRemark });
    expect(presentation.blocks[2]).toEqual({
      type: "facts",
      facts: [{ label: hostileRemark, value: hostileRemark }],
    });
    const html = renderHtml(presentation, { picture: () => "", withStyle: false });
    expect(html.match(/&lt;img/g)).toHaveLength(4);
    expect(html).not.toMatch(/<img|<b>/);
  });
});
