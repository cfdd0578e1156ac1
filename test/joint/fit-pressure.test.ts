import { describe, expect, it } from "vitest";
import { cylinderStress, type FitPair, fitPressure } from "../../kernel-helpers/joint/index.js";
import { gigapascal, inch, megapascal, mm, psi, thou } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

// Source: A. C. Ugural & S. K. Fenster, Advanced Strength and Applied Elasticity, example 8.3, page 243: radii 0.15,
// 0.20 and 0.25 m, RADIAL interference 0.1 mm, E 200 GPa both; p 12.3 MPa; hoop 56.0 and 43.7 in the outer, -56.2 and
// -43.9 in the inner cylinder.
const metal = { modulus: gigapascal(200), poisson: 0.3 };
const published: FitPair = {
  diameter: mm(400),
  interference: mm(0.2),
  hub: { outside: mm(500), ...metal },
  shaft: { bore: mm(300), ...metal },
};
const printed = { rel: 4e-3, because: "three printed digits" };
const rounding = { rel: 1e-12, because: "rounding only" };

describe("fitPressure(pair)", () => {
  const fit = fitPressure(published);
  it("returns the printed answer of the compound cylinder, with the printed RADIAL interference doubled", () => {
    expectClose(fit.pressure.in("megapascal"), 12.3, printed);
    expectClose(fit.hubHoopAtBore.in("megapascal"), 56.0, printed);
    expectClose(fit.hubHoopOutside.in("megapascal"), 43.7, printed);
    expectClose(fit.shaftHoopInside.in("megapascal"), -56.2, printed);
    expectClose(fit.shaftHoopAtSurface.in("megapascal"), -43.9, printed);
  });
  it("takes the interference on diameter: the radial figure of the book gives half the pressure", () => {
    const wrong = fitPressure({ ...published, interference: mm(0.1) });
    expectClose(wrong.pressure.in("megapascal"), 12.3 / 2, printed);
  });

  // Source: Shigley & Nisbett, 9th edition, equations 7-39 to 7-47: with one metal and a solid shaft
  // p = E δ (D² − d²)/(2 d D²), δ on diameter.
  it("reduces to the printed short form for one metal and a solid shaft, whatever Poisson's ratio", () => {
    for (const poisson of [0, 0.21, 0.3]) {
      const same = { modulus: psi(30e6), poisson };
      const { pressure } = fitPressure({
        diameter: inch(2),
        interference: thou(2),
        hub: { outside: inch(4), ...same },
        shaft: same,
      });
      expectClose(pressure.in("psi"), (30e6 * 0.002 * (4 ** 2 - 2 ** 2)) / (2 * 2 * 4 ** 2), rounding);
    }
  });

  it("agrees with a numerical solution of the radial equation for two metals", () => {
    const pair: FitPair = {
      diameter: mm(60),
      interference: mm(0.05),
      hub: { outside: mm(140), modulus: gigapascal(82), poisson: 0.26 },
      shaft: { bore: mm(20), modulus: gigapascal(207), poisson: 0.3 },
    };
    const numeric = shrinkByFiniteDifferences(pair, 800);
    const fine = fitPressure(pair);
    // Measured 3e-6 with 800 steps a wall; it falls with the square of the step.
    const steps = { rel: 1e-5, because: "finite differences, 800 steps through each wall" };
    expectClose(fine.pressure.si, numeric.pressure, steps);
    expectClose(fine.hubHoopAtBore.si, numeric.hubHoopAtBore, steps);
    expectClose(fine.shaftHoopInside.si, numeric.shaftHoopInside, steps);
  });

  it("tends to the hoop of a thin ring on a rigid shaft: σ = E δ/d", () => {
    const thin = fitPressure({
      diameter: mm(1000),
      interference: mm(0.5),
      hub: { outside: mm(1002), modulus: gigapascal(100), poisson: 0.26 },
      shaft: { modulus: gigapascal(1e6), poisson: 0.3 },
    });
    expectClose(thin.hubHoopAtBore.in("megapascal"), (100e3 * 0.5) / 1000, {
      rel: 4e-3,
      because: "the ring is 1 mm thick on 500: two parts in a thousand of its radius, and Poisson",
    });
  });
  it("holds the two walls in balance: the tension of the hub carries the pressure across the bore", () => {
    // p d = 2 ∫ hoop dr, by Simpson's rule over the wall.
    const load = {
      bore: mm(400),
      outside: mm(500),
      pressureInside: fit.pressure,
      pressureOutside: megapascal(0),
    };
    const steps = 100;
    let sum = 0;
    for (let i = 0; i <= steps; i++) {
      const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
      sum += weight * cylinderStress(load, mm(400 + (100 * i) / steps)).hoop.si;
    }
    const wall = 0.05;
    expectClose((2 * sum * wall) / (3 * steps), fit.pressure.si * 0.4, {
      rel: 1e-10,
      because: "Simpson's rule, measured 1e-11",
    });
  });
  it("is nothing without interference", () => {
    expect(fitPressure({ ...published, interference: mm(0) }).pressure.si).toBe(0);
  });

  it.each([
    [
      "a bore larger than the outside",
      { diameter: mm(600) },
      /^fitPressure: diameter must be smaller than hub\.outside \(500 mm\), got 600 mm$/,
    ],
    [
      "a shaft bored through",
      { shaft: { ...metal, bore: mm(400) } },
      /^fitPressure: shaft\.bore must be smaller/,
    ],
    [
      "a clearance",
      { interference: mm(-0.1) },
      /^fitPressure: interference must be 0 or more.*clearance.*got −0\.1 mm$/,
    ],
    [
      "thousandths taken for inches",
      { interference: inch(2) },
      /^fitPressure: interference must not be more than 1\/100.*is its unit right/,
    ],
    [
      "a Poisson's ratio that no metal has",
      { hub: { ...published.hub, poisson: 0.9 } },
      /^fitPressure: hub\.poisson must be from 0 to 0\.5, got 0\.9$/,
    ],
    [
      "a modulus of nothing",
      { hub: { ...published.hub, modulus: gigapascal(0) } },
      /^fitPressure: hub\.modulus must be more than 0/,
    ],
  ])("stops at %s", (_, change, message) => {
    expect(() => fitPressure({ ...published, ...change })).toThrow(message);
  });
});

