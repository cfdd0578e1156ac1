import { describe, expect, it } from "vitest";
import {
  inch,
  ksi,
  type Length,
  lbfInch,
  measured,
  mm,
  newton,
  newtonMetre,
} from "../../../kernel-helpers/quantity/index.js";
import {
  assumedSteel,
  type FatigueCriterion,
  type PlaceAlong,
  type ShaftDuty,
  type ShaftPlace,
  shaftSafety,
  shaftSteel,
  strengthAlong,
  weakestPlace,
} from "../../../kernel-helpers/shaft/index.js";
import { safetyOfNumbers } from "../../../kernel-helpers/shaft/strength/safety-numbers.js";
import { preparePlace } from "../../../kernel-helpers/shaft/strength/shaft-safety.js";
import { randomGenerator, uncertain } from "../../../kernel-helpers/statistics/index.js";
import { expectClose } from "../../support/expect-close.js";

const rounding = { rel: 1e-9, because: "rounding only" };
// Source: Shigley & Nisbett, Mechanical Engineering Design, 9th edition, example 7-1, pp. 370-371.
const example: ShaftPlace = {
  name: "shoulder",
  diameter: inch(1.1),
  moment: lbfInch(1260),
  torque: lbfInch(1100),
  feature: { shape: "shoulder", larger: inch(1.65), fillet: inch(0.11) },
};
const exampleDuty: ShaftDuty = {
  steel: shaftSteel({ name: "heat-treated", tensile: ksi(105), yield: ksi(82), basis: "example" }),
  surface: "machined",
  demanded: 1.5,
  reliability: 0.99,
};
const plain: ShaftPlace = {
  name: "journal",
  diameter: mm(60),
  moment: newtonMetre(400),
  torque: newtonMetre(600),
  feature: { shape: "plain" },
};
const duty: ShaftDuty = {
  steel: assumedSteel("mild steel of the period"),
  surface: "machined",
  demanded: 2,
};

