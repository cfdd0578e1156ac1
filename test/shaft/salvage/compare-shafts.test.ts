import { describe, expect, it } from "vitest";
import { babbitt, material } from "../../../kernel-helpers/handbook/index.js";
import {
  degree,
  gigapascal,
  hp,
  inch,
  kilogramPerCubicMetre,
  type Length,
  measured,
  mm,
  pound,
  quantity,
  quantityFromSi,
  rpm,
} from "../../../kernel-helpers/quantity/index.js";
import {
  assumedSteel,
  beltPulls,
  compareShafts,
  criticalSpeeds,
  keyStrength,
  loadedShaft,
  type ShaftCase,
  type ShaftStretch,
  type ShaftsCompared,
  shaftBending,
  shaftLoads,
  shaftPlaces,
  turnedDown,
  weakestPlace,
} from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";

const exact = { rel: 1e-8, because: "the same statics; roundings of a solution of a hundred unknowns" };
const belt = (diameter: Length, towards: number) =>
  beltPulls({
    power: measured(hp(4.5), hp(0.45)),
    speed: rpm(110),
    diameter,
    wrap: degree(170),
    friction: { low: 0.25, high: 0.4 },
    towards: degree(towards),
  });
const boxes = [
  { name: "pulley box", from: inch(5.5), to: inch(13.5) },
  { name: "far box", from: inch(58.5), to: inch(66.5) },
];
const shaft: ShaftCase = {
  loadCase: "4.5 hp through both pulleys",
  boxes,
  wheels: [
    {
      name: "driven pulley",
      station: inch(-2.75),
      mass: measured(pound(180), pound(9)),
      belt: belt(inch(30), 200),
    },
    {
      name: "second pulley",
      station: inch(36),
      mass: measured(pound(60), pound(3)),
      belt: belt(inch(18), 180),
    },
  ],
  seats: [],
  duty: { steel: assumedSteel("mild steel of the period"), surface: "machined", demanded: 1.3 },
};
const asMade: readonly ShaftStretch[] = [{ from: inch(-4.25), to: inch(70), diameter: inch(2.4375) }];
const cut = (to: number): readonly ShaftStretch[] =>
  boxes.reduce<readonly ShaftStretch[]>(
    (shape, { from, to: end }) => turnedDown(shape, { from, to: end, diameter: inch(to) }),
    asMade,
  );
const steel = { modulus: measured(gigapascal(205), gigapascal(3)), density: kilogramPerCubicMetre(7850) };
const compared = compareShafts({
  shaft,
  before: asMade,
  after: cut(2.3),
  material: steel,
  speed: rpm(110),
  bearing: { metal: babbitt(2), service: "heavy line shafting" },
});
const figure = (name: string, of: ShaftsCompared = compared) => {
  const found = of.figures.find((one) => one.name === name);
  if (found === undefined)
    throw new Error(`${name} is not among ${of.figures.map((one) => one.name).join(", ")}`);
  return found;
};
const si = (value: { readonly value: { readonly value: unknown } }): number => Number(value.value.value);

