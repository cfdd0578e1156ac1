import { describe, expect, it } from "vitest";
import { material } from "../../kernel-helpers/handbook/index.js";
import {
  hubFit,
  pressRig,
  type Rig,
  type RigPart,
  releaseOf,
  spreadOf,
} from "../../kernel-helpers/joint/index.js";
import { sectionNumbers } from "../../kernel-helpers/joint/rig-sections.js";
import {
  type Force,
  inch,
  ksi,
  lbf,
  longTonForce,
  megapascal,
  mm,
  newton,
  psi,
  quantity,
  shortTonForce,
  thou,
} from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

const steel = material("steel A36");
const iron = material("grey iron class 20");
const rig: Rig = {
  jack: { capacity: shortTonForce(30), stroke: inch(6) },
  rods: { thread: "1-8 UNC", proof: ksi(85), span: inch(10), length: inch(20) },
  beam: { section: { width: inch(2), height: inch(4) }, material: steel },
  plate: { width: inch(7), thickness: inch(2), slot: inch(2.5), material: steel },
  hub: { face: inch(5.5), length: inch(4.5), material: iron },
  shaft: { end: inch(1.5), material: material("steel") },
  release: inch(0.25),
};
const judged = pressRig(rig, lbf(20000));
const check = (part: RigPart, of = judged) => of.checks.find((c) => c.part === part)!;
const rounding = { rel: 1e-12, because: "rounding only" };

