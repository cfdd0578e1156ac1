import { describe, expect, it } from "vitest";
import {
  hollowEnergy,
  oilEnergy,
  raisedEnergy,
  springEnergy,
  storedEnergies,
  turningEnergy,
} from "../../kernel-helpers/intake/index.js";
import {
  degC,
  foot,
  kilogram,
  litre,
  measured,
  megapascal,
  metre,
  mm,
  newton,
  pound,
  quantity,
  radianPerSecond,
  rpm,
} from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

const exact = { rel: 1e-12, because: "identity; rounding only" };

describe("stored energy", () => {
  it("of a wheel is that of its mass at its radius of gyration: W·v²/(2g), the form of the older handbooks", () => {
    // E = W·v²/64.4 ft·lb with v in ft/s at the radius of gyration: Machinery's Handbook, flywheels (from memory).
    const [w, k, n] = [3000, 4, 120];
    const v = (2 * Math.PI * k * n) / 60;
    const found = turningEnergy(
      "wheel",
      quantity(w * (12 * k) ** 2, "poundSquareInch"),
      rpm(n),
    ).energy.value.in("lbfFoot");
    expectClose(found, (w * v * v) / 64.4, { rel: 0.001, because: "64.4 is 2g to three digits" });
  });
  it("of a wheel that lifts its own mass at the rim is that of the mass raised", () => {
    const [m, r, w] = [20, 0.4, 11];
    const height = (r * w) ** 2 / (2 * 9.80665);
    expectClose(
      turningEnergy("wheel", quantity(m * r * r, "kilogramSquareMetre"), radianPerSecond(w)).energy.value.si,
      raisedEnergy("mass", kilogram(m), metre(height)).energy.value.si,
      exact,
    );
  });
  it("of a spring is the sum of its work in small steps", () => {
    const steps = 1000;
    let work = 0;
    for (let i = 0; i < steps; i++) work += ((200 * (i + 0.5)) / steps) * (0.05 / steps);
    expectClose(springEnergy("spring", "s", newton(200), mm(50)).energy.value.si, work, {
      rel: 1e-10,
      because: "the midpoint rule is exact for a straight line",
    });
  });
  it("of squeezed oil is its pressure times its shrinking, summed", () => {
    const [p, v, k, steps] = [70e6, 1e-3, 1.5e9, 1000];
    let work = 0;
    for (let i = 0; i < steps; i++) work += ((p * (i + 0.5)) / steps) * ((v / k) * (p / steps));
    expectClose(oilEnergy("jack", megapascal(70), litre(1)).energy.value.si, work, {
      rel: 1e-10,
      because: "the midpoint rule is exact for a straight line",
    });
  });
  it("of shut-in air is the work of its expansion against nothing lost, ∫p dV, and 0 in the limit of no heat", () => {
    const [t0, t, v0, gamma, p0] = [293.15, 586.3, 1e-3, 1.4, 101325];
    const p = (p0 * t) / t0;
    const v1 = v0 * (p / p0) ** (1 / gamma);
    let work = 0;
    const steps = 20000;
    for (let i = 0; i < steps; i++) {
      const v = v0 + ((v1 - v0) * (i + 0.5)) / steps;
      work += p * (v0 / v) ** gamma * ((v1 - v0) / steps);
    }
    expectClose(hollowEnergy("hub", litre(1), degC(t - 273.15), degC(t0 - 273.15)).energy.value.si, work, {
      rel: 1e-8,
      because: "midpoint rule of 20000 steps",
    });
    const little = hollowEnergy("hub", litre(1), degC(20.001), degC(20)).energy.value.si;
    expect(little).toBeLessThan(1e-3);
  });
  it("carries uncertainty: speed counts twice, mass once", () => {
    const energy = turningEnergy(
      "wheel",
      measured(quantity(2, "kilogramSquareMetre"), quantity(0.1, "kilogramSquareMetre")),
      measured(rpm(100), rpm(2)),
    ).energy;
    expectClose(energy.standardUncertainty.si / energy.value.si, Math.hypot(0.05, 0.04), exact);
    const raised = raisedEnergy("m", measured(pound(180), pound(9)), foot(3)).energy;
    expectClose(raised.standardUncertainty.si / raised.value.si, 0.05, exact);
  });
  it("lists the largest first, says what to do before, and refuses what is nothing", () => {
    const [one, two] = [raisedEnergy("a", pound(1), foot(1)), raisedEnergy("b", pound(2), foot(1))];
    const all = storedEnergies([one, two]);
    expect(all.stores.map(({ what }) => what)).toEqual(["b", "a"]);
    expect(all.stores.every(({ before }) => before.length > 0)).toBe(true);
    expect(() => storedEnergies([])).toThrow(/at least one/);
    expect(() => storedEnergies([one, one])).toThrow(/two called "a"/);
    expect(() => raisedEnergy("a", pound(0), foot(1))).toThrow(/mass must be above 0/);
    expect(() => hollowEnergy("h", litre(1), degC(10), degC(20))).toThrow(/heatedTo must be above/);
  });
});
