import { describe, expect, it } from "vitest";
import { inch, measured, micrometre, mm, rpm, thou } from "../../../kernel-helpers/quantity/index.js";
import {
  type CutPlanInput,
  cutPlan,
  finishedJournals,
  latheSetting,
  turningStock,
} from "../../../kernel-helpers/shaft/index.js";
import { profileOf, type RunOut, readTable, wearBands } from "../../../kernel-helpers/survey/index.js";
import { expectClose } from "../../support/expect-close.js";

const diameters = [2.4375, 2.4375, 2.4375, 2.4345, 2.4341, 2.4345, 2.4375, 2.4375, 2.4375];
const text = ["station [in],diameter [in]", ...diameters.map((d, i) => `${i},${d}`)].join("\n");
const survey = readTable(new TextEncoder().encode(text), { name: "shaft-survey", file: "shaft-survey.csv" });
const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
const wear = wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
const runOutOf = (distance: number): RunOut =>
  ({
    stations: diameters.map((_, i) => ({
      station: inch(i),
      centre: { distance: measured(thou(distance), thou(0.05)) },
    })),
  }) as unknown as RunOut;
const stock = turningStock(wear, { from: inch(2), to: inch(6), runOut: runOutOf(2) });
const [journal] = finishedJournals({
  journals: [{ name: "box", from: inch(2), to: inch(6), diameter: measured(inch(2.428), thou(0.2)) }],
}).journals;
const lathe = latheSetting({
  tool: "high-speed steel",
  noseRadius: inch(1 / 32),
  feed: thou(3),
  deepestCut: thou(3),
  finishingCut: thou(2),
  dialCounts: "radius",
  dialDivision: thou(0.5),
  speeds: [28, 44, 70, 110, 175].map(rpm),
});
const input: CutPlanInput = {
  stock,
  journal: journal!,
  tolerance: { upper: thou(0), lower: thou(-1) },
  leave: thou(0),
  measuring: thou(0.1),
  material: "steel",
  lathe,
  betweenCentres: inch(24),
  zeroFromCentre: inch(3),
};

describe("turningStock(wear, { from, to, runOut })", () => {
  it("is the circles of the highest and the lowest place: D ± 2e", () => {
    expectClose(stock.reach.value.in("inch"), 2.4375 + 0.004, { rel: 1e-9, because: "geometry" });
    expectClose(stock.unbroken.value.in("inch"), 2.4341 - 0.004, { rel: 1e-9, because: "geometry" });
    expect(stock.unbrokenAt.in("inch")).toBe(4);
  });
  it("is the diameters alone without run-out, and says so", () => {
    const bare = turningStock(wear, { from: inch(2), to: inch(6) });
    expectClose(bare.reach.value.in("inch"), 2.4375, { rel: 1e-9, because: "no run-out" });
    expect(bare.warnings.join()).toMatch(/No run-out was read between centres from 2 in to 6 in/);
  });
  it("refuses a stretch with nothing in it", () => {
    expect(() => turningStock(wear, { from: inch(20), to: inch(30) })).toThrow(
      "no reading that counts lies from 20 in to 30 in in shaft-survey.csv",
    );
    expect(() => turningStock(wear, { from: inch(6), to: inch(2) })).toThrow(
      "from a lower to a higher station",
    );
  });
});

