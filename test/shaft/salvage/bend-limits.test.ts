import { describe, expect, it } from "vitest";
import { babbitt, material } from "../../../kernel-helpers/handbook/index.js";
import {
  degree,
  hp,
  inch,
  type Length,
  measured,
  pound,
  quantityFromSi,
  rpm,
} from "../../../kernel-helpers/quantity/index.js";
import {
  assumedSteel,
  beltPulls,
  compareShafts,
  criticalSpeeds,
  loadedShaft,
  type ShaftCase,
  type ShaftStretch,
  salvageWays,
  shaftBending,
  turnedDown,
  type WeighShaftInput,
  weighShaft,
} from "../../../kernel-helpers/shaft/index.js";
import { clearOf } from "../../../kernel-helpers/shaft/salvage/bend-limits.js";
import { bendResponse } from "../../../kernel-helpers/shaft/salvage/bend-response.js";
import { caseNumbers } from "../../../kernel-helpers/shaft/salvage/case-numbers.js";
import { readTable } from "../../../kernel-helpers/survey/index.js";
import { expectClose } from "../../support/expect-close.js";

const steel = material("steel");
const asMade = measured(inch(2.4375), inch(0));
const belt = (diameter: Length, towards: number) =>
  beltPulls({
    power: measured(hp(4), hp(0.4)),
    speed: rpm(110),
    diameter,
    wrap: degree(170),
    friction: { low: 0.25, high: 0.4 },
    towards: degree(towards),
  });
const rim = (pounds: number, radius: number) =>
  quantityFromSi("moment of inertia", pound(pounds).si * inch(radius).si ** 2, "kilogramSquareMetre");
const shaft: ShaftCase = {
  loadCase: "4 hp through both pulleys",
  boxes: [
    { name: "near box", from: inch(6), to: inch(13) },
    { name: "far box", from: inch(59), to: inch(66) },
  ],
  wheels: [
    {
      name: "driven pulley",
      station: inch(-2.75),
      mass: measured(pound(180), pound(15)),
      belt: belt(inch(30), 200),
      aim: degree(5),
      polarInertia: rim(180, 15),
    },
    {
      name: "second pulley",
      station: inch(36),
      mass: measured(pound(60), pound(5)),
      belt: belt(inch(18), 180),
      polarInertia: rim(60, 9),
    },
  ],
  seats: [],
  duty: { steel: assumedSteel("mild steel of the period"), surface: "machined", demanded: 1.3 },
};
const made: readonly ShaftStretch[] = [{ from: inch(-5), to: inch(70), diameter: inch(2.4375) }];
const cutTo = (near: Length, far: Length): readonly ShaftStretch[] =>
  [near, far].reduce((shape, diameter, i) => {
    const { from, to } = shaft.boxes[i]!;
    return turnedDown(shape, { from, to, diameter });
  }, made);
const boxes = shaft.boxes.map(({ from, to }) => ({ from: from.si, to: to.si }));
const numbers = caseNumbers("test", shaft);
const [near, far] = [inch(2.425), inch(2.43)];

