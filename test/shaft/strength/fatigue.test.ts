import { describe, expect, it } from "vitest";
import { material } from "../../../kernel-helpers/handbook/index.js";
import {
  degC,
  degF,
  inch,
  ksi,
  measured,
  megapascal,
  mm,
  psi,
} from "../../../kernel-helpers/quantity/index.js";
import {
  assumedSteel,
  enduranceLimit,
  type FatigueCriterion,
  fatigueFactorOfSafety,
  fatigueFactors,
  notchSensitivity,
  shaftSteel,
  steelOfHardness,
} from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";

// Source of the example: Shigley & Nisbett, Mechanical Engineering Design, 9th edition, example 7-1, pp. 370-371.
const printed = (digits: string) => ({ rel: 5e-3, because: `printed as ${digits}` });

describe("notchSensitivity(radius, tensile)", () => {
  it("gives the printed 0.85 and 0.88 of a published example", () => {
    const q = notchSensitivity(inch(0.11), ksi(105));
    expectClose(q.bending, 0.85, printed("0.85"));
    expectClose(q.torsion, 0.88, printed("0.88"));
  });
  it("goes to 0 for a needle-sharp notch, to 1 for a wide one", () => {
    expect(notchSensitivity(mm(1e-6), ksi(60)).bending).toBeLessThan(0.01);
    expect(notchSensitivity(mm(1e6), ksi(60)).bending).toBeGreaterThan(0.99);
  });
  it("takes soft steel as of 50 ksi, and none above 220", () => {
    expect(notchSensitivity(mm(1), ksi(45))).toEqual(notchSensitivity(mm(1), ksi(50)));
    expect(() => notchSensitivity(mm(1), ksi(230))).toThrow(/up to 220 ksi, got 230 ksi/);
    expect(() => notchSensitivity(mm(0), ksi(60))).toThrow(/radius must be a length above 0/);
  });
});

describe("fatigueFactors(feature, diameter, tensile)", () => {
  it("gives the printed K_f and K_fs of a published example", () => {
    const k = fatigueFactors(
      { shape: "shoulder", larger: inch(1.65), fillet: inch(0.11) },
      inch(1.1),
      ksi(105),
    );
    const chart = { rel: 0.04, because: "printed from chart readings; charts and fits differ by up to 4 %" };
    expectClose(k.bending, 1.58, chart);
    expectClose(k.torsion, 1.37, chart);
  });
  it("never lies above the elastic factor, nor below 1", () => {
    for (const corner of [0.4, 0.8, 1.6]) {
      const k = fatigueFactors({ shape: "keyseat", ends: "end-milled", corner: mm(corner) }, mm(60), ksi(60));
      const elastic = Math.max(...k.concentration.peaks.map((p) => p.bending));
      expect(k.bending).toBeGreaterThan(1);
      expect(k.bending).toBeLessThan(elastic);
    }
    expect(fatigueFactors({ shape: "plain" }, mm(60), ksi(60))).toMatchObject({ bending: 1, torsion: 1 });
  });
  // Source: R. E. Peterson, fatigue of press-fitted collars on 2 in axles of plain steel, about 2.0 (from memory); the
  // formula is of DIN 743, from other tests.
  it("gives about 2 for a hub pressed on a 2 in axle of plain steel", () => {
    expectClose(fatigueFactors({ shape: "press-fitted hub" }, inch(2), ksi(75)).bending, 2, {
      rel: 0.1,
      because: "tests of different collars",
    });
  });
  it("gives the formula itself at its 40 mm and 1000 MPa", () => {
    const rounding = { rel: 1e-12, because: "rounding only" };
    const pressed = fatigueFactors({ shape: "press-fitted hub" }, mm(40), megapascal(1000));
    expectClose(pressed.bending, 2.7, rounding);
    expectClose(pressed.torsion, 0.65 * 2.7, rounding);
    const keyed = fatigueFactors({ shape: "keyed hub" }, mm(40), megapascal(1000));
    expectClose(keyed.bending, 3, rounding);
    expectClose(keyed.torsion, 0.56 * 3 + 0.1, rounding);
    expectClose(
      fatigueFactors({ shape: "keyed hub", keys: 2 }, mm(40), megapascal(1000)).bending,
      3.45,
      rounding,
    );
    expect(fatigueFactors({ shape: "keyed hub" }, mm(90), megapascal(1000)).bending).toBeGreaterThan(3);
  });
  it("refuses hubs on steel beyond the tests, and three keys", () => {
    expect(() => fatigueFactors({ shape: "press-fitted hub" }, mm(40), megapascal(1300))).toThrow(
      /up to 1200 MPa, got 1300 MPa/,
    );
    expect(() => fatigueFactors({ shape: "keyed hub", keys: 3 as never }, mm(40), ksi(60))).toThrow(
      /keys must be 1 or 2/,
    );
  });
});

