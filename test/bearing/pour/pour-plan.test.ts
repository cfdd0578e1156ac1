import { describe, expect, it } from "vitest";
import { type PourOptions, pourPlan } from "../../../kernel-helpers/bearing/index.js";
import { babbitt } from "../../../kernel-helpers/handbook/index.js";
import {
  degF,
  degree,
  inch,
  measured,
  pound,
  quantity,
  second,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import { expectClose } from "../../support/expect-close.js";

const options: PourOptions = {
  name: "far box",
  alloy: babbitt(2),
  journal: measured(inch(2.4375), thou(0.2)),
  clearance: thou(4),
  allowance: thou(15),
  shellBore: inch(3.25),
  length: inch(8),
  shellMass: pound(30),
  anchors: { count: 6, mouth: quantity(0.2, "inch2"), depth: inch(0.25) },
  shims: thou(60),
  riser: { diameter: inch(1), height: inch(2) },
  loss: 0.15,
  shellPreheat: degF(250),
  mandrelPreheat: degF(300),
  shop: degF(65),
  loadAt: degree(0),
  fillTime: second(2),
};

describe("pourPlan(options)", () => {
  it("turns the mandrel so that the largest bore leaves exactly the allowance, and the least more", () => {
    const plan = pourPlan(options);
    expectClose(plan.toTakeOff.least.in("thou"), 15, { rel: 1e-9, because: "so the mandrel was reckoned" });
    expect(plan.toTakeOff.most.si).toBeGreaterThan(plan.toTakeOff.least.si);
    expect(plan.mandrel.si).toBeLessThan(plan.finishedBore.si);
  });
  it("with everything at one temperature and no allowance, the mandrel is the finished bore up to shrinkage of the wall", () => {
    const cold = pourPlan({
      ...options,
      allowance: thou(0),
      shellPreheat: degF(65),
      mandrelPreheat: degF(65),
    });
    // Held by a cold shell the wall alone thins: 3·21e-6·(466 − 65)·5/9 of 0.40425 in at the finished size.
    const share = 3 * 21e-6 * ((466 - 65) * (5 / 9));
    const wall = (3.25 - 2.4415) / 2 / (1 - share);
    expectClose(cold.mandrel.in("inch"), 3.25 - 2 * wall, { rel: 1e-9, because: "by hand" });
  });
  it("melts what a plain ring of that size weighs, with anchors, riser and loss", () => {
    const plan = pourPlan({ ...options, shims: thou(0), loss: 0 });
    const hot = plan.mandrel.in("inch") * (1 + 11.5e-6 * ((300 - 65) * (5 / 9)));
    const ring = (Math.PI / 4) * (3.25 ** 2 - hot ** 2) * 8;
    const pieces = ring + 6 * 0.2 * 0.25 + (Math.PI / 4) * 2;
    expectClose(plan.volumes.whole.in("inch3"), pieces, { rel: 1e-9, because: "simple shapes" });
    // 7.39 g/cm³ is 0.26698 lb/in³.
    expectClose(plan.mass.in("pound"), pieces * 7.39 * 0.0361273, {
      rel: 1e-5,
      because: "ASTM B23, gravity",
    });
    expectClose(pourPlan(options).toMelt.si, 1.15 * pourPlan(options).mass.si, {
      rel: 1e-12,
      because: "loss",
    });
  });
  it("tells the melt's uncertainty by a rough shell: a bore and a length that are out by it, each alone, as squares", () => {
    const castingUncertainty = inch(1 / 32);
    const { toMelt, toMeltUncertainty } = pourPlan({ ...options, castingUncertainty });
    const longer =
      pourPlan({ ...options, length: options.length.plus(castingUncertainty) }).toMelt.si - toMelt.si;
    // The mandrel follows the shell a little, as the wall shrinks: so the difference of two pours errs by some per cent.
    const wider =
      pourPlan({ ...options, shellBore: options.shellBore.plus(castingUncertainty) }).toMelt.si - toMelt.si;
    expectClose(toMeltUncertainty!.si, Math.hypot(longer, wider), {
      rel: 0.05,
      because: "half the mandrel's shift and the second order",
    });
    expect(pourPlan(options).toMeltUncertainty).toBeUndefined();
  });
  it("says whether it fills, from a fill within the shortest time to one beyond the longest", () => {
    const { chill } = pourPlan(options);
    const verdictAt = (si: number): string => pourPlan({ ...options, fillTime: second(si) }).verdict;
    expect(verdictAt(0.99 * chill.quick.beginsToFreeze.si)).toBe("fills");
    expect(verdictAt(1.01 * chill.quick.beginsToFreeze.si)).toBe("cannot tell yet");
    expect(verdictAt(1.01 * chill.slow.stopsRunning.si)).toBe("freezes before it fills");
    expectClose(chill.slow.beginsToFreeze.si / chill.quick.beginsToFreeze.si, 4, {
      rel: 1e-9,
      because: "time goes with one over the contact",
    });
  });
  it("meets where shell and mandrel have taken all the heat the metal gave", () => {
    const plan = pourPlan({ ...options, mandrelPreheat: degF(250) });
    const [kg, at] = [plan.mass.si * (1 - plan.volumes.riser.si / plan.volumes.whole.si), plan.meets.kelvin];
    const { alloy } = plan;
    const given = kg * (alloy.specificHeat.si * (alloy.pouring.kelvin - at) + alloy.latentHeat.si);
    const iron = 30 * 0.45359237 + 7850 * (Math.PI / 4) * plan.mandrel.si ** 2 * plan.length.si;
    expectClose(given, iron * 460 * (at - degF(250).kelvin), { rel: 1e-9, because: "energy is kept" });
  });
  it("gains time by a hotter shell, and warns of a damp one", () => {
    const cold = pourPlan({ ...options, shellPreheat: degF(120) });
    expect(cold.chill.quick.stopsRunning.si).toBeLessThan(pourPlan(options).chill.quick.stopsRunning.si);
    expect(cold.warnings.join()).toMatch(/may still hold water/);
    expect(pourPlan(options).warnings).toEqual([]);
    expect(pourPlan({ ...options, alloy: babbitt(7) }).warnings.join()).toMatch(/72.5 to 76.5 % lead/);
  });
  it.each<[string, Partial<PourOptions>, string]>([
    [
      "no clearance",
      { clearance: thou(0) },
      "clearance must be above 0, got 0 thou; without room there is no film, and a journal of 2.4375 in is commonly given 3.4 to 4.7 thou",
    ],
    ["a negative one", { clearance: thou(-2) }, "clearance must be above 0"],
    ["a clearance in inches", { clearance: inch(0.04) }, "more than a hundredth"],
    [
      "a journal larger than the shell",
      { journal: measured(inch(3.3), thou(1)) },
      "leaves no room for a lining in a shell of 3.25 in: a bore of at least 3.5625 in is needed",
    ],
    [
      "metal too cold",
      { pouring: degF(680) },
      "must be poured at least 20 °C above its liquidus of 669 °F, got 680 °F",
    ],
    ["a shell above the solidus", { shellPreheat: degF(470) }, "shellPreheat must lie below the solidus"],
    ["a share lost of more than half", { loss: 0.6 }, "loss must lie between 0 and 0.5, got 0.6"],
  ])("refuses %s, with the box named", (_, change, message) => {
    expect(() => pourPlan({ ...options, ...change })).toThrow(message);
    expect(() => pourPlan({ ...options, ...change })).toThrow("far box");
  });
});
