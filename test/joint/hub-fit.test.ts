import { describe, expect, it } from "vitest";
import { fitFriction, material } from "../../kernel-helpers/handbook/index.js";
import {
  chanceNotAbove,
  fitPressure,
  type HubOnShaft,
  hubFit,
  interferenceByPractice,
  spreadOf,
  taperFitForces,
} from "../../kernel-helpers/joint/index.js";
import { inch, measured, mm, thou } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

const iron = material("ductile iron 60-40-18");
const steel = material("steel 1040");
const fit: HubOnShaft = {
  diameter: inch(2.25),
  length: inch(4.5),
  taper: 1 / 16,
  interference: thou(1.5),
  hub: { material: iron, outside: inch(5.5) },
  shaft: { material: { ...steel, modulus: { ...steel.modulus, low: steel.modulus.value } } },
  friction: 0.15,
};
const rounding = { rel: 1e-12, because: "rounding only" };

describe("hubFit(fit) with everything known", () => {
  const known = hubFit(fit, { cases: 1000 });
  const plain = fitPressure({
    diameter: fit.diameter,
    interference: thou(1.5),
    hub: { outside: inch(5.5), modulus: iron.modulus.value, poisson: iron.poisson.value },
    shaft: { modulus: steel.modulus.value, poisson: steel.poisson.value },
  });
  it("is the plain reckoning, without spread", () => {
    for (const end of [known.pressure.low, known.pressure.middle, known.pressure.high])
      expectClose(end.si, plain.pressure.si, rounding);
    const forces = taperFitForces({ ...fit, taper: 1 / 16, friction: 0.15, pressure: plain.pressure });
    expectClose(known.pressOff.middle.si, forces.off.si, rounding);
    expectClose(known.pressOn.middle.si, forces.on.si, rounding);
    expectClose(known.torque.middle.si, forces.torque.si, rounding);
    expect(known.narrowing).toEqual([]);
  });
  it("judges a tough hub by hoop less radial stress against its yield", () => {
    expect(known.hubStress).toMatchObject({ rule: "largest shear", strengthIs: "yield", verdict: "holds" });
    expectClose(known.hubStress.stress.middle.si, plain.hubHoopAtBore.plus(plain.pressure).si, rounding);
  });
  it("judges a brittle hub by its tension against the class, and the wall above a keyway besides", () => {
    const grey = { ...material("grey iron class 20") };
    const sure = { ...grey, modulus: { ...grey.modulus, low: grey.modulus.high, value: grey.modulus.high } };
    const thin = { ...fit, hub: { material: sure, outside: inch(3.25) } };
    const without = hubFit(thin, { cases: 1000 });
    const tension = without.hubStress.stress.middle.si / without.pressure.middle.si;
    expectClose(tension, (3.25 ** 2 + 2.25 ** 2) / (3.25 ** 2 - 2.25 ** 2), rounding);
    const keyed = hubFit({ ...thin, hub: { ...thin.hub, keywayDepth: inch(0.25) } }, { cases: 1000 });
    // A quarter inch is left of half an inch of wall: p · 2.25/(2 · 0.25).
    expectClose(keyed.hubStress.stress.middle.si / keyed.pressure.middle.si, 4.5, rounding);
    expect(without.warnings.join()).toMatch(/No keyway in the hub is reckoned with/);
  });
});

describe("hubFit(fit) with ranges", () => {
  const loose: HubOnShaft = {
    ...fit,
    hub: { material: material("grey iron class 20"), outside: inch(5.5), keywayDepth: inch(0.25) },
    interference: interferenceByPractice(inch(2.25)),
    friction: fitFriction("rusted"),
  };
  const seized = hubFit(loose);
  it("holds its range between the two corners that the ranges allow", () => {
    const corner = (end: "low" | "high"): number =>
      hubFit({
        ...loose,
        interference: interferenceByPractice(inch(2.25))[end],
        friction: fitFriction("rusted")[end],
        hub: { ...loose.hub, material: fixed("grey iron class 20", end) },
        shaft: { material: fixed("steel 1040", end) },
      }).pressOff.middle.si;
    expect(seized.pressOff.low.si).toBeGreaterThan(corner("low"));
    expect(seized.pressOff.high.si).toBeLessThan(corner("high"));
    expect(seized.pressOff.steps[0]!.si).toBeGreaterThanOrEqual(corner("low"));
    expect(seized.pressOff.steps.at(-1)!.si).toBeLessThanOrEqual(corner("high"));
  });
  it("has the spread of a rectangular input where only that one is unknown", () => {
    const only = hubFit({ ...fit, friction: { low: 0.1, high: 0.2 } }, { cases: 100_000 });
    const sure = hubFit({ ...fit, friction: 0.15 }, { cases: 1000 });
    const perFriction = (mu: number): number => (sure.pressOff.middle.si * (mu - 1 / 32)) / (0.15 - 1 / 32);
    const drawn = { rel: 5e-3, because: "100 000 draws; measured 1e-3" };
    expectClose(only.pressOff.low.si, perFriction(0.1025), drawn);
    expectClose(only.pressOff.high.si, perFriction(0.1975), drawn);
    expect(only.narrowing.map(({ input }) => input)).toEqual(["friction"]);
    expectClose(only.narrowing[0]!.gain, 1, rounding);
  });
  it("names first what is worth measuring first, and says how narrow it would get", () => {
    expect(seized.narrowing.map(({ input }) => input).slice(0, 2)).toEqual(["friction", "interference"]);
    const gains = seized.narrowing.map(({ gain }) => gain);
    expect([...gains].sort((a, b) => b - a)).toEqual(gains);
    expect(seized.narrowing[1]!.known).toBe("1.13 to 2.25 thou on diameter");
  });
  it("draws a measured interference as normal, and says what share of it is a clearance", () => {
    const half = hubFit({ ...fit, interference: measured(thou(0.1), thou(0.1)) }, { cases: 50_000 });
    expectClose(half.chanceLoose, 0.15866, {
      abs: 0.005,
      because: "one standard deviation; three sigma of the draws",
    });
    expect(half.pressOff.low.si).toBe(0);
    expect(half.warnings.join()).toMatch(/a clearance: the hub may be held by rust alone/);
  });
  it("gives the same for the same seed, and hardly another for another", () => {
    expect(hubFit(loose)).toEqual(seized);
    expectClose(hubFit(loose, { seed: 99 }).pressOff.high.si, seized.pressOff.high.si, {
      rel: 0.02,
      because: "20 000 draws of a 97.5 % point; measured 5e-3",
    });
  });
  it("says when a steep taper lets go of itself", () => {
    const steep = hubFit({ ...fit, taper: 7 / 24, friction: { low: 0.1, high: 0.2 } });
    expectClose(steep.selfHolding.chance, (0.2 - 7 / 48) / 0.1, { abs: 0.02, because: "20 000 draws" });
    expect(steep.pressOff.low.si).toBeLessThan(0);
  });
  it("needs, to come loose on a cold shaft, the interference over α d", () => {
    const { opening, interference } = seized;
    expectClose(opening.middle.si, interference.middle.si / (11.4e-6 * inch(2.25).si), rounding);
  });
});