describe("enduranceLimit(tensile, conditions)", () => {
  it("gives the printed factors and limit of a published example", () => {
    const limit = enduranceLimit(ksi(105), { diameter: inch(1.1), surface: "machined", reliability: 0.99 });
    expectClose(limit.factors.surface, 0.787, printed("0.787"));
    expectClose(limit.factors.size, 0.87, printed("0.870"));
    expectClose(limit.factors.reliability, 0.814, printed("0.814"));
    expectClose(limit.value.in("ksi"), 29.3, printed("29.3 kpsi"));
  });
  // Source: the same, table 6-4 (temperature) and 6-5 (reliability), from memory.
  it("gives the printed factors of temperature and reliability", () => {
    const at = (t: number) =>
      enduranceLimit(ksi(60), { diameter: inch(1), surface: "machined", temperature: degF(t) }).factors
        .temperature;
    for (const [t, k] of [
      [70, 1],
      [200, 1.02],
      [400, 1.018],
      [600, 0.963],
      [1000, 0.698],
    ] as const)
      expectClose(at(t), k, { rel: 0.012, because: "the polynomial runs within 1.1 % of its table" });
    const trust = (r: number) =>
      enduranceLimit(ksi(60), { diameter: inch(1), surface: "machined", reliability: r }).factors.reliability;
    for (const [r, k] of [
      [0.5, 1],
      [0.9, 0.897],
      [0.95, 0.868],
      [0.99, 0.814],
      [0.999, 0.753],
    ] as const)
      expectClose(trust(r), k, { rel: 1e-3, because: "printed to three digits" });
  });
  // Source: the same, equation 6-20: 1.24 d^−0.107 for 2.79 to 51 mm, 1.51 d^−0.157 to 254 mm.
  it("has the size factor of the metric formula too, and no jump at 2 in", () => {
    const size = (d: number) =>
      enduranceLimit(ksi(60), { diameter: mm(d), surface: "machined" }).factors.size;
    for (const d of [10, 40])
      expectClose(size(d), 1.24 * d ** -0.107, { rel: 3e-3, because: "rounded constants" });
    for (const d of [60, 150])
      expectClose(size(d), 1.51 * d ** -0.157, { rel: 3e-3, because: "rounded constants" });
    expectClose(size(50.8001), size(50.8), { rel: 2e-3, because: "the published pieces meet within 0.1 %" });
  });
  it("keeps the scatter of the steel in the uncertainty, or takes a reliability off the limit: not both", () => {
    const on = { diameter: inch(1), surface: "machined" } as const;
    const mean = enduranceLimit(ksi(60), on);
    const sure = enduranceLimit(ksi(60), { ...on, reliability: 0.99 });
    expect(mean.relativeUncertainty).toBeGreaterThan(0.138);
    expect(sure.relativeUncertainty).toBe(0.058);
    expect(sure.value.si).toBeLessThan(mean.value.si);
  });
  it("orders the surfaces, and never lifts a soft steel above its test bar", () => {
    const of = (surface: "ground" | "machined" | "hot-rolled" | "as forged", s = 80) =>
      enduranceLimit(ksi(s), { diameter: inch(1), surface }).factors.surface;
    expect(of("ground")).toBeGreaterThan(of("machined"));
    expect(of("machined")).toBeGreaterThan(of("hot-rolled"));
    expect(of("hot-rolled")).toBeGreaterThan(of("as forged"));
    expect(of("hot-rolled", 30)).toBe(1);
    expectClose(enduranceLimit(ksi(250), { diameter: inch(1), surface: "ground" }).testBar.in("ksi"), 100, {
      rel: 1e-12,
      because: "the published ceiling",
    });
  });
  it("refuses what it has no figures for", () => {
    const on = { diameter: inch(1), surface: "machined" } as const;
    expect(() => enduranceLimit(ksi(60), { ...on, surface: "polished" as never })).toThrow(
      /"ground", "machined", "hot-rolled", "as forged", got "polished"/,
    );
    expect(() => enduranceLimit(ksi(60), { ...on, diameter: inch(0.1) })).toThrow(/0\.11 to 10 in/);
    expect(() => enduranceLimit(ksi(60), { ...on, temperature: degC(-5) })).toThrow(/in frost/);
    expect(() => enduranceLimit(ksi(60), { ...on, reliability: 1 })).toThrow(/0\.5 to 0\.999999/);
  });
});

