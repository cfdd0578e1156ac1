import { describe, expect, it } from "vitest";
import { inch, type Length, thou } from "../../kernel-helpers/quantity/index.js";
import {
  fitTaper,
  type NextReadingsQuestion,
  nextReadings,
  profileOf,
  type WearBands,
  wearBands,
} from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { seededNoise } from "../support/seeded-noise.js";
import { type ShaftReading, shaftTable } from "../support/shaft-table.js";

const rounding = { rel: 1e-8, because: "rounding only" };
const noise = { readingUncertainty: thou(0.2), stationUncertainty: inch(0.01) };

/** As made to station 5, worn by 4 thou from 7 to 13, as made from 15 on; read at 0° and 90°. */
const rows: readonly ShaftReading[] = [1, 2, 3, 4, 5, 7, 8, 10, 13, 15, 16, 18].flatMap((station) =>
  [0, 90].map((angle) => ({ station, angle, diameter: station >= 7 && station <= 13 ? 2.4335 : 2.4375 })),
);
const options = { nominal: inch(2.4375) };
const wearOf = (readings: readonly ShaftReading[], limit?: Length): WearBands =>
  wearBands(profileOf(shaftTable(readings), noise), limit === undefined ? options : { ...options, limit });
const si = (u: Length | number): number => Number(u.valueOf());

describe("nextReadings(wear, { about: edge })", () => {
  const wear = wearOf(rows);
  it("reads in the middle of the gap, which halves u, and leaves an eighth after three", () => {
    const found = nextReadings(wear, { about: "edge", edge: 1 });
    const [best] = found.readings;
    expectClose(best!.station.in("inch"), 6, rounding);
    expectClose(si(found.before), wear.edges[0]!.position.standardUncertainty.si, rounding);
    expectClose(si(best!.afterOne) / si(found.before), 0.5, { rel: 1e-6, because: "p is 1e-23 here" });
    expectClose(si(best!.afterThree) / si(found.before), 1 / 8, rounding);
    expect(found.question).toBe("where band 1 ends and band 2 begins");
  });
  it("takes the edge known worst by itself, and the angle at which the step is largest", () => {
    const uneven = rows.map((row) =>
      row.diameter < 2.435 && row.angle === 0 ? { ...row, diameter: 2.436 } : row,
    );
    const wider = wearOf(uneven.filter(({ station }) => station !== 13));
    const found = nextReadings(wider, { about: "edge" });
    expectClose(found.readings[0]!.station.in("inch"), 12.5, rounding);
    expect(found.readings[0]!.angles.map((a) => Math.round(a.in("degree")))).toEqual([90]);
  });
  it("gives the error of a reading put to the nearer band its due, as a simulation of 20 000 shows", () => {
    const shallow = rows.map((row) => (row.diameter < 2.435 ? { ...row, diameter: 2.4371 } : row));
    const wear2 = wearBands(profileOf(shaftTable(shallow), noise), { nominal: inch(2.4375), penalty: 1 });
    expect(wear2.bands).toHaveLength(3);
    const found = nextReadings(wear2, { about: "edge", edge: 1 });
    const { uniform, normal } = seededNoise(51);
    let squares = 0;
    for (let i = 0; i < 20000; i++) {
      const edge = 5 + 2 * uniform();
      // Truth at 6 is worn (0.4 below) where the edge lies before it; the reading is put to the nearer level.
      const reading = (edge < 6 ? -0.4 : 0) + 0.2 * normal();
      const before = reading < -0.2;
      // Posterior of the rule: the half chosen with probability 1 − p, the other with p.
      squares += (edge - (before ? 5.5 + shift : 6.5 - shift)) ** 2;
    }
    expectClose(Math.sqrt(squares / 20000), si(found.readings[0]!.afterOne) / inch(1).si, {
      rel: 0.02,
      because: "20 000 draws",
    });
  });
  // p = Φ(−1) for a step of 2 u_r; the mean of the posterior is moved by p from the middle of the half.
  const shift = 0.15865525393145707;
  it("rejects an edge that is not there", () => {
    expect(() => nextReadings(wear, { about: "edge", edge: 3 })).toThrow(
      /edge must be a whole number from 1 to 2, got 3/,
    );
    const plain = wearOf(rows.map((row) => ({ ...row, diameter: 2.4375 })));
    expect(() => nextReadings(plain, { about: "edge" })).toThrow(/at least 2 bands for an edge, got 1/);
  });
});

