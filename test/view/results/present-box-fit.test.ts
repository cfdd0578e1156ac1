import { describe, expect, it } from "vitest";
import {
  boxAlignment,
  boxFit,
  contactSpots,
  type OrderOfFitting,
} from "../../../kernel-helpers/bearing/index.js";
import { micrometre, mm } from "../../../kernel-helpers/quantity/index.js";
import { readTable } from "../../../kernel-helpers/survey/index.js";
import { presentResult } from "../../../kernel-helpers/view/results/present-result.js";

const tableOf = (...lines: readonly string[]): ReturnType<typeof readTable> =>
  readTable(new TextEncoder().encode(lines.join("\n")), { name: "box-fit", file: "box-fit.csv" });

describe("the look of a box fit", () => {
  const limits = { wanted: micrometre(90), tolerance: micrometre(20), taperLimit: micrometre(20) };
  const stock = { readingUncertainty: micrometre(5), shimStep: micrometre(25) };
  const gaps = [140, 142, 138].map((gap, i) => `far box,${20 + 30 * i},${gap}`);
  const shown = presentResult(
    boxFit(tableOf("box [text],station [mm],gap [µm]", ...gaps), { ...limits, ...stock }),
  )!;
  it("says first, box by box, whether it fits and what comes next", () => {
    expect(shown.blocks[0]).toMatchObject({
      type: "verdict",
      outcome: "no",
      text: "far box: does not fit",
      because: expect.stringMatching(
        /^DIAMETRAL clearance 140.* µm \(95 %\), wanted 90 µm ± 20 µm.*take the shims out/,
      ),
    });
  });
  it("tells the change of shims as taking out, never as adding less than nothing", () => {
    const table = shown.blocks.find((block) => block.type === "table");
    expect(table?.columns[3]).toMatchObject({ title: "shims, both sides", unit: "µm" });
    expect(table?.rows[0]?.cells[3]).toBe("take out 50");
    // A column whose head names the unit does not name it in its cells again.
    const named = table!.columns.flatMap(({ unit }, i) => (unit === "µm" ? [table!.rows[0]!.cells[i]!] : []));
    expect(named.length).toBeGreaterThan(2);
    expect(named.join(" ")).not.toContain("µm");
  });
  it("says of a tilted box what it has now and what it will have in line", () => {
    const heights = (box: string, from: number, rise: number): string[] =>
      [0, 30, 60].map((x) => `${box},${from + x},${500 - (rise * x) / 60}`);
    const line = boxAlignment(
      tableOf(
        "box [text],station [mm],depth [µm]",
        ...heights("near box", 100, 0),
        ...heights("far box", 9000, 40),
      ),
      { limit: micrometre(20), readingUncertainty: micrometre(1) },
    );
    const table = tableOf(
      "box [text],station [mm],gap [µm]",
      ...[70, 90, 110].map((gap, i) => `far box,${30 * i},${gap}`),
    );
    const { blocks } = presentResult(boxFit(table, { ...limits, ...stock, line }))!;
    expect(blocks[0]).toMatchObject({
      outcome: "no",
      because: expect.stringMatching(
        /^DIAMETRAL clearance 90.* µm \(95 %\) as it stands, 109\.9.* µm once it lies in line, wanted/,
      ),
    });
    const titles = blocks.flatMap((block) => (block.type === "table" ? block.columns : []));
    expect(titles.map(({ title }) => title)).toContain("by its tilt");
    // Nothing is known of the journal: no column for the bore.
    expect(titles.map(({ title }) => title)).not.toContain("bore half-way");
  });
  it("draws the gaps in the unit of the shop", () => {
    const block = shown.blocks.at(-1)!;
    if (block.type !== "figure") throw new Error("the last block is the figure");
    expect(block.figure.data[0]).toMatchObject({ x: [20, 50, 80], y: [140, 142, 138] });
    expect(block.alt).toMatch(/far box/);
  });
});

describe("the look of contact spots", () => {
  it("says what to do, with the count and its uncertainty", () => {
    const found = contactSpots(tableOf("box [text],spots [-]", "a,9", "a,9", "a,9", "a,9"), 5);
    expect(presentResult(found)!.blocks[0]).toMatchObject({
      outcome: "yes",
      because:
        "9.0 ± 3.0 spots a square inch (95 %) in 4 squares, 9 to 9; wanted 5. Enough spots, evenly spread.",
    });
  });
});

describe("the look of an order of fitting", () => {
  const order: OrderOfFitting = {
    kind: "order of fitting",
    verdict: "not yet",
    boxes: [
      {
        name: "far box",
        verdict: "not yet",
        next: "shim under the low end",
        steps: [
          {
            name: "line",
            state: "next",
            work: "shim under the low end",
            amount: micrometre(43),
            at: mm(652),
          },
          { name: "marking", state: "later", work: "read again after that" },
        ],
      },
    ],
  };
  it("names what is open, and gives the work with its measure", () => {
    const { blocks } = presentResult(order)!;
    expect(blocks[0]).toMatchObject({ outcome: "no", because: "Open: far box, line." });
    const table = blocks.find((block) => block.type === "table");
    expect(table?.rows[0]).toMatchObject({ mark: "bad" });
    expect(table?.rows[0]?.cells[3]).toBe("shim under the low end: 43 µm at 652 mm");
  });
});
