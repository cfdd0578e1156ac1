import { describe, expect, it } from "vitest";
import { boxFit, contactSpots } from "../../../kernel-helpers/bearing/index.js";
import { micrometre } from "../../../kernel-helpers/quantity/index.js";
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
    expect(table?.rows[0]?.cells[3]).toBe("take out 50 µm");
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
