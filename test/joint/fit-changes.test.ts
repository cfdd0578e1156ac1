import { describe, expect, it } from "vitest";
import {
  interferenceByPractice,
  interferenceFromDrawUp,
  interferenceFromReadings,
  interferenceLostBySpinning,
  interferenceWarmed,
  temperatureToOpen,
} from "../../kernel-helpers/joint/index.js";
import {
  deltaC,
  deltaF,
  gigapascal,
  inch,
  kilogramPerCubicMetre,
  measured,
  mm,
  perC,
  perF,
  rpm,
  thou,
} from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

const rounding = { rel: 1e-12, because: "rounding only" };

describe("temperatureToOpen(fit)", () => {
  // Source: a published shrink heating case: 0.004 in interference + 0.004 in play on 4 in, 6.5e-6 per °F: 308 °F.
  const fit = { diameter: inch(4), interference: thou(4), play: thou(4), hubExpansion: perF(6.5e-6) };
  it("returns the printed 308 °F of the heating case", () => {
    expectClose(temperatureToOpen(fit).in("deltaF"), 308, { abs: 0.5, because: "printed whole degrees" });
  });
  it("is what interferenceWarmed needs to come to minus the play", () => {
    const left = interferenceWarmed({
      ...fit,
      shaftExpansion: perF(6.5e-6),
      hubWarmer: temperatureToOpen(fit),
      shaftWarmer: deltaF(0),
    });
    expectClose(left.in("thou"), -4, rounding);
  });
  it("stops at a negative interference or expansion", () => {
    expect(() => temperatureToOpen({ ...fit, interference: thou(-1) })).toThrow(
      /^temperatureToOpen: interference must be 0 or more/,
    );
    expect(() => temperatureToOpen({ ...fit, hubExpansion: perF(0) })).toThrow(
      /hubExpansion must be more than 0/,
    );
  });
});

describe("interferenceWarmed(fit)", () => {
  const cold = {
    diameter: mm(60),
    interference: mm(0.05),
    hubExpansion: perC(11.4e-6),
    shaftExpansion: perC(11.7e-6),
  };
  it("keeps its interference where both are of one metal and warm alike", () => {
    const alike = {
      ...cold,
      shaftExpansion: perC(11.4e-6),
      hubWarmer: deltaC(300),
      shaftWarmer: deltaC(300),
    };
    expectClose(interferenceWarmed(alike).in("mm"), 0.05, rounding);
  });
  it("gets TIGHTER where iron on steel is warmed through", () => {
    const through = { ...cold, hubWarmer: deltaC(200), shaftWarmer: deltaC(200) };
    expectClose(interferenceWarmed(through).in("mm"), 0.05 + 60 * 0.3e-6 * 200, rounding);
  });
});

describe("interferenceFrom…", () => {
  it("readings: shaft minus bore, uncertainties in squares; a clearance comes out below 0", () => {
    const shaft = measured(inch(2.4385), thou(0.3));
    const bore = measured(inch(2.437), thou(0.4), 9);
    const fit = interferenceFromReadings(shaft, bore);
    expectClose(fit.value.in("thou"), 1.5, { rel: 1e-9, because: "difference of two lengths near 2.4 in" });
    expectClose(fit.standardUncertainty.in("thou"), 0.5, rounding);
    expect(fit.degreesOfFreedom).toBe(9);
    expect(interferenceFromReadings(bore, shaft).value.si).toBeLessThan(0);
  });
  // Source: tables of practice: 1:12, 0.012 in on diameter for 0.144 in drive-up; 1:16, 0.010 for 0.160.
  it("draw-up: the printed pairs of drive-up and interference", () => {
    for (const [ratio, along, across] of [
      [12, 0.144, 0.012],
      [16, 0.16, 0.01],
    ] as const) {
      const { value } = interferenceFromDrawUp(measured(inch(along), inch(0)), measured(1 / ratio, 0));
      expectClose(value.in("inch"), across, rounding);
    }
  });
  it("draw-up: both uncertainties count", () => {
    const fit = interferenceFromDrawUp(measured(inch(0.1), inch(0.01)), measured(0.1, 0.02));
    expectClose(fit.standardUncertainty.in("inch"), Math.hypot(0.001, 0.002), rounding);
  });
  it("practice: 0.0005 to 0.001 in an inch", () => {
    const { low, high } = interferenceByPractice(inch(2.25));
    expectClose(low.in("thou"), 1.125, rounding);
    expectClose(high.in("thou"), 2.25, rounding);
  });
  it("stop at impossible readings", () => {
    const none = measured(inch(0), inch(0));
    expect(() => interferenceFromReadings(none, none)).toThrow(
      /^interferenceFromReadings: shaft must be more than 0/,
    );
    expect(() => interferenceFromDrawUp(measured(inch(-1), inch(0)), measured(0.1, 0))).toThrow(
      /drawUp must be 0 or more/,
    );
    expect(() => interferenceFromDrawUp(measured(inch(1), inch(0)), measured(1.25, 0))).toThrow(
      /taper must be from 0 to 1, got 1\.25/,
    );
    expect(() => interferenceByPractice(inch(-2))).toThrow(/diameter must be more than 0/);
  });
});

