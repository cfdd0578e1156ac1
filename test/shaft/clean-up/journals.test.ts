import { describe, expect, it } from "vitest";
import { inch, measured, mm, thou } from "../../../kernel-helpers/quantity/index.js";
import { axisAt, leastCutAxis, leftAbout } from "../../../kernel-helpers/shaft/clean-up/least-cut-axis.js";
import {
  chanceToClean,
  cleanUpJournals,
  recentring,
  taperCleanUp,
  wornJournals,
} from "../../../kernel-helpers/shaft/index.js";
import { randomGenerator } from "../../../kernel-helpers/statistics/index.js";
import {
  fitTaper,
  profileOf,
  type RunOut,
  readTable,
  runOut,
  type WearBands,
  wearBands,
} from "../../../kernel-helpers/survey/index.js";
import { presentResult } from "../../../kernel-helpers/view/results/present-result.js";
import { expectClose } from "../../support/expect-close.js";

const bytes = (...lines: readonly string[]): Uint8Array => new TextEncoder().encode(lines.join("\n"));
const tableOf = (name: string, ...lines: readonly string[]) =>
  readTable(bytes(...lines), { name, file: `${name}.csv` });

/** 2.4375 in, worn by 4 thou from 5 to 9 in at 90° only, by 3 thou evenly from 25 to 29 in. */
const oneSided = (z: number): boolean => z >= 5 && z <= 9;
const even = (z: number): boolean => z >= 25 && z <= 29;
function wearOf(): WearBands {
  const rows = Array.from({ length: 35 }, (_, z) => {
    const [a, b] = oneSided(z) ? [2.4375, 2.4335] : even(z) ? [2.4345, 2.4345] : [2.4375, 2.4375];
    return `${z},${a.toFixed(4)},${b.toFixed(4)}`;
  });
  const table = tableOf("shaft", "station [in],diameter @ 0 deg [in],diameter @ 90 deg [in]", ...rows);
  const profile = profileOf(table, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
  return wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
}
function runOutOf(wear: WearBands): RunOut {
  const rows = [1, 3, 6, 8, 12, 16, 20, 23, 26, 28, 31, 33].flatMap((z) =>
    [0, 45, 90, 135, 180, 225, 270, 315].map(
      (a) => `${z},${a},${(oneSided(z) ? -2 * Math.sin((a * Math.PI) / 180) : 0).toFixed(4)}`,
    ),
  );
  return runOut(tableOf("run-out", "station [in],angle [deg],reading [thou]", ...rows), {
    readingUncertainty: thou(0.05),
    wear,
  });
}
const wear = wearOf();
const indicator = runOutOf(wear);
const named = wornJournals(wear, ["pulley box", "far box"]);

describe("cleanUpJournals(wear, journals, { runOut, step, chance })", () => {
  const found = cleanUpJournals(wear, named, { runOut: indicator });
  it("gives every journal: one worn on one side loses twice, one worn evenly once", () => {
    const [near, far] = found.journals.map(({ cleanUp }) => cleanUp.plan.value.in("inch"));
    expectClose(near!, 2.4295, { rel: 3e-5, because: "readings of 0.05 thou" });
    expectClose(far!, 2.4345, { rel: 3e-5, because: "readings of 0.05 thou" });
  });
  it("suggests the largest size in whole steps that cleans up: one step more does not", () => {
    for (const { suggested, chance, cleanUp } of found.journals) {
      const steps = suggested.in("inch") / 0.0005;
      expectClose(steps, Math.round(steps), { rel: 1e-9, because: "whole steps" });
      expect(chance).toBe(chanceToClean(cleanUp, suggested));
      expect(chance).toBeGreaterThanOrEqual(0.95);
      expect(chanceToClean(cleanUp, suggested.plus(inch(0.0005)))).toBeLessThan(0.95);
    }
  });
  it("without run-out plans on all wear on one side, and says which reading settles it", () => {
    const shown = presentResult(cleanUpJournals(wear, named))!;
    const text = JSON.stringify(shown);
    expect(text).toMatch(/Indicator readings between centres from 25 in to 29 in/);
    expect(text).toMatch(/all on one side/);
    expect(cleanUpJournals(wear, named).journals[1]!.suggested.in("inch")).toBeLessThan(2.4316);
  });
  it("refuses no journal, a step of nothing and a chance that is none", () => {
    expect(() => cleanUpJournals(wear, [])).toThrow(/at least one worn journal/);
    expect(() => cleanUpJournals(wear, named, { step: mm(0) })).toThrow(/step must be above 0/);
    expect(() => cleanUpJournals(wear, named, { chance: 1 })).toThrow(/chance must be above 0 and below 1/);
  });
});

describe("recentring(found, runOut, kept)", () => {
  const found = cleanUpJournals(wear, named, { runOut: indicator });
  const kept = [{ name: "taper", station: inch(0) }];
  it("gains what the worn side cost, and brings the move into what is not turned", () => {
    const moved = recentring(found, indicator, kept);
    // The centre of the worn surface lies 2 thou aside. The axis passes through it at 7 in and through the other's at 27 in,
    // so that 2 in from there it is off by 0.2 thou, which counts twice.
    expectClose(moved.journals[0]!.moved.value.in("inch"), 2.4331, {
      rel: 4e-5,
      because: "readings of 0.05 thou",
    });
    expectClose(moved.journals[1]!.moved.value.in("inch"), 2.4341, {
      rel: 4e-5,
      because: "readings of 0.05 thou",
    });
    // The line through 2 thou at 7 in and nothing at 27 in passes 2.7 thou at 0: the indicator shows twice that.
    expect(moved.kept[0]!.moved.value.in("thou")).toBeGreaterThan(3.5);
    expect(moved.kept[0]!.moved.value.in("thou")).toBeLessThan(7.5);
    expect(moved.kept[0]!.own.value.in("thou")).toBeLessThan(0.2);
  });
  it("shows gain and cost side by side", () => {
    const shown = presentResult(recentring(found, indicator, kept))!;
    expect(shown.blocks[0]).toMatchObject({
      text: expect.stringMatching(/keep .* more of their diameters in sum.*runs out by up to/),
    });
  });
  it("needs an axis", () => {
    expect(() => recentring(found, { ...indicator, offset: undefined }, [])).toThrow(/shows no axis/);
  });
});

describe("leastCutAxis(groups, first, last)", () => {
  it("passes through the centres of two places where each is alone", () => {
    const axis = leastCutAxis(
      [
        [{ position: 2, x: 0.003, y: -0.001, diameter: 2 }],
        [{ position: 9, x: -0.002, y: 0.004, diameter: 2 }],
      ],
      0,
      10,
    );
    for (const [z, x, y] of [
      [2, 0.003, -0.001],
      [9, -0.002, 0.004],
    ] as const) {
      expectClose(axisAt(axis, z).x, x, { abs: 2e-6, because: "the rounding ends at 1/8000 of the offset" });
      expectClose(axisAt(axis, z).y, y, { abs: 2e-6, because: "the rounding ends at 1/8000 of the offset" });
    }
  });
  it("is beaten by none of many other axes", () => {
    const random = randomGenerator(5);
    const group = (from: number) =>
      [0, 1, 2, 3].map((i) => ({
        position: from + i,
        x: 0.002 * random.normal(),
        y: 0.002 * random.normal(),
        diameter: 2 + 0.001 * random.normal(),
      }));
    const groups = [group(3), group(50)];
    const axis = leastCutAxis(groups, 0, 60);
    const worth = (of: typeof axis): number => groups.reduce((sum, places) => sum + leftAbout(of, places), 0);
    const best = worth(axis);
    for (const reach of [1e-5, 1e-4, 1e-3])
      for (let i = 0; i < 2000; i++) {
        const near = (value: number): number => value + reach * random.normal();
        const other = {
          first: { ...axis.first, x: near(axis.first.x), y: near(axis.first.y) },
          last: { ...axis.last, x: near(axis.last.x), y: near(axis.last.y) },
        };
        expect(worth(other)).toBeLessThan(best + 2e-6);
      }
  });
  it("refuses empty groups and an axis without length", () => {
    expect(() => leastCutAxis([[]], 0, 1)).toThrow(/at least one place/);
    expect(() => leastCutAxis([[{ position: 0, x: 0, y: 0, diameter: 1 }]], 1, 1)).toThrow(
      /lower to a higher/,
    );
  });
});

describe("taperCleanUp(taper, { runOut, room })", () => {
  // 3/4 in a foot, the reading at 2 in low by 1.6 thou.
  const rows = [0, 1, 2, 3, 4].map((z) => `${z},${(2 + z / 16 - (z === 2 ? 0.0016 : 0)).toFixed(5)}`);
  const survey = tableOf("taper", "station [in],diameter [in]", ...rows);
  const taper = fitTaper(profileOf(survey, { readingUncertainty: thou(1), stationUncertainty: thou(1) }));
  it("takes the lowest reading off all along, and the hub goes up by sixteen times that", () => {
    const { stock, shift, decidedAt } = taperCleanUp(taper);
    // The line through all lies a fifth of the low reading below the others.
    expectClose(stock.value.in("thou"), 1.6 * 0.8, {
      rel: 1e-6,
      because: "five equal readings, the middle one off",
    });
    expectClose(shift.value.si / stock.value.si, 16, { rel: 1e-3, because: "3/4 in a foot" });
    expect(decidedAt.in("inch")).toBe(2);
  });
  it("counts the run-out as read, and tells what room is left", () => {
    const plain = taperCleanUp(taper);
    const more = taperCleanUp(taper, {
      runOut: measured(thou(2), thou(0.2)),
      room: measured(inch(0.5), inch(0.01)),
    });
    expectClose(more.stock.value.si - plain.stock.value.si, thou(2).si, {
      rel: 1e-9,
      because: "TIR is twice e",
    });
    expectClose(more.left!.value.si, 0.0127 - more.shift.value.si, { rel: 1e-9, because: "room less shift" });
    expect(presentResult(more)!.blocks[0]).toMatchObject({ outcome: "yes" });
    const none = taperCleanUp(taper, { room: measured(inch(0.001), inch(0.001)) });
    expect(presentResult(none)!.blocks[0]).toMatchObject({ outcome: "cannot tell yet" });
  });
  it("refuses what is no taper, and a run-out below 0", () => {
    const flat = tableOf("flat", "station [in],diameter [in]", "0,2.0001", "1,2", "2,2.0001", "3,2");
    const none = fitTaper(profileOf(flat, { readingUncertainty: thou(1), stationUncertainty: thou(1) }));
    expect(() => taperCleanUp(none)).toThrow(/told from a cylinder/);
    expect(() => taperCleanUp(taper, { runOut: measured(thou(-1), thou(1)) })).toThrow(/0 or more/);
  });
});
