import { describe, expect, it } from "vitest";
import { nutFactorOf, standardThreads, threadNamed } from "../../kernel-helpers/handbook/index.js";
import {
  nutTorque,
  screwTorque,
  studYieldTorque,
  torqueRange,
  wrenchPull,
  wrenchTorque,
} from "../../kernel-helpers/joint/index.js";
import {
  degree,
  inch,
  lbf,
  lbfInch,
  mm,
  newton,
  newtonMetre,
  psi,
} from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

const unf = threadNamed("3/4-16 UNF");

describe("nutTorque(preload, diameter, factor)", () => {
  // Source: Shigley & Nisbett, 9th ed., example 8-3, p. 439: 3/4-16 UNF, 25 kip, K 0.2 gives 3750 lbf·in.
  it("returns the printed answer of the worked example", () => {
    expectClose(nutTorque(lbf(25000), inch(0.75), 0.2).in("lbfInch"), 3750, {
      rel: 1e-12,
      because: "exact product",
    });
  });
  it("is proportional to preload and diameter", () => {
    const one = nutTorque(lbf(1000), inch(1), 0.2).si;
    expectClose(nutTorque(lbf(3000), inch(2), 0.2).si, 6 * one, { rel: 1e-14, because: "rounding" });
  });
  it("rejects what has no torque", () => {
    expect(() => nutTorque(lbf(-1), inch(1), 0.2)).toThrow(
      /nutTorque: preload must be 0 or more, got .1 lbf/,
    );
    expect(() => nutTorque(lbf(1), inch(0), 0.2)).toThrow(/diameter must be more than 0, got 0 in/);
    expect(() => nutTorque(lbf(1), inch(1), 0)).toThrow(/nut factor must be more than 0, got 0/);
  });
});

describe("screwTorque(nut, way)", () => {
  // Source: Shigley & Nisbett, 9th ed., example 8-3 worked in the long form: f = f_c = 0.15, 3551 lbf·in, K 0.189.
  it("returns the long form of the worked example", () => {
    const { whole } = screwTorque({ thread: unf, preload: lbf(25000), friction: 0.15 }, "tighten");
    expectClose(whole.in("lbfInch"), 3551.1, {
      rel: 2e-4,
      because: "the book takes the mean of outside and root diameter for the pitch diameter",
    });
    expectClose(whole.in("lbfInch") / (25000 * 0.75), 0.189, { rel: 3e-3, because: "3 printed digits" });
  });
  it("without friction under the nut, tightening and loosening differ by the lead: F p/π", () => {
    for (const thread of [unf, threadNamed("1 1/2 in BSW"), threadNamed("M36x3")]) {
      const nut = { thread, preload: newton(1e4), friction: 1e-9 };
      const up = screwTorque(nut, "tighten").inStud.si;
      const down = screwTorque(nut, "loosen").inStud.si;
      const lead = (1e4 * thread.pitch.si) / (2 * Math.PI);
      expectClose(up, lead, { rel: 1e-6, because: "energy: F p in one turn, no friction" });
      expectClose(down, -lead, { rel: 1e-6, because: "an oiled thread without friction runs back" });
    }
  });
  it("holds by itself just where the friction equals the lead: f = tan λ cos α", () => {
    const lead = unf.pitch.si / (Math.PI * unf.pitchDiameter.si);
    const edge = lead * Math.cos(Math.PI / 6);
    const down = (f: number): number =>
      screwTorque({ thread: unf, preload: lbf(1000), friction: f }, "loosen").inStud.si;
    expect(Math.abs(down(edge))).toBeLessThan(1e-12);
    expect(down(edge * 1.01)).toBeGreaterThan(0);
    expect(down(edge * 0.99)).toBeLessThan(0);
  });
  it("takes less to loosen than to tighten, for every thread of the handbook", () => {
    for (const thread of standardThreads) {
      const nut = { thread, preload: newton(1000), friction: 0.15 };
      expect(screwTorque(nut, "loosen").whole < screwTorque(nut, "tighten").whole).toBe(true);
    }
  });
  it("sends the share under the nut past the stud", () => {
    const nut = { thread: unf, preload: lbf(1000), friction: 0.15, seatDiameter: inch(1), seatFriction: 0.2 };
    const { whole, inStud } = screwTorque(nut, "tighten");
    expectClose(whole.minus(inStud).in("lbfInch"), 1000 * 0.2 * 0.5, { rel: 1e-12, because: "F f d/2" });
  });
  it("rejects a friction or a seat that cannot be", () => {
    const nut = { thread: unf, preload: lbf(1000), friction: 0.15 };
    expect(() => screwTorque({ ...nut, friction: 0 }, "loosen")).toThrow(
      /friction must lie between 0 and 1, got 0/,
    );
    expect(() => screwTorque({ ...nut, seatFriction: 1.5 }, "loosen")).toThrow(/seat friction .* got 1\.5/);
    expect(() => screwTorque({ ...nut, seatDiameter: inch(0.5) }, "loosen")).toThrow(
      /wider than the stud's root/,
    );
    expect(() => screwTorque({ ...nut, preload: lbf(-1) }, "loosen")).toThrow(/preload must be 0 or more/);
  });
});