describe("interferenceLostBySpinning(fit)", () => {
  const steel = { density: kilogramPerCubicMetre(7850), modulus: gigapascal(207), poisson: 0.3 };
  const fit = { diameter: mm(50), hub: { outside: mm(200), ...steel }, shaft: steel, speed: rpm(3000) };
  const lost = interferenceLostBySpinning(fit).si;
  it("grows with the square of the speed, either way round", () => {
    expectClose(interferenceLostBySpinning({ ...fit, speed: rpm(-6000) }).si, 4 * lost, rounding);
  });
  it("comes to ρ ω² d³/(4 E) for a thin ring on a rigid shaft", () => {
    const ring = interferenceLostBySpinning({
      ...fit,
      hub: { outside: mm(50.001), ...steel },
      shaft: { ...steel, modulus: gigapascal(1e9) },
    });
    const omega = (3000 * 2 * Math.PI) / 60;
    expectClose(ring.si, (7850 * omega ** 2 * 0.05 ** 3) / (4 * 207e9), {
      rel: 1e-4,
      because: "the ring is two parts in a hundred thousand thick",
    });
  });
  it("is nothing where the hub is no more than the shaft's own metal: a disc cut at a circle", () => {
    // A ring and the core inside it, spinning as one disc, press on each other at the cut; let apart they lose together.
    const omega = fit.speed.si;
    const solid = (r: number, b: number): number =>
      ((7850 * omega ** 2 * r) / (8 * 207e9)) * ((3 + 0.3) * (1 - 0.3) * b ** 2 - (1 - 0.3 ** 2) * r ** 2);
    const radialAtCut = (3.3 / 8) * 7850 * omega ** 2 * (0.1 ** 2 - 0.025 ** 2);
    // Growth of the whole disc at the cut = growth of the core + what a pull of that radial stress adds to it.
    const core = ((7850 * omega ** 2 * 0.025) / (4 * 207e9)) * (1 - 0.3) * 0.025 ** 2;
    const pulled = (radialAtCut * 0.025 * (1 - 0.3)) / 207e9;
    expectClose(core + pulled, solid(0.025, 0.1), { rel: 1e-12, because: "identity of the disc formulas" });
    // And of the ring: its own growth less what the same stress, acting inward, takes away.
    const wall = (0.1 ** 2 + 0.025 ** 2) / (0.1 ** 2 - 0.025 ** 2) + 0.3;
    const ring = lost / 2 + core - (radialAtCut * 0.025 * wall) / 207e9;
    expectClose(ring, solid(0.025, 0.1), { rel: 1e-12, because: "the two meet at the cut" });
  });
  it("stops at impossible sizes", () => {
    expect(() => interferenceLostBySpinning({ ...fit, diameter: mm(300) })).toThrow(
      /diameter must be smaller than hub\.outside/,
    );
    expect(() => interferenceLostBySpinning({ ...fit, shaft: { ...steel, bore: mm(50) } })).toThrow(
      /shaft\.bore must be smaller/,
    );
    expect(() => interferenceLostBySpinning({ ...fit, shaft: { ...steel, poisson: 1 } })).toThrow(
      /shaft\.poisson must be from 0 to 0\.5/,
    );
  });
});
