import { describe, expect, it } from "vitest";
import { threadNamed } from "../../kernel-helpers/handbook/index.js";
import { coolingTime, type HeatNutInput, heatCeiling, heatNut } from "../../kernel-helpers/joint/index.js";
import {
  degC,
  degF,
  inch,
  inch2,
  kilogram,
  mm,
  pound,
  quantityFromSi,
} from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

const steelHeat = quantityFromSi("specific heat", 486);
const nut: HeatNutInput = {
  thread: threadNamed("1 1/2 in BSW"),
  acrossFlats: inch(2.41),
  height: inch(1.5),
  shop: degF(65),
  neighbours: [
    { name: "paint", share: 0.5 },
    { name: "Babbitt 2", share: 0.2 },
    { name: "oil", share: 1 },
  ],
};

describe("coolingTime(body, from, to, air)", () => {
  const body = { mass: pound(2), specificHeat: steelHeat, area: inch2(20) };
  it("is the exponential of lumped capacitance: it solves m c dT/dt = −h A (T − T∞)", () => {
    const air = degC(20);
    const { low, timeConstant } = coolingTime(body, degC(200), degC(80), air);
    const tau = timeConstant.low.si;
    expectClose(tau, (pound(2).si * 486) / (30 * inch2(20).si), { rel: 1e-12, because: "m c/(h A)" });
    // Walked in small steps by Heun's rule.
    let [T, t] = [180, 0];
    const dt = tau / 1000;
    while (T > 60) {
      const slope = -T / tau;
      T += (dt / 2) * (slope - (T + dt * slope) / tau);
      t += dt;
    }
    expectClose(low.si, t, { rel: 1.5e-3, because: "steps of a thousandth; worst measured 1e-3" });
  });
  it("reaches 63.2 % of the fall after one time constant", () => {
    const after = degC(20 + 180 / Math.E);
    const { high, timeConstant } = coolingTime(body, degC(200), after, degC(20));
    expectClose(high.si, timeConstant.high.si, { rel: 1e-12, because: "its definition" });
  });
  it("adds up: by way of a temperature between", () => {
    const time = (from: number, to: number): number =>
      coolingTime(body, degF(from), degF(to), degF(65)).low.si;
    expectClose(time(400, 140), time(400, 250) + time(250, 140), { rel: 1e-12, because: "logarithms" });
  });
  it("rejects temperatures that do not fall to above the air, and a body of nothing", () => {
    expect(() => coolingTime(body, degF(100), degF(200), degF(65))).toThrow(/must fall from the start/);
    expect(() => coolingTime(body, degF(200), degF(65), degF(65))).toThrow(/air 65 °F/);
    expect(() => coolingTime({ ...body, mass: kilogram(0) }, degF(200), degF(100), degF(65))).toThrow(
      /coolingTime: mass must be more than 0/,
    );
    expect(() => coolingTime({ ...body, film: { low: 0, high: 1 } }, degF(200), degF(100), degF(65))).toThrow(
      /film must run upwards from above 0, got 0 to 1/,
    );
  });
});

describe("heatCeiling(name)", () => {
  // Source: Dooley, very pale yellow 430 °F, less 20 °F between lists; the rest common practice, no source.
  it("knows paint, oil, temper and the metals of the handbook", () => {
    expectClose(heatCeiling("hardened part").ceiling.in("degF"), 410, { rel: 1e-12, because: "430 − 20" });
    expect(heatCeiling("Babbitt 2").ceiling < heatCeiling("steel").ceiling).toBe(true);
    expect(heatCeiling("Paint").why).toMatch(/lead fumes/);
  });
  it("rejects what it does not know", () => {
    expect(() => heatCeiling("jelly")).toThrow(/heatCeiling: name must be one of paint, oil, .*got "jelly"/);
  });
});

describe("heatNut(input)", () => {
  it("grows the bore by α d ΔT on diameter", () => {
    // By hand: 6.5e-6 · 1.5 in · 200 °F = 1.95 thou.
    const found = heatNut({ ...nut, to: degF(265) });
    expectClose(found.growth.in("thou"), 1.95, { rel: 1e-9, because: "11.7e-6/°C is 6.5e-6/°F exactly" });
    expectClose(found.growthPerStep.in("thou"), 0.975, { rel: 1e-9, because: "half of that for 100 °F" });
  });
  it("names the neighbour reached first, and lets the nut be hotter the less of it arrives", () => {
    const found = heatNut(nut);
    // By hand: oil 300 °F at the nut itself; paint 65 + 185/0.5 = 435 °F; Babbitt 65 + 185/0.2 = 990 °F.
    expect(found.limits.map(({ name }) => name)).toEqual(["oil", "paint", "steel", "Babbitt 2"]);
    expectClose(found.limits[1]!.nutAt.in("degF"), 435, { rel: 1e-12, because: "by hand" });
    expectClose(found.limits[3]!.nutAt.in("degF"), 990, { rel: 1e-12, because: "by hand" });
    expectClose(found.nut.in("degF"), 300, { rel: 1e-12, because: "as hot as the oil allows" });
  });
  it("stops when the nut is to be made hotter than a neighbour allows, and names it", () => {
    expect(() => heatNut({ ...nut, to: degF(310) })).toThrow(
      /the nut must stay below 300 °F, or oil passes its ceiling of 300 °F .*got 310 °F/,
    );
  });
  it("weighs the nut as a hexagon with a hole", () => {
    const area = (Math.sqrt(3) / 2) * 2.41 ** 2 - (Math.PI / 4) * 1.5 ** 2;
    expectClose(heatNut(nut).mass.in("pound"), area * 1.5 * 7850 * 0.0254 ** 3 * (1 / 0.45359237), {
      rel: 1e-9,
      because: "volume by hand, 7850 kg/m³",
    });
  });
  it("gives half of the growth back before it may be touched", () => {
    const found = heatNut(nut);
    expect(found.halfGone.low < found.halfGone.high).toBe(true);
    expect(found.halfGone.low < found.touchable.low).toBe(true);
  });
  it("may be touched at once where it is not hot", () => {
    expect(heatNut({ ...nut, to: degF(120) }).touchable.high.si).toBe(0);
  });
  it("works in metric too", () => {
    const found = heatNut({
      thread: threadNamed("M36x3"),
      acrossFlats: mm(55),
      height: mm(29),
      shop: degC(18),
      to: degC(118),
      neighbours: [],
    });
    expectClose(found.growth.in("micrometre"), 11.7e-6 * 36 * 100 * 1000, { rel: 1e-9, because: "by hand" });
  });
  it("names the field that is wrong", () => {
    expect(() => heatNut({ ...nut, acrossFlats: inch(1.4) })).toThrow(
      /wider across flats than its thread, 1\.5 in/,
    );
    expect(() => heatNut({ ...nut, height: inch(0) })).toThrow(/height must be more than 0/);
    expect(() => heatNut({ ...nut, to: degF(60) })).toThrow(/warmer than the shop, 65 °F, got 60 °F/);
    expect(() => heatNut({ ...nut, neighbours: [{ name: "oil", share: 0 }] })).toThrow(
      /share of oil .* got 0/,
    );
    expect(() => heatNut({ ...nut, shop: degF(260) })).toThrow(/cooler than the ceiling of paint/);
  });
});
