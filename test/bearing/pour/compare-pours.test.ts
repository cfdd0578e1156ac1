import { describe, expect, it } from "vitest";
import { comparePours, pourPlan } from "../../../kernel-helpers/bearing/index.js";
import { babbitt } from "../../../kernel-helpers/handbook/index.js";
import {
  degF,
  degree,
  inch,
  measured,
  pound,
  quantity,
  second,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import { presentPourComparison } from "../../../kernel-helpers/view/results/present-pour-comparison.js";
import { expectClose } from "../../support/expect-close.js";

const poured = (name: string, shell: number) =>
  pourPlan({
    name,
    alloy: babbitt(2),
    journal: measured(inch(2.425), thou(0.2)),
    clearance: thou(4),
    allowance: thou(10),
    shellBore: inch(3.25),
    shellMass: pound(30),
    length: inch(8),
    anchors: { count: 6, mouth: quantity(0.2, "inch2"), depth: inch(0.25) },
    shims: thou(60),
    riser: { diameter: inch(1), height: inch(2) },
    shellPreheat: degF(shell),
    mandrelPreheat: degF(300),
    shop: degF(65),
    fillTime: second(3),
    loss: 0.15,
    loadAt: degree(90),
  });

describe("comparePours(pours)", () => {
  const compared = comparePours([
    ["planned", poured("box", 250)],
    ["warmer", poured("box", 300)],
  ]);
  const [planned, warmer] = compared.pours;

  it("counts from the first, and a warmer shell runs longer", () => {
    expect(planned!.timesAsLong).toBe(1);
    expect(warmer!.timesAsLong).toBeGreaterThan(1);
  });
  it("gives a ratio that is the same at good and at poor contact", () => {
    expectClose(
      warmer!.chill.slow.stopsRunning.si / planned!.chill.slow.stopsRunning.si,
      warmer!.timesAsLong,
      {
        rel: 1e-12,
        because: "every time goes as one over the contact",
      },
    );
  });
  it("shows times as ranges of two digits", () => {
    const [table] = presentPourComparison(compared).blocks;
    const rows = table!.type === "table" ? table!.rows : [];
    expect(rows).toHaveLength(2);
    for (const { cells } of rows) expect(cells[2]).toMatch(/^\d+(\.\d)? to \d+(\.\d)? s$/);
  });
  it("refuses a single pour, and pours of two boxes", () => {
    expect(() => comparePours([["alone", poured("box", 250)]])).toThrow("at least two pours");
    const two = [poured("box", 250), poured("far box", 250)] as const;
    expect(() =>
      comparePours([
        ["one", two[0]],
        ["other", two[1]],
      ]),
    ).toThrow('must be of "box", got "far box"');
  });
});
