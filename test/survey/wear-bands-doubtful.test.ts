import { describe, expect, it } from "vitest";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { judgeLimit, profileOf, type WearBands, wearBands } from "../../kernel-helpers/survey/index.js";
import { present } from "../../kernel-helpers/view/index.js";
import { expectClose } from "../support/expect-close.js";
import { shaftTable } from "../support/shaft-table.js";
import { syntheticShaft } from "../support/synthetic-shaft.js";

const sound = syntheticShaft({
  bands: [
    { to: 10, diameter: 2.4375 },
    { to: 20, diameter: 2.4345 },
    { to: 30, diameter: 2.4375 },
  ],
  noise: 0.00015,
  seed: 8,
});

/** The survey with readings off by so many thou, each named by station and angle. */
function surveyed(off: Readonly<Record<string, number>>): WearBands {
  const readings = sound.map((r) => ({
    ...r,
    diameter: r.diameter + (off[`${r.station}@${r.angle}`] ?? 0) / 1000,
  }));
  const profile = profileOf(shaftTable(readings), {
    readingUncertainty: thou(0.15),
    stationUncertainty: inch(0.02),
  });
  return wearBands(profile, { nominal: inch(2.4375) });
}

const placesOf = ({ gross, profile }: WearBands, list = gross): readonly string[] =>
  list.map(({ reading }) => {
    const { station, angle } = profile.readings[reading]!;
    return `${Math.round(station.in("inch"))}@${Math.round(angle!.in("degree"))}`;
  });

describe("wearBands(profile): which readings are gross, and how surely", () => {
  it("is told by the other angle where one angle alone puts the wrong reading aside", () => {
    // 2 thou low at the last station but one before a step of 3 thou: 0° alone takes station 10 for the wrong one.
    const found = surveyed({ "9@0": -2 });
    expect(placesOf(found)).toEqual(["9@0"]);
    expect(found.gross[0]!.probability).toBeGreaterThan(0.99);
    expect(found.bands.map(({ stationCount }) => stationCount)).toEqual([10, 10, 10]);
  });

  it("lets a doubtful reading count, names it, and widens its band and nothing else", () => {
    const [plain, found] = [surveyed({}), surveyed({ "15@90": -0.25 })];
    expect(plain.gross).toEqual([]);
    const doubtful = [...found.gross, ...found.doubtful!];
    expect(placesOf(found, doubtful)).toEqual(["15@90"]);
    const { probability } = doubtful[0]!;
    expect(probability).toBeGreaterThan(0.05);
    expect(probability).toBeLessThan(0.5);
    const uOf = (wear: WearBands, k: number): number => wear.bands[k]!.diameter.standardUncertainty.si;
    expect(uOf(found, 1)).toBeGreaterThan(1.02 * uOf(plain, 1));
    for (const k of [0, 2])
      expectClose(uOf(found, k), uOf(plain, k), { rel: 1e-9, because: "no reading of theirs is in doubt" });
    // The band lies between the two that the reading counts in with all its weight and with none.
    const levelOf = (wear: WearBands): number => wear.bands[1]!.diameter.value.si;
    const worn = found.profile.readings.filter(({ station }) => {
      const at = station.in("inch");
      return at > 10.5 && at < 20.5;
    });
    const all = worn.reduce((sum, { diameter }) => sum + diameter.si / worn.length, 0);
    const shift = Math.abs(levelOf(plain) - all);
    expect(Math.abs(levelOf(found) - levelOf(plain))).toBeLessThanOrEqual(shift * 1.01);
  });

  it("passes no shaft over a reading put aside that may be the truth: it is the band's smallest until it is gross beyond doubt", () => {
    const offs = Array.from({ length: 16 }, (_, i) => -0.25 - 0.05 * i);
    const outcomes = offs.map((off) => {
      const found = surveyed({ "15@90": off });
      const [put] = found.gross;
      const limit = inch(2.4345 + (off + 0.3) / 1000);
      const band = found.bands[1]!;
      const { outcome } = judgeLimit({ ...found, limit })[1]!;
      return {
        probability: put?.probability,
        smallest: Math.round(band.smallest.station.in("inch")) === 15,
        outcome,
      };
    });
    const open = outcomes.filter(({ probability }) => probability !== undefined && probability < 0.99);
    const sure = outcomes.filter(({ probability }) => probability !== undefined && probability >= 0.99);
    expect([open.length > 0, sure.length > 0]).toEqual([true, true]);
    for (const { smallest, outcome } of open) expect([smallest, outcome]).toEqual([true, "cannot tell yet"]);
    for (const { smallest, outcome } of sure) expect([smallest, outcome]).toEqual([false, "yes"]);
  });

  it("tells no probability where both angles of a station stand off alike: it may be a groove", () => {
    const found = surveyed({ "25@0": -2.2, "25@90": -2.1 });
    expect(placesOf(found)).toEqual(["25@0", "25@90"]);
    expect(found.gross.map(({ probability }) => probability)).toEqual([undefined, undefined]);
    expect(found.warnings.join(" ")).toMatch(
      /At station 25 in, all 2 readings stand off their neighbours alike/,
    );
  });

  it("shows the probability beside the reading, and whether it counts", () => {
    const tables = (wear: WearBands): string =>
      JSON.stringify(present(wear)!.blocks.filter(({ type }) => type === "table"));
    expect(tables(surveyed({ "5@0": 10 }))).toMatch(/"gross error\?".*over 99/);
    expect(tables(surveyed({ "15@90": -0.25 }))).toMatch(/"gross error\?".*"weight".*\d\d\u00a0%/);
    expect(tables(surveyed({}))).not.toMatch(/gross error/);
  });
});
