import { describe, expect, it } from "vitest";
import { hangOf, liftOf, slingPull, supportLoads, tippingOf } from "../../kernel-helpers/intake/index.js";
import {
  degree,
  inch,
  type Mass,
  type Measured,
  measured,
  pound,
} from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

const exact = { rel: 1e-12, because: "identity; rounding only" };
const gear = { hitch: "vertical", slingTag: pound(800), hookTag: pound(2000) } as const;
const of = (value: number, u: number): Measured<Mass> => measured(pound(value), pound(u));

describe("slingPull", () => {
  // Load factors by angle from horizontal as riggers' tables after ASME B30.9 print them (read in public reprints).
  it.each([
    [90, 1],
    [60, 1.155],
    [50, 1.305],
    [30, 2],
  ])("at %d° is the tabulated %d times the leg's share", (angle, factor) => {
    expectClose(slingPull(pound(1000), degree(angle), 2).in("pound"), 500 * factor, {
      rel: 0.0005,
      because: "the tables give three decimals",
    });
  });
  it("refuses an angle of 0 and half a leg", () => {
    expect(() => slingPull(pound(1), degree(0), 2)).toThrow(/angle from horizontal/);
    expect(() => slingPull(pound(1), degree(60), 1.5)).toThrow(/whole number/);
  });
});

describe("liftOf", () => {
  it("balances: level pulls cancel, and upright pulls carry the load, for points at any distance", () => {
    const points = { left: inch(7), right: inch(19), hookAbove: inch(24) };
    const { legs } = liftOf({ what: "w", mass: of(400, 4), points, ...gear });
    const [a, b] = legs.map(({ pull, angle }) => [pull.value.si, angle.si] as const);
    expectClose(a![0] * Math.cos(a![1]), b![0] * Math.cos(b![1]), exact);
    expectClose(a![0] * Math.sin(a![1]) + b![0] * Math.sin(b![1]), pound(400).si, exact);
  });
  it("with points alike gives the pull of two equal legs", () => {
    const points = { left: inch(10), right: inch(10), hookAbove: inch(10) };
    const pull = liftOf({ what: "w", mass: of(400, 4), points, ...gear }).legs[0]!.pull.value.si;
    expectClose(pull, slingPull(pound(400), degree(45), 2).si, exact);
  });
  it("judges by the tag, and cannot tell where the tag lies within the uncertainty", () => {
    const verdict = (mass: number): string => liftOf({ what: "w", mass: of(mass, 20), ...gear }).slingVerdict;
    expect([700, 790, 810, 900].map(verdict)).toEqual([
      "holds",
      "cannot tell yet",
      "cannot tell yet",
      "does not hold",
    ]);
    expect(liftOf({ what: "w", mass: of(700, 20), ...gear, hookTag: pound(500) }).hookVerdict).toBe(
      "does not hold",
    );
  });
  it("does not hold with legs flatter than 30°, whatever the tag", () => {
    const points = { left: inch(20), right: inch(20), hookAbove: inch(10) };
    const lift = liftOf({ what: "w", mass: of(10, 1), points, ...gear });
    expect(lift.slingVerdict).toBe("does not hold");
    expect(lift.breaks[0]).toMatch(/27°, less than 30°/);
  });
  it("refuses a tag without capacity and an unknown hitch", () => {
    expect(() => liftOf({ what: "w", mass: of(10, 1), ...gear, slingTag: pound(0) })).toThrow(/slingTag/);
    expect(() => liftOf({ what: "w", mass: of(10, 1), ...gear, hitch: "bow" as never })).toThrow(
      /hitch must be/,
    );
  });
});

describe("hangOf and tippingOf", () => {
  it("under the point nothing leans; beside it a right angle; below it the body turns over", () => {
    expect(hangOf(inch(0), inch(3)).lean.si).toBe(0);
    expectClose(hangOf(inch(2), inch(0)).lean.si, Math.PI / 2, exact);
    expect(hangOf(inch(1), inch(-3)).turnsOver).toBe(true);
    expect(() => hangOf(inch(0), inch(0))).toThrow(/apart from the centre of mass/);
  });
  it("the push that tips does the work of lifting the centre: dW/dφ at the start", () => {
    const [mass, edge, height, z] = [180, 3, 15, 30];
    const tip = tippingOf({ mass: pound(mass), edge: inch(edge), height: inch(height), pushedAt: inch(z) });
    const rise = (phi: number): number => edge * Math.sin(phi) + height * Math.cos(phi) - height;
    const phi = 1e-6;
    expectClose(tip.push.in("lbf") * z * phi, mass * rise(phi), {
      rel: 1e-5,
      because: "a turn of a millionth of a radian",
    });
    expectClose(rise(tip.lean.si + 1e-4), rise(tip.lean.si - 1e-4), {
      rel: 1e-6,
      because: "the centre is highest when it falls over",
    });
  });
});

describe("tippingOf of a mass that is not known exactly", () => {
  it("counts with the least it may weigh, 95 % one-sided, and leans by its sizes alone", () => {
    const stood = { edge: inch(3), height: inch(15), pushedAt: inch(30) };
    const [sure, unsure] = [of(180, 0), of(180, 10)].map((mass) => tippingOf({ mass, ...stood }));
    expectClose(unsure!.push.si / sure!.push.si, (180 - 1.6449 * 10) / 180, {
      rel: 1e-5,
      because: "1.645 to five digits",
    });
    expect(unsure!.lean.si).toBe(sure!.lean.si);
    expect(() => tippingOf({ mass: of(10, 20), ...stood })).toThrow(/mass must be above 0/);
  });
});

describe("supportLoads", () => {
  it("sum to the mass and take moments about the centre alike", () => {
    const body = { mass: of(90, 2), centre: measured(inch(31), inch(0.5)) };
    const { supports, state } = supportLoads("shaft", body, [inch(60), inch(5)]);
    const [a, b] = supports.map(({ load }) => load.value.in("pound")) as [number, number];
    expectClose(a + b, 90, exact);
    expectClose(a * (31 - 5), b * (60 - 31), exact);
    expect(state).toBe("rests");
  });
  it("tell a shaft that tips over a support, and one too close to tell", () => {
    const at = (centre: number): string =>
      supportLoads("s", { mass: of(90, 2), centre: measured(inch(centre), inch(0.5)) }, [inch(0), inch(40)])
        .state;
    expect([20, 39.8, 45].map(at)).toEqual(["rests", "cannot tell yet", "tips"]);
  });
  it("refuse two supports at one place", () => {
    const body = { mass: of(90, 2), centre: measured(inch(1), inch(0)) };
    expect(() => supportLoads("s", body, [inch(3), inch(3)])).toThrow(/different stations/);
  });
});
