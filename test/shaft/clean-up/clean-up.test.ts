import { describe, expect, it } from "vitest";
import { inch, thou } from "../../../kernel-helpers/quantity/index.js";
import { chanceAllAbove } from "../../../kernel-helpers/shaft/clean-up/chance-all-above.js";
import { chanceToClean, cleanUp } from "../../../kernel-helpers/shaft/index.js";
import { normalCdf, randomGenerator } from "../../../kernel-helpers/statistics/index.js";
import {
  profileOf,
  type RunOut,
  readTable,
  runOut,
  type Table,
  type WearBands,
  wearBands,
} from "../../../kernel-helpers/survey/index.js";
import { expectClose } from "../../support/expect-close.js";

const tableOf = (name: string, ...lines: readonly string[]): Table =>
  readTable(new TextEncoder().encode(lines.join("\n")), { name, file: `${name}.csv` });
const rounding = { rel: 1e-9, because: "a few roundings" };

/** A shaft of 2.4375 in, worn from 5 to 9 in by `worn` on one side only: at 0° and 90° the diameter tells it. */
function wearOf(worn: number): WearBands {
  const rows = Array.from({ length: 15 }, (_, i) => {
    const d = i >= 5 && i <= 9 ? 2.4375 - worn : 2.4375;
    return `${i},2.4375,${d.toFixed(5)}`;
  });
  const table = tableOf("shaft", "station [in],diameter @ 0 deg [in],diameter @ 90 deg [in]", ...rows);
  const profile = profileOf(table, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
  return wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
}

/** The indicator between centres on the same shaft: the worn surface's centre lies half the wear aside. */
function runOutOf(worn: number, offset = 0): RunOut {
  const marks = [0, 45, 90, 135, 180, 225, 270, 315];
  const rows = [1, 3, 6, 8, 11, 13].flatMap((z) =>
    marks.map((a) => {
      const lost = z >= 5 && z <= 9 ? worn / 2 : 0;
      // Metal is missing towards 90°: the centre has moved away from there.
      const reading = -lost * Math.sin((a * Math.PI) / 180) + offset * Math.cos((a * Math.PI) / 180);
      return `${z},${a},${(1000 * reading).toFixed(4)}`;
    }),
  );
  return runOut(tableOf("run-out", "station [in],angle [deg],reading [thou]", ...rows), {
    readingUncertainty: thou(0.05),
    wear: wearOf(worn),
  });
}

const stretch = { from: inch(5), to: inch(9) };

describe("cleanUp(wear, options)", () => {
  it("gives both bounds without run-out: the least diameter, and twice the loss", () => {
    const found = cleanUp(wearOf(0.004), stretch);
    expectClose(found.most.value.in("inch"), 2.4335, rounding);
    expectClose(found.least.value.in("inch"), 2.4295, rounding);
    expectClose(found.plan.value.si, found.least.value.si, rounding);
    expect(found.next).toMatch(/Indicator readings between centres from 5 in to 9 in/);
  });
  it("goes by the indicator where it was read: all wear on one side leaves the lower bound", () => {
    const found = cleanUp(wearOf(0.004), { ...stretch, runOut: runOutOf(0.004) });
    expectClose(found.about[0]!.diameter.value.in("inch"), 2.4295, {
      rel: 2e-5,
      because: "readings of 0.05 thou",
    });
    expect(found.next).toBe("");
  });
  it("leaves the upper bound where the worn surface runs true", () => {
    const found = cleanUp(wearOf(0.004), { ...stretch, runOut: runOutOf(0) });
    expectClose(found.about[0]!.diameter.value.in("inch"), 2.4335, {
      rel: 3e-5,
      because: "readings of 0.05 thou",
    });
  });
  it("leaves more about the sound surfaces than about centres that are off", () => {
    const { about } = cleanUp(wearOf(0.004), { ...stretch, runOut: runOutOf(0.004, 0.003) });
    const [own, sound] = ["own centres", "sound surfaces"].map(
      (axis) => about.find((one) => one.axis === axis)!,
    );
    expect(sound!.diameter.value.si).toBeGreaterThan(own!.diameter.value.si);
    expectClose(sound!.diameter.value.in("inch"), 2.4295, { rel: 5e-5, because: "the axis is fitted" });
  });
  it("says so where the run-out misses the stretch, and refuses stretches that are none", () => {
    const partly = runOutOf(0.004);
    const elsewhere = {
      ...partly,
      stations: partly.stations.filter(({ station }) => station.in("inch") < 4),
    };
    expect(cleanUp(wearOf(0.004), { ...stretch, runOut: elsewhere }).warnings.join()).toMatch(
      /not read between/,
    );
    expect(() => cleanUp(wearOf(0.004), { from: inch(9), to: inch(5) })).toThrow(/lower to a higher station/);
    expect(() => cleanUp(wearOf(0.004), { from: inch(5.2), to: inch(5.8) })).toThrow(/at least 2 stations/);
    const all = wearOf(0.004);
    expect(() =>
      cleanUp({ ...all, bands: all.bands.filter(({ state }) => state === "worn") }, stretch),
    ).toThrow(/no band is as made/);
  });
});

describe("chanceAllAbove(values, uCommon, limit)", () => {
  it("is the product where nothing is common, and one chance where all is", () => {
    const two = [
      { value: 1, u: 1 },
      { value: 2, u: 0.5 },
    ];
    expectClose(chanceAllAbove(two, 0, 1), normalCdf(0) * normalCdf(2), rounding);
    const alike = [
      { value: 1, u: 0 },
      { value: 1, u: 0 },
      { value: 1, u: 0 },
    ];
    expectClose(chanceAllAbove(alike, 1, 0.5), normalCdf(0.5), { rel: 5e-3, because: "Simpson over a step" });
  });
  it("counts what is drawn", () => {
    const random = randomGenerator(3);
    const values = [1, 1.2, 0.8].map((value) => ({ value, u: 0.5 }));
    let above = 0;
    for (let i = 0; i < 40_000; i++) {
      const common = 0.4 * random.normal();
      if (values.every(({ value, u }) => value + common + u * random.normal() > 0.5)) above++;
    }
    expectClose(above / 40_000, chanceAllAbove(values, 0.4, 0.5), {
      rel: 0.015,
      because: "40 000 draws scatter by 0.4 %",
    });
  });
  it("refuses no values and uncertainties below 0", () => {
    expect(() => chanceAllAbove([], 0, 1)).toThrow(/at least one value/);
    expect(() => chanceAllAbove([{ value: 1, u: -1 }], 0, 1)).toThrow(/0 or more/);
  });
});

describe("chanceToClean(found, finished)", () => {
  it("falls from nearly certain to nearly none as the finished size passes what is left", () => {
    const found = cleanUp(wearOf(0.004), stretch);
    const at = (thousandths: number): number =>
      chanceToClean(found, found.plan.value.plus(thou(thousandths)));
    expect(at(-2)).toBeGreaterThan(0.999);
    expect(at(0)).toBeLessThan(0.6);
    expect(at(2)).toBeLessThan(0.001);
    expect(() => chanceToClean(found, inch(0))).toThrow(/above 0/);
  });
});