describe("compareShafts(input)", () => {
  it("has for each state what shaftBending and criticalSpeeds find for it alone", () => {
    for (const [state, stretches] of [
      ["before", asMade],
      ["after", cut(2.3)],
    ] as const) {
      const model = loadedShaft(shaft, stretches, steel);
      const bent = shaftBending(model);
      expectClose(si(figure("slope in far box")[state]), bent.supports[1]!.slope.value, exact);
      expectClose(si(figure("load on pulley box")[state]), bent.supports[0]!.reaction.value.si, exact);
      expectClose(si(figure("largest moment")[state]), bent.largestMoment.moment.value.si, exact);
      const whirl = criticalSpeeds(model, { speed: rpm(110) });
      expectClose(si(figure("second critical speed")[state]), whirl.modes[1]!.speed.value.si, exact);
      expectClose(si(figure("running speed from the nearest whirl")[state]), whirl.margin!.value, exact);
      expectClose(
        si(figure("pressure in far box")[state]),
        si(figure("load on far box")[state]) /
          (boxes[1]!.to.minus(boxes[1]!.from).si * inch(state === "before" ? 2.4375 : 2.3).si),
        exact,
      );
    }
  });
  it("knows the boxes' loads as well as shaftLoads does, own weight included: one power moves both belts", () => {
    const ownWeight = { from: inch(-4.25), to: inch(70), diameter: inch(2.4375), density: steel.density };
    const { boxes: loaded } = shaftLoads({ ...shaft, ownWeight });
    loaded.forEach(({ name, force }) => {
      const { value } = figure(`load on ${name}`).before;
      expectClose(si({ value }), force.value.si, exact);
      expectClose(Number(value.standardUncertainty), force.standardUncertainty.si, {
        rel: 1e-5,
        because: "half differences of the same inputs",
      });
    });
  });
  it("tells a change far finer than either figure, because both states bear the same load", () => {
    for (const name of ["slope in far box", "slope in pulley box", "largest deflection"]) {
      const { change, before, after } = figure(name);
      const each = [before, after].map((one) => Number(one.value.standardUncertainty) / si(one));
      // As of two that have nothing in common it would be √2 times that of either.
      expect(change.standardUncertainty!).toBeLessThan(0.25 * Math.hypot(...each));
    }
    // Nothing is cut: nothing changes, and that is known exactly.
    const same = compareShafts({ shaft, before: asMade, after: asMade, material: steel });
    for (const { change } of same.figures) expect(change).toEqual({ value: 0, standardUncertainty: 0 });
  });
  it("changes nothing that two boxes bear by statics, when only diameters change and the shaft is light", () => {
    const light = { ...steel, density: kilogramPerCubicMetre(1e-6) };
    const { figures } = compareShafts({ shaft, before: asMade, after: cut(2), material: light });
    for (const name of ["largest moment", "largest shear", "load on pulley box", "load on far box"])
      expectClose(figures.find((one) => one.name === name)!.change.value, 0, {
        abs: 1e-9,
        because: "two supports need no stiffness",
      });
  });
  it("scales as a shaft turned thinner all along does: slope by (D/d)⁴, by E it cancels", () => {
    const heavy = { ...steel, density: kilogramPerCubicMetre(1e-6) };
    const thin = [{ ...asMade[0]!, diameter: inch(2.2) }];
    const { figures } = compareShafts({ shaft, before: asMade, after: thin, material: heavy });
    const { change } = figures.find(({ name }) => name === "slope in far box")!;
    expectClose(change.value, (2.4375 / 2.2) ** 4 - 1, exact);
    expect(change.standardUncertainty!).toBeLessThan(1e-9);
  });
  it("carries the doubt of a diameter into slope and pressure: 4 and 1 times its relative one", () => {
    const rough = [{ ...asMade[0]!, diameter: measured(inch(2.4375), inch(0.01)) }];
    const heavy = { ...steel, density: kilogramPerCubicMetre(1e-6) };
    const of = (before: readonly ShaftStretch[]) =>
      compareShafts({
        shaft,
        before,
        after: cut(2.3),
        material: heavy,
        bearing: { metal: babbitt(2), service: "heavy line shafting" },
      });
    const own = (name: string): number => {
      const [with_, without] = [of(rough), of(asMade)].map((all) => figure(name, all).before.value);
      return (
        Math.sqrt(Number(with_!.standardUncertainty) ** 2 - Number(without!.standardUncertainty) ** 2) /
        Number(with_!.value)
      );
    };
    const halves = { rel: 1e-3, because: "half differences; a difference of squares" };
    expectClose(own("slope in far box"), (4 * 0.01) / 2.4375, halves);
    expectClose(own("pressure in far box"), 0.01 / 2.4375, halves);
  });
  it("tells a limit the cut breaks from one that was broken as made", () => {
    const of = (slopeAllowed: number, to: number) =>
      compareShafts({ shaft, before: asMade, after: cut(to), material: steel, slopeAllowed });
    expect(of(0.01, 2.3).verdict).toBe("holds");
    expect(of(0.0005, 2.3).verdict).toBe("broken as made");
    expect(of(si(figure("slope in far box").before), 2.4).verdict).toBe("cannot tell yet");
    const weak = of(0.003, 1);
    const slope = figure("slope in pulley box", weak);
    expect([slope.before.verdict, slope.after.verdict, weak.verdict]).toEqual([
      "holds",
      "does not hold",
      "the cut breaks a limit",
    ]);
  });
  it("holds a running speed near a whirl against the distance asked for", () => {
    const first = si(figure("first critical speed").after) / rpm(1).si;
    const near = compareShafts({
      shaft,
      before: asMade,
      after: cut(2.3),
      material: steel,
      speed: rpm(0.97 * first),
    });
    expect(figure("running speed from the nearest whirl", near).after.verdict).toBe("does not hold");
    expect(figure("running speed from the nearest whirl").after.verdict).toBe("holds");
  });
  it("counts boxes that give and wheels that resist tilting", () => {
    const stiffness = quantity(5000, "newtonPerMillimetre");
    const soft = { ...shaft, boxes: boxes.map((box) => ({ ...box, stiffness })) };
    const of = (one: ShaftCase) =>
      compareShafts({ shaft: one, before: asMade, after: cut(2.3), material: steel });
    expect(si(figure("first critical speed", of(soft)).after)).toBeLessThan(
      si(figure("first critical speed").after),
    );
    const polarInertia = quantityFromSi("moment of inertia", 8);
    const heavy = { ...shaft, wheels: shaft.wheels.map((wheel) => ({ ...wheel, polarInertia })) };
    expect(si(figure("slowest whirl of all", of(heavy)).after)).toBeLessThan(
      si(figure("slowest whirl of all").after),
    );
    expect(of(heavy).warnings.join()).not.toContain("point");
    expect(compared.warnings.join()).toMatch(/masses at a point.*driven pulley, second pulley/);
  });
  it("sets factors of safety and keys side by side, with the limit they are held against", () => {
    const body = { asMade: measured(inch(2.4375), inch(0.0001)), fillet: inch(1 / 16) };
    const turnedTo = [0, 1].map(() => measured(inch(2.3), inch(0.0002)));
    const strength = {
      before: weakestPlace(shaftPlaces(shaft, body), shaft.duty),
      after: weakestPlace(shaftPlaces(shaft, { ...body, turnedTo }), shaft.duty),
    };
    const key = {
      form: "square",
      width: inch(0.625),
      height: inch(0.625),
      length: inch(4),
      steel: shaft.duty.steel,
    } as const;
    const keyed = (diameter: number) =>
      keyStrength(key, {
        torque: shaft.wheels[0]!.belt.torque,
        diameter: inch(diameter),
        shaftSteel: shaft.duty.steel,
        hub: material("grey iron class 20"),
        demanded: 2,
      });
    const keys = [{ name: "key of the taper", before: keyed(2.4), after: keyed(2) }];
    const found = compareShafts({ shaft, before: asMade, after: cut(2.3), material: steel, strength, keys });
    const step = figure("factor against fatigue, end of pulley box", found);
    expect(si(step.after)).toBe(strength.after.places[0]!.fatigue.factor.value);
    expect(step.change.value).toBeLessThan(0);
    // The same torque on a smaller round: the factor goes as the diameter.
    const keyRow = found.figures.at(-1)!;
    expect(keyRow.name).toMatch(/^key of the taper, /);
    expectClose(keyRow.change.value, 2 / 2.4 - 1, exact);
    expect(() =>
      compareShafts({
        shaft,
        before: asMade,
        after: cut(2.3),
        material: steel,
        strength: { ...strength, before: { ...strength.before, places: strength.before.places.slice(1) } },
      }),
    ).toThrow(/same places before and after, got end of far box and end of pulley box, end of far box/);
  });
  it("gives an inch and a metric rebuild the same figures", () => {
    const turned = (length: Length): Length => mm(length.in("mm"));
    const metric: ShaftCase = {
      ...shaft,
      boxes: boxes.map(({ name, from, to }) => ({ name, from: turned(from), to: turned(to) })),
      wheels: shaft.wheels.map((wheel) => ({ ...wheel, station: turned(wheel.station) })),
    };
    const shape = (stretches: readonly ShaftStretch[]) =>
      stretches.map(({ from, to, diameter }) => ({
        from: turned(from),
        to: turned(to),
        diameter: turned(diameter as Length),
      }));
    const other = compareShafts({
      shaft: metric,
      before: shape(asMade),
      after: shape(cut(2.3)),
      material: steel,
      speed: rpm(110),
      bearing: { metal: babbitt(2), service: "heavy line shafting" },
    });
    other.figures.forEach((one, i) => {
      const same = { rel: 1e-9, because: "lengths that went through millimetres" };
      expectClose(si(one.after), si(compared.figures[i]!.after), same);
      expect(one.after.verdict).toBe(compared.figures[i]!.after.verdict);
    });
    expect(String(figure("largest moment", other).after.value.value)).toMatch(/N·m/);
    expect(String(figure("largest moment").after.value.value)).toMatch(/lbf·in/);
  });
  it("says what is missing, and offers the bounding assumption by name", () => {
    const of = (more: object) => () =>
      compareShafts({ shaft, before: asMade, after: cut(2.3), material: steel, ...more });
    const gap = [
      { ...asMade[0]!, to: inch(20) },
      { ...asMade[0]!, from: inch(30) },
    ];
    expect(of({ after: gap })).toThrow(
      /how thick the shaft is from 20 in to 30 in: measure there, or close the gap by name with closeGaps\(stretches, "neighbouring smaller diameter"\)/,
    );
    expect(of({ before: [{ ...asMade[0]!, to: inch(60) }] })).toThrow(
      /far box at 62.5 in must lie on the shaft, which reaches from -4.25 in to 60 in: add the stretch it sits on/,
    );
    expect(of({ shaft: { ...shaft, loadCase: "" } })).toThrow(/load case is empty: say in words/);
    expect(of({ material: undefined })).toThrow(
      /material must be of the handbook, e\.g\. material\("steel"\)/,
    );
    expect(of({ speed: rpm(0) })).toThrow(/speed must be more than 0/);
    expect(of({ slopeAllowed: 1 })).toThrow(/slopeAllowed must lie between 0 and 0.1, got 1/);
    expect(of({ keepAway: 0 })).toThrow(/keepAway must lie between 0 and 1, got 0/);
    expect(of({ modes: 1.5 })).toThrow(/modes must be a whole number from 1, got 1.5/);
    const { warnings } = compareShafts({ shaft, before: asMade, after: cut(2.3), material: steel });
    expect(warnings.join()).toMatch(
      /No running speed was given.*factors of safety are not compared.*pressure/,
    );
  });
});