describe("pressRig(rig, force)", () => {
  // Source: ASME B1.1, 1-8 UNC, stress area 0.606 in²; allowable load = proof × area × share: 85 ksi · 0.606 · 0.5.
  it("loads a rod with half the force, against its share of proof on the printed stress area", () => {
    expectClose(check("tie rods").load.si, lbf(10000).si, rounding);
    expectClose(check("tie rods").capacity.si, lbf(85e3 * 0.606 * 0.5).si, {
      rel: 1e-3,
      because: "the stress area is printed to three digits",
    });
  });
  // Source: Shigley & Nisbett, 9th edition, table A-9, simple beam with load at the middle: M = F l/4, y = F l³/(48 E I).
  it("bends the beam as the table of beams has it", () => {
    const z = (2 * 4 ** 2) / 6;
    expectClose(check("cross-beam").load.si, ksi((20 * 10) / 4 / z).si, rounding);
    const i = (2 * 4 ** 3) / 12;
    const y = (judged.rating.in("lbf") * 10 ** 3) / (48 * steel.modulus.value.in("psi") * i);
    expectClose(judged.spring.beam.in("inch"), y, rounding);
  });
  it("agrees with a beam integrated step by step, not by the table", () => {
    // Half of the beam as a cantilever: curvature integrated twice from the middle, where it is level.
    const [f, s, e] = [judged.rating.si, inch(10).si, steel.modulus.value.si];
    const { second } = sectionNumbers(rig.beam.section);
    const steps = 2000;
    let [slope, y] = [0, 0];
    for (let k = 0; k < steps; k++) {
      const x = ((k + 0.5) * s) / 2 / steps;
      const h = s / 2 / steps;
      const curvature = ((f / 2) * (s / 2 - x)) / (e * second);
      y += slope * h + (curvature * h ** 2) / 2;
      slope += curvature * h;
    }
    expectClose(judged.spring.beam.si, y, { rel: 1e-6, because: "2000 steps, measured 6e-8" });
  });
  it("puts the plate's half forces at the centroid of the half ring it bears on", () => {
    // The centroid again, by summing thin half rings: x of one is 2r/π.
    const [inner, outer] = [1.25, 2.75];
    let [area, moment] = [0, 0];
    const steps = 10_000;
    for (let k = 0; k < steps; k++) {
      const r = inner + ((k + 0.5) * (outer - inner)) / steps;
      area += Math.PI * r;
      moment += Math.PI * r * ((2 * r) / Math.PI);
    }
    const arm = (5 - moment / area) / 2;
    const z = ((7 - 2.5) * 2 ** 2) / 6;
    expectClose(check("bearing plate").load.si / psi(1).si, (20000 * arm) / z, {
      rel: 1e-6,
      because: "10 000 rings, measured 2e-10",
    });
  });
  it("asks for the plate that would just stand: with it, the plate is loaded to the full", () => {
    const just = pressRig({ ...rig, plate: { ...rig.plate, thickness: judged.plateThickness } }, lbf(20000));
    expectClose(check("bearing plate", just).margin, 1, { rel: 1e-9, because: "rounding" });
  });
  it("names the weakest part, and its force is the rating of the rig", () => {
    expect(judged.weakest).toBe("bearing plate");
    expect(judged.rating.si).toBe(Math.min(...judged.checks.map(({ pressForce }) => pressForce.si)));
    for (const { margin, pressForce, load, capacity } of judged.checks) {
      expectClose(margin, pressForce.si / judged.force.si, rounding);
      expectClose(margin, capacity.si / load.si, rounding);
    }
    expect(judged.verdict).toBe("stands");
    expect(pressRig(rig, lbf(60000)).verdict).toBe("does not stand");
  });
  it("keeps every load in step with the force", () => {
    const double = pressRig(rig, lbf(40000));
    for (const [i, { load }] of double.checks.entries())
      expectClose(load.si, 2 * judged.checks[i]!.load.si, rounding);
    expect(double.rating.si).toBe(judged.rating.si);
  });
  it("judges a range: stands, does not stand, or cannot tell with a chance", () => {
    const over = (from: number, to: number) =>
      pressRig(
        rig,
        spreadOf(
          Array.from({ length: 101 }, (_, i) => lbf(from + ((to - from) * i) / 100).si),
          lbf(0),
        ),
      );
    expect(over(10e3, 20e3)).toMatchObject({ verdict: "stands", chance: 1 });
    expect(over(40e3, 80e3)).toMatchObject({ verdict: "does not stand", chance: 0 });
    const open = over(20e3, 40e3);
    expect(open.verdict).toBe("cannot tell yet");
    expectClose(open.chance, (open.rating.in("lbf") - 20e3) / 20e3, {
      abs: 1e-9,
      because: "evenly spread forces",
    });
  });

  it("shifts the load to one side with a jack off the axis; rods in balance of forces and moments", () => {
    const off = pressRig({ ...rig, offCentre: inch(0.5) }, lbf(20000));
    const heavy = check("tie rods", off).load.si / lbf(1).si;
    const light = 20000 - heavy;
    // Moments about the axis: (heavy − light)·5 in = 20 000·0.5.
    expectClose((heavy - light) * 5, 20000 * 0.5, { rel: 1e-9, because: "rounding" });
    // Shaft end: the far edge goes from F/A to F/A − M c/I; their mean stays F/A.
    const [a, i] = [(Math.PI / 4) * 1.5 ** 2, (Math.PI / 64) * 1.5 ** 4];
    expectClose(check("shaft end", off).load.si / psi(1).si, 20000 / a + (20000 * 0.5 * 0.75) / i, rounding);
    // Hub face, a ring: F/A + M c/I with I = π (D⁴ − w⁴)/64.
    const [ringA, ringI] = [(Math.PI / 4) * (5.5 ** 2 - 2.5 ** 2), (Math.PI / 64) * (5.5 ** 4 - 2.5 ** 4)];
    expectClose(
      check("hub face", off).load.si / psi(1).si,
      20000 / ringA + (20000 * 0.5 * 2.75) / ringI,
      rounding,
    );
    expect(off.warnings).toEqual([]);
    expect(judged.warnings.join()).toMatch(/Say how far it may be off/);
  });
  it("stores the energy it takes to bend and stretch it: the area under force and way", () => {
    const { beam, rods, energy } = judged.spring;
    let area = 0;
    const steps = 100;
    for (let k = 0; k < steps; k++) {
      const share = (k + 0.5) / steps;
      area += share * judged.rating.si * ((beam.si + rods.si) / steps);
    }
    expectClose(energy.si, area, { rel: 1e-9, because: "straight line under force and way" });
    expect(String(energy)).toMatch(/lbf·ft$/);
  });
  it("says whether the ram reaches", () => {
    expect(judged.ram.verdict).toBe("reaches");
    const out = pressRig({ ...rig, jack: { ...rig.jack, extended: inch(5.9) } }, lbf(20000));
    expect(out.ram.verdict).toBe("does not reach");
    expectClose(out.ram.left.in("inch"), 0.1, { rel: 1e-9, because: "a difference" });
  });
  it("takes rolled sections by their table: two of the bar above are twice its modulus", () => {
    const table = {
      sectionModulus: quantity((2 * 2 * 16) / 6, "inch3"),
      secondMoment: quantity((2 * 4 ** 3) / 6, "inch4"),
    };
    const rolled = pressRig({ ...rig, beam: { section: table, material: steel } }, lbf(20000));
    const bars = pressRig(
      { ...rig, beam: { section: { width: inch(2), height: inch(4), bars: 2 }, material: steel } },
      lbf(20000),
    );
    expectClose(check("cross-beam", rolled).load.si, check("cross-beam", bars).load.si, rounding);
    expectClose(rolled.spring.beam.si, bars.spring.beam.si, rounding);
  });
  it("speaks metric where the rig is metric", () => {
    const metric = pressRig(
      {
        ...rig,
        rods: { thread: "M24 × 3", proof: megapascal(225), span: mm(260), length: mm(500) },
      },
      newton(60000),
    );
    expect(String(metric.rating)).toMatch(/ kN$/);
    expect(String(check("cross-beam", metric).load)).toMatch(/ MPa$/);
  });

  it.each([
    [
      "a jack of pounds taken for tons",
      { jack: { ...rig.jack, capacity: longTonForce(40000) } },
      /^pressRig: jack\.capacity is more than any jack/,
    ],
    [
      "a ram out further than it goes",
      { jack: { ...rig.jack, extended: inch(7) } },
      /^pressRig: jack\.extended must be smaller than jack\.stroke \(6 in\), got 7 in$/,
    ],
    [
      "rods that do not clear the hub",
      { rods: { ...rig.rods, span: inch(6) } },
      /^pressRig: hub\.face plus a rod must be smaller than rods\.span \(6 in\), got 6\.5 in$/,
    ],
    [
      "three rods",
      { rods: { ...rig.rods, count: 3 } },
      /^pressRig: rods\.count must be an even number from 2/,
    ],
    ["a thread nobody cuts", { rods: { ...rig.rods, thread: "1-9 UNC" } }, /no thread "1-9 UNC"/],
    [
      "a slot wider than the plate",
      { plate: { ...rig.plate, slot: inch(8) } },
      /^pressRig: plate\.slot must be smaller than plate\.width/,
    ],
    [
      "a beam of iron",
      { beam: { ...rig.beam, material: iron } },
      /^pressRig: beam\.material must be a metal that yields before it breaks, got grey iron class 20$/,
    ],
    [
      "a beam without height",
      { beam: { section: { width: inch(2), height: inch(0) }, material: steel } },
      /^pressRig: beam\.section\.height must be more than 0/,
    ],
    [
      "half a bar",
      { beam: { section: { width: inch(2), height: inch(4), bars: 0.5 }, material: steel } },
      /bars must be a whole number from 1, got 0\.5/,
    ],
    [
      "a jack beside the rods",
      { offCentre: inch(5) },
      /^pressRig: offCentre must be smaller than half of rods\.span/,
    ],
  ])("stops at %s", (_, change, message) => {
    expect(() => pressRig({ ...rig, ...change } as Rig, lbf(20000))).toThrow(message);
  });
  it("stops at a force of nothing, an absurd force, and a share above 1", () => {
    expect(() => pressRig(rig, lbf(0))).toThrow(/force needed must be more than 0/);
    expect(() => pressRig(rig, lbf(2e7))).toThrow(/is its unit right\? got 20000000 lbf/);
    expect(() => pressRig(rig, lbf(1), { rods: 1.5 })).toThrow(
      /factors\.rods must be from 0\.01 to 1, got 1\.5/,
    );
  });
});