describe("hubFit(fit) stops at", () => {
  it.each([
    [
      "a seat larger than the hub",
      { diameter: inch(6) },
      /^hubFit: diameter must be smaller than hub\.outside \(5\.5 in\), got 6 in$/,
    ],
    ["a clearance", { interference: thou(-2) }, /^hubFit: interference must be 0 or more.*got −0\.002 in$/],
    [
      "a range upside down",
      { interference: { low: thou(2), high: thou(1) } },
      /^hubFit: interference\.low must not be above interference\.high \(1 thou\), got 2 thou$/,
    ],
    [
      "thousandths taken for inches",
      { interference: inch(1.5) },
      /^hubFit: interference must not be more than 1\/100/,
    ],
    ["a taper per foot", { taper: 1.25 }, /^hubFit: taper must be diameter per length, from 0 to 1/],
    [
      "a friction of a hundred",
      { friction: { low: 20, high: 50 } },
      /^hubFit: friction must lie between 0 and 1, got 20 to 50$/,
    ],
    [
      "a keyway through the wall",
      { hub: { material: iron, outside: inch(3), keywayDepth: inch(0.4) } },
      /^hubFit: hub\.keywayDepth must be smaller than the wall of the hub \(0\.375 in\), got 0\.4 in$/,
    ],
    [
      "a hub without strength",
      { hub: { material: { ...iron, yield: undefined }, outside: inch(5) } },
      /^hubFit: hub\.material must have a strength/,
    ],
    [
      "a length in pounds",
      { length: 4.5 as never },
      /^hubFit: length must be a length with its unit, got 4\.5$/,
    ],
  ])("%s", (_, change, message) => {
    expect(() => hubFit({ ...fit, ...change } as HubOnShaft)).toThrow(message);
  });
  it("a count of cases that says nothing", () => {
    expect(() => hubFit(fit, { cases: 10 })).toThrow(
      /^hubFit: cases must be a whole number from 1000 to 200000, got 10$/,
    );
  });
});

describe("spreadOf(values, pattern)", () => {
  it("reads off the quantiles of a straight run of values, and the chance of a limit", () => {
    const spread = spreadOf(
      Array.from({ length: 1001 }, (_, i) => i / 1000),
      mm(0),
    );
    expectClose(spread.low.si, 0.025, rounding);
    expectClose(spread.middle.si, 0.5, rounding);
    expectClose(spread.high.si, 0.975, rounding);
    for (const share of [0.01, 0.33, 0.99])
      expectClose(chanceNotAbove(spread, mm(1000 * share)), share, {
        rel: 1e-9,
        because: "straight between steps",
      });
    expect(chanceNotAbove(spread, mm(-1))).toBe(0);
    expect(chanceNotAbove(spread, mm(1001))).toBe(1);
  });
  it("does not alter its input and refuses none at all", () => {
    expect(spreadOf(Object.freeze([3, 1, 2]), 0).steps[0]).toBe(1);
    expect(() => spreadOf([], 0)).toThrow(/^spreadOf: values must not be empty/);
  });
});

/** A metal whose modulus and ratio stand at one end of their range. */
function fixed(name: string, end: "low" | "high") {
  const metal = material(name);
  const at = <V>(property: { low: V; high: V; source: string }) => ({
    ...property,
    value: property[end],
    low: property[end],
    high: property[end],
  });
  // A low ratio of Poisson lets the hub give less, but by little against its modulus; so it is turned about.
  const other = end === "low" ? "high" : "low";
  const ratio = {
    ...metal.poisson,
    value: metal.poisson[other],
    low: metal.poisson[other],
    high: metal.poisson[other],
  };
  return { ...metal, modulus: at(metal.modulus), poisson: ratio };
}