describe("shaftSafety(place, duty)", () => {
  it.each([
    ["Goodman", 1.63],
    ["Gerber", 1.87],
    ["ASME elliptic", 1.88],
    ["Soderberg", 1.56],
  ] as const)("%s: comes to the printed %s of a published example", (criterion, n) => {
    const { fatigue } = shaftSafety(example, { ...exampleDuty, criterion });
    const chart = {
      rel: 0.04,
      because: "its stress concentration is read off a chart; charts differ by 4 %",
    };
    expectClose(fatigue.factor.value, n, chart);
  });
  it("comes to the printed 4.50 against yielding where K is kept in, as the example does", () => {
    const none = lbfInch(0);
    const bare = { ...example, feature: { shape: "plain" } } as const;
    const bending = shaftSafety({ ...bare, torque: none }, exampleDuty).stress.largest.value.in("ksi");
    const torsion = shaftSafety({ ...bare, moment: none }, exampleDuty).stress.largest.value.in("ksi");
    expectClose(82 / Math.hypot(1.58 * bending, 1.37 * torsion), 4.5, {
      rel: 2e-3,
      because: "printed to three digits",
    });
  });
  it("leaves a stress peak out of yielding, but takes off what a keyseat or a hole cuts away", () => {
    const of = (feature: ShaftPlace["feature"], moment = 400) =>
      shaftSafety({ ...plain, moment: newtonMetre(moment), feature }, duty).yielding.factor.value;
    const whole = of({ shape: "plain" });
    expectClose(of({ shape: "shoulder", larger: mm(66), fillet: mm(1) }), whole, rounding);
    // Moore, 1909: 1 − 0.2·(1/4) − 1.1·(1/8).
    expectClose(of({ shape: "keyseat", ends: "sled-runner", corner: mm(1) }) / whole, 0.8125, rounding);
    expectClose(of({ shape: "keyed hub", keys: 2 }) / whole, 0.625, rounding);
    // The modulus of the section beside a hole, by summing strips across; the hole lies where bending is greatest.
    const [d, a, strips] = [60, 6, 40_000];
    let second = 0;
    for (let i = 0; i < strips; i++) {
      const y = -d / 2 + ((i + 0.5) * d) / strips;
      second += Math.max(0, 2 * Math.sqrt((d / 2) ** 2 - y ** 2) - a) * y ** 2 * (d / strips);
    }
    const bending = (feature: ShaftPlace["feature"]) =>
      shaftSafety({ ...plain, torque: newtonMetre(0), feature }, duty).yielding.factor.value;
    expectClose(
      bending({ shape: "transverse hole", hole: mm(a) }) / bending({ shape: "plain" }),
      second / ((Math.PI * d ** 4) / 64),
      { rel: 5e-3, because: "the strip is taken as long as the diameter, measured 0.1 %" },
    );
  });
  it("comes to the printed numbers to their last digit with the printed stress concentration", () => {
    // The plain core, with K_f 1.58 and K_fs 1.37 put in by their ratio to a plain shaft of like torsion.
    const section = (Math.PI * inch(1.1).in("inch") ** 3) / 32;
    const alternating = (1.58 * 1260) / section;
    const mean = (Math.sqrt(3) * 1.37 * 1100) / (2 * section);
    expectClose(alternating, 15235, { rel: 1e-3, because: "printed to five digits" });
    expectClose(mean, 9988, { rel: 1e-3, because: "printed to four digits" });
    const bare = shaftSafety({ ...example, feature: { shape: "plain" } }, exampleDuty).stress;
    expectClose(bare.alternating.value.in("psi") * 1.58, alternating, rounding);
    expectClose(bare.mean.value.in("psi") * 1.37, mean, rounding);
  });
  it("is statics where nothing swings: tensile over von Mises, and yield over it", () => {
    const { fatigue, yielding } = shaftSafety({ ...plain, moment: newtonMetre(0) }, duty);
    const mises = (Math.sqrt(3) * 16 * 600) / (Math.PI * 0.06 ** 3);
    expectClose(fatigue.factor.value, ksi(55).si / mises, rounding);
    expectClose(yielding.factor.value, ksi(27.5).si / mises, rounding);
  });
  it("takes a bore for what it takes away: (d⁴ − b⁴)/d", () => {
    const hollow = shaftSafety({ ...plain, bore: mm(30) }, duty);
    const solid = shaftSafety(plain, duty);
    expectClose(hollow.fatigue.factor.value / solid.fatigue.factor.value, 1 - 0.5 ** 4, rounding);
    expectClose(
      shaftSafety({ ...plain, bore: mm(0) }, duty).fatigue.factor.value,
      solid.fatigue.factor.value,
      rounding,
    );
  });
  it("counts what turns with the shaft as steady, a swinging torque as alternating", () => {
    const [load, none] = [newtonMetre(400), newtonMetre(0)];
    const bare = { ...plain, moment: none, torque: none };
    const reversed = shaftSafety({ ...bare, moment: load }, duty);
    const steady = shaftSafety({ ...bare, steadyMoment: load }, duty);
    expect(reversed.fatigue.factor.value).toBeLessThan(steady.fatigue.factor.value);
    expectClose(steady.stress.mean.value.si, reversed.stress.alternating.value.si, rounding);
    const swing = shaftSafety({ ...bare, torqueSwing: load }, duty);
    expectClose(
      swing.stress.alternating.value.si / reversed.stress.alternating.value.si,
      Math.sqrt(3) / 2,
      rounding,
    );
  });
  it("says the same in inches", () => {
    const inInch = shaftSafety(
      {
        ...plain,
        diameter: inch(60 / 25.4),
        moment: lbfInch(newtonMetre(400).in("lbfInch")),
        torque: lbfInch(newtonMetre(600).in("lbfInch")),
      },
      duty,
    );
    expectClose(inInch.fatigue.factor.value, shaftSafety(plain, duty).fatigue.factor.value, rounding);
    expect(inInch.stress.largest.value.writtenIn).toBe("ksi");
  });
  it("carries the uncertainty that a simulation of the same inputs finds, and the chance", () => {
    const place: ShaftPlace = {
      ...plain,
      diameter: measured(mm(60), mm(0.6)),
      moment: measured(newtonMetre(700), newtonMetre(70)),
      torque: measured(newtonMetre(600), newtonMetre(40)),
      feature: { shape: "keyed hub" },
    };
    const found = shaftSafety(place, duty);
    const { inputs, numbers } = preparePlace("test", place, duty);
    const random = randomGenerator(11);
    const logs: number[] = [];
    for (let i = 0; i < 20_000; i++) {
      const drawn = Object.fromEntries(
        Object.entries(inputs).map(([name, { si, u }]) => [name, si + u * random.normal()]),
      ) as unknown as typeof numbers;
      logs.push(Math.log(safetyOfNumbers(drawn, place.feature, { ...duty, criterion: "Goodman" }).fatigue));
    }
    const mean = logs.reduce((sum, x) => sum + x, 0) / logs.length;
    const sd = Math.sqrt(logs.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (logs.length - 1));
    const u = found.fatigue.factor.standardUncertainty / found.fatigue.factor.value;
    expectClose(u, sd, { rel: 0.06, because: "first order against 20 000 draws, measured 3 %" });
    const below = logs.filter((x) => x < Math.log(duty.demanded)).length / logs.length;
    expectClose(found.fatigue.chanceBelow, below, { abs: 0.02, because: "lognormal, 20 000 draws" });
    expect(found.fatigue.chanceBelow).toBeGreaterThan(0.02);
    expect(found.fatigue.chanceBelow).toBeLessThan(0.98);
    expectClose(
      found.fatigue.shares.reduce((sum, { share }) => sum + share, 0),
      1,
      rounding,
    );
  });
  it("keeps moment and torque of one belt together: their common source counts as one", () => {
    const pull = uncertain(measured(newtonMetre(100), newtonMetre(20)), "belt pull");
    const tied = shaftSafety({ ...plain, moment: pull.times(4), torque: pull.times(6) }, duty);
    const apart = shaftSafety(
      {
        ...plain,
        moment: measured(newtonMetre(400), newtonMetre(80)),
        torque: measured(newtonMetre(600), newtonMetre(120)),
      },
      duty,
    );
    // Both stresses grow in step with the pull, so its relative uncertainty is passed on undiminished.
    const u = tied.yielding.factor.standardUncertainty / tied.yielding.factor.value;
    expectClose(u, 0.2, { rel: 0.02, because: "half difference of a logarithm at ± 20 %, measured 1.4 %" });
    expect(tied.yielding.factor.standardUncertainty).toBeGreaterThan(
      apart.yielding.factor.standardUncertainty,
    );
    expect(tied.yielding.shares[0]).toMatchObject({ source: "belt pull" });
  });
  it("judges a step that is no higher than the diameter is uncertain: from the side on which there is one", () => {
    const step = { shape: "shoulder", larger: mm(60.01), fillet: mm(2) } as const;
    const found = shaftSafety({ ...plain, diameter: measured(mm(60), mm(0.02)), feature: step }, duty);
    const cleared = shaftSafety({ ...plain, diameter: mm(60), feature: step }, duty);
    expectClose(found.fatigue.factor.value, cleared.fatigue.factor.value, rounding);
    expect(found.fatigue.shares.map(({ source }) => source)).toContain("diameter");
  });
  it("judges at 95 %: holds, does not hold, cannot tell yet", () => {
    const at = (moment: number) => shaftSafety({ ...plain, moment: newtonMetre(moment) }, duty).verdict;
    expect(at(200)).toBe("holds");
    expect(at(1300)).toBe("cannot tell yet");
    expect(at(4000)).toBe("does not hold");
  });
  it("names what is missing and what would do", () => {
    const broken =
      (change: Partial<ShaftPlace>, other: Partial<ShaftDuty> = {}) =>
      () =>
        shaftSafety({ ...plain, ...change }, { ...duty, ...other });
    expect(broken({ moment: newtonMetre(0), torque: newtonMetre(0) })).toThrow(
      /journal: nothing loads this place.*Fill in the load case/,
    );
    expect(broken({}, { steel: undefined as never })).toThrow(/assumedSteel\("mild steel of the period"\)/);
    expect(broken({}, { demanded: undefined as never })).toThrow(/demanded must be the least factor/);
    expect(broken({ bore: mm(60) })).toThrow(/bore must be smaller than the diameter \(60 mm\), got 60 mm/);
    expect(broken({ moment: undefined as never })).toThrow(/journal: moment must be a moment or torque/);
    expect(broken({ moment: mm(3) as never })).toThrow(/journal: moment must be a moment or torque.*3 mm/);
    expect(broken({ torque: newtonMetre(-3) })).toThrow(/torque must be 0 or more, got −3/);
    expect(broken({ diameter: mm(0) })).toThrow(/diameter must be more than 0/);
    expect(broken({}, { criterion: "Smith" as FatigueCriterion })).toThrow(/criterion must be/);
    expect(broken({ name: " " })).toThrow(/each place must have a name/);
  });
});

