import { describe, expect, it } from "vitest";
import { inch, ksi, lbfInch, measured, mm, newtonMetre } from "../../../kernel-helpers/quantity/index.js";
import {
  assumedSteel,
  deepestCut,
  type ShaftDuty,
  type ShaftPlace,
  safetyFactors,
  shaftSafety,
  shaftSteel,
} from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";

const duty: ShaftDuty = {
  steel: assumedSteel("mild steel of the period"),
  surface: "machined",
  demanded: 2,
};
const place: ShaftPlace = {
  name: "journal",
  diameter: measured(mm(60), mm(0.01)),
  moment: measured(newtonMetre(700), newtonMetre(70)),
  torque: measured(newtonMetre(600), newtonMetre(40)),
  feature: { shape: "plain" },
};
const features: readonly ShaftPlace["feature"][] = [
  { shape: "plain" },
  { shape: "keyed hub" },
  { shape: "press-fitted hub" },
  { shape: "keyseat", ends: "end-milled", corner: mm(0.8) },
  { shape: "transverse hole", hole: mm(6) },
  { shape: "shoulder", larger: mm(60.3), fillet: mm(1.5) },
];

describe("deepestCut(place, duty)", () => {
  it.each(features)("is the inverse of shaftSafety: $shape", (feature) => {
    const loaded = { ...place, feature, moment: newtonMetre(250) };
    const found = deepestCut(loaded, duty);
    expect(found.ended).toBe("found");
    const there = safetyFactors({ ...loaded, diameter: found.smallest!.value }, duty);
    expectClose(Math.min(there.fatigue, there.yielding), 2, { rel: 1e-9, because: "bisection" });
    expect(found.governing).toBe(there.fatigue <= there.yielding ? "fatigue" : "yielding");
  });
  it("is the printed diameter's own: a shaft of the published factor may lose nothing", () => {
    // Source: Shigley & Nisbett, 9th edition, example 7-1: d 1.1 in, Goodman 1.63 with K from charts.
    const example: ShaftPlace = {
      name: "shoulder",
      diameter: inch(1.2),
      moment: lbfInch(1260),
      torque: lbfInch(1100),
      feature: { shape: "shoulder", larger: inch(1.65), fillet: inch(0.11) },
    };
    const steel = shaftSteel({ name: "heat-treated", tensile: ksi(105), yield: ksi(82), basis: "example" });
    const found = deepestCut(example, { steel, surface: "machined", demanded: 1.63, reliability: 0.99 });
    expectClose(found.smallest!.value.in("inch"), 1.1, {
      rel: 0.015,
      because: "4 % of a chart's K is 1.3 % of a diameter",
    });
  });
  it("goes with the cube root of the load for a plain section but for the size factor", () => {
    const small = deepestCut(place, duty).smallest!.value.si;
    const half = deepestCut({ ...place, moment: newtonMetre(350), torque: newtonMetre(300) }, duty).smallest!
      .value.si;
    expectClose(half / small, 0.5 ** (1 / 3), { rel: 0.02, because: "size factor d^−0.1" });
  });
  it("has an uncertainty that a changed load bears out", () => {
    const exact = { ...place, torque: newtonMetre(600) };
    const duty99 = { ...duty, reliability: 0.99 };
    const only = deepestCut(exact, duty99).smallest!;
    const at = (moment: number) =>
      deepestCut({ ...exact, moment: newtonMetre(moment) }, duty99).smallest!.value.si;
    // The moment's part alone; the surface's scatter of 5.8 % acts as a change of the moment's stress does.
    const ofMoment = (at(770) - at(630)) / 2;
    const u = only.standardUncertainty.si;
    expectClose(u, ofMoment * Math.hypot(1, 0.58), {
      rel: 0.02,
      because: "reversed stress over limit takes both alike, measured 1 %",
    });
  });
  it("is sure but for the risk: at the sure diameter the chance to be below is the risk", () => {
    for (const risk of [0.05, 0.2]) {
      const { sure } = deepestCut({ ...place, moment: measured(newtonMetre(300), newtonMetre(30)) }, duty, {
        risk,
      });
      const there = shaftSafety(
        { ...place, moment: measured(newtonMetre(300), newtonMetre(30)), diameter: sure! },
        duty,
      );
      expectClose(there[there.governing].chanceBelow, risk, {
        rel: 1e-6,
        because: "bisection of the chance itself",
      });
    }
  });
  it("tells what may be turned off down to the sure diameter, and how the search ended", () => {
    const light = deepestCut({ ...place, moment: newtonMetre(200) }, duty);
    expectClose(light.cut.si, 0.06 - light.sure!.si, { rel: 1e-12, because: "a difference" });
    expect(light.sure!.si).toBeGreaterThan(light.smallest!.value.si);
    const heavy = deepestCut({ ...place, moment: newtonMetre(6000) }, duty);
    expect(heavy).toMatchObject({ ended: "too small already", smallest: undefined, sure: undefined });
    expect(heavy.cut.si).toBe(0);
    const near = deepestCut({ ...place, moment: newtonMetre(1200) }, duty);
    expect(near).toMatchObject({ ended: "too small already to be sure", sure: undefined });
    expect(near.smallest).toBeDefined();
    const idle = deepestCut({ ...place, moment: newtonMetre(1), torque: newtonMetre(1) }, duty);
    expect(idle.ended).toBe("no limit down to where the published figures end");
  });
  it("stops where a step grows too sharp for the charts, and says so", () => {
    const step: ShaftPlace = {
      ...place,
      moment: newtonMetre(20),
      torque: newtonMetre(20),
      feature: { shape: "shoulder", larger: mm(60.2), fillet: mm(0.4) },
    };
    expect(deepestCut(step, duty).ended).toBe("no limit down to where the published figures end");
  });
  it("never cuts into a bore", () => {
    const tube = deepestCut(
      { ...place, bore: mm(40), moment: newtonMetre(100), torque: newtonMetre(100) },
      duty,
    );
    expect(tube.smallest!.value.si).toBeGreaterThan(0.04);
  });
  it("reminds that a keyseat goes with it, and refuses a risk that is none", () => {
    expect(deepestCut({ ...place, feature: { shape: "keyed hub" } }, duty).warnings.join()).toMatch(
      /keyseatAfterCut/,
    );
    expect(() => deepestCut(place, duty, { risk: 0 })).toThrow(/risk must be from 0\.001 to 0\.5, got 0/);
    expect(() => deepestCut({ ...place, moment: newtonMetre(0), torque: newtonMetre(0) }, duty)).toThrow(
      /deepestCut: journal: nothing loads this place/,
    );
  });
});

describe("safetyFactors(place, duty, off)", () => {
  it("is the estimate of shaftSafety", () => {
    for (const feature of features) {
      const { fatigue, yielding } = safetyFactors({ ...place, feature }, duty);
      const whole = shaftSafety({ ...place, feature }, duty);
      expectClose(fatigue, whole.fatigue.factor.value, { rel: 1e-9, because: "rounding only" });
      expectClose(yielding, whole.yielding.factor.value, { rel: 1e-9, because: "rounding only" });
    }
  });
  it("takes what the published figures are off by", () => {
    const pure = { ...place, torque: newtonMetre(0) };
    const middle = safetyFactors(pure, duty).fatigue;
    expectClose(safetyFactors(pure, duty, { endurance: 0.9 }).fatigue, 0.9 * middle, {
      rel: 1e-9,
      because: "S_e",
    });
    expectClose(safetyFactors(pure, duty, { notch: 1.25 }).fatigue, middle / 1.25, {
      rel: 1e-9,
      because: "K_f",
    });
    expect(() => safetyFactors(pure, duty, { notch: 0 })).toThrow(/off\.notch .* more than 0, got 0/);
  });
});
