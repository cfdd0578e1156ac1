import { beforeAll, describe, expect, it } from "vitest";
import type { PourPlan } from "../kernel-helpers/bearing/index.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import type { FinishedJournals } from "../kernel-helpers/shaft/index.js";
import { expectClose } from "./support/expect-close.js";
import { copyOfDemoRun } from "./support/run-demo.js";

// What the demos' facts and readings must come to, reckoned here by hand: metres and kilograms.
const truths = [
  {
    demo: "demo",
    finished: (2.425 + 0.004) * 0.0254,
    // A plain ring from 3 1/4 in to the finished bore, 8 in long, of 7.39 g/cm³.
    ring: (Math.PI / 4) * (3.25 ** 2 - 2.429 ** 2) * 8 * 0.0254 ** 3 * 7390,
    fills: "cannot tell yet",
  },
  {
    demo: "demo-metric",
    finished: 0.0597 + 0.00009,
    ring: (Math.PI / 4) * (0.08 ** 2 - 0.05979 ** 2) * 0.09 * 7390,
    fills: "fills",
  },
] as const;

describe.each(truths)("08-bearing-pour on $demo", (truth) => {
  let folder: string;
  const published = <T>(sheet: string, name: string): T =>
    publishedValue(readSheetRecord(folder, sheet)!, name) as T;

  beforeAll(async () => {
    folder = await copyOfDemoRun(truth.demo);
  }, 240_000);

  it("sizes the bore, melts a little more than a plain ring weighs, and judges the fill", () => {
    const pour = published<PourPlan>("08-bearing-pour", "pour");
    expectClose(pour.finishedBore.si, truth.finished, { rel: 1e-9, because: "journal and clearance" });
    expect(pour.mandrel.si).toBeLessThan(truth.finished);
    // The mandrel is smaller than the finished bore; anchors and riser come on top.
    expect(pour.mass.si).toBeGreaterThan(truth.ring);
    expectClose(pour.mass.si, truth.ring, { rel: 0.2, because: "allowance, anchors and riser are small" });
    expect(pour.verdict).toBe(truth.fills);
  });
  it("pours each box to its own journal, of the alloy that was decided on", () => {
    const [near, far] = [
      published<PourPlan>("08-bearing-pour", "pour"),
      published<PourPlan>("08-bearing-pour", "farPour"),
    ];
    const journals = published<FinishedJournals>("06-shaft-salvage", "journals").journals;
    [near, far].forEach((pour, i) => {
      expect(pour.name).toBe(journals[i]!.name);
      expectClose(pour.finishedBore.si, journals[i]!.diameter.value.si + pour.clearance.si, {
        rel: 1e-9,
        because: "journal and clearance",
      });
      expect(pour.alloy.number).toBe(2);
    });
  });
});