describe("cutPlan(input)", () => {
  const plan = cutPlan(input);
  it("ends at the middle of what is accepted, each cut taking twice its depth off the diameter", () => {
    let d = stock.reach.value.si;
    for (const pass of plan.passes) {
      d -= 2 * pass.depth.si;
      expectClose(pass.diameter.value.si, d, { rel: 1e-9, because: "depth is on radius" });
    }
    expectClose(d, inch(2.4275).si, { rel: 1e-9, because: "middle of 2.427 to 2.428" });
    expect(plan.passes.map(({ name }) => name)).toEqual(
      ["rough", "measuring", "finishing"].slice(3 - plan.passes.length),
    );
  });
  it("reads twice as much on a dial that counts the diameter", () => {
    const byDiameter = cutPlan({ ...input, lathe: { ...lathe, dialCounts: "diameter" } });
    plan.passes.forEach(({ dial, offDivision, diameter }, i) => {
      const other = byDiameter.passes[i]!;
      // What the dial shows and what it is off make the way from first touch.
      const way = stock.reach.value.minus(diameter.value).si;
      expectClose(2 * dial.si + offDivision.si, way, { rel: 1e-9, because: "radius" });
      expectClose(other.dial.si + other.offDivision.si, way, { rel: 1e-9, because: "diameter" });
      expect(Math.abs(other.offDivision.si)).toBeLessThanOrEqual(lathe.dialDivision.si / 2 + 1e-12);
    });
  });
  it("jumps until it is below the lowest place, and turns no faster than the low end meanwhile", () => {
    for (const pass of plan.passes) {
      expect(pass.interrupted).toBe(pass.diameter.value.si > stock.unbroken.value.si);
      const surface = pass.speed.si * (stock.reach.value.si / 2);
      expect(surface).toBeLessThanOrEqual(plan.cuttingSpeed.high.si * 1.0001);
      if (pass.interrupted) expect(surface).toBeLessThanOrEqual(plan.cuttingSpeed.low.si * 1.0001);
    }
  });
  it("accepts the limits less U at either end, and leaves on what is to be polished", () => {
    expectClose(plan.accept.smallest.in("inch"), 2.427 + 0.000196, { rel: 1e-6, because: "1.96 · 0.1 thou" });
    const left = cutPlan({ ...input, leave: thou(0.4) });
    expectClose(
      left.passes.at(-1)!.diameter.value.minus(plan.passes.at(-1)!.diameter.value).in("thou"),
      0.4,
      {
        rel: 1e-6,
        because: "on diameter",
      },
    );
  });
  it("takes as long as turns and feed make it", () => {
    const [pass] = plan.passes;
    expectClose(pass!.time.in("minute"), 4 / (0.003 * pass!.speed.in("rpm")), {
      rel: 1e-9,
      because: "L/(f n)",
    });
    expectClose(
      plan.time.si,
      plan.passes.reduce((s, p) => s + p.time.si, 0),
      { rel: 1e-9, because: "a sum" },
    );
  });
  it("wants a steady on a long thin shaft, and none on a short stout one", () => {
    expect(plan.springing.steadyNeeded).toBe(false);
    const long = cutPlan({ ...input, betweenCentres: inch(240), zeroFromCentre: inch(110) });
    expect(long.springing.steadyNeeded).toBe(true);
    expect(long.springing.freeLength.si).toBeLessThan(inch(240).si);
  });
  it("takes a zone of ISO 286 as its tolerance", () => {
    const iso = cutPlan({ ...input, tolerance: "h8" });
    expectClose(iso.limits.largest.minus(iso.limits.smallest).in("micrometre"), 46, {
      rel: 1e-6,
      because: "IT8, 50 to 80",
    });
    expect(() => cutPlan({ ...input, tolerance: "H8" })).toThrow(
      'must be a shaft\'s, a small letter, got "H8"',
    );
  });
  it("says what is wrong with what it is given", () => {
    const at = (size: number) => ({ ...journal!, diameter: measured(inch(size), thou(0.2)) });
    expect(() => cutPlan({ ...input, journal: at(2.45) })).toThrow(
      /"box" reaches only 2\.4415 in and cannot be turned to .*nothing is there to be cut; build it up/,
    );
    expect(() => cutPlan({ ...input, journal: at(2.4375) })).toThrow(
      /"box" does not clean up at 2\.4375 in: its lowest place, at 4 in, leaves only 2\.4301 in/,
    );
    expect(() => cutPlan({ ...input, measuring: thou(1) })).toThrow(/finer than can be measured/);
    expect(() => cutPlan({ ...input, tolerance: { upper: thou(-1), lower: thou(0) } })).toThrow(
      "its upper above its lower",
    );
    expect(() => cutPlan({ ...input, material: "mithril" })).toThrow(/got "mithril"/);
    expect(() => cutPlan({ ...input, betweenCentres: inch(8) })).toThrow(
      /"box" must lie between the centres, 8 in apart/,
    );
    expect(() => cutPlan({ ...input, leave: micrometre(-1) })).toThrow("leave must be 0 or more");
    expect(() => cutPlan({ ...input, lathe: { ...lathe, speeds: [rpm(600)] } })).toThrow(
      /every speed of the lathe is above .*got 600 rpm/,
    );
    expect(() => latheSetting({ ...lathe, dialCounts: "sideways" })).toThrow(
      /must be "radius".*got "sideways"/,
    );
    expect(() => latheSetting({ ...lathe, tool: "flint" })).toThrow('got "flint"');
    expect(() => latheSetting({ ...lathe, feed: mm(0) })).toThrow("feed must be a length above 0, got 0 mm");
    expect(() => latheSetting({ ...lathe, speeds: [undefined] })).toThrow(
      "speeds[0] must be above 0, got nothing",
    );
  });
  it("warns of black spots that may stay where the size is within the doubt of the lowest place", () => {
    const close = { ...journal!, diameter: measured(inch(2.4311), thou(0.2)) };
    expect(cutPlan({ ...input, journal: close }).warnings.join()).toMatch(/black spots may stay at 4 in/);
    expect(plan.warnings.join()).not.toMatch(/black spots/);
  });
});