describe("bendResponse(model, boxes)", () => {
  const response = bendResponse("test", loadedShaft(shaft, cutTo(near, far), steel), boxes);
  const drawn = (x: Record<string, number>, modulus = 1, sizes = [1, 1]) => ({
    wheels: numbers.wheels(x),
    modulus,
    sizes,
  });
  /** The same shaft with what was drawn in it, solved anew. */
  const anew = (x: Record<string, number>, modulus: number, sizes: readonly number[]) => {
    const wheels = numbers.wheels(x);
    const bare = loadedShaft(shaft, cutTo(near.times(sizes[0]!), far.times(sizes[1]!)), {
      modulus: steel.modulus.value.times(modulus),
      density: steel.density.value,
    });
    return {
      ...bare,
      wheels: bare.wheels!.map((wheel, i) => {
        const heavier = wheels[i]!.mass / numbers.wheels({})[i]!.mass;
        const inertia = shaft.wheels[i]!.polarInertia as ReturnType<typeof rim>;
        return {
          ...wheel,
          mass: quantityFromSi("mass", wheels[i]!.mass, "kilogram"),
          polarInertia: inertia.times(heavier),
        };
      }),
      pulls: bare.pulls!.map((pull, i) => ({
        ...pull,
        force: quantityFromSi("force", Math.hypot(wheels[i]!.x, wheels[i]!.y), "newton"),
        direction: quantityFromSi("angle", Math.atan2(wheels[i]!.y, wheels[i]!.x), "radian"),
      })),
    };
  };
  const far3 = {
    power: 1.3,
    "belt tension, second pulley": 0.7,
    "belt direction, driven pulley": 0.3,
    "mass, driven pulley": 1.25,
    "mass, second pulley": 0.8,
  };
  it("leans at the estimates as shaftBending has it", () => {
    const { supports } = shaftBending(loadedShaft(shaft, cutTo(near, far), steel));
    response.slopes(drawn({})).forEach((slope, i) => {
      expectClose(slope, supports[i]!.slope.value as number, { rel: 1e-9, because: "the same prisms" });
    });
  });
  it("leans, far from the estimates, as the shaft solved anew: loads and modulus exactly, diameters to the second order", () => {
    for (const [sizes, bound] of [
      [[1, 1], 1e-9],
      [[0.999, 1.002], 3e-5],
    ] as const) {
      const { supports } = shaftBending(anew(far3, 0.94, sizes));
      response.slopes(drawn(far3, 0.94, [...sizes])).forEach((slope, i) => {
        expectClose(slope, supports[i]!.slope.value as number, {
          rel: bound,
          because: "linear in the loads; (1 + 4ε)⁻¹ against 1 − 4ε of a part of the span",
        });
      });
    }
  });
  it("whirls at the estimates as criticalSpeeds has it, and within two per cent where masses move by a quarter", () => {
    const whirls = (model: Parameters<typeof criticalSpeeds>[0]) =>
      criticalSpeeds(model).modes.map(({ speed }) => speed.value.si);
    whirls(loadedShaft(shaft, cutTo(near, far), steel)).forEach((omega, k) => {
      expectClose(response.whirls(drawn({}))[k]!, omega, { rel: 1e-9, because: "the same prisms" });
    });
    whirls(anew(far3, 0.94, [0.999, 1.002])).forEach((omega, k) => {
      expectClose(response.whirls(drawn(far3, 0.94, [0.999, 1.002]))[k]!, omega, {
        rel: 0.02,
        because: "the first term in three deviations of two masses; measured 1.3 %",
      });
    });
  });
});

describe("clearOf(speed, stiff, soft)", () => {
  it("is the share of the nearest whirl, from below and from above", () => {
    expectClose(clearOf(80, [100, 400], [100, 400]), 0.2, { rel: 1e-12, because: "a rounding" });
    expectClose(clearOf(125, [100, 400], [100, 400]), 0.25, { rel: 1e-12, because: "a rounding" });
  });
  it("is below 0 anywhere between the softest boxes' whirl and the stiff ones'", () => {
    expect(clearOf(90, [100, 400], [80, 300])).toBeLessThan(0);
    expectClose(clearOf(64, [100, 400], [80, 300]), 0.2, { rel: 1e-12, because: "a rounding" });
  });
});

