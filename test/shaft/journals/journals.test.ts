import { describe, expect, it } from "vitest";
import {
  degree,
  inch,
  lbf,
  lbfInch,
  measured,
  mm,
  newton,
  rpm,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import { restoreValue, storeValue } from "../../../kernel-helpers/record/stored-value.js";
import { finishedJournals, wornJournals } from "../../../kernel-helpers/shaft/index.js";
import { profileOf, readTable, wearBands } from "../../../kernel-helpers/survey/index.js";
import { presentResult } from "../../../kernel-helpers/view/results/present-result.js";
import { expectClose } from "../../support/expect-close.js";

const box = {
  name: "pulley box",
  from: inch(5.5),
  to: inch(13.5),
  diameter: measured(inch(2.425), inch(0.0002)),
  load: {
    force: measured(lbf(900), lbf(45)),
    direction: degree(30),
    seenFrom: "the nut's end",
    turnsWithShaft: false,
  },
  slope: measured(0.0002, 0.00002),
};
const far = {
  name: "far box",
  from: inch(58.5),
  to: inch(66.5),
  diameter: measured(inch(2.432), inch(0.0002)),
};

describe("finishedJournals({ journals, speed, torque })", () => {
  it("orders the journals along the shaft and gives their lengths", () => {
    const { journals } = finishedJournals({ journals: [far, box], speed: rpm(110), torque: lbfInch(6875) });
    expect(journals.map(({ name }) => name)).toEqual(["pulley box", "far box"]);
    expect(journals.map(({ length }) => length.in("inch").toFixed(9))).toEqual([
      "8.000000000",
      "8.000000000",
    ]);
  });
  it("says the same of a shaft in inches and in millimetres", () => {
    const metric = { ...box, from: mm(139.7), to: mm(342.9), diameter: measured(mm(61.595), mm(0.00508)) };
    const [a] = finishedJournals({ journals: [box] }).journals;
    const [b] = finishedJournals({ journals: [metric] }).journals;
    expectClose(b!.length.si, a!.length.si, { rel: 1e-12, because: "an inch is 25.4 mm" });
  });
  it("goes through a record unharmed", () => {
    const given = finishedJournals({ journals: [far, box], speed: rpm(110), torque: lbfInch(6875) });
    expect(restoreValue(JSON.parse(JSON.stringify(storeValue(given))))).toEqual(given);
  });
  it("refuses what is no journal, by name, and says what would be", () => {
    const made =
      (...journals: Parameters<typeof finishedJournals>[0]["journals"]) =>
      () =>
        finishedJournals({ journals });
    expect(made()).toThrow(/at least one journal/);
    expect(made(box, { ...box, from: inch(20), to: inch(28) })).toThrow(/two called "pulley box"/);
    expect(made(box, { ...far, from: inch(13) })).toThrow(/"pulley box" to 13.5 in and "far box" from 13 in/);
    expect(made({ ...box, to: inch(5) })).toThrow(/"pulley box" must run from a lower to a higher station/);
    expect(made({ ...box, diameter: inch(2.4) as never })).toThrow(/diameter must be a measured length/);
    expect(made({ ...box, load: { ...box.load, force: measured(newton(-1), newton(1)) } })).toThrow(
      /load must be 0 or more/,
    );
    expect(
      made({ ...box, load: { force: box.load.force, direction: degree(0), turnsWithShaft: false } }),
    ).toThrow(/needs seenFrom/);
    expect(made({ ...box, slope: measured(-1, 0) })).toThrow(/slope must be 0 or more/);
    expect(() => finishedJournals({ journals: [box], speed: rpm(0) })).toThrow(/speed must be above 0/);
    expect(() => finishedJournals({ journals: [box], torque: lbfInch(-1) })).toThrow(
      /torque must be 0 or more/,
    );
  });
  it("shows size, place, load with its direction, and what nobody knows", () => {
    const table = presentResult(finishedJournals({ journals: [box, far], speed: rpm(110) }))!.blocks[0]!;
    if (table.type !== "table") throw new Error("the first block is the table");
    expect(table.rows[0]!.cells).toEqual([
      "pulley box",
      "5.5",
      "13.5",
      "8",
      "2.42500 ± 0.00039 in",
      "900 ± 88 lbf",
      "30°, seen from the nut's end",
      "0.200 ± 0.039",
    ]);
    expect(table.rows[1]!.cells.slice(5)).toEqual(["not known", "not known", "not known"]);
  });
});

describe("wornJournals(wear, names)", () => {
  const depth = (z: number): number => (z >= 3 && z <= 6 ? 4 : z >= 14 && z <= 19 ? 2.5 : 0);
  const rows = Array.from({ length: 20 }, (_, z) => `${z},${(2.4375 - depth(z) / 1000).toFixed(4)}`);
  const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
  const table = readTable(bytes, { name: "shaft", file: "shaft.csv" });
  const profile = profileOf(table, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
  const wear = wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
  it("takes every worn band, from edge to edge, and the last station where the survey ends", () => {
    const found = wornJournals(wear, ["pulley box", "far box"]);
    expect(
      found.map(({ from, to }) => [from.in("inch"), to.in("inch")].map((z) => Number(z.toFixed(9)))),
    ).toEqual([
      [2.5, 6.5],
      [13.5, 19],
    ]);
  });
  it("asks for a name for each, listing the bands, and for wear at all", () => {
    expect(() => wornJournals(wear, ["pulley box"])).toThrow(/3 in to 6 in; 14 in to 19 in.*got pulley box/);
    const sound = { ...wear, bands: wear.bands.filter(({ state }) => state !== "worn") };
    expect(() => wornJournals(sound, [])).toThrow(/no band is judged worn/);
  });
});