describe("weakestPlace(places, duty)", () => {
  const seat: ShaftPlace = {
    ...plain,
    name: "keyseat",
    feature: { shape: "keyseat", ends: "end-milled", corner: mm(0.8) },
  };
  it("names the place most likely to give, and takes its verdict", () => {
    const found = weakestPlace([plain, seat], duty);
    expect(found.weakest).toBe("keyseat");
    expect(found.places.map(({ name }) => name)).toEqual(["journal", "keyseat"]);
    expect(found.warnings.join()).toMatch(/Nobody has tested this steel/);
    const heavier = weakestPlace([{ ...plain, moment: newtonMetre(4000) }, seat], duty);
    expect(heavier).toMatchObject({ weakest: "journal", verdict: "does not hold" });
  });
  it("tells far places apart by their factor", () => {
    const light = { moment: newtonMetre(4), torque: newtonMetre(6) };
    expect(
      weakestPlace(
        [
          { ...plain, ...light },
          { ...seat, ...light },
        ],
        duty,
      ),
    ).toMatchObject({
      weakest: "keyseat",
      verdict: "holds",
    });
  });
  it("refuses an empty list and two places of one name", () => {
    expect(() => weakestPlace([], duty)).toThrow(/at least one place/);
    expect(() => weakestPlace([plain, plain], duty)).toThrow(/two called journal/);
  });
});

