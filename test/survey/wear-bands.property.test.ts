import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inch, mm, thou } from "../../kernel-helpers/quantity/index.js";
import { fitTaper, profileOf, type WearBands, wearBands } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { type ShaftReading, shaftTable, wideShaftTable } from "../support/shaft-table.js";
import { syntheticShaft } from "../support/synthetic-shaft.js";

const seeded = { seed: 20, numRuns: 40 };
const rounding = { rel: 1e-9, abs: 1e-12, because: "the same readings, other numbers on the way" };

const shafts = fc
  .record({
    seed: fc.integer({ min: 1, max: 1e6 }),
    first: fc.integer({ min: 4, max: 10 }),
    second: fc.integer({ min: 4, max: 10 }),
    depth: fc.double({ min: 0.001, max: 0.008, noNaN: true }),
    oneSided: fc.double({ min: -0.002, max: 0.002, noNaN: true }),
  })
  .map(({ seed, first, second, depth, oneSided }) =>
    syntheticShaft({
      bands: [
        { to: first, diameter: 2.4375 },
        { to: first + second, diameter: 2.4375 - depth, offsets: [oneSided, -oneSided] },
        { to: first + second + 8, diameter: 2.437, slope: 0.0002 },
      ],
      noise: 0.00015,
      seed,
    }).map((r, i) => (i === 5 ? { ...r, diameter: r.diameter + 0.025 } : r)),
  );

function bandsOf(readings: readonly ShaftReading[], unit: "in" | "mm" = "in", scale = 1): WearBands {
  return wearBands(
    profileOf(shaftTable(readings, { unit }), {
      readingUncertainty: unit === "in" ? thou(0.15 * scale) : mm(0.15 * scale * 0.0254),
      stationUncertainty: inch(0.02),
    }),
    { nominal: unit === "in" ? inch(2.4375 * scale) : mm(2.4375 * scale * 25.4) },
  );
}

/** The numbers of a result, diameters in metres less an offset and over a scale, and its words. */
function told(result: WearBands, shift = 0, scale = 1): { words: unknown; numbers: number[] } {
  return {
    words: [
      result.bands.map((b) => [b.shape, b.stationCount, b.readingCount, b.state, b.smallestAngle?.si]),
      result.gross.length,
    ],
    numbers: [
      ...result.bands.flatMap((b) => [
        b.from.si - shift,
        b.to.si - shift,
        b.diameter.value.si / scale,
        b.diameter.standardUncertainty.si / scale,
        b.slope.value / scale,
        b.smallest.diameter.si / scale,
        b.ovality!.si / scale,
      ]),
      ...result.edges.map(({ position }) => position.value.si - shift),
      ...result.gross.map(({ residual }) => residual.si / scale),
      result.noiseRatio,
    ],
  };
}

function expectSame(a: ReturnType<typeof told>, b: ReturnType<typeof told>): void {
  expect(a.words).toEqual(b.words);
  a.numbers.forEach((value, i) => {
    expectClose(value, b.numbers[i]!, rounding);
  });
}

