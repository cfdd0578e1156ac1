import { describe, expect, it } from "vitest";
import { fitFriction, material } from "../../kernel-helpers/handbook/index.js";
import {
  fitAtSpeed,
  fitByFormula,
  type HubOnShaft,
  hubFit,
  interferenceByPractice,
  pressRig,
  pressStores,
  taperFitForces,
} from "../../kernel-helpers/joint/index.js";
import {
  inch,
  inch3,
  ksi,
  lbf,
  mm,
  psi,
  rpm,
  shortTonForce,
  thou,
} from "../../kernel-helpers/quantity/index.js";
import { present } from "../../kernel-helpers/view/present.js";
import { renderText } from "../../kernel-helpers/view/render-text.js";
import { expectClose } from "../support/expect-close.js";

const rounding = { rel: 1e-9, because: "rounding only" };
const iron = material("grey iron class 20");
const steel = material("steel");
const place: HubOnShaft = {
  diameter: inch(2.25),
  length: inch(4.5),
  interference: interferenceByPractice(inch(2.25)),
  hub: { material: iron, outside: inch(5.5) },
  shaft: { material: steel },
  friction: fitFriction("dry"),
};
const fit = hubFit(place);
const textOf = (value: unknown): string => renderText(present(value as never)!).replace(/\s+/g, " ");

describe("fitAtSpeed(hub, fit, speed)", () => {
  it("loses as much as it has just at the speed that loosens, and four times as much at twice the speed", () => {
    const slow = fitAtSpeed(place, fit, rpm(110));
    const edge = fitAtSpeed(place, fit, slow.loosensAt!);
    expectClose(edge.share!, 1, rounding);
    expectClose(edge.lost.si, fit.interference.low.si, rounding);
    expectClose(fitAtSpeed(place, fit, rpm(220)).lost.si, 4 * slow.lost.si, rounding);
  });
  it("loses what a thin solid disc formula gives, by hand", () => {
    // δ = ρω²d/(16E)·((3+ν)D² + (1−ν)d²) of the hub, heaviest and softest, less ρω²d³(1−ν)/(16E) of a solid shaft.
    const w = (110 * 2 * Math.PI) / 60;
    const [d, outside] = [2.25 * 0.0254, 5.5 * 0.0254];
    const nu = Number(iron.poisson.high);
    const opens =
      ((iron.density.high.si * w * w * d) / (16 * iron.modulus.low.si)) *
      ((3 + nu) * outside ** 2 + (1 - nu) * d ** 2);
    const grows =
      ((steel.density.low.si * w * w * d) / (16 * steel.modulus.high.si)) *
      (1 - Number(steel.poisson.high)) *
      d ** 2;
    expectClose(fitAtSpeed(place, fit, rpm(110)).lost.si, opens - grows, rounding);
  });
  it("judges: a line shaft stays, a spindle weakens and loosens", () => {
    const { loosensAt } = fitAtSpeed(place, fit, rpm(110));
    const at = (part: number): string => fitAtSpeed(place, fit, loosensAt!.times(part)).verdict;
    expect([at(0.01), at(0.3), at(0.33), at(0.99), at(1.01)]).toEqual([
      "stays",
      "stays",
      "weakens",
      "weakens",
      "loosens",
    ]);
  });
  it("says so where there may be no interference, and refuses a speed of nothing", () => {
    const loose = { ...fit, interference: { ...fit.interference, low: thou(0) } };
    const judged = fitAtSpeed(place, loose, rpm(110));
    expect(judged).toMatchObject({ share: undefined, loosensAt: undefined, verdict: "loosens" });
    expect(textOf(judged)).toMatch(/NO: Running may loosen it.*no interference at all/);
    expect(() => fitAtSpeed(place, fit, rpm(0))).toThrow(/fitAtSpeed: speed must be .*more than 0/);
  });
  it("is told with what it takes and where all would be gone", () => {
    expect(textOf(fitAtSpeed(place, fit, rpm(110)))).toMatch(
      /The fit at 110 rpm.*YES: Running leaves it as tight.*takes less than 0\.1 %.*gone at \d+ rpm.*on diameter/,
    );
  });
});

