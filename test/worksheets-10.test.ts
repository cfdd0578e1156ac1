import { rmSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import type { DrawUp, NutLock } from "../kernel-helpers/joint/index.js";
import { gram, inch, lbf, mm, newton, ounce } from "../kernel-helpers/quantity/index.js";
import { publishedValue, readSheetRecord } from "../kernel-helpers/record/sheet-record.js";
import type { Balance, BeltTensions, WheelRunOut } from "../kernel-helpers/shaft/index.js";
import { expectClose } from "./support/expect-close.js";
import { copyOfDemoRun, runThrough } from "./support/run-demo.js";

// What the invented readings were made from.
const truths = [
  {
    demo: "demo",
    offset: inch(0.006),
    at: 140,
    left: ounce(1.6),
    leftAt: 310,
    contact: inch(-0.28),
    tight: [lbf(250.5), lbf(415)],
  },
  {
    demo: "demo-metric",
    offset: mm(0.11),
    at: 140,
    left: gram(38),
    leftAt: 40,
    contact: mm(-4.4),
    tight: [newton(1050), newton(1785)],
  },
] as const;

describe.each(truths)("10-reassembly on $demo", ({ demo, offset, at, left, leftAt, contact, tight }) => {
  let folder: string;
  const published = <T>(name: string): T =>
    publishedValue(readSheetRecord(folder, "10-reassembly")!, name) as T;

  beforeAll(async () => {
    folder = await copyOfDemoRun(demo, ["10-reassembly"]);
  }, 240_000);

  it("finds where the hub first touches within its range, and draws it up by the taper of the readings", () => {
    const { firstContact, drawUp, wanted, verdict, gap, stops } = published<DrawUp>("drawUp");
    expect(firstContact.low.si).toBeLessThan(contact.si);
    expect(firstContact.high.si).toBeGreaterThan(contact.si);
    const ratio = demo === "demo" ? 16 : 10;
    const plain = (ratio * (wanted.low.si + wanted.high.si)) / 2 + (ratio * gap.middle.si) / 2;
    expectClose(drawUp.middle.si, plain, {
      rel: 0.01,
      because: "the taper read differs by a few parts in a thousand",
    });
    expect(verdict).toBe("holds");
    expect(stops.map(({ what }) => what)).toEqual(["nut's stop"]);
  });
  it("finds how far the pulley was mounted off centre, and where", () => {
    const { rim } = published<WheelRunOut>("runOut");
    const bound = { rel: 0.1, because: "12 readings of an indicator, three standard uncertainties" };
    expectClose(rim.once.value.si, offset.si, bound);
    expectClose(rim.towards.value.in("degree"), at, { rel: 0.03, because: "as above" });
  });
  it("finds the unbalance left after mounting, half a turn from the correction", () => {
    const { planes, warnings } = published<Balance>("balance");
    const [plane] = planes;
    const miss = Math.abs(plane!.mass.value.si - left.si);
    expect(miss).toBeLessThan(3 * plane!.mass.standardUncertainty.si);
    const turned = (plane!.angle.value.in("degree") + 180 - leftAt + 540) % 360;
    expect(Math.abs(turned - 180)).toBeLessThan(3 * plane!.angle.standardUncertainty.in("degree"));
    expect(warnings).toEqual([]);
  });
  it("finds how tight each belt is", () => {
    const { belts, stretchCounted, warnings } = published<BeltTensions>("tensions");
    expect(belts.map(({ belt }) => belt)).toEqual(["driven belt", "second belt"]);
    belts.forEach(({ tension }, i) => {
      const miss = Math.abs(tension.value.si - tight[i]!.si);
      expect(miss).toBeLessThan(3 * tension.standardUncertainty.si);
    });
    expect(stretchCounted).toBe(true);
    expect(warnings).toEqual([]);
  });
  it("locks the nut within the draw-up, turned the way the thread was seen", () => {
    const { verdict, running, tighten } = published<NutLock>("nutLock");
    expect(verdict).toBe("locks");
    expect(running).toBe("tightens it");
    expect(tighten).toBe(demo === "demo" ? "clockwise" : "counter-clockwise");
  });
  it("tells how the hub sits from what the wheel was made with", () => {
    const { hub, ownOffset, hubFace } = published<WheelRunOut>("runOut");
    const bound = { rel: 0.15, because: "12 readings of an indicator, three standard uncertainties" };
    expectClose(hub!.once.value.si, demo === "demo" ? inch(0.0012).si : mm(0.025).si, bound);
    expect(ownOffset!.real).toBe(true);
    expect(hubFace).toBeDefined();
  });
  // Last: it takes the tables away. The sheets before it are on record and need no second run.
  it("goes through without the readings that are not taken yet, and notes what it could not judge", async () => {
    for (const table of [
      "pulley-run-out",
      "balance-ways",
      "balance-places",
      "balance-runs",
      "belt-string",
      "belt-tension",
    ])
      rmSync(join(folder, "tables", `${table}.csv`));
    await runThrough(folder);
    const { notes, published: results } = readSheetRecord(folder, "10-reassembly")!;
    const wanted = (notes.measure as readonly { what: string }[]).map(({ what }) => what);
    expect(wanted).toEqual([
      "indicator on rim, face and hub",
      "masses that start the pulley on level ways",
      "runs with trial masses",
      "gaps of a string past both pulleys",
      "dips of the belts under a force",
    ]);
    expect(Object.keys(results).sort()).toEqual(["drawUp", "nutLock"]);
  }, 120_000);
});