describe("strengthAlong(at, places, duty)", () => {
  // A simple beam of span 1 m with 2000 N in its middle: M = 1000 N · x up to there (statics).
  const span = (station: Length) => ({
    diameter: mm(60),
    moment: newton(1000).times(station.in("mm") <= 500 ? station : mm(1000).minus(station)),
    torque: newtonMetre(500),
  });
  const at = (name: string, station: number, change: object = {}): PlaceAlong => ({
    name,
    station: mm(station),
    feature: { shape: "plain" },
    ...change,
  });
  it("takes loads and diameter of each station, in their order; the middle of a beam is its weakest", () => {
    const found = strengthAlong(span, [at("right", 900), at("middle", 500), at("left", 100)], duty);
    expect(found.places.map(({ name }) => name)).toEqual(["left", "middle", "right"]);
    expect(found.weakest).toBe("middle");
    for (const [i, moment] of [100, 500, 100].entries())
      expectClose(found.places[i]!.moment.value.si, moment, rounding);
    expectClose(found.places[0]!.fatigue.factor.value, found.places[2]!.fatigue.factor.value, rounding);
  });
  it("lets a place have its own diameter or load", () => {
    const found = strengthAlong(span, [at("middle", 500), at("step", 300, { diameter: mm(40) })], duty);
    expect(found.weakest).toBe("step");
    expectClose(found.places[0]!.diameter.value.si, 0.04, rounding);
  });
  it("names the place for which the shaft knows nothing", () => {
    const short = (station: Length) => {
      if (station.si > 1) throw new RangeError("no reading beyond 1000 mm");
      return span(station);
    };
    expect(() => strengthAlong(short, [at("far end", 1200)], duty)).toThrow(
      /strengthAlong: far end, station 1200 mm: no reading beyond 1000 mm/,
    );
    expect(() => strengthAlong(span, [{ ...at("x", 1), station: undefined as never }], duty)).toThrow(
      /x must have a station with its unit/,
    );
    expect(() => strengthAlong({} as never, [at("x", 1)], duty)).toThrow(
      /must give diameter, moment and torque/,
    );
  });
});
