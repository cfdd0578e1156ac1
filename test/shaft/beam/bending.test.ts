import { describe, expect, it } from "vitest";
import { material } from "../../../kernel-helpers/handbook/index.js";
import {
  degree,
  gigapascal,
  inch,
  kilogram,
  kilogramPerCubicMetre,
  type Length,
  lbf,
  measured,
  mm,
  newton,
  newtonMetre,
  poundPerCubicInch,
  psi,
  quantity,
} from "../../../kernel-helpers/quantity/index.js";
import {
  closeGaps,
  loadsAt,
  type ShaftModel,
  shaftBending,
  turnedDown,
} from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";

const exact = { rel: 1e-8, because: "the elements are exact; roundings of a solution of a hundred unknowns" };
const down = degree(270);
const steel = { modulus: gigapascal(200), density: kilogramPerCubicMetre(7850) };
const second = (d: number): number => (Math.PI / 64) * d ** 4;
const ends = (at: Length, to: Length) => [
  { name: "left", at },
  { name: "right", at: to },
];
const bar = (length: number, d: number) => [{ from: mm(0), to: mm(length), diameter: mm(d) }];
const at = (bent: ReturnType<typeof shaftBending>, station: Length) =>
  bent.stations.find((s) => Math.abs(s.station.si - station.si) < 1e-9)!;