describe("fatigueFactorOfSafety(criterion, stress)", () => {
  const stress = { alternating: 15235, mean: 9988, endurance: 29300, tensile: 105000, yield: 82000 };
  it.each([
    ["Goodman", 1.63],
    ["Gerber", 1.87],
    ["ASME elliptic", 1.88],
    ["Soderberg", 1.56],
  ] as const)("%s: gives the printed %s of a published example", (criterion, n) => {
    expectClose(fatigueFactorOfSafety(criterion, stress), n, printed(String(n)));
  });
  const all = ["Goodman", "Gerber", "ASME elliptic", "Soderberg"] as const;
  it.each(all)(
    "%s: is the limit over the stress where only one of the two stresses is there",
    (criterion) => {
      const rounding = { rel: 1e-12, because: "rounding only" };
      expectClose(fatigueFactorOfSafety(criterion, { ...stress, mean: 0 }), 29300 / 15235, rounding);
      const bears = criterion === "Goodman" || criterion === "Gerber" ? 105000 : 82000;
      expectClose(fatigueFactorOfSafety(criterion, { ...stress, alternating: 0 }), bears / 9988, rounding);
    },
  );
  it.each(all)("%s: stress times factor lies on the curve, and halves with twice the stress", (criterion) => {
    const n = fatigueFactorOfSafety(criterion, stress);
    const [a, m] = [n * stress.alternating, n * stress.mean];
    expectClose(fatigueFactorOfSafety(criterion, { ...stress, alternating: a, mean: m }), 1, {
      rel: 1e-12,
      because: "rounding only",
    });
    const curve = {
      Goodman: a / 29300 + m / 105000,
      Soderberg: a / 29300 + m / 82000,
      Gerber: a / 29300 + (m / 105000) ** 2,
      "ASME elliptic": (a / 29300) ** 2 + (m / 82000) ** 2,
    }[criterion];
    expectClose(curve, 1, { rel: 1e-12, because: "the equation of the curve" });
  });
  it("refuses an unloaded place and a criterion it does not know", () => {
    expect(() => fatigueFactorOfSafety("Goodman", { ...stress, alternating: 0, mean: 0 })).toThrow(/both 0/);
    expect(() => fatigueFactorOfSafety("goodman" as FatigueCriterion, stress)).toThrow(
      /"Goodman", "Gerber", "ASME elliptic" or "Soderberg", got "goodman"/,
    );
  });
});

describe("shaftSteel, assumedSteel, steelOfHardness", () => {
  it("takes the low end of the handbook's strengths", () => {
    const steel = shaftSteel(material("steel 1040"));
    expect(steel).toMatchObject({ name: "steel 1040", assumed: false });
    expectClose(steel.tensile.value.in("megapascal"), 520, { rel: 1e-12, because: "as in the table" });
    expect(steel.basis).toMatch(/Callister/);
  });
  it("finds a steel by a word, of the handbook or of the bounds, and lists both where there is none", () => {
    expect(shaftSteel("medium carbon steel")).toEqual(shaftSteel(material("steel 1040")));
    expect(shaftSteel("mild steel of the period")).toEqual(assumedSteel("mild steel of the period"));
    expect(() => shaftSteel("grey iron class 20")).toThrow(
      /no steel called "grey iron class 20": take one of the handbook \(steel, .*\), or, .* \(wrought iron of the period, /,
    );
  });
  it("assumes a bound only by name, and says that it is one", () => {
    expect(assumedSteel("mild steel of the period")).toMatchObject({ assumed: true });
    expect(() => assumedSteel("old steel")).toThrow(
      /"wrought iron of the period", "mild steel of the period", got "old steel".*steelOfHardness/,
    );
    expect(() => shaftSteel(undefined as never)).toThrow(/assumedSteel\("mild steel of the period"\)/);
  });
  // Source: ASTM A370, table 3: 121 HB, 60 ksi; 217 HB, 103 ksi... here 212 HB, 102 ksi (from memory).
  it.each([
    [121, 60],
    [212, 102],
    [302, 146],
  ])("brings %s HB to about the %s ksi of the conversion table", (hb, strength) => {
    const steel = steelOfHardness(hb, "as rolled");
    expectClose(steel.tensile.value.in("ksi"), strength, { rel: 0.05, because: "a rule of thumb, 5 %" });
  });
  it("adds the scatter of the readings to that of the rule", () => {
    const steel = steelOfHardness(measured(120, 12), "cold drawn");
    const u = steel.tensile.standardUncertainty.si / steel.tensile.value.si;
    expectClose(u, Math.hypot(0.1, 0.05), { rel: 1e-12, because: "root of the sum of squares" });
    expectClose(steel.yield.value.si, 0.8 * steel.tensile.value.si, { rel: 1e-12, because: "a share" });
  });
  it("refuses brittle metals, yields above tensile, and numbers that are no hardness", () => {
    expect(() => shaftSteel(material("grey iron class 20"))).toThrow(
      /must be a steel.*got grey iron class 20/,
    );
    const certificate = { name: "bar", tensile: ksi(50), yield: psi(60000), basis: "certificate" };
    expect(() => shaftSteel(certificate)).toThrow(
      /yield must not be above tensile \(50 ksi\), got 60000 psi/,
    );
    expect(() => shaftSteel({ ...certificate, basis: "" })).toThrow(/basis/);
    expect(() => steelOfHardness(60, "as rolled")).toThrow(/Brinell number from 100 to 450, got 60/);
    expect(() => steelOfHardness(160, "annealed" as never)).toThrow(/"as rolled" or "cold drawn"/);
  });
});
