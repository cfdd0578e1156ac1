import { describe, expect, it } from "vitest";
import {
  degree,
  gigapascal,
  inch,
  kilogram,
  kilogramPerCubicMetre,
  type Length,
  lbf,
  type Measured,
  mm,
  newton,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import {
  closeGaps,
  criticalSpeeds,
  type ShaftModel,
  type ShaftStretch,
  shaftBending,
  stretchesOf,
  taperedStretches,
} from "../../../kernel-helpers/shaft/index.js";
import { profileOf, readTable, wearBands } from "../../../kernel-helpers/survey/index.js";
import { expectClose } from "../../support/expect-close.js";

const tableOf = (...lines: readonly string[]) =>
  readTable(new TextEncoder().encode(lines.join("\n")), { name: "shaft", file: "shaft.csv" });
const steel = { modulus: gigapascal(200), density: kilogramPerCubicMetre(7850) };
const second = (d: number): number => (Math.PI / 64) * d ** 4;
const down = degree(270);
const estimate = ({ diameter }: ShaftStretch): Length =>
  "standardUncertainty" in diameter ? diameter.value : diameter;

describe("stretchesOf(wear bands)", () => {
  // 2.4375 in, worn evenly by 4 thou from 6 to 13 in.
  const rows = Array.from({ length: 30 }, (_, z) => `${z},${z >= 6 && z <= 13 ? 2.4335 : 2.4375}`);
  const profile = profileOf(tableOf("station [in],diameter [in]", ...rows), {
    readingUncertainty: thou(0.1),
    stationUncertainty: thou(10),
  });
  const wear = wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
  const stretches = stretchesOf(wear);
  it("has a stretch for each band, end to end, with the band's diameter and its doubt", () => {
    expect(
      stretches.map(({ from, to }) => [from, to].map((end) => Number(end.in("inch").toFixed(9)))),
    ).toEqual([
      [0, 5.5],
      [5.5, 13.5],
      [13.5, 29],
    ]);
    stretches.forEach(({ diameter }, i) => {
      const { value, standardUncertainty } = diameter as Measured<Length>;
      expectClose(value.in("inch"), i === 1 ? 2.4335 : 2.4375, {
        rel: 1e-6,
        because: "readings without scatter",
      });
      expect(standardUncertainty.si).toBeGreaterThan(0);
    });
  });
  it("bends as the shaft of which the readings were made", () => {
    const pulls = [{ name: "belt", at: inch(20), force: lbf(500), direction: down }];
    const supports = [
      { name: "left", at: inch(2) },
      { name: "right", at: inch(28) },
    ];
    const model = { material: steel, supports, pulls, ownWeight: false };
    const true_ = [
      { from: inch(0), to: inch(5.5), diameter: inch(2.4375) },
      { from: inch(5.5), to: inch(13.5), diameter: inch(2.4335) },
      { from: inch(13.5), to: inch(29), diameter: inch(2.4375) },
    ];
    const [surveyed, made] = [stretches, true_].map((shape) => shaftBending({ ...model, stretches: shape }));
    const most = (bent: typeof surveyed): number => bent!.largestDeflection.deflection.value.si;
    expectClose(most(surveyed), most(made), { rel: 1e-5, because: "readings to four decimals of an inch" });
    expect(surveyed!.largestDeflection.deflection.standardUncertainty.si).toBeGreaterThan(0);
  });
  it("leaves a gap in a profile open, and the gap is closed by name only", () => {
    const gappy = profileOf(
      tableOf("station [mm], diameter [mm]", "0, 50", "100, 50", "600, 48", "700, 48"),
      {
        readingUncertainty: mm(0.01),
      },
    );
    const open = stretchesOf(gappy);
    const supports = [
      { name: "left", at: mm(0) },
      { name: "right", at: mm(700) },
    ];
    expect(() => shaftBending({ stretches: open, material: steel, supports })).toThrow(
      /nothing says how thick the shaft is from 100 mm to 600 mm.*closeGaps/,
    );
    const [thin, thick] = (["neighbouring smaller diameter", "neighbouring larger diameter"] as const).map(
      (name) => shaftBending({ stretches: closeGaps(open, name), material: steel, supports }),
    );
    // The one by name for strength bends more per weight: E I falls faster than the weight.
    expect(thin!.largestDeflection.deflection.value.si).toBeGreaterThan(
      thick!.largestDeflection.deflection.value.si,
    );
  });
});

describe("closeGaps(stretches, assumption)", () => {
  it("closes nothing where stretches meet, at stations below 0 too", () => {
    const cone = taperedStretches({ from: inch(-4.3478), to: inch(0), atFrom: inch(2.1), atTo: inch(2.4) });
    const all = [...cone, { from: inch(0), to: inch(9), diameter: inch(2.4) }];
    expect(closeGaps(all, "neighbouring smaller diameter")).toEqual(all);
    expect(() => closeGaps([], "neighbouring smaller diameter")).toThrow(/at least one stretch/);
  });
});

describe("taperedStretches(taper, steps)", () => {
  const [l, d0, d1, f] = [0.3, 0.04, 0.06, 500];
  /** Deflection under a load at the thin end of an overhung cone on a stiff span: ∫ F x²/EI dx, by Simpson. */
  const bend = (n: number): number => {
    const at = (x: number): number => (f * x * x) / (200e9 * second(d0 + ((d1 - d0) * x) / l));
    let sum = 0;
    for (let i = 0; i <= n; i++) sum += (i === 0 || i === n ? 1 : i % 2 === 1 ? 4 : 2) * at((i * l) / n);
    return (sum * l) / (3 * n);
  };
  const model = (steps: number): ShaftModel => ({
    stretches: [
      ...taperedStretches({ from: mm(0), to: mm(300), atFrom: mm(40), atTo: mm(60) }, steps),
      // As good as built in: the span behind the cone is a hundred times as stiff.
      { from: mm(300), to: mm(1300), diameter: mm(2000) },
    ],
    material: steel,
    supports: [
      { name: "left", at: mm(300) },
      { name: "right", at: mm(1300) },
    ],
    pulls: [{ name: "belt", at: mm(0), force: newton(f), direction: down }],
    ownWeight: false,
  });
  const tip = (steps: number): number => -shaftBending(model(steps)).stations[0]!.vertical.si;
  it("bends as a smooth cone does, the nearer the more steps there are, as their square", () => {
    const smooth = bend(2000);
    const off = [6, 12, 24].map((steps) => Math.abs(tip(steps) / smooth - 1));
    expect(off[0]! / off[1]!).toBeGreaterThan(3.5);
    expect(off[1]! / off[2]!).toBeGreaterThan(3);
    expect(off[1]!).toBeLessThan(0.005);
  });
  it("refuses a taper that is none", () => {
    const taper = { from: mm(0), to: mm(300), atFrom: mm(40), atTo: mm(60) };
    expect(() => taperedStretches({ ...taper, to: mm(0) })).toThrow(/must end behind its beginning/);
    expect(() => taperedStretches({ ...taper, atTo: mm(0) })).toThrow(/more than 0/);
    expect(() => taperedStretches(taper, 2.5)).toThrow(/whole number from 1 to 500, got 2.5/);
  });
});

describe("a finer mesh", () => {
  const stepped: readonly ShaftStretch[] = [
    { from: mm(0), to: mm(300), diameter: mm(60) },
    { from: mm(300), to: mm(700), diameter: mm(90) },
    { from: mm(700), to: mm(1000), diameter: mm(70) },
  ];
  const split = (parts: number): readonly ShaftStretch[] =>
    stepped.flatMap((stretch) =>
      Array.from({ length: parts }, (_, i) => ({
        ...stretch,
        from: stretch.from.plus(stretch.to.minus(stretch.from).times(i / parts)),
        to: stretch.from.plus(stretch.to.minus(stretch.from).times((i + 1) / parts)),
      })),
    );
  const model = (parts: number, shear: boolean): ShaftModel => ({
    stretches: split(parts),
    material: steel,
    supports: [
      { name: "left", at: mm(100) },
      { name: "right", at: mm(900) },
    ],
    wheels: [{ name: "wheel", at: mm(400), mass: kilogram(40) }],
    pulls: [{ name: "belt", at: mm(0), force: newton(3000), direction: degree(200) }],
    shear,
  });
  it("changes no deflection, slope or reaction, with shear or without: the prisms are exact", () => {
    for (const shear of [false, true]) {
      const [coarse, fine] = [1, 40].map((parts) => shaftBending(model(parts, shear)));
      const same = { rel: 1e-7, because: "roundings, which grow with the number of prisms" };
      expectClose(fine!.loads[0]!.deflection.value.si, coarse!.loads[0]!.deflection.value.si, same);
      fine!.supports.forEach(({ slope, reaction }, i) => {
        expectClose(slope.value, coarse!.supports[i]!.slope.value, same);
        expectClose(reaction.value.si, coarse!.supports[i]!.reaction.value.si, same);
      });
    }
  });
  it("moves critical speeds by some parts in a million only; with shear they lie below those without", () => {
    for (const shear of [false, true]) {
      const first = [1, 10, 30].map((parts) => criticalSpeeds(model(parts, shear)).atRest.si);
      for (const one of first)
        expectClose(one, first[2]!, { rel: 5e-6, because: "24 and 30 prisms against 90" });
    }
    expect(criticalSpeeds(model(1, true)).atRest.si).toBeLessThan(criticalSpeeds(model(1, false)).atRest.si);
  });
  it("keeps reciprocity on a stepped shaft that gives by shear and on soft boxes", () => {
    const places = [mm(0), mm(400), mm(650)];
    const give = (at: Length, read: Length): number => {
      const bent = shaftBending({
        ...model(1, true),
        ownWeight: false,
        wheels: [],
        pulls: [
          { name: "one", at, force: newton(1000), direction: down },
          { name: "mark", at: read, force: newton(0), direction: down },
        ],
      });
      return bent.stations.find(({ station }) => Math.abs(station.si - read.si) < 1e-9)!.vertical.si;
    };
    for (const a of places)
      for (const b of places)
        expectClose(give(a, b), give(b, a), { rel: 1e-8, because: "Maxwell's theorem" });
  });
  it("keeps the first whirl between Dunkerley and Rayleigh on any stepped shaft", () => {
    for (let k = 0; k < 12; k++) {
      const wheels = [1, 2, 3].map((i) => ({
        name: `wheel ${i}`,
        at: mm(100 + ((k * 137 + i * 271) % 850)),
        mass: kilogram(2 + ((k * 31 + i * 17) % 60)),
      }));
      const { dunkerley, atRest, rayleigh } = criticalSpeeds(
        { ...model(1, k % 2 === 0), wheels, pulls: [] },
        { modes: 1 },
      );
      expect(dunkerley.si).toBeLessThan(atRest.si);
      expect(atRest.si).toBeLessThanOrEqual(rayleigh.si * (1 + 1e-9));
    }
  });
  it("carries what it weighs by two boxes as the sum of its parts: estimates by hand", () => {
    const weight = stepped.reduce(
      (sum, stretch) =>
        sum + 7850 * (Math.PI / 4) * estimate(stretch).si ** 2 * (stretch.to.si - stretch.from.si) * 9.80665,
      0,
    );
    const { supports } = shaftBending({ ...model(1, true), wheels: [], pulls: [] });
    expectClose(
      supports.reduce((sum, { reaction }) => sum + reaction.value.si, 0),
      weight,
      { rel: 1e-8, because: "roundings" },
    );
  });
});