describe("wearBands(profile) says the same", () => {
  it("in inches and in millimetres", () => {
    fc.assert(
      fc.property(shafts, (readings) => {
        expectSame(told(bandsOf(readings, "mm")), told(bandsOf(readings)));
      }),
      seeded,
    );
  });

  it("in whatever order the rows stand", () => {
    fc.assert(
      fc.property(shafts, fc.integer({ min: 1, max: 1e6 }), (readings, seed) => {
        const shuffled = [...readings]
          .map((r, i) => ({ r, key: Math.sin(seed + i * 12.9898) }))
          .sort((a, b) => a.key - b.key)
          .map(({ r }) => r);
        const [a, b] = [bandsOf(shuffled), bandsOf(readings)];
        expect(told(a)).toEqual(told(b)); // to the last digit
      }),
      seeded,
    );
  });

  it("wherever the stations are counted from", () => {
    fc.assert(
      fc.property(shafts, fc.integer({ min: -50, max: 50 }), (readings, by) => {
        const moved = readings.map((r) => ({ ...r, station: r.station + by }));
        expectSame(told(bandsOf(moved), inch(by).si), told(bandsOf(readings)));
      }),
      seeded,
    );
  });

  it("of a shaft larger in diameter by a factor, that much larger", () => {
    fc.assert(
      fc.property(shafts, fc.constantFrom(0.5, 2, 3.7), (readings, factor) => {
        const larger = readings.map((r) => ({ ...r, diameter: r.diameter * factor }));
        expectSame(told(bandsOf(larger, "in", factor), 0, factor), told(bandsOf(readings)));
      }),
      seeded,
    );
  });

  it("in the long and in the wide form", () => {
    fc.assert(
      fc.property(shafts, (readings) => {
        const wide = wearBands(
          profileOf(wideShaftTable(readings), {
            readingUncertainty: thou(0.15),
            stationUncertainty: inch(0.02),
          }),
          { nominal: inch(2.4375) },
        );
        expect(told(wide)).toEqual(told(bandsOf(readings)));
      }),
      seeded,
    );
  });

  it("read from the other end, with slopes turned round", () => {
    fc.assert(
      fc.property(shafts, (readings) => {
        const turned = bandsOf(readings.map((r) => ({ ...r, station: 100 - r.station })));
        const straight = bandsOf(readings);
        expect(turned.bands.map(({ shape }) => shape).reverse()).toEqual(
          straight.bands.map(({ shape }) => shape),
        );
        turned.bands.forEach((band, k) => {
          const same = straight.bands[straight.bands.length - 1 - k]!;
          expectClose(band.diameter.value.si, same.diameter.value.si, rounding);
          expectClose(band.slope.value, -same.slope.value, rounding);
        });
      }),
      seeded,
    );
  });
});

describe("fitTaper(profile) says the same", () => {
  const cones = fc.record({
    seed: fc.integer({ min: 1, max: 1e6 }),
    taper: fc.double({ min: 0.01, max: 0.2, noNaN: true }),
    count: fc.integer({ min: 5, max: 14 }),
  });
  const cone = ({ seed, taper, count }: { seed: number; taper: number; count: number }): ShaftReading[] =>
    syntheticShaft({ bands: [{ to: count, diameter: 2, slope: taper }], noise: 0.0002, seed });
  const taperOf = (readings: readonly ShaftReading[], unit: "in" | "mm" = "in") =>
    fitTaper(
      profileOf(shaftTable(readings, { unit }), {
        readingUncertainty: thou(0.2),
        stationUncertainty: inch(0.002),
      }),
    );

  it("in inches and millimetres, in any order of rows, and from any zero of the stations", () => {
    fc.assert(
      fc.property(cones, (of) => {
        const readings = cone(of);
        const one = taperOf(readings);
        const moved = readings.map((r) => ({ ...r, station: r.station + 33 }));
        for (const other of [taperOf(readings, "mm"), taperOf([...readings].reverse()), taperOf(moved)]) {
          expectClose(other.taper.value, one.taper.value, rounding);
          expectClose(other.taper.standardUncertainty, one.taper.standardUncertainty, rounding);
          expectClose(other.smallEnd.diameter.value.si, one.smallEnd.diameter.value.si, rounding);
          expectClose(other.halfAngle.value.si, one.halfAngle.value.si, rounding);
          expect(other.residualShape.shape).toBe(one.residualShape.shape);
        }
      }),
      seeded,
    );
  });

  it("from the other end, with the sign turned and the small end the same", () => {
    fc.assert(
      fc.property(cones, (of) => {
        const readings = cone(of);
        const one = taperOf(readings);
        const turned = taperOf(readings.map((r) => ({ ...r, station: 50 - r.station })));
        expectClose(turned.taper.value, -one.taper.value, rounding);
        expectClose(turned.halfAngle.value.si, -one.halfAngle.value.si, rounding);
        expectClose(turned.smallEnd.diameter.value.si, one.smallEnd.diameter.value.si, rounding);
        expectClose(turned.smallEnd.station.si, 50 * 0.0254 - one.smallEnd.station.si, rounding);
      }),
      seeded,
    );
  });
});