describe("cylinderStress(cylinder, at)", () => {
  const inner = {
    bore: mm(300),
    outside: mm(400),
    pressureInside: megapascal(0),
    pressureOutside: megapascal(12.3),
  };
  it("returns the printed hoop stress of the inner cylinder", () => {
    expectClose(cylinderStress(inner, mm(300)).hoop.in("megapascal"), -56.2, printed);
    expectClose(cylinderStress(inner, mm(400)).hoop.in("megapascal"), -43.9, printed);
  });
  it("meets the pressures at both faces, and keeps hoop + radial the same all through", () => {
    const both = { ...inner, pressureInside: megapascal(5) };
    expectClose(cylinderStress(both, mm(300)).radial.in("megapascal"), -5, rounding);
    expectClose(cylinderStress(both, mm(400)).radial.in("megapascal"), -12.3, rounding);
    const sum = (at: number): number => {
      const { hoop, radial } = cylinderStress(both, mm(at));
      return hoop.plus(radial).si;
    };
    expectClose(sum(333), sum(300), rounding);
  });
  it("presses a solid shaft alike everywhere", () => {
    const solid = { ...inner, bore: mm(0) };
    for (const at of [0, 100, 400])
      for (const stress of Object.values(cylinderStress(solid, mm(at))))
        expectClose(stress.in("megapascal"), -12.3, rounding);
  });
  it("stops outside the wall, and at impossible sizes", () => {
    expect(() => cylinderStress(inner, mm(450))).toThrow(
      /^cylinderStress: at must lie in the wall, from 300 mm to 400 mm, got 450 mm$/,
    );
    expect(() => cylinderStress({ ...inner, bore: mm(500) }, mm(400))).toThrow(
      /bore must be smaller than outside/,
    );
    expect(() => cylinderStress({ ...inner, pressureInside: megapascal(-1) }, mm(400))).toThrow(
      /pressureInside must be 0 or more/,
    );
  });
});

