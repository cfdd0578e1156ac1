import { describe, expect, it } from "vitest";
import { babbitt, material, standardKey } from "../../../kernel-helpers/handbook/index.js";
import {
  inch,
  ksi,
  lbf,
  lbfInch,
  measured,
  mm,
  newton,
  newtonMetre,
} from "../../../kernel-helpers/quantity/index.js";
import {
  assumedSteel,
  bearingPressure,
  type KeyCheck,
  type KeyInSeats,
  type KeyLoad,
  keyStrength,
  keyseatAfterCut,
  shaftSteel,
} from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";

const rounding = { rel: 1e-9, because: "rounding only" };
const coldDrawn = shaftSteel({ name: "1020 cold drawn", tensile: ksi(78), yield: ksi(65), basis: "example" });
const key: KeyInSeats = {
  form: "square",
  width: inch(0.375),
  height: inch(0.375),
  length: inch(1.16),
  steel: coldDrawn,
};
const load: KeyLoad = {
  torque: lbfInch(4202),
  diameter: inch(1.4375),
  shaftSteel: shaftSteel({ name: "1035", tensile: ksi(100), yield: ksi(75), basis: "example" }),
  hub: material("steel 4140"),
  demanded: 2.8,
};
const factor = (what: KeyCheck["what"], k: KeyInSeats, l: KeyLoad = load) =>
  keyStrength(k, l).checks.find((c) => c.what === what)!.factor.factor.value;

describe("keyStrength(key, load)", () => {
  // Source: Shigley & Nisbett, 9th edition, example 7-6, p. 393 (from memory): 1 7/16 in shaft, 40 hp at 600 rpm, 3/8 in
  // square key of S_y 65 kpsi, factor 2.80: force 5850 lbf, length 1.16 in for shear, 1.34 in for crushing.
  it("needs the printed lengths of a published example: 1.16 in for shear, 1.34 in for its side", () => {
    expectClose(keyStrength(key, load).force.value.in("lbf"), 5850, { rel: 2e-3, because: "three digits" });
    const printed = { rel: 5e-3, because: "lengths printed to three digits" };
    expectClose(factor("shear of the key", key), 2.8, printed);
    expectClose(factor("side of the key", { ...key, length: inch(1.34) }), 2.8, printed);
  });
  it("carries 2T/d on sides that take it in full: stress times area is the force", () => {
    const found = keyStrength(key, { ...load, seatDepth: inch(0.15) });
    const areas = {
      "shear of the key": 0.375,
      "side of the shaft's seat": 0.15,
      "side of the hub's keyway": 0.225,
    };
    for (const [what, height] of Object.entries(areas)) {
      const { stress } = found.checks.find((c) => c.what === what)!;
      expectClose(stress.in("psi") * height * 1.16, (2 * 4202) / 1.4375, rounding);
    }
    expectClose(found.hubDepth.in("inch"), 0.225, rounding);
  });
  it("names the weakest: a shallow seat its side, a soft hub its keyway", () => {
    expect(keyStrength(key, { ...load, seatDepth: inch(0.06) }).weakest).toBe("side of the key");
    expect(keyStrength(key, { ...load, shaftSteel: assumedSteel("mild steel of the period") }).weakest).toBe(
      "side of the shaft's seat",
    );
    const iron = keyStrength(key, { ...load, hub: material("grey iron class 20") });
    expect(iron.weakest).toBe("side of the hub's keyway");
    expect(iron.checks[2]!.basis).toMatch(/half the compressive strength of grey iron class 20/);
  });
  it("counts two keys as one and a half", () => {
    expectClose(
      factor("shear of the key", { ...key, count: 2 }) / factor("shear of the key", key),
      1.5,
      rounding,
    );
  });
  it("passes a relative uncertainty of the torque on", () => {
    const found = keyStrength(key, { ...load, torque: measured(lbfInch(4202), lbfInch(210.1)) });
    const { factor: n } = found.checks[0]!.factor;
    expectClose(n.standardUncertainty / n.value, 0.05, {
      rel: 2e-3,
      because: "half difference of a logarithm",
    });
    expect(found.verdict).toBe("does not hold");
    expect(
      keyStrength(
        { ...key, length: inch(1.36) },
        { ...load, torque: measured(lbfInch(4202), lbfInch(210.1)), demanded: 2.75 },
      ).verdict,
    ).toBe("cannot tell yet");
  });
  it("minds long keys, taper keys and gib heads", () => {
    expect(keyStrength({ ...key, length: inch(3) }, load).warnings.join()).toMatch(/1\.5 diameters/);
    const gib = keyStrength({ ...key, form: "gib-head taper" }, load).warnings.join();
    expect(gib).toMatch(/pulls the hub to one side.*catches sleeves/);
  });
  it("says what is missing or impossible", () => {
    const broken =
      (k: object, l: object = {}) =>
      () =>
        keyStrength({ ...key, ...k } as KeyInSeats, { ...load, ...l } as KeyLoad);
    expect(broken({ form: "round" })).toThrow(/form must be one of "square".*got "round"/);
    expect(broken({ height: inch(0.25) })).toThrow(/take form "rectangular"/);
    expect(broken({ length: undefined })).toThrow(/length of the key must be a length above 0/);
    expect(broken({ steel: undefined })).toThrow(/assumedSteel\("mild steel of the period"\)/);
    expect(broken({ count: 3 })).toThrow(/count must be 1 or 2/);
    expect(broken({}, { seatDepth: inch(0.375) })).toThrow(/nothing is left in the hub/);
    expect(broken({}, { seatDepth: inch(0) })).toThrow(/without a seat there is no key/);
    expect(broken({}, { torque: lbfInch(0) })).toThrow(/torque must be more than 0/);
    expect(broken({}, { hub: "iron" })).toThrow(/hub must be a metal of the handbook/);
    expect(broken({}, { diameter: inch(0.3) })).toThrow(/width must be smaller than the diameter/);
    expect(broken({}, { demanded: 0 })).toThrow(/demanded must be the least factor/);
    expect(broken({}, { shaftSteel: undefined })).toThrow(/shaftSteel must be a shaft steel/);
  });
});