describe("shaftBending(model)", () => {
  it("agrees with Shigley example 7-5: influence coefficients 2.061e-4, 3.534e-4, 2.224e-4 in/lbf", () => {
    // 1 in shaft, span 31 in, places 7 and 20 in from the left; pp. 386-387.
    const model = {
      stretches: [{ from: inch(0), to: inch(31), diameter: inch(1) }],
      material: { modulus: psi(30e6), density: poundPerCubicInch(0.282) },
      supports: ends(inch(0), inch(31)),
      ownWeight: false,
    };
    const give = (place: number, read: number): number => {
      const pulls = [
        { name: "one", at: inch(place), force: lbf(1), direction: down },
        { name: "mark", at: inch(read), force: lbf(0), direction: down },
      ];
      return -at(shaftBending({ ...model, pulls }), inch(read)).vertical.in("inch");
    };
    const printed = { rel: 2e-3, because: "printed to four digits from an I of four digits" };
    expectClose(give(7, 7), 2.061e-4, printed);
    expectClose(give(20, 20), 3.534e-4, printed);
    expectClose(give(7, 20), 2.224e-4, printed);
    // Maxwell: a load here moves there as one there moves here.
    expectClose(give(20, 7), give(7, 20), exact);
  });
  it("agrees with the closed forms of an evenly loaded beam: 5qL⁴/384EI, qL²/8, qL³/24EI", () => {
    const [l, d] = [2, 0.06];
    const q = 7850 * (Math.PI / 4) * d * d * 9.80665;
    const ei = 200e9 * second(d);
    const bent = shaftBending({ stretches: bar(2000, 60), material: steel, supports: ends(mm(0), mm(2000)) });
    expectClose(bent.largestDeflection.deflection.value.si, (5 * q * l ** 4) / (384 * ei), exact);
    expectClose(bent.largestMoment.moment.value.si, (q * l * l) / 8, exact);
    expectClose(bent.supports[0]!.slope.value, (q * l ** 3) / (24 * ei), exact);
    expectClose(bent.supports[1]!.reaction.value.si, (q * l) / 2, exact);
    expectClose(bent.supports[1]!.direction.in("degree"), 90, exact);
  });
  it("agrees with the overhung load: −Fa at the bearing, Fa²(l + a)/3EI at the end", () => {
    const [a, l, f] = [0.3, 1, 1000];
    const pulls = [{ name: "belt", at: mm(0), force: newton(f), direction: degree(0) }];
    const bent = shaftBending({
      stretches: bar(1300, 50),
      material: steel,
      supports: ends(mm(300), mm(1300)),
      pulls,
      ownWeight: false,
    });
    const ei = 200e9 * second(0.05);
    expectClose(at(bent, mm(0)).horizontal.si, (f * a * a * (l + a)) / (3 * ei), exact);
    expectClose(at(bent, mm(300)).moment.value.si, f * a, exact);
    expectClose(bent.supports[0]!.reaction.value.si, f * (1 + a / l), exact);
    expectClose(bent.supports[0]!.direction.in("degree"), 180, exact);
    expectClose(bent.supports[1]!.reaction.value.si, (f * a) / l, exact);
  });
  it("agrees with a shaft of two diameters by integrating M²/EI (Castigliano)", () => {
    // Load in the middle of a span of 2, first half 50, second half 40 mm: y = ∫ (x/2)² F/EI over both halves.
    const bent = shaftBending({
      stretches: [
        { from: mm(0), to: mm(1000), diameter: mm(50) },
        { from: mm(1000), to: mm(2000), diameter: mm(40) },
      ],
      material: steel,
      supports: ends(mm(0), mm(2000)),
      pulls: [{ name: "load", at: mm(1000), force: newton(500), direction: down }],
      ownWeight: false,
    });
    const half = (d: number): number => 500 / (12 * 200e9 * second(d));
    expectClose(-at(bent, mm(1000)).vertical.si, half(0.05) + half(0.04), exact);
  });
  it("agrees with the beam on three supports: the middle one bears 5/8 of an even load", () => {
    const supports = [...ends(mm(0), mm(2000)), { name: "middle", at: mm(1000) }];
    const bent = shaftBending({ stretches: bar(2000, 60), material: steel, supports });
    const weight = 7850 * (Math.PI / 4) * 0.06 ** 2 * 2 * 9.80665;
    expectClose(bent.supports[2]!.reaction.value.si, (5 / 8) * weight, exact);
  });
  it("goes down by F/k more where a support gives", () => {
    const stiffness = quantity(1000, "newtonPerMillimetre");
    const pulls = [{ name: "load", at: mm(500), force: newton(2000), direction: down }];
    const model = { stretches: bar(1000, 60), material: steel, pulls, ownWeight: false };
    const stiff = shaftBending({ ...model, supports: ends(mm(0), mm(1000)) });
    const soft = shaftBending({
      ...model,
      supports: ends(mm(0), mm(1000)).map((support) => ({ ...support, stiffness })),
    });
    expectClose(at(stiff, mm(500)).vertical.si - at(soft, mm(500)).vertical.si, 0.001, exact);
  });
  it("gives by shear what Timoshenko's beam gives: F l/(4 κ G A) more in the middle", () => {
    const pulls = [{ name: "load", at: mm(250), force: newton(2000), direction: down }];
    const model = {
      stretches: bar(500, 80),
      material: steel,
      supports: ends(mm(0), mm(500)),
      pulls,
      ownWeight: false,
    };
    const more =
      at(shaftBending(model), mm(250)).vertical.si -
      at(shaftBending({ ...model, shear: true }), mm(250)).vertical.si;
    const kappa = (6 * 1.3) / (7 + 6 * 0.3);
    expectClose(more, (2000 * 0.5) / (4 * kappa * (200e9 / 2.6) * (Math.PI / 4) * 0.08 ** 2), {
      rel: 1e-6,
      because: "a difference of two nearly equal deflections",
    });
  });

  const demo: ShaftModel = {
    stretches: [
      { from: inch(-4.5), to: inch(0), diameter: inch(2.28) },
      { from: inch(0), to: inch(70), diameter: inch(2.4375) },
    ],
    material: material("steel"),
    supports: ends(inch(10), inch(62)),
    wheels: [{ name: "driven pulley", at: inch(-2), mass: measured(kilogram(82), kilogram(2)) }],
    pulls: [{ name: "belt", at: inch(-2), force: measured(lbf(700), lbf(80)), direction: degree(30) }],
    torques: [{ from: inch(-2), to: inch(36), torque: newtonMetre(780) }],
  };
  it("holds the balance of forces and moments in both planes", () => {
    const { supports, loads } = shaftBending(demo);
    const own = shaftBending({ ...demo, wheels: [], pulls: [] }).supports;
    const parts = (f: number, angle: number): readonly [number, number] => [
      f * Math.cos(angle),
      f * Math.sin(angle),
    ];
    for (const plane of [0, 1] as const) {
      const up = [
        ...supports.map((s) => [parts(s.reaction.value.si, s.direction.si)[plane], s.station.si] as const),
        ...own.map((s) => [-parts(s.reaction.value.si, s.direction.si)[plane], s.station.si] as const),
        ...loads.map((l) => [parts(l.force.si, l.direction.si)[plane], l.station.si] as const),
      ];
      const scale = { abs: 1e-6, because: "newtons of thousands" };
      expectClose(
        up.reduce((sum, [f]) => sum + f, 0),
        0,
        scale,
      );
      expectClose(
        up.reduce((sum, [f, x]) => sum + f * x, 0),
        0,
        scale,
      );
    }
  });
  it("carries the doubt of the pull into reaction and moment as statics has it", () => {
    const bent = shaftBending({ ...demo, wheels: [], ownWeight: false });
    // Overhung by 12 in: M = 12 F, R = F·64/52.
    expectClose(at(bent, inch(10)).moment.standardUncertainty.in("lbfInch"), 12 * 80, exact);
    expectClose(bent.supports[0]!.reaction.standardUncertainty.in("lbf"), (80 * 64) / 52, exact);
    expect(bent.shares[0]).toEqual({ source: "pull of belt", share: expect.closeTo(1, 6) });
  });
  it("loadsAt(bending, station) gives moment, torque and the diameter that carries", () => {
    const bent = shaftBending({ ...demo, wheels: [], ownWeight: false });
    const there = loadsAt(bent, inch(4));
    expectClose(there.moment.value.in("lbfInch"), 6 * 700, exact);
    expectClose(there.torque.value.in("newtonMetre"), 780, exact);
    expect(loadsAt(bent, inch(50)).torque.value.si).toBe(0);
    expectClose(loadsAt(bent, inch(0)).diameter.in("inch"), 2.28, exact);
    expect(() => loadsAt(bent, inch(80))).toThrow(/must lie on the shaft/);
  });
  it("bears nothing with a sleeve, and weighs more", () => {
    const sleeves = [{ from: inch(20), to: inch(40), diameter: inch(6) }];
    const [bare, worn] = [demo, { ...demo, sleeves }].map((model) =>
      shaftBending({ ...model, ownWeight: false }),
    );
    expectClose(at(worn!, inch(62)).slope.value, at(bare!, inch(62)).slope.value, {
      rel: 1e-9,
      because: "the same stiffness",
    });
    const sum = (b: typeof bare): number =>
      b!.supports.reduce((s, { reaction, direction }) => s + reaction.value.si * Math.sin(direction.si), 0);
    const rho = material("steel").density.value.si;
    const more = sum(shaftBending({ ...demo, sleeves })) - sum(shaftBending(demo));
    const area = (Math.PI / 4) * (6 ** 2 - 2.4375 ** 2) * 0.0254 ** 2;
    expectClose(more, rho * area * 20 * 0.0254 * 9.80665, {
      rel: 1e-7,
      because: "a difference of larger sums",
    });
  });
  it("refuses gaps, places off the shaft, one support, an empty load case and no material, each with what would do", () => {
    const [a, b] = demo.stretches;
    const gap = [a!, { ...b!, from: inch(3) }];
    expect(() => shaftBending({ ...demo, stretches: gap })).toThrow(
      /how thick the shaft is from 0 in to 3 in: measure there, or close the gap by name with closeGaps/,
    );
    const closed = closeGaps(gap, "neighbouring smaller diameter");
    expect(closed[1]).toMatchObject({ diameter: inch(2.28), from: inch(0), to: inch(3) });
    expect(() => shaftBending({ ...demo, stretches: closed })).not.toThrow();
    expect(() => closeGaps(gap, "guess" as never)).toThrow(/assumption must be/);
    expect(() => shaftBending({ ...demo, stretches: [a!, { ...b!, from: inch(-1) }] })).toThrow(
      /lie over each other from -1 in to 0 in/,
    );
    expect(() => shaftBending({ ...demo, supports: ends(inch(10), inch(80)) })).toThrow(
      /right at 80 in must lie on the shaft, which reaches from -4.5 in to 70 in/,
    );
    expect(() => shaftBending({ ...demo, supports: [{ name: "box", at: inch(10) }] })).toThrow(
      /two places or more.*box at 10 in/,
    );
    expect(() => shaftBending({ ...demo, wheels: [], pulls: [], ownWeight: false })).toThrow(
      /load case is empty/,
    );
    expect(() => shaftBending({ ...demo, material: undefined as never })).toThrow(
      /material must be of the handbook.*got undefined; where the steel is unknown, assume by name material\("steel"\)/,
    );
    expect(() =>
      shaftBending({ ...demo, pulls: [{ name: "belt", at: inch(1), force: 3 as never, direction: down }] }),
    ).toThrow(/pull of belt must be a force/);
  });
});

describe("turnedDown(stretches, cut)", () => {
  const shaft = [
    { from: inch(0), to: inch(10), diameter: inch(2.4) },
    { from: inch(10), to: inch(20), diameter: inch(2) },
    { from: inch(20), to: inch(30), diameter: inch(2.4) },
  ];
  it("takes down what is thicker and leaves what is thinner, end to end", () => {
    const after = turnedDown(shaft, { from: inch(5), to: inch(25), diameter: inch(2.2) });
    expect(after.map(({ diameter }) => (diameter as Length).in("inch"))).toEqual([2.4, 2.2, 2, 2.2, 2.4]);
    expect(after.slice(1).every(({ from }, i) => from.si === after[i]!.to.si)).toBe(true);
  });
  it("refuses a cut in the air and one through to the bore", () => {
    expect(() => turnedDown(shaft, { from: inch(0), to: inch(5), diameter: inch(2.5) })).toThrow(
      /takes nothing off/,
    );
    const bored = [{ ...shaft[0]!, bore: inch(1) }];
    expect(() => turnedDown(bored, { from: inch(0), to: inch(5), diameter: inch(0.9) })).toThrow(
      /through to the bore/,
    );
  });
});