/**
 * The same fit without Lamé: u'' + u'/r − u/r² = 0 in each wall by central differences, free faces inside and outside,
 * and at the interface equal pressure and a jump of δ/2 in u.
 */
function shrinkByFiniteDifferences(pair: FitPair, steps: number) {
  const wall = (
    from: number,
    to: number,
    { modulus, poisson }: { modulus: { si: number }; poisson: number },
  ) => {
    const h = (to - from) / steps;
    // Two solutions with the pressure 0 at the free face and, at the other, unit pressure: the wall answers in proportion.
    const solve = (pIn: number, pOut: number): { u: number[]; r: number[] } => {
      const r = Array.from({ length: steps + 1 }, (_, i) => from + i * h);
      const n = steps + 1;
      const [lower, main, upper, right] = [0, 1, 2, 3].map(() => new Array<number>(n).fill(0)) as number[][];
      const c = modulus.si / (1 - poisson ** 2);
      for (let i = 1; i < n - 1; i++) {
        lower![i] = 1 / h ** 2 - 1 / (2 * h * r[i]!);
        main![i] = -2 / h ** 2 - 1 / r[i]! ** 2;
        upper![i] = 1 / h ** 2 + 1 / (2 * h * r[i]!);
      }
      // Radial stress c (u' + ν u/r) = −p at the faces, with a ghost point beyond each put into the equation there.
      const face = (i: number, p: number, side: 1 | -1): void => {
        const a = 1 / h ** 2;
        const b = side / (2 * h * r[i]!);
        const ghost = a + b;
        // u_ghost = u_inner + side·2h·u', u' = −p/c − ν u/r
        main![i] = -2 / h ** 2 - 1 / r[i]! ** 2 - ghost * side * 2 * h * (poisson / r[i]!);
        right![i] = (ghost * side * 2 * h * p) / c;
        if (side === 1) lower![i] = a - b + ghost;
        else upper![i] = a - b + ghost;
      };
      face(0, pIn, -1);
      face(n - 1, pOut, 1);
      for (let i = 1; i < n; i++) {
        const w = lower![i]! / main![i - 1]!;
        main![i]! -= w * upper![i - 1]!;
        right![i]! -= w * right![i - 1]!;
      }
      const u = new Array<number>(n).fill(0);
      u[n - 1] = right![n - 1]! / main![n - 1]!;
      for (let i = n - 2; i >= 0; i--) u[i] = (right![i]! - upper![i]! * u[i + 1]!) / main![i]!;
      return { u, r };
    };
    return { solve, modulus: modulus.si, poisson };
  };
  const [bore, seat, outside] = [pair.shaft.bore!.si / 2, pair.diameter.si / 2, pair.hub.outside.si / 2];
  const hub = wall(seat, outside, pair.hub);
  const shaft = wall(bore, seat, pair.shaft);
  const opens = hub.solve(1, 0);
  const closes = shaft.solve(0, 1);
  const pressure = pair.interference.si / 2 / (opens.u[0]! - closes.u[steps]!);
  // At a face with radial stress −p: hoop = E u/r − ν p.
  const hubHoopAtBore = pressure * ((hub.modulus * opens.u[0]!) / opens.r[0]! - hub.poisson);
  const shaftHoopInside = (pressure * shaft.modulus * closes.u[0]!) / closes.r[0]!;
  return { pressure, hubHoopAtBore, shaftHoopInside };
}