describe("releaseOf(fit, rig)", () => {
  const fitOf = (friction: number) =>
    hubFit(
      {
        diameter: inch(2.25),
        length: inch(4.5),
        taper: 1 / 16,
        interference: thou(1.5),
        friction,
        hub: {
          material: { ...iron, modulus: { ...iron.modulus, low: iron.modulus.high } },
          outside: inch(5.5),
        },
        shaft: { material: steel },
      },
      { cases: 1000 },
    );
  const releaseFor = (friction: number) => {
    const fit = fitOf(friction);
    return { fit, release: releaseOf(fit, pressRig(rig, fit.pressOff)) };
  };
  it("needs no heat where the rig is enough", () => {
    const { release } = releaseFor(0.12);
    expect(release).toMatchObject({ cold: "yes", chanceCold: 1 });
    expect(release.warmer.high.si).toBe(0);
    expect(Object.values(release.options[1]!.figures)).toEqual(["none needed", "none needed"]);
    expect(release.options[0]!.breaks).toEqual([]);
  });
  it("where it is not: warmed by what it says, the hub needs the rating and no more", () => {
    const { fit, release } = releaseFor(0.4);
    expect(release.cold).toBe("no");
    const left = fit.interference.high.si - 11.4e-6 * inch(2.25).si * release.warmer.high.si;
    expectClose(left, release.interferenceLeft.si, { rel: 1e-9, because: "rounding" });
    const force: Force = fit.pressOff.high.times(left / fit.interference.high.si);
    expectClose(force.si, release.rating.si, { rel: 1e-9, because: "rounding" });
    expect(release.options[0]!.breaks.join()).toMatch(
      /^bearing plate allows 31000 lbf, the hub may need more$/,
    );
    expect(release.options[1]!.breaks).toEqual([]);
  });
  it("refuses a rig judged for another hub", () => {
    expect(() => releaseOf(fitOf(0.4), pressRig(rig, lbf(100)))).toThrow(
      /^releaseOf: the rig must be judged for this hub's force/,
    );
  });
});