describe("fitByFormula(hub, fit)", () => {
  it("gives the force that its own pressure gives, at the middle of the friction", () => {
    const check = fitByFormula(place, fit);
    const { low, high } = fitFriction("dry");
    const { off } = taperFitForces({
      pressure: check.pressure,
      diameter: place.diameter,
      length: place.length,
      taper: 0,
      friction: (low + high) / 2,
    });
    expectClose(check.pressOff.si, off.si, rounding);
    expectClose(check.apart, Math.abs(check.pressOff.si / fit.pressOff.middle.si - 1), rounding);
    expect(check.agrees).toBe(true);
  });
  it("gives a published case's pressure where every range is a point", () => {
    // Solid shaft, one material, p = (E·δ/2d)·(1 − (d/D)²): the closed form of textbooks (from memory).
    const same = { ...place.hub, material: steel };
    const point = { ...place, hub: same, interference: thou(2), friction: 0.15 };
    const { pressure } = fitByFormula(point, hubFit(point));
    const middle = (steel.modulus.low.si + steel.modulus.high.si) / 2;
    const closed = ((middle * thou(2).si) / (2 * inch(2.25).si)) * (1 - (2.25 / 5.5) ** 2);
    expectClose(pressure.si, closed, {
      rel: 0.01,
      because: "Poisson's ratio of hub and shaft are middle and handbook value",
    });
  });
  it("tells when it does not agree", () => {
    const check = fitByFormula(place, fit);
    expect(textOf(check)).toMatch(
      /YES: they agree.*formulas cases .*pressure .* ksi .* ksi force off .* lbf/,
    );
    expect(textOf({ ...check, apart: 0.4, agrees: false })).toMatch(
      /NO: they do not agree.*40 % apart, where 10 %/,
    );
  });
});

describe("pressStores(rig, oil)", () => {
  const rig = pressRig(
    {
      jack: { capacity: shortTonForce(50), stroke: inch(6) },
      rods: { thread: "1 1/4-7 UNC", proof: ksi(74), span: inch(10), length: inch(26) },
      beam: { section: { width: inch(1.25), height: inch(5), bars: 2 }, material: material("steel A36") },
      plate: { width: inch(8), thickness: inch(2.5), slot: inch(2.625), material: material("steel A36") },
      hub: { face: inch(5.5), length: inch(4.25), material: iron },
      shaft: { end: inch(1.75), material: steel },
      release: inch(0.25),
    },
    lbf(20000),
  );
  const oil = { fullPressure: psi(10000), hose: inch3(10) };
  const joules = (of: ReturnType<typeof pressStores>): number[] =>
    of.map(({ energy }) => ("value" in energy ? energy.value.si : (energy as { si: number }).si));

  it("holds half of force times spring, and p²V/2K of oil, by hand", () => {
    const force = rig.rating.si;
    const spring = rig.spring.beam.si + rig.spring.rods.si;
    const area = shortTonForce(50).si / psi(10000).si;
    const pressure = force / area;
    const volume = inch3(10).si + area * rig.ram.needed.si;
    const [held, squeezed] = joules(pressStores(rig, oil)) as [number, number];
    expectClose(held, (force * spring) / 2, rounding);
    expectClose(squeezed, (pressure ** 2 * volume) / (2 * 1.5e9), rounding);
  });
  it("holds the same whatever the unit, and more with a longer hose", () => {
    const metric = { fullPressure: psi(10000).as("megapascal"), hose: inch3(10).as("litre") };
    const both = joules(pressStores(rig, oil));
    for (const [i, energy] of joules(pressStores(rig, metric)).entries())
      expectClose(energy, both[i]!, rounding);
    expect(joules(pressStores(rig, { ...oil, hose: inch3(20) }))[1]!).toBeGreaterThan(
      joules(pressStores(rig, oil))[1]!,
    );
  });
  it("refuses a plate without pressure", () => {
    expect(() => pressStores(rig, { ...oil, fullPressure: psi(0) })).toThrow(/oil\.fullPressure must be/);
    expect(() => pressStores(rig, { ...oil, hose: mm(1) as never })).toThrow(/oil\.hose must be/);
  });
});

describe("what a fit starts from, shown", () => {
  it("says of the trade's interference and friction where they come from", () => {
    expect(textOf(place.interference)).toMatch(
      /Interference by practice.*thou.*on diameter: 0\.0005 to 0\.001 of 2\.25(?:00)? in; common practice, no source/,
    );
    expect(textOf(place.friction)).toMatch(/Friction, dry .*coefficient of friction 0\.1 to 0\.2/);
  });
});