describe("nextReadings(wear, { about: depth })", () => {
  const wear = wearOf(rows);
  it("starts from the band's own uncertainty and ends at that of a survey with the station added", () => {
    const found = nextReadings(wear, { about: "depth" });
    expect(found.question).toMatch(/how deep band 2 is worn/);
    expectClose(si(found.before), wear.bands[1]!.diameter.standardUncertainty.si, rounding);
    const [best] = found.readings;
    expectClose(best!.station.in("inch"), 11.5, rounding); // widest gap, 10 to 13
    const added = [0, 90].map((angle) => ({ station: 11.5, angle, diameter: 2.4335 }));
    const after = wearOf([...rows, ...added]);
    expectClose(si(best!.afterOne), after.bands[1]!.diameter.standardUncertainty.si, rounding);
    const three = [11.2, 11.5, 11.8].flatMap((station) => added.map((row) => ({ ...row, station })));
    expectClose(
      si(best!.afterThree),
      wearOf([...rows, ...three]).bands[1]!.diameter.standardUncertainty.si,
      rounding,
    );
  });
  it("does the same for a sloping band, best near its middle", () => {
    const sloping = rows.map((row) =>
      row.diameter < 2.435 ? { ...row, diameter: 2.4335 - 0.0005 * (row.station - 10) } : row,
    );
    const band = wearOf(sloping);
    expect(band.bands[1]!.shape).toBe("sloping");
    const found = nextReadings(band, { about: "depth", band: 2 });
    expectClose(si(found.before), band.bands[1]!.diameter.standardUncertainty.si, rounding);
    const gains = found.readings.map(({ gain }) => gain);
    expect([...gains].sort((a, b) => b - a)).toEqual(gains);
    const best = found.readings[0]!;
    expect(Math.abs(best.station.in("inch") - 10)).toBeLessThan(1.6);
    const at =
      best.station.in("inch") +
      (rows.some((r) => Math.abs(r.station - best.station.in("inch")) < 1e-6) ? 1e-3 : 0);
    const added = [0, 90].map((angle) => ({ station: at, angle, diameter: 2.4335 - 0.0005 * (at - 10) }));
    expectClose(si(best.afterOne), wearOf([...sloping, ...added]).bands[1]!.diameter.standardUncertainty.si, {
      rel: 1e-3,
      because: "a station read is repeated a thousandth beside it",
    });
  });
  it("says where the setting counts most, which no reading mends", () => {
    const instruments = {
      mic: {
        kind: "instrument" as const,
        id: "mic",
        title: "micrometer",
        resolution: thou(0.1),
        repeatability: thou(0.1),
        calibration: thou(1),
        expansion: undefined,
      },
    };
    const profile = { ...wear.profile, commonUncertainty: instruments.mic.calibration };
    const stale = wearBands(profile, options);
    expect(nextReadings(stale, { about: "depth" }).warnings.join(" ")).toMatch(
      /common to all readings, setting and temperature/,
    );
  });
});

describe("nextReadings(taper, { about: taper })", () => {
  const stations = [0, 1, 2, 3, 4, 5];
  const taperRows = (where: readonly number[]): ShaftReading[] =>
    where.flatMap((station) => [0, 90].map((angle) => ({ station, angle, diameter: 2 + station / 20 })));
  const fitOf = (where: readonly number[]): ReturnType<typeof fitTaper> =>
    fitTaper(profileOf(shaftTable(taperRows(where)), noise));
  it("reads at the ends first, and ends at the uncertainty of a fit with the station added", () => {
    const fit = fitOf(stations);
    const found = nextReadings(fit, { about: "taper" });
    expectClose(si(found.before), fit.taper.standardUncertainty, {
      rel: 1e-6,
      because: "York's weights at the same slope",
    });
    expect(
      found.readings
        .slice(0, 2)
        .map((r) => Math.round(r.station.in("inch")))
        .sort(),
    ).toEqual([0, 5]);
    const after = fitOf([...stations, 5 + 1e-6]).taper.standardUncertainty;
    expectClose(si(found.readings[0]!.afterOne), after, {
      rel: 1e-5,
      because: "the station is repeated a hair beside it",
    });
  });
  it("gains nothing in the middle", () => {
    const found = nextReadings(fitOf([0, 1, 2.5, 4, 5]), { about: "taper" });
    expect(found.readings.every(({ station }) => Math.abs(station.in("inch") - 2.5) > 0.1)).toBe(true);
  });
});

describe("nextReadings(wear, { about: limit })", () => {
  it("gives the probability of a clear verdict, as a simulation of 4 000 further readings shows", () => {
    const wear = wearOf(rows, inch(2.43345));
    const found = nextReadings(wear, { about: "limit", band: 2 });
    const u = si(found.before) / thou(1).si;
    const [best] = found.readings;
    const after = si(best!.afterThree) / thou(1).si;
    const { normal } = seededNoise(52);
    let clear = 0;
    for (let i = 0; i < 4000; i++) {
      // The truth about the margin of 0.05 thou now, and what three more readings by themselves will say of it.
      const truth = 0.05 + u * normal();
      const own = 1 / Math.sqrt(1 / after ** 2 - 1 / u ** 2);
      const said = truth + own * normal();
      const margin = after ** 2 * (0.05 / u ** 2 + said / own ** 2);
      if (Math.abs(margin) > 1.959964 * after) clear += 1;
    }
    expectClose(best!.clearAfterThree!, clear / 4000, {
      abs: 0.025,
      because: "3 standard deviations of 4 000 draws",
    });
    expect(best!.clearAfterThree!).toBeGreaterThan(best!.clearAfterOne!);
  });
  it("asks for nothing where the verdict is clear", () => {
    const found = nextReadings(wearOf(rows), { about: "limit", limit: inch(2.43) });
    expect(found.readings).toEqual([]);
    expect(found.text).toMatch(/The verdict is clear: at its smallest band 2 is 3\.5 thou above the limit/);
  });
  it("picks the band whose verdict is not clear", () => {
    const found = nextReadings(wearOf(rows), { about: "limit", limit: inch(2.4375) });
    expect(found.question).toMatch(/whether band [13] keeps the limit/);
  });
});

describe("nextReadings(result, question)", () => {
  it("rejects a question that does not fit the result, or that nobody can ask", () => {
    const wear = wearOf(rows);
    expect(() => nextReadings(wear, { about: "taper" })).toThrow(
      /a question about taper is asked of taper, got wear bands/,
    );
    const odd = { about: "colour" } as unknown as NextReadingsQuestion;
    expect(() => nextReadings(wear, odd)).toThrow(
      /about must be one of edge, depth, taper, limit, got colour/,
    );
    expect(() => nextReadings(wear, { about: "limit" })).toThrow(/a limit must be given, got none/);
    expect(() => nextReadings(wear, { about: "depth", band: 9 })).toThrow(
      /band must be a whole number from 1 to 3, got 9/,
    );
    expect(() => nextReadings(wearBands(wear.profile), { about: "depth" })).toThrow(
      /a depth needs a nominal diameter/,
    );
  });
});
