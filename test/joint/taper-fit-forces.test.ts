import { describe, expect, it } from "vitest";
import { taperFitForces } from "../../kernel-helpers/joint/index.js";
import { inch, megapascal, mm, psi } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

const seat = { pressure: megapascal(20), diameter: mm(55), length: mm(70), friction: 0.15 };
const rounding = { rel: 1e-12, because: "rounding only" };

describe("taperFitForces(seat)", () => {
  // Source: Shigley & Nisbett, 9th edition, equations 7-48 and 7-49: F = π f p d L, T = π f p d² L/2.
  it("gives the printed formulas for a straight fit", () => {
    const { on, off, torque, selfHolding } = taperFitForces(seat);
    expectClose(on.si, Math.PI * 0.15 * 20e6 * 0.055 * 0.07, rounding);
    expectClose(off.si, on.si, rounding);
    expectClose(torque.si, (Math.PI * 0.15 * 20e6 * 0.055 ** 2 * 0.07) / 2, rounding);
    expect(selfHolding).toBe(true);
  });
  // Source: self-holding while tan α < µ, by statics; no published table found, the tangents by hand: 1:12 holds at µ 0.1 (tan α 0.0417); 7:24 does not at 0.12 (0.1458).
  it("says that 1:12 holds itself at a friction of 0.1 and 7:24 does not at 0.12", () => {
    expect(taperFitForces({ ...seat, taper: 1 / 12, friction: 0.1 })).toMatchObject({ selfHolding: true });
    const steep = taperFitForces({ ...seat, taper: 7 / 24, friction: 0.12 });
    expect(steep.selfHolding).toBe(false);
    expectClose(steep.holdsAbove, 0.1458, { abs: 5e-5, because: "four printed digits" });
    expect(steep.off.si).toBeLessThan(0);
  });
  it("comes to the straight fit as the taper goes to 0", () => {
    const straight = taperFitForces(seat);
    const almost = taperFitForces({ ...seat, taper: 1e-9 });
    for (const name of ["on", "off", "torque"] as const)
      expectClose(almost[name].si, straight[name].si, { rel: 1e-8, because: "the taper itself is 1e-9" });
  });
  it("agrees with the sum over many thin slices of the cone, each with its own radius", () => {
    const taper = 0.1;
    const slices = 20_000;
    const half = Math.atan(taper / 2);
    let [on, off, torque] = [0, 0, 0];
    for (let i = 0; i < slices; i++) {
      const x = ((i + 0.5) / slices - 0.5) * 0.07;
      const d = 0.055 + taper * x;
      const normal = (20e6 * Math.PI * d * 0.07) / slices / Math.cos(half);
      on += normal * (0.15 * Math.cos(half) + Math.sin(half));
      off += normal * (0.15 * Math.cos(half) - Math.sin(half));
      torque += (normal * 0.15 * d) / 2;
    }
    const fit = taperFitForces({ ...seat, taper });
    const sums = { rel: 1e-8, because: "midpoint rule over 20 000 slices" };
    expectClose(fit.on.si, on, sums);
    expectClose(fit.off.si, off, sums);
    expectClose(fit.torque.si, torque, sums);
  });
  it("gives an inch and a millimetre reader the same forces", () => {
    const metric = taperFitForces({ ...seat, taper: 1 / 12 });
    const inches = taperFitForces({
      ...seat,
      pressure: psi(20e6 / 6894.757293168),
      diameter: inch(55 / 25.4),
      length: inch(70 / 25.4),
      taper: 1 / 12,
    });
    for (const name of ["on", "off", "torque"] as const)
      expectClose(inches[name].si, metric[name].si, { rel: 1e-11, because: "a psi to 13 digits" });
  });
  it("needs no force on a shaft without pressure, and shows inches where they are given", () => {
    const none = taperFitForces({ pressure: psi(0), diameter: inch(2), length: inch(3), friction: 0.2 });
    expect([none.on, none.off, none.torque].map(({ si }) => si)).toEqual([0, 0, 0]);
    expect(String(none.off)).toBe("0 lbf");
  });
  it.each([
    ["a taper in inches per foot", { taper: 1.5 }, /^taperFitForces: taper must be from 0 to 1, got 1\.5$/],
    ["a friction above 1", { friction: 3 }, /^taperFitForces: friction must be from 0 to 1, got 3$/],
    ["a length of nothing", { length: mm(0) }, /^taperFitForces: length must be more than 0, got 0 mm$/],
    ["a pull for a pressure", { pressure: megapascal(-1) }, /^taperFitForces: pressure must be 0 or more/],
    [
      "a cone that comes to a point",
      { taper: 0.9, length: mm(200) },
      /^taperFitForces: taper × length \/ 2 must be smaller than diameter/,
    ],
  ])("stops at %s", (_, change, message) => {
    expect(() => taperFitForces({ ...seat, ...change })).toThrow(message);
  });
});