describe("weighShaft({ ..., bending })", () => {
  const table = (...lines: readonly string[]) =>
    readTable(new TextEncoder().encode(lines.join("\n")), { name: "options", file: "options.csv" });
  const ways = salvageWays(
    table(
      "option [text],undercut [in],needs [text],least [hr],most [hr],reversible [text]",
      "turn undersize,0,a steady,3,5,no",
      "sleeve,0.6,a tube,8,12,yes",
      "new shaft,-,a bar,24,40,yes",
    ),
  );
  // Without uncertainty: what cleans up is no matter here.
  const plan = measured(inch(2.432), inch(0));
  const journals = shaft.boxes.map(({ name }, i) => ({
    name,
    found: { name, cleanUp: { plan, stations: [] } } as never,
    finished: measured([near, far][i]!, inch(0.0002)),
  }));
  const bending: WeighShaftInput["bending"] = { found: made, made, material: steel, speed: rpm(110) };
  const input: WeighShaftInput = {
    shaft,
    ways,
    journals,
    asMade,
    fillet: inch(1 / 16),
    metal: babbitt(2),
    service: "heavy line shafting",
    bending,
    draws: 4000,
    seed: 5,
  };
  const weighed = weighShaft(input);
  const limit = (option: string, name: string) =>
    weighed.options.find((one) => one.name === option)!.limits.find((one) => one.name.startsWith(name))!;
  const compared = compareShafts({
    shaft,
    before: made,
    after: cutTo(near, far),
    material: steel,
    speed: rpm(110),
  });
  const figure = (name: string) => compared.figures.find((one) => one.name === name)!;
  it("has the margins that the table of both states has: allowed less slope, share less what it is to keep away", () => {
    for (const box of ["near box", "far box"])
      expectClose(
        limit("turn undersize", `slope in ${box}`).margin.value as number,
        1000 * (0.001 - Number(figure(`slope in ${box}`).after.value.value)),
        { rel: 1e-6, because: "the same shaft by its responses" },
      );
    const share = Number(figure("running speed from the nearest whirl").after.value.value);
    expectClose(limit("turn undersize", "speed away").margin.value as number, 100 * (share - 0.2), {
      rel: 1e-6,
      because: "the same shaft by its responses",
    });
  });
  it("scatters as linear propagation says where it is nearly linear", () => {
    expectClose(
      Number(limit("turn undersize", "slope in far box").margin.standardUncertainty),
      1000 * Number(figure("slope in far box").after.value.standardUncertainty),
      { rel: 0.05, because: "4000 draws" },
    );
  });
  it("leans more with less steel: a sleeve bears nothing, a new shaft leans as made", () => {
    const slope = (option: string) => Number(limit(option, "slope in near box").margin.value);
    expect(slope("sleeve")).toBeLessThan(slope("turn undersize"));
    expect(slope("new shaft")).toBeGreaterThan(slope("turn undersize"));
    expectClose(slope("new shaft"), 1000 * (0.001 - Number(figure("slope in near box").before.value.value)), {
      rel: 1e-6,
      because: "the same shaft by its responses",
    });
  });
  it("comes nearer to its whirls where boxes give, and leaves out whirls where no speed is given", () => {
    const softest = quantityFromSi("stiffness or line load", 2e6, "newtonPerMillimetre");
    const soft = weighShaft({ ...input, bending: { ...bending, softest } });
    const away = (of: typeof weighed) =>
      Number(of.options[0]!.limits.find(({ name }) => name.startsWith("speed away"))!.margin.value);
    expect(away(soft)).toBeLessThan(away(weighed));
    const { speed: _, ...without } = bending;
    const still = weighShaft({ ...input, bending: without });
    expect(still.options[0]!.limits.some(({ name }) => name.startsWith("speed away"))).toBe(false);
  });
  it("names a gap in the shaft, and limits out of their range", () => {
    const gapped = [
      { ...made[0]!, to: inch(20) },
      { ...made[0]!, from: inch(30) },
    ];
    expect(() => weighShaft({ ...input, bending: { ...bending, found: gapped } })).toThrow(
      /nothing says how thick the shaft is from 20 in to 30 in.*"neighbouring smaller diameter"/,
    );
    expect(() => weighShaft({ ...input, bending: { ...bending, slopeAllowed: 1 } })).toThrow(
      /slopeAllowed must lie between 0 and 0.1, got 1/,
    );
    expect(() => weighShaft({ ...input, bending: { ...bending, keepAway: 1 } })).toThrow(/keepAway must lie/);
    expect(() => weighShaft({ ...input, bending: { ...bending, speed: rpm(0) } })).toThrow(
      /speed must be more than 0/,
    );
  });
});
