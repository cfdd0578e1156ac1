import { beforeAll, describe, expect, it } from "vitest";
import type { BoxFit, ContactSpots, PourPlan } from "../kernel-helpers/bearing/index.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import type { FinishedJournals } from "../kernel-helpers/shaft/index.js";
import { expectClose } from "./support/expect-close.js";
import { copyOfDemo, runThrough } from "./support/run-demo.js";

// What the demos' facts and readings must come to, reckoned here by hand: metres and kilograms.
const truths = [
  {
    demo: "demo",
    finished: (2.425 + 0.004) * 0.0254,
    // A plain ring from 3 1/4 in to the finished bore, 8 in long, of 7.39 g/cm³.
    ring: (Math.PI / 4) * (3.25 ** 2 - 2.429 ** 2) * 8 * 0.0254 ** 3 * 7390,
    fills: "cannot tell yet",
    verdicts: ["does not fit", "fits"],
    shim: -3 * 25.4e-6,
    spots: ["bears", "scrape on"],
  },
  {
    demo: "demo-metric",
    finished: 0.0597 + 0.00009,
    ring: (Math.PI / 4) * (0.08 ** 2 - 0.05979 ** 2) * 0.09 * 7390,
    fills: "fills",
    verdicts: ["fits", "does not fit"],
    shim: 0,
    spots: ["bears", "bears"],
  },
] as const;

describe.each(truths)("worksheets 08 and 09 on $demo", (truth) => {
  let folder: string;
  const published = <T>(sheet: string, name: string): T =>
    publishedValue(readSheetRecord(folder, sheet)!, name) as T;

  beforeAll(async () => {
    folder = copyOfDemo(truth.demo);
    await runThrough(folder);
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
  it("finds the box whose shims are too thick, the one with a taper, and the marking", () => {
    const fit = published<BoxFit>("09-bearing-fit", "fit");
    expect(fit.boxes.map(({ verdict }) => verdict)).toEqual(truth.verdicts);
    expectClose(fit.boxes[0]!.shim.si, truth.shim, { rel: 1e-9, abs: 1e-12, because: "mean of the gaps" });
    expect(fit.boxes[1]!.scrape === undefined).toBe(truth.verdicts[1] === "fits");
    const spots = published<ContactSpots>("09-bearing-fit", "spots");
    expect(spots.boxes.map(({ verdict }) => verdict)).toEqual(truth.spots);
  });
});
