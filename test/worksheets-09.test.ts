import { beforeAll, describe, expect, it } from "vitest";
import type {
  BoxAlignment,
  BoxFit,
  ContactSpots,
  OrderOfFitting,
  PourPlan,
} from "../kernel-helpers/bearing/index.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import type { FinishedJournals } from "../kernel-helpers/shaft/index.js";
import { expectClose } from "./support/expect-close.js";
import { copyOfDemoRun } from "./support/run-demo.js";

// By hand from the tables: means of the gaps, and straight lines through heights and gaps.
const truths = [
  {
    demo: "demo",
    line: ["in line", "in line"],
    // (6.9 + 7.2 + 7.0 + 7.1)/4 and (3.8 + 4.1 + 4.2 + 4.1)/4 thou.
    clearances: [7.05 * 25.4e-6, 4.05 * 25.4e-6],
    verdicts: ["does not fit", "fits"],
    shims: [-3 * 25.4e-6, 0],
    spots: ["bears", "scrape on"],
    next: ["clearance and taper", "marking"],
  },
  {
    demo: "demo-metric",
    line: ["in line", "out of line"],
    clearances: [90.5e-6, 94.75e-6],
    verdicts: ["fits", "does not fit"],
    // Once in line the far box has 94.75 + 43/2 = 116 µm: one shim of 25 µm too many for 90.
    shims: [0, -25e-6],
    spots: ["bears", "bears"],
    next: [undefined, "line"],
  },
] as const;

describe.each(truths)("09-bearing-fit on $demo", (truth) => {
  let folder: string;
  const published = <T>(sheet: string, name: string): T =>
    publishedValue(readSheetRecord(folder, sheet)!, name) as T;

  beforeAll(async () => {
    folder = await copyOfDemoRun(truth.demo);
  }, 240_000);

  it("finds the box that lies out of line, from wire or bar", () => {
    const line = published<BoxAlignment>("09-bearing-fit", "line");
    expect(line.boxes.map(({ verdict }) => verdict)).toEqual(truth.line);
    expect(line.sag === undefined).toBe(truth.demo === "demo-metric");
  });
  it("wants the clearance that sheet 08 poured for, on the journals that sheet 06 left", () => {
    const fit = published<BoxFit>("09-bearing-fit", "fit");
    const pours = ["pour", "farPour"].map((name) => published<PourPlan>("08-bearing-pour", name));
    const { journals } = published<FinishedJournals>("06-shaft-salvage", "journals");
    expect(fit.unread).toEqual([]);
    fit.boxes.forEach((box, i) => {
      expect([pours[i]!.name, journals[i]!.name]).toEqual([box.name, box.name]);
      expect(box.wanted.si).toBe(pours[i]!.clearance.si);
      const clearance = box.askew ? box.tilt!.onceInLine : box.clearance;
      expectClose(box.bore!.value.si, journals[i]!.diameter.value.si + clearance.value.si, {
        rel: 1e-9,
        because: "bore less journal is the clearance",
      });
    });
  });
  it("tells clearances, verdicts and shims", () => {
    const fit = published<BoxFit>("09-bearing-fit", "fit");
    fit.boxes.forEach((box, i) => {
      expectClose(box.clearance.value.si, truth.clearances[i]!, {
        rel: 1e-9,
        because: "evenly spaced: the mean of the gaps",
      });
      expectClose(box.shim.si, truth.shims[i]!, {
        rel: 1e-9,
        abs: 1e-12,
        because: "whole steps of the stock",
      });
    });
    expect(fit.boxes.map(({ verdict }) => verdict)).toEqual(truth.verdicts);
  });
  it("scrapes no box for what its tilt makes of the gaps", () => {
    const { boxes } = published<BoxFit>("09-bearing-fit", "fit");
    for (const { name, taper, tilt, scrape } of boxes) {
      expect(scrape, name).toBeUndefined();
      expectClose(tilt!.part.value.si + tilt!.own.value.si, taper.value.si, {
        rel: 1e-9,
        abs: 1e-15,
        because: "parts of one whole",
      });
    }
  });
  it("says in which order what is left is done, and hands it on to the handover", () => {
    const spots = published<ContactSpots>("09-bearing-fit", "spots");
    expect(spots.boxes.map(({ verdict }) => verdict)).toEqual(truth.spots);
    const order = published<OrderOfFitting>("09-bearing-fit", "order");
    expect(order.boxes.map(({ steps }) => steps.find(({ state }) => state === "next")?.name)).toEqual(
      truth.next,
    );
    expect(order.verdict).toBe("not yet");
    const noted = JSON.stringify(readSheetRecord(folder, "09-bearing-fit")!);
    for (const { name, next } of order.boxes)
      if (next !== undefined) expect(noted).toContain(`${name}: ${next}`);
  });
});