describe("keyseatAfterCut(seat)", () => {
  // Source: ASME B17.1-1967, depth control values (from memory): 1 in shaft, 1/4 in square key, S 0.859; 2 in shaft, 1/2 in
  // square key, S 1.718; 3 in shaft, 3/4 in square key, S 2.577.
  it.each([
    [1, 0.25, 0.859],
    [2, 0.5, 1.718],
    [3, 0.75, 2.577],
  ])("reads the standard's S on an uncut %s in shaft", (d, w, s) => {
    const { seatDepth } = standardKey(inch(d), "ASME B17.1");
    const seat = keyseatAfterCut({ before: inch(d), after: inch(d), width: inch(w), depth: seatDepth });
    expectClose(seat.floorToFarSide.in("inch"), s, { abs: 6e-4, because: "printed to a thousandth" });
    expect(seat.share).toBe(1);
    expect(seat.deepen.si).toBe(0);
  });
  it("is right by construction: floor, side and far side of the turned circle", () => {
    const [before, after, w, h] = [62, 60, 18, 5];
    const seat = keyseatAfterCut({ before: mm(before), after: mm(after), width: mm(w), depth: mm(h) });
    const floor = seat.floorToFarSide.in("mm") - after / 2;
    // The old corner of the seat lies on the old circle, the new one on the new.
    const old = floor + seat.sideBefore.in("mm");
    const now = floor + seat.sideAfter.in("mm");
    expectClose(Math.hypot(old, w / 2), before / 2, rounding);
    expectClose(Math.hypot(now, w / 2), after / 2, rounding);
    expectClose(seat.sideBefore.in("mm"), h, rounding);
    expectClose(seat.deepen.in("mm"), h - seat.sideAfter.in("mm"), rounding);
    expectClose(
      seat.floorToFarSide.minus(seat.floorToFarSideDeepened).in("mm"),
      seat.deepen.in("mm"),
      rounding,
    );
    // A little more than half of the cut on diameter: the chord falls faster than the top.
    expect(seat.deepen.in("mm")).toBeGreaterThan(1);
    expect(seat.deepen.in("mm")).toBeLessThan(1.1);
  });
  it("takes a depth from the top of the round as ISO has it", () => {
    const side = keyseatAfterCut({
      before: mm(60),
      after: mm(59),
      width: mm(18),
      depth: mm(7),
      depthAt: "top",
    });
    expectClose(side.sideBefore.in("mm"), 7 - (60 - Math.sqrt(60 ** 2 - 18 ** 2)) / 2, rounding);
  });
  it("tells how proud the old key stands, and when it has too little left", () => {
    const seat = keyseatAfterCut({
      before: mm(60),
      after: mm(55),
      width: mm(18),
      depth: mm(4),
      keyHeight: mm(11),
    });
    expectClose(seat.keyProud!.in("mm"), 11 - seat.sideAfter.in("mm"), rounding);
    expect(seat.warnings.join()).toMatch(/Less than half/);
    const gone = keyseatAfterCut({ before: mm(60), after: mm(50), width: mm(18), depth: mm(4) });
    expect(gone).toMatchObject({ share: 0 });
    expect(gone.warnings.join()).toMatch(/whole seat away/);
  });
  it("refuses the impossible", () => {
    const of = (change: object) => () =>
      keyseatAfterCut({ before: mm(60), after: mm(59), width: mm(18), depth: mm(5), ...change });
    expect(of({ after: mm(61) })).toThrow(/cannot add metal/);
    expect(of({ width: mm(59) })).toThrow(/width must be smaller than the diameter after the cut \(59 mm\)/);
    expect(of({ depth: mm(40) })).toThrow(/must not reach the axis/);
    expect(of({ depth: mm(1), depthAt: "top" })).toThrow(/does not reach below the sides/);
    expect(of({ depthAt: "floor" })).toThrow(/"side" or "top", got "floor"/);
    expect(of({ width: undefined })).toThrow(/width must be a length above 0/);
  });
});

