import { describe, expect, it } from "vitest";
import {
  type BoxAlignment,
  type BoxFit,
  type ContactSpots,
  orderOfFitting,
} from "../../../kernel-helpers/bearing/index.js";
import { measured, micrometre, mm } from "../../../kernel-helpers/quantity/index.js";

// What the three readings came to, each as good or bad as asked for.
const none = measured(micrometre(0), micrometre(1));
const line = (verdict: "in line" | "out of line" | "cannot tell yet"): BoxAlignment => ({
  kind: "box alignment",
  table: "box-line",
  limit: micrometre(20),
  sag: undefined,
  boxes: [
    {
      name: "far box",
      readings: [],
      offset: measured(micrometre(0), micrometre(1)),
      tilt: none,
      verdict,
      shim: verdict === "out of line" ? { under: mm(652), thickness: micrometre(43) } : undefined,
    },
  ],
});
const gaps = (change: Partial<BoxFit["boxes"][number]>): BoxFit => ({
  kind: "box fit",
  table: "box-fit",
  tolerance: micrometre(20),
  taperLimit: micrometre(25),
  unread: [],
  boxes: [
    {
      name: "far box",
      wanted: micrometre(90),
      readings: [],
      clearance: measured(micrometre(90), micrometre(2)),
      taper: none,
      tilt: undefined,
      askew: false,
      bore: undefined,
      chance: 1,
      verdict: "fits",
      shim: micrometre(0),
      afterShim: micrometre(90),
      scrape: undefined,
      next: "mark with blue and count the spots",
      ...change,
    },
  ],
});
const spots = (verdict: "bears" | "scrape on", name = "far box"): ContactSpots => ({
  kind: "contact spots",
  table: "box-spots",
  wanted: 5,
  boxes: [
    {
      name,
      squares: 6,
      mean: 7,
      standardUncertainty: 1,
      least: 6,
      most: 8,
      evenChance: 0.9,
      verdict,
      because: verdict === "bears" ? "enough spots, evenly spread" : "too few spots: scrape all that mark",
    },
  ],
});
const out = {
  verdict: "does not fit",
  shim: micrometre(-25),
  next: "take the shims out, on both sides alike, pull down and measure again",
} as const;

describe("orderOfFitting(line, fit, spots)", () => {
  it("is done where the box lies in line, fits and bears", () => {
    const order = orderOfFitting(line("in line"), gaps({}), spots("bears"));
    expect(order.verdict).toBe("fitted");
    expect(order.boxes[0]!.steps.map(({ state }) => state)).toEqual(["done", "done", "done"]);
    expect(order.boxes[0]!.next).toBeUndefined();
  });
  it("begins with the line, and lets nothing after it be done on old readings", () => {
    const [box] = orderOfFitting(line("out of line"), gaps(out), spots("scrape on")).boxes;
    expect(box!.steps.map(({ state }) => state)).toEqual(["next", "later", "later"]);
    expect(box!.steps[0]!.amount!.in("micrometre")).toBe(43);
    expect(box!.steps[0]!.at!.in("mm")).toBe(652);
    expect(box!.steps[2]!.work).toBe("read again after that");
  });
  it("does not count a marking on a box whose shims are still to change", () => {
    const order = orderOfFitting(line("in line"), gaps(out), spots("bears"));
    expect(order.verdict).toBe("not yet");
    expect(order.boxes[0]!.steps.map(({ state }) => state)).toEqual(["done", "next", "later"]);
    // A thickness, not a change: the words say which way.
    expect(order.boxes[0]!.steps[1]!.amount!.si).toBeGreaterThan(0);
  });
  it("gives depth and end of a taper, and asks for heights where the line cannot be told", () => {
    const scrape = { at: mm(12), depth: micrometre(50) };
    const next = "scrape the tight end, at 12 mm, first; shims cannot mend a taper";
    const tapered = gaps({ verdict: "does not fit", scrape, next });
    expect(orderOfFitting(line("in line"), tapered, spots("bears")).boxes[0]!.steps[1]).toMatchObject({
      amount: scrape.depth,
      at: scrape.at,
    });
    expect(orderOfFitting(line("cannot tell yet"), tapered, spots("bears")).boxes[0]!.next).toMatch(
      /^take more heights/,
    );
  });
  it("refuses a box that has not been marked", () => {
    expect(() => orderOfFitting(line("in line"), gaps({}), spots("bears", "near"))).toThrow(
      'orderOfFitting: box-spots must have readings of every box in the line, got none of "far box", only of "near"',
    );
  });
});