describe("torqueRange(preload, diameter, factor)", () => {
  it("spans from the least of both to the most of both", () => {
    const factor = nutFactorOf("zinc plated");
    const { low, high } = torqueRange({ low: lbf(1000), high: lbf(2000) }, inch(1), factor);
    expectClose(low.in("lbfInch"), 1000 * 0.14, { rel: 1e-12, because: "0.2 less 30 %" });
    expectClose(high.in("lbfInch"), 2000 * 0.26, { rel: 1e-12, because: "0.2 and 30 %" });
  });
});

describe("studYieldTorque(stud)", () => {
  it("without tension is π d³ S/(16 √3)", () => {
    // By hand: π/16 · 30000/1.7320508 = 3400.87 lbf·in for a root of 1 in.
    expectClose(studYieldTorque({ rootDiameter: inch(1), yield: psi(30000) }).in("lbfInch"), 3400.87, {
      rel: 1e-5,
      because: "6 digits by hand",
    });
  });
  it("with tension keeps the equivalent stress of distortion energy at yield", () => {
    const [d, S, F] = [0.03, 240e6, 1e5];
    const T = studYieldTorque({
      rootDiameter: mm(30),
      yield: psi(1).times(S / psi(1).si),
      tension: newton(F),
    }).si;
    const sigma = (4 * F) / (Math.PI * d ** 2);
    const tau = (16 * T) / (Math.PI * d ** 3);
    expectClose(Math.hypot(sigma, Math.sqrt(3) * tau), S, {
      rel: 1e-12,
      because: "its definition, turned round",
    });
  });
  it("grows with the cube of the root and falls as tension grows", () => {
    const at = (d: number, F: number): number =>
      studYieldTorque({ rootDiameter: inch(d), yield: psi(30000), tension: lbf(F) }).si;
    expectClose(at(2, 0) / at(1, 0), 8, { rel: 1e-12, because: "2³" });
    expect(at(1, 10000)).toBeLessThan(at(1, 5000));
  });
  it("rejects a tension that alone makes it yield, and what is no stud", () => {
    const stud = { rootDiameter: inch(1), yield: psi(30000) };
    expect(() => studYieldTorque({ ...stud, tension: lbf(23600) })).toThrow(
      /must leave the root below its yield strength of 30000 psi, got 23600 lbf/,
    );
    expect(() => studYieldTorque({ ...stud, tension: lbf(-1) })).toThrow(/tension must be 0 or more/);
    expect(() => studYieldTorque({ ...stud, rootDiameter: inch(0) })).toThrow(
      /root diameter must be more than 0/,
    );
    expect(() => studYieldTorque({ ...stud, yield: psi(0) })).toThrow(/yield strength must be more than 0/);
  });
});

describe("wrenchPull(torque, length, angle)", () => {
  // Source: statics; 50 lbf at 30 in square to the arm is 1500 lbf·in, 125 lbf·ft.
  it("returns the lever's pull and gives the torque back", () => {
    expectClose(wrenchPull(lbfInch(1500), inch(30)).in("lbf"), 50, { rel: 1e-12, because: "exact" });
    expectClose(wrenchTorque(lbf(50), inch(30)).in("lbfFoot"), 125, { rel: 1e-12, because: "exact" });
    const pull = wrenchPull(newtonMetre(200), mm(600), degree(60));
    expectClose(wrenchTorque(pull, mm(600), degree(60)).in("newtonMetre"), 200, {
      rel: 1e-12,
      because: "inverse",
    });
  });
  it("takes twice the pull at 30 degrees, and the same at 150", () => {
    const at = (angle: number): number => wrenchPull(lbfInch(100), inch(10), degree(angle)).si;
    expectClose(at(30), 2 * at(90), { rel: 1e-12, because: "sin 30° = 1/2" });
    expectClose(at(150), at(30), { rel: 1e-12, because: "sine is symmetric" });
  });
  it("rejects a wrench without length, one of a unit slip, and a pull along it", () => {
    expect(() => wrenchPull(lbfInch(1), inch(0))).toThrow(/wrenchPull: length must be more than 0, got 0 in/);
    expect(() => wrenchTorque(lbf(1), inch(600))).toThrow(/not above 5 m \(200 in\), got 600 in/);
    expect(() => wrenchPull(lbfInch(1), inch(10), degree(180))).toThrow(/angle must lie between 0° and 180°/);
    expect(() => wrenchPull(lbfInch(1), inch(10), degree(0))).toThrow(/got 0°/);
    expect(() => wrenchPull(lbfInch(-1), inch(10))).toThrow(/torque must be 0 or more/);
    expect(() => wrenchTorque(lbf(-1), inch(10))).toThrow(/pull must be 0 or more/);
  });
});