describe("bearingPressure(bearing)", () => {
  const bearing = {
    diameter: inch(2),
    length: inch(5),
    force: lbf(1000),
    metal: babbitt(2),
    service: "heavy line shafting",
  } as const;
  it("is load over projected area", () => {
    expectClose(bearingPressure(bearing).pressure.value.in("psi"), 100, rounding);
    // Source: Shigley & Nisbett, 9th edition, example 12-1 (from memory): 500 lbf on 1.5 × 1.5 in, P 222 psi.
    const printed = { ...bearing, force: lbf(500), diameter: inch(1.5), length: inch(1.5) };
    expectClose(bearingPressure(printed).pressure.value.in("psi"), 222, {
      rel: 2e-3,
      because: "three digits",
    });
  });
  it("rises as the journal is turned, in inverse proportion", () => {
    const cut = bearingPressure({ ...bearing, diameter: inch(1.9) });
    expectClose(cut.pressure.value.in("psi"), (100 * 2) / 1.9, rounding);
  });
  it("holds it against the service and a third of the metal's warm yield point", () => {
    const found = bearingPressure(bearing);
    expect(found.verdict).toBe("holds");
    expectClose(found.againstService.factor.value, 1.5, rounding);
    // Source: ASTM B23, alloy 2, yield point at 212 °F: 3000 psi.
    expectClose(found.allowed.in("psi"), 1000, rounding);
    expectClose(found.againstMetal.factor.value, 10, rounding);
    expect(bearingPressure({ ...bearing, service: "light line shafting" }).verdict).toBe("does not hold");
    expect(bearingPressure({ ...bearing, force: measured(lbf(1450), lbf(100)) }).verdict).toBe(
      "cannot tell yet",
    );
  });
  it("says the same in metric", () => {
    const found = bearingPressure({
      ...bearing,
      diameter: mm(50.8),
      length: mm(127),
      force: newton(4448.2216),
    });
    expectClose(found.pressure.value.in("psi"), 100, { rel: 1e-7, because: "newtons to eight digits" });
    expect(found.pressure.value.writtenIn).toBe("megapascal");
  });
  it("minds long bearings, and says what is missing", () => {
    expect(bearingPressure({ ...bearing, length: inch(9) }).warnings.join()).toMatch(/four diameters/);
    const broken = (change: object) => () => bearingPressure({ ...bearing, ...change });
    expect(broken({ force: lbf(0) })).toThrow(/force must be more than 0/);
    expect(broken({ force: newtonMetre(3) })).toThrow(/force must be a force with its unit/);
    expect(broken({ service: "mill" })).toThrow(/"light line shafting".*got "mill"/);
    expect(broken({ metal: babbitt(15) })).toThrow(/yield point of ASTM B23 alloy 15/);
    expect(broken({ metal: 2 })).toThrow(/metal must be a white metal/);
    expect(broken({ length: undefined })).toThrow(/length must be a length above 0/);
  });
});
