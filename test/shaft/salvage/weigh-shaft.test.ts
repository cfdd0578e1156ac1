import { describe, expect, it } from "vitest";
import { babbitt } from "../../../kernel-helpers/handbook/index.js";
import {
  degree,
  hp,
  inch,
  type Length,
  type Measured,
  measured,
  pound,
  poundPerCubicInch,
  rpm,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import {
  assumedSteel,
  beltPulls,
  chanceToClean,
  cleanUpJournals,
  type ShaftCase,
  salvageOptions,
  salvageWays,
  shaftLoads,
  shaftPlaces,
  type WeighShaftInput,
  weakestPlace,
  weighShaft,
  wornJournals,
} from "../../../kernel-helpers/shaft/index.js";
import { profileOf, readTable, wearBands } from "../../../kernel-helpers/survey/index.js";
import { presentResult } from "../../../kernel-helpers/view/results/present-result.js";
import { expectClose } from "../../support/expect-close.js";

const tableOf = (name: string, ...lines: readonly string[]) =>
  readTable(new TextEncoder().encode(lines.join("\n")), { name, file: `${name}.csv` });
const rounding = { rel: 1e-9, because: "a few roundings" };

/** 2.4375 in, worn evenly by 4 thou from 6 to 13 in and by 3 thou from 59 to 66 in. */
const rows = Array.from({ length: 72 }, (_, z) => {
  const worn = z >= 6 && z <= 13 ? 4 : z >= 59 && z <= 66 ? 3 : 0;
  return `${z},${(2.4375 - worn / 1000).toFixed(4)}`;
});
const survey = tableOf("shaft", "station [in],diameter [in]", ...rows);
const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
const wear = wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
const worn = wornJournals(wear, ["pulley box", "far box"]);
const left = cleanUpJournals(wear, worn);
const asMade = measured(inch(2.4375), inch(0.0001));

const belt = (diameter: Length, towards: number, power = 4.5) =>
  beltPulls({
    power: measured(hp(power), hp(power / 10)),
    speed: rpm(110),
    diameter,
    wrap: degree(170),
    friction: { low: 0.25, high: 0.4 },
    towards: degree(towards),
  });
const shaft: ShaftCase = {
  loadCase: "4.5 hp through both pulleys",
  boxes: worn,
  wheels: [
    { name: "driven pulley", station: inch(-2.75), mass: pound(180), belt: belt(inch(30), 200) },
    { name: "second pulley", station: inch(36), mass: pound(60), belt: belt(inch(18), 180) },
  ],
  seats: [
    { name: "second seat", station: inch(36), diameter: asMade, feature: { shape: "press-fitted hub" } },
  ],
  duty: { steel: assumedSteel("mild steel of the period"), surface: "machined", demanded: 1.3 },
};
const header =
  "option [text],undercut [in],least layer [in],needs [text],least [hr],most [hr],reversible [text],open [text]";
const ways = salvageWays(
  tableOf(
    "options",
    header,
    "turn undersize,0,-,a steady,3,5,no,-",
    "thin coat,0.02,0.03,a gun,8,12,yes,-",
    "sleeve,1.4,0.1,a tube,8,12,yes,-",
    "new shaft,-,-,a bar,24,40,yes,who forges it",
  ),
);
const turned = worn.map(({ name }, i) => ({
  name,
  found: left.journals[i]!,
  finished: measured(inch(i === 0 ? 2.428 : 2.43), inch(0.0002)),
}));
const input: WeighShaftInput = {
  shaft,
  ways,
  journals: turned,
  asMade,
  fillet: inch(1 / 16),
  metal: babbitt(2),
  service: "heavy line shafting",
  draws: 2000,
  seed: 3,
};

describe("shaftLoads(shaft, places)", () => {
  it("gives forces and moments as a sketch on paper does: pull and weight at the overhung pulley", () => {
    const one = { ...shaft, wheels: [{ ...shaft.wheels[0]!, belt: belt(inch(30), 270) }] };
    const loads = shaftLoads(one, [{ name: "at the box", station: inch(9.5) }]);
    const down = one.wheels[0]!.belt.pull.value.in("lbf") + 180;
    // Arms of 12.25 in before the first box and 53 in between the boxes.
    expectClose(loads.boxes[0]!.force.value.in("lbf"), (down * (53 + 12.25)) / 53, rounding);
    expectClose(loads.boxes[1]!.force.value.in("lbf"), (down * 12.25) / 53, rounding);
    expectClose(loads.places[1]!.moment.value.in("lbfInch"), down * 12.25, rounding);
    // Down on the near box, up on the far one.
    expect(loads.boxes.map(({ direction }) => Math.round(direction.in("degree")) % 360)).toEqual([0, 180]);
  });
  it("carries torque between the pulleys only, by 63 025 hp over rpm", () => {
    const loads = shaftLoads(shaft, [{ name: "behind", station: inch(50) }]);
    expectClose(loads.places[0]!.torque.value.in("lbfInch"), (63_025.4 * 4.5) / 110, {
      rel: 1e-5,
      because: "the handbook's constant",
    });
    expect(loads.places[1]!.torque.value.si).toBe(0);
  });
  it("moves pull and torque together with the power: ten per cent of it is ten of the torque", () => {
    const { torque } = shaftLoads(shaft).places[0]!;
    expectClose(torque.standardUncertainty.si / torque.value.si, 0.1, rounding);
  });
  it("counts the shaft's own weight where it is given: half on each box, q l²/8 in the middle", () => {
    const density = poundPerCubicInch(0.284);
    // From one box's middle to the other's, 53 in.
    const ownWeight = { from: inch(9.5), to: inch(62.5), diameter: inch(2.4375), density };
    const still = shaft.wheels.map((wheel) => ({
      ...wheel,
      mass: pound(0),
      belt: belt(inch(30), 270, 1e-9),
    }));
    const middle = [{ name: "middle", station: inch(36) }];
    const loads = shaftLoads({ ...shaft, wheels: still, ownWeight }, middle);
    const weight = 0.284 * (Math.PI / 4) * 2.4375 ** 2 * 53;
    const tiny = { rel: 1e-5, because: "belts that carry next to nothing" };
    for (const { force } of loads.boxes) expectClose(force.value.in("lbf"), weight / 2, tiny);
    expectClose(loads.places.at(-1)!.moment.value.in("lbfInch"), (weight * 53) / 8, tiny);
    const nowhere = { ...ownWeight, to: inch(0) };
    expect(() => shaftLoads({ ...shaft, ownWeight: nowhere })).toThrow(/ownWeight must reach from a lower/);
  });
  it("says what an empty load case lacks", () => {
    expect(() => shaftLoads({ ...shaft, loadCase: " " })).toThrow(/load case is empty: say in words/);
    expect(() => shaftLoads({ ...shaft, wheels: [] })).toThrow(/load case has no wheel/);
    expect(() => shaftLoads({ ...shaft, boxes: [worn[0]!] })).toThrow(
      /must run in two boxes, got pulley box/,
    );
    const { direction: _, ...nowhere } = belt(inch(30), 0);
    const wheels = [{ ...shaft.wheels[0]!, belt: { ...nowhere, direction: undefined } }];
    expect(() => shaftLoads({ ...shaft, wheels })).toThrow(/belt on driven pulley must say where it pulls/);
  });
  it("is shown with forces, directions and moments", () => {
    expect(JSON.stringify(presentResult(shaftLoads(shaft)))).toMatch(
      /on pulley box.*from straight down.*second seat/,
    );
  });
});

describe("shaftPlaces(shaft, as)", () => {
  it("is plain as made, and a step after the cut, which is weaker", () => {
    const body = { asMade, fillet: inch(1 / 16) };
    const before = weakestPlace(shaftPlaces(shaft, body), shaft.duty);
    const after = weakestPlace(
      shaftPlaces(shaft, { ...body, turnedTo: turned.map(({ finished }) => finished) }),
      shaft.duty,
    );
    expect(before.places.map(({ name }) => name)).toEqual([
      "end of pulley box",
      "end of far box",
      "second seat",
    ]);
    expect(after.places[0]!.fatigue.factor.value).toBeLessThan(before.places[0]!.fatigue.factor.value);
    expect(after.places[2]!.fatigue.factor.value).toBe(before.places[2]!.fatigue.factor.value);
  });
  it("takes the end of the journal with the larger moment: the overhung side", () => {
    const [first] = shaftPlaces(shaft, { asMade, fillet: "sharp corner" });
    const { places } = shaftLoads(shaft, [
      { name: "outer", station: worn[0]!.from },
      { name: "inner", station: worn[0]!.to },
    ]);
    const larger = places[1]!.moment.value.si > places[2]!.moment.value.si ? worn[0]!.from : worn[0]!.to;
    expect(first!.station!.si).toBe(larger.si);
  });
  it("refuses sizes that do not belong to the boxes", () => {
    expect(() => shaftPlaces(shaft, { asMade, fillet: inch(0.1), turnedTo: [asMade] })).toThrow(
      /a diameter for each box \(pulley box, far box\), got 1/,
    );
    expect(() => shaftPlaces(shaft, { asMade, fillet: inch(0.1), turnedTo: [asMade, asMade] })).toThrow(
      /not below what it was made to/,
    );
  });
});

describe("salvageWays(table)", () => {
  it("reads hours, layers and what is open; - is new steel", () => {
    expect(ways.map(({ undercut }) => undercut?.in("inch"))).toEqual([0, 0.02, 1.4, undefined]);
    expect(ways[3]!.open).toBe("who forges it");
    expect([ways[0]!.hours.low.in("hour"), ways[0]!.cost]).toEqual([3, undefined]);
  });
  it("names the line of what is wrong", () => {
    const only =
      (...lines: string[]) =>
      () =>
        salvageWays(tableOf("options", header, ...lines));
    expect(only("sleeve,0.2,-,a tube,8,12,yes,-")).toThrow(/needs a row "turn undersize".*got sleeve/);
    expect(only("turn undersize,0,-,a steady,5,3,no,-")).toThrow(/line 2: hours must run from least to most/);
    expect(only("turn undersize,0.1,-,a steady,3,5,no,-")).toThrow(
      /line 2: to turn undersize has no undercut/,
    );
    expect(only("turn undersize,0,-,a,3,5,no,-", "sleeve,-1,-,a,3,5,no,-")).toThrow(
      /line 3: undercut must be 0/,
    );
    expect(only("turn undersize,0,-,a,3,5,no,-", "turn undersize,0,-,a,3,5,no,-")).toThrow(/twice/);
  });
});

describe("weighShaft(input)", () => {
  const weighed = weighShaft(input);
  const of = (option: string, limit: string) =>
    weighed.options.find(({ name }) => name === option)!.limits.find(({ name }) => name === limit);
  it("has at the estimates the factors that the shaft's strength has, place by place", () => {
    const places = shaftPlaces(shaft, {
      asMade,
      fillet: inch(1 / 16),
      turnedTo: turned.map(({ finished }) => finished),
    });
    for (const { name, fatigue, yielding } of weakestPlace(places, shaft.duty).places)
      expectClose(
        of("turn undersize", `strength, ${name}`)!.margin.value as number,
        Math.min(fatigue.factor.value, yielding.factor.value) - 1.3,
        { rel: 1e-6, because: "the same formulas" },
      );
  });
  it("scatters as linear propagation says where it is nearly linear", () => {
    const [box] = shaftLoads(shaft).boxes;
    const pressure = of("turn undersize", "pressure, pulley box")!;
    const area = inch(2.428).si * inch(8).si;
    expectClose(
      Number(pressure.margin.standardUncertainty.valueOf()) * area,
      box!.force.standardUncertainty.si,
      {
        rel: 0.06,
        because: "2000 draws",
      },
    );
  });
  it("cleans up as often as the integral over all stations says", () => {
    const tight = {
      ...turned[1]!,
      finished: measured(left.journals[1]!.cleanUp.plan.value.minus(thou(0.2)), inch(0)),
    };
    const again = weighShaft({ ...input, journals: [turned[0]!, tight], draws: 20_000 });
    const chance = again.options[0]!.limits.find(({ name }) => name === "far box cleans up")!.chance;
    expectClose(chance, chanceToClean(tight.found.cleanUp, tight.finished.value), {
      abs: 0.02,
      because: "the least of eight stations is taken as normal",
    });
  });
  it("does not ask a new shaft to clean up, and a sleeve that leaves too little steel breaks its limit", () => {
    expect(of("new shaft", "pulley box cleans up")).toBeUndefined();
    expect(of("sleeve", "strength, end of pulley box")!.chance).toBeLessThan(0.2);
    expect(weighed.stands).toBe("turn undersize");
  });
  it("finds what a weaker steel and tighter belts would change", () => {
    const { assumptions } = weighShaft({
      ...input,
      assumptions: [{ name: "four times the power", inputs: { power: 4 } }],
    });
    expect(assumptions[0]!.options[0]!.chance).toBeLessThan(weighed.options[0]!.chance);
  });
  it("turns a belt about as if it had been given from there, and counts how well its direction is known", () => {
    const about = { "belt direction, driven pulley": degree(25).si };
    const { assumptions } = weighShaft({ ...input, assumptions: [{ name: "from below", inputs: about }] });
    const wheels = [{ ...shaft.wheels[0]!, belt: belt(inch(30), 225) }, shaft.wheels[1]!];
    const from225 = weighShaft({ ...input, shaft: { ...shaft, wheels }, draws: 1000 });
    expect(from225.beyondChoice).toEqual([]);
    expect(from225.options[0]!.chance).not.toBe(weighed.options[0]!.chance);
    expectClose(assumptions[0]!.options[0]!.chance, from225.options[0]!.chance, {
      abs: 1e-9,
      because: "the same draws of the same seed",
    });
    const aimed = { ...shaft, wheels: shaft.wheels.map((wheel) => ({ ...wheel, aim: degree(10) })) };
    const [sure, unsure] = [shaft, aimed].map((one) => shaftLoads(one).boxes[0]!.force);
    expect(unsure!.value.si).toBe(sure!.value.si);
    expect(unsure!.standardUncertainty.si).toBeGreaterThan(sure!.standardUncertainty.si);
  });
  it("says which journal is missing, and refuses one that would grow or vanish", () => {
    expect(() => weighShaft({ ...input, journals: [turned[0]!] })).toThrow(
      /for each box, in their order \(pulley box, far box\), got pulley box/,
    );
    const grown = { ...turned[0]!, finished: measured(inch(2.5), inch(0.001)) };
    expect(() => weighShaft({ ...input, journals: [grown, turned[1]!] })).toThrow(
      /not below what it was made to/,
    );
    const all = salvageWays(
      tableOf("options", header, "turn undersize,0,-,a,3,5,no,-", "sleeve,2.5,-,a,3,5,no,-"),
    );
    expect(() => weighShaft({ ...input, ways: all })).toThrow(
      /line 3: an undercut of 2.5 in leaves no steel/,
    );
    const nothing = { ...shaft, duty: { ...shaft.duty, steel: undefined as never } };
    expect(() => weighShaft({ ...input, shaft: nothing })).toThrow(
      /steel of the shaft is missing.*assumedSteel/,
    );
  });
});

describe("salvageOptions(ways, weighed, journals, asMade)", () => {
  const options = salvageOptions(ways, weighShaft(input), turned, asMade.value);
  it("breaks what is not sure enough, a layer too thin, and what is left open", () => {
    expect(options[0]!.breaks).toEqual([]);
    expect(options[1]!.breaks.join()).toMatch(
      /pulley box: a layer of 0.01475 in on radius is thinner than 0.03 in/,
    );
    expect(options[2]!.breaks.join()).toMatch(/strength, end of pulley box: holds with .* only/);
    expect(options[3]!.breaks).toEqual(["not settled: who forges it"]);
  });
  it("breaks a smallest diameter that is given, by the steel that carries, and only below it", () => {
    const breaksAt = (allowed: Length) =>
      salvageOptions(ways, weighShaft(input), turned, asMade.value, allowed).map(({ breaks }) =>
        breaks.filter((text) => text.startsWith("smallest diameter allowed")),
      );
    const size = turned[0]!.finished.value;
    const [undersize, , , anew] = breaksAt(inch(size.in("inch") + 0.0001));
    expect(undersize![0]).toMatch(/^smallest diameter allowed, .* in: pulley box is left with .* in$/);
    expect(anew).toEqual([]);
    expect(breaksAt(size)[0]!.join()).not.toContain("pulley box");
  });
  it("tells the steel that carries at each journal: not the sleeve", () => {
    expectClose(
      (options[2]!.figures["steel that carries, pulley box"] as Length).in("inch"),
      1.028,
      rounding,
    );
    expectClose((options[3]!.figures["steel that carries, far box"] as Length).in("inch"), 2.4375, rounding);
  });
  it("tells the chance as a number with what the draws leave open, so that an audit can tell how far it moved", () => {
    const weighed = weighShaft(input);
    options.forEach(({ figures }, i) => {
      const chance = figures["chance that all limits hold that a choice can keep [%]"] as Measured<number>;
      const { chance: share, chanceUncertainty } = weighed.options[i]!;
      const reach = 2 * chanceUncertainty;
      const ofHundred = { abs: 1e-9, because: "a few roundings of 100" };
      const [from, to] = [Math.max(0, share - reach), Math.min(1, share + reach)];
      // An interval that neither end cuts is the share and its uncertainty, as drawn.
      expectClose(chance.value - 2 * chance.standardUncertainty, 100 * from, ofHundred);
      expectClose(chance.value + 2 * chance.standardUncertainty, 100 * to, ofHundred);
      expect(chance.standardUncertainty).toBeGreaterThan(0);
    });
  });
  it("refuses ways that were not weighed", () => {
    const fewer = weighShaft({ ...input, ways: ways.slice(0, 2) });
    expect(() => salvageOptions(ways, fewer, turned, asMade.value)).toThrow(/"sleeve" was not weighed/);
  });
});
