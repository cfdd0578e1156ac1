import { describe, expect, it } from "vitest";
import { beltFriction } from "../../../kernel-helpers/handbook/index.js";
import {
  degree,
  foot,
  hp,
  inch,
  kilogram,
  lbf,
  measured,
  metre,
  mm,
  pound,
  quantityFromSi,
  radian,
  rpm,
} from "../../../kernel-helpers/quantity/index.js";
import { beltPulls, beltWrap } from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";

const rounding = { rel: 1e-12, because: "a few roundings" };
const printed = { rel: 2e-3, because: "printed to three digits" };
/** Shigley problem 17-1: polyamide F-1, 6 in wide, .05 in thick, .035 lbf/in³: .126 lbf/ft. */
const beltMass = pound(0.126).over(foot(1));

describe("beltWrap({ pulley, other, centres, drive })", () => {
  it("agrees with Shigley: 6 and 18 in at 96 in, open: 3.016511 and 3.266674 rad, 230.074 in", () => {
    // Solutions to Mechanical Engineering Design, 8th edition, problem 17-3.
    const found = beltWrap({ pulley: inch(6), other: inch(18), centres: inch(96), drive: "open" });
    const six = { rel: 1e-6, because: "printed to seven digits" };
    expectClose(found.wrap.value.in("radian"), 3.016511, six);
    expectClose(found.otherWrap.value.in("radian"), 3.266674, six);
    expectClose(found.length.value.in("inch"), 230.074, { rel: 3e-6, because: "printed to six digits" });
  });
  it("lies half round equal pulleys, and the same on both of a crossed drive", () => {
    const equal = beltWrap({ pulley: mm(300), other: mm(300), centres: mm(900), drive: "open" });
    expectClose(equal.wrap.value.si, Math.PI, rounding);
    expectClose(equal.length.value.in("mm"), 1800 + Math.PI * 300, rounding);
    const crossed = beltWrap({ pulley: mm(300), other: mm(500), centres: mm(800), drive: "crossed" });
    expectClose(crossed.wrap.value.in("degree"), 240, rounding);
    expect(crossed.otherWrap.value.si).toBe(crossed.wrap.value.si);
  });
  it("carries the doubt of the centres: dφ/dC = (D − d)/(C² cos β)", () => {
    const centres = measured(inch(96), inch(0.5));
    const found = beltWrap({ pulley: inch(6), other: inch(18), centres, drive: "open" });
    const slope = 12 / 96 ** 2 / Math.sqrt(1 - (12 / 192) ** 2);
    expectClose(found.wrap.standardUncertainty.si, slope * 0.5, {
      rel: 1e-4,
      because: "half differences over half an inch in 96",
    });
  });
  it("refuses pulleys that touch and a drive of another name", () => {
    const pulleys = { pulley: inch(6), other: inch(18) };
    expect(() => beltWrap({ ...pulleys, centres: inch(12), drive: "open" })).toThrow(/the pulleys touch/);
    expect(() => beltWrap({ ...pulleys, centres: inch(96), drive: "half" as never })).toThrow(
      /"open" or "crossed"/,
    );
    expect(() => beltWrap({ ...pulleys, centres: 96 as never, drive: "open" })).toThrow(
      /centres must be a length/,
    );
  });
});

describe("beltPulls(options)", () => {
  it("agrees with Shigley problem 17-1: F_c .913, F_1 147, F_2 57 lbf at F_i 101.1 lbf", () => {
    // 2 hp · 1.25 at 1750 rpm on a 2 in pulley: T = 90 lbf·in (63 025 rounded), θ = 3.123 rad.
    const found = beltPulls({
      power: hp(2.5),
      speed: rpm(1750),
      diameter: inch(2),
      wrap: radian(3.123),
      friction: { low: 0.5, high: 0.5 },
      beltMass,
      initialTension: lbf(101.1),
    });
    expectClose(found.centrifugal.value.in("lbf"), 0.913, printed);
    expectClose(found.tight.value.in("lbf"), 147, printed);
    expectClose(found.slack.value.in("lbf"), 57, printed);
    expectClose(found.torque.value.in("lbfInch"), 90, printed);
    expect(found.state).toBe("carries");
  });
  it("agrees with Shigley on the tension just at the point of slip: F_i 68.9, F_1 114.7, F_2 24.6 lbf at f .50", () => {
    // The same belt narrowed to 4.680 in: .0983 lbf/ft.
    const found = beltPulls({
      power: hp(2.5),
      speed: rpm(1750),
      diameter: inch(2),
      wrap: radian(3.123),
      friction: { low: 0.5, high: 0.5 },
      beltMass: pound(0.0983).over(foot(1)),
    });
    expectClose(found.centrifugal.value.in("lbf"), 0.712, printed);
    expectClose(found.initial.value.in("lbf"), 68.9, printed);
    expectClose(found.tight.value.in("lbf"), 114.7, printed);
    expectClose(found.slack.value.in("lbf"), 24.6, { rel: 4e-3, because: "printed to three digits" });
  });
  const belt = { power: hp(12), speed: rpm(110), diameter: inch(30) } as const;
  const wrap = beltWrap({ pulley: inch(30), other: inch(44), centres: foot(9), drive: "open" });
  const leather = beltFriction("leather, dry");

  it("stands at the point of slip by Eytelwein: the friction needed by the tension it finds is the friction given", () => {
    const friction = { low: 0.3, high: 0.3 };
    const found = beltPulls({ ...belt, wrap, friction, beltMass });
    const again = beltPulls({
      ...belt,
      wrap,
      friction: leather,
      beltMass,
      initialTension: found.initial.value,
    });
    expectClose(again.frictionNeeded!, 0.3, rounding);
    expectClose(again.pull.value.si, found.pull.value.si, rounding);
    expect(again.state).toBe("cannot tell yet");
  });
  it("gives the pull between the ends of the friction, and their half width over √3 as its doubt", () => {
    const found = beltPulls({ ...belt, wrap, friction: leather });
    expect(found.pullRange.low.si).toBeLessThan(found.pull.value.si);
    expect(found.pullRange.high.si).toBeGreaterThan(found.pull.value.si);
    const half = (found.pullRange.high.si - found.pullRange.low.si) / 2;
    expectClose(found.pull.standardUncertainty.si, half / Math.sqrt(3), {
      rel: 0.1,
      because: "the pull bends within the range of the friction",
    });
  });
  it("presses the shaft with no part of the centrifugal tension", () => {
    const tension = { ...belt, wrap, friction: leather, initialTension: lbf(700) };
    const [light, heavy] = [
      beltPulls(tension),
      beltPulls({ ...tension, beltMass: kilogram(3).over(metre(1)) }),
    ];
    expect(heavy.tight.value.si).toBeGreaterThan(light.tight.value.si);
    expectClose(heavy.pull.value.si, light.pull.value.si, rounding);
  });
  it("balances forces and torque: the pull is that of the two straight parts by components", () => {
    // Both parts drawn in coordinates: pulley at the origin, the larger one to the right; turns clockwise, is driven.
    const found = beltPulls({
      ...belt,
      wrap,
      friction: leather,
      initialTension: lbf(900),
      towards: degree(0),
      turning: "clockwise",
      pulleyIs: "driven",
    });
    const beta = Math.asin((44 - 30) / 2 / 108);
    const [t, s] = [found.tight.value.si, found.slack.value.si];
    const parts = [t, s].map((force, i) => {
      const side = i === 0 ? 1 : -1;
      const normal = [-Math.sin(beta), Math.cos(beta) * side] as const;
      const along = [Math.cos(beta), Math.sin(beta) * side] as const;
      // Touching point on the rim times the pull: below 0 turns clockwise.
      const torque = 15 * 0.0254 * (normal[0] * along[1] - normal[1] * along[0]) * force;
      return { x: along[0] * force, y: along[1] * force, torque };
    });
    expectClose(-(parts[0]!.torque + parts[1]!.torque), found.torque.value.si, {
      rel: 1e-9,
      because: "roundings",
    });
    const [x, y] = [parts[0]!.x + parts[1]!.x, parts[0]!.y + parts[1]!.y];
    expectClose(found.pull.value.si, Math.hypot(x, y), rounding);
    expectClose(found.direction!.si, Math.atan2(y, x), rounding);
  });
  it("says when the belt slips whatever its friction, and refuses a slack side that pushes", () => {
    const slips = beltPulls({ ...belt, wrap, friction: leather, initialTension: lbf(240) });
    expect(slips.state).toBe("slips");
    expect(() => beltPulls({ ...belt, wrap, friction: leather, initialTension: lbf(200) })).toThrow(
      /initialTension must be more than half of the pull of the power/,
    );
    expect(() => beltPulls({ ...belt, wrap, friction: { low: 0, high: 0.3 } })).toThrow(
      /friction must be a range/,
    );
    expect(() => beltPulls({ ...belt, speed: rpm(0), wrap, friction: leather })).toThrow(
      /speed must be more than 0/,
    );
    expect(() => beltFriction("gut")).toThrow(/belt must be one of "leather, dry"/);
  });
  it("gives the same in inch and in mm", () => {
    const a = beltPulls({ ...belt, wrap, friction: leather });
    const power = quantityFromSi("power", hp(12).si, "watt");
    const b = beltPulls({
      power,
      speed: rpm(110),
      diameter: mm(762),
      wrap: beltWrap({ pulley: mm(762), other: mm(1117.6), centres: mm(2743.2), drive: "open" }),
      friction: leather,
    });
    expectClose(b.pull.value.si, a.pull.value.si, rounding);
    expect(b.pull.value.writtenIn).toBe("newton");
  });
});
