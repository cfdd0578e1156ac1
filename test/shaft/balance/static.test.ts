import { describe, expect, it } from "vitest";
import {
  degree,
  inch,
  kilogram,
  measured,
  mm,
  ounce,
  pound,
  quantity,
  rpm,
} from "../../../kernel-helpers/quantity/index.js";
import {
  balanceOnWays,
  balanceWithoutPhase,
  type CorrectionShare,
  correctionPlaces,
  drilledDepth,
  drilledHoles,
  permissibleUnbalance,
  resultantUnbalance,
  splitCorrection,
} from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";
import { tableOf } from "./support.js";

const rounding = { rel: 1e-9, because: "a few roundings" };

describe("resultantUnbalance(masses)", () => {
  it("agrees with Bevan's example of four masses in one plane", () => {
    // T. Bevan, The Theory of Machines, example 2 of the chapter on balancing (page 491): balanced by 57.9 lb at 24 in;
    // the resultant at 23.28°.
    const masses = [
      [200, 9, 0],
      [300, 7, 45],
      [240, 10, 120],
      [260, 12, 255],
    ].map(([mass, radius, angle]) => ({ mass: pound(mass!), radius: inch(radius!), angle: degree(angle!) }));
    const { amount, angle } = resultantUnbalance(masses);
    expectClose(amount.in("ounceInch") / 16 / 24, 57.9, { rel: 1e-3, because: "printed to three digits" });
    expectClose(angle.in("degree"), 23.28, { rel: 5e-4, because: "printed to four digits" });
  });
  it("is nothing for masses that balance each other, and turns with them", () => {
    const three = [0, 120, 240].map((angle) => ({ mass: ounce(3), radius: inch(5), angle: degree(angle) }));
    expectClose(resultantUnbalance(three).amount.in("ounceInch"), 0, {
      rel: 1,
      abs: 1e-12,
      because: "rounding of 15 oz·in",
    });
    const one = resultantUnbalance([{ mass: ounce(3), radius: inch(5), angle: degree(-90) }]);
    expectClose(one.angle.in("degree"), 270, rounding);
  });
  it("refuses no mass at all and one below 0", () => {
    expect(() => resultantUnbalance([])).toThrow(/at least one mass/);
    expect(() => resultantUnbalance([{ mass: ounce(-1), radius: inch(5), angle: degree(0) }])).toThrow(
      /0 or more/,
    );
  });
});

describe("permissibleUnbalance(options)", () => {
  it("agrees with the example of 2 kg at 10 000 rpm in grade 6.3: 12 g·mm", () => {
    // ISO 21940-11, as quoted in many texts: 12.0 g·mm.
    const { amount, eccentricity } = permissibleUnbalance({
      mass: kilogram(2),
      speed: rpm(10_000),
      grade: 6.3,
      units: "metric",
    });
    expectClose(amount.in("gramMillimetre"), 12, { rel: 5e-3, because: "printed to two digits" });
    // U = 9549·G·m/n, the standard's numerical form.
    expectClose(amount.in("gramMillimetre"), (9549.3 * 6.3 * 2) / 10_000, {
      rel: 1e-5,
      because: "9549.3 is rounded",
    });
    expectClose(eccentricity.in("micrometre"), amount.in("gramMillimetre") / 2, rounding);
  });
  it("agrees with the form for pounds and ounces: U = 6.015·G·W/N", () => {
    // As printed by the trade press for ISO 1940-1 (energy-tech.com, article 18389): W in lb, N in rpm, U in oz·in.
    const { amount } = permissibleUnbalance({ mass: pound(180), speed: rpm(110), grade: 6.3 });
    expectClose(amount.in("ounceInch"), (6.015 * 6.3 * 180) / 110, {
      rel: 2e-4,
      because: "6.015 is printed to four digits",
    });
  });
  it("shares the whole between two bearings, more to the nearer, and falls as the speed grows", () => {
    const rotor = { mass: pound(180), speed: rpm(110), grade: 16 };
    const { amount, atBearings } = permissibleUnbalance({ ...rotor, toBearings: [inch(6), inch(18)] });
    expectClose(
      atBearings![0].in("ounceInch") + atBearings![1].in("ounceInch"),
      amount.in("ounceInch"),
      rounding,
    );
    expectClose(atBearings![0].in("ounceInch"), 3 * atBearings![1].in("ounceInch"), rounding);
    expectClose(permissibleUnbalance({ ...rotor, speed: rpm(220) }).amount.si, amount.si / 2, rounding);
  });
  it("refuses a grade that the standard does not print, and a rotor at rest", () => {
    expect(() => permissibleUnbalance({ mass: kilogram(2), speed: rpm(100), grade: 5 })).toThrow(
      /grade must be one of 0.4, 1, 2.5, 6.3/,
    );
    expect(() => permissibleUnbalance({ mass: kilogram(2), speed: rpm(0), grade: 16 })).toThrow(
      /speed must be above 0/,
    );
    expect(() =>
      permissibleUnbalance({ mass: kilogram(2), speed: rpm(9), grade: 16, toBearings: [mm(0), mm(9)] }),
    ).toThrow(/distances to the bearings/);
  });
});

describe("balanceOnWays(table, options)", () => {
  const options = { radius: inch(14), massUncertainty: ounce(0.2) };
  const rows = (heavy: number, at: number, marks: readonly number[], friction = 6): string[] =>
    marks.map((mark) => `${mark},${friction - heavy * Math.cos(((mark - at) * Math.PI) / 180)}`);
  it("finds a heavy side of known truth, apart from friction", () => {
    const result = balanceOnWays(
      tableOf("angle [deg],mass [oz]", ...rows(4, 30, [0, 45, 90, 135, 180, 225, 270, 315])),
      options,
    );
    expectClose(result.heavy.amount.value.in("ounceInch"), 56, rounding);
    expectClose(result.heavy.angle.value.in("degree"), 30, rounding);
    expectClose(result.correction.mass.value.in("ounce"), 4, rounding);
    expectClose(result.correction.angle.value.in("degree"), 210, rounding);
    expectClose(result.friction.in("ounce"), 6, rounding);
    expect(result.warnings).toEqual([]);
  });
  it("takes what a balanced wheel shows for friction alone", () => {
    const result = balanceOnWays(tableOf("angle [deg],mass [oz]", ...rows(0, 0, [0, 90, 180, 270])), options);
    expect(result.chance).toBeGreaterThan(0.99);
  });
  it("widens the uncertainty where the masses scatter, and says so", () => {
    const even = rows(4, 30, [0, 45, 90, 135, 180, 225, 270, 315]);
    const rough = even.map((row, i) =>
      row.replace(/[\d.]+$/, (mass) => String(Number(mass) + (i % 2 === 0 ? 1 : -1))),
    );
    const [calm, wild] = [even, rough].map((lines) =>
      balanceOnWays(tableOf("angle [deg],mass [oz]", ...lines), options),
    );
    expect(wild!.warnings.join()).toMatch(/scatter/);
    expect(wild!.heavy.amount.standardUncertainty.si).toBeGreaterThan(
      3 * calm!.heavy.amount.standardUncertainty.si,
    );
  });
  it("asks for four marks, a radius and an uncertainty", () => {
    const table = tableOf("angle [deg],mass [oz]", ...rows(4, 30, [0, 120, 240]));
    expect(() => balanceOnWays(table, options)).toThrow(/at least 4 different marks/);
    expect(() => balanceOnWays(table, { ...options, radius: inch(0) })).toThrow(/radius must be above 0/);
    expect(() => balanceOnWays(table, { ...options, massUncertainty: ounce(0) })).toThrow(/massUncertainty/);
    expect(() => balanceOnWays(tableOf("angle [deg],mass [oz]", "0,-1", "90,1"), options)).toThrow(
      /line 2: mass/,
    );
  });
});

describe("balanceWithoutPhase(table, options)", () => {
  const runs = (o: number, t: number, at: number, places: readonly number[]): string[] =>
    places.map(
      (place) =>
        `3,${place},${Math.sqrt(o * o + t * t + 2 * o * t * Math.cos(((place - at) * Math.PI) / 180))}`,
    );
  const header = "mass [oz],angle [deg],amplitude [thou]";
  it("finds a known unbalance from the first run and three trials, at any three places", () => {
    for (const places of [
      [0, 120, 240],
      [10, 95, 200],
      [0, 72, 144, 216, 288],
    ]) {
      const result = balanceWithoutPhase(tableOf(header, "0,0,5", ...runs(5, 3, 40, places)), {
        radius: inch(13),
      });
      expectClose(result.mass.value.in("ounce"), 5, rounding);
      expectClose(result.angle.value.in("degree"), 220, rounding);
      expectClose(result.amount.in("ounceInch"), 65, rounding);
      expect(result.disagreement).toBeLessThan(1e-6);
    }
  });
  it("agrees with the method that reads phases, on the same machine", () => {
    // 5 oz at 40° answered by 1 thou an ounce: correcting mass 5 oz at 220°.
    const result = balanceWithoutPhase(tableOf(header, "0,0,5", ...runs(5, 3, 40, [0, 120, 240])), {
      radius: inch(13),
    });
    expectClose(result.mass.value.in("ounce") * 1, 5, rounding);
  });
  it("says when the trials contradict the first run", () => {
    const result = balanceWithoutPhase(tableOf(header, "0,0,5", ...runs(8, 3, 40, [0, 120, 240])), {
      radius: inch(13),
    });
    expect(result.warnings.join()).toMatch(/disagree/);
  });
  it("refuses trial masses of 0, of different size, and trials that change nothing", () => {
    const options = { radius: inch(13) };
    expect(() => balanceWithoutPhase(tableOf(header, "0,0,5", "0,120,5"), options)).toThrow(
      /every trial mass .* is 0/,
    );
    expect(() => balanceWithoutPhase(tableOf(header, "3,0,5", "3,120,5"), options)).toThrow(
      /a run with mass 0/,
    );
    expect(() =>
      balanceWithoutPhase(tableOf(header, "0,0,5", "3,0,5", "2,120,6", "3,240,7"), options),
    ).toThrow(/the same mass/);
    expect(() =>
      balanceWithoutPhase(tableOf(header, "0,0,5", ...runs(5, 0.05, 40, [0, 120, 240])), options),
    ).toThrow(/a larger trial mass is needed/);
    expect(() =>
      balanceWithoutPhase(tableOf(header, "0,0,5", ...runs(5, 3, 40, [0, 120, 120])), options),
    ).toThrow(/balanceWithoutPhase: .*3 different places at least, got 2 in .*tell the same/);
  });
});

describe("splitCorrection(mass, angle, places)", () => {
  const spokes = [0, 60, 120, 180, 240, 300].map(degree);
  it("gives two neighbouring spokes shares that add up to the mass wanted", () => {
    for (const wanted of [7, 59, 61, 200, 359]) {
      const { shares } = splitCorrection(ounce(5), degree(wanted), spokes);
      const [x, y] = [Math.cos, Math.sin].map((f) =>
        shares.reduce((sum, { angle, mass }) => sum + mass.in("ounce") * f(angle.si), 0),
      );
      expectClose(Math.hypot(x!, y!), 5, rounding);
      expectClose(((Math.atan2(y!, x!) * 180) / Math.PI + 360) % 360, wanted, {
        rel: 1e-8,
        because: "rounding of angles",
      });
    }
  });
  it("gives all to a spoke that is right there, also across a whole turn", () => {
    expect(splitCorrection(ounce(5), degree(120), spokes).shares).toHaveLength(1);
    expect(splitCorrection(ounce(5), degree(360), spokes).shares[0]!.angle.in("degree")).toBe(0);
  });
  it("keeps mass times radius where places have radii of their own", () => {
    const places = [
      { angle: degree(0), radius: inch(10) },
      { angle: degree(90), radius: inch(7) },
    ];
    const { shares } = splitCorrection(ounce(5), degree(30), places, { radius: inch(14) });
    const [x, y] = shares.map(({ mass, radius }) => mass.in("ounce") * radius!.in("inch"));
    expectClose(x!, 5 * 14 * Math.cos(Math.PI / 6), rounding);
    expectClose(y!, 5 * 14 * Math.sin(Math.PI / 6), rounding);
  });
  it("carries the doubt of mass and angle into each share, as moving them does", () => {
    const [mass, angle] = [measured(ounce(5), ounce(0.2)), measured(degree(200), degree(3))];
    const found = splitCorrection(mass, angle, spokes);
    const moved = (m: number, a: number) => splitCorrection(ounce(m), degree(a), spokes).shares;
    found.shares.forEach(({ uMass }, i) => {
      const half = (of: (sign: 1 | -1) => readonly CorrectionShare[]): number =>
        (of(1)[i]!.mass.in("ounce") - of(-1)[i]!.mass.in("ounce")) / 2;
      const byHand = Math.hypot(
        half((sign) => moved(5 + 0.2 * sign, 200)),
        half((sign) => moved(5, 200 + 3 * sign)),
      );
      expectClose(uMass!.in("ounce"), byHand, {
        rel: 1e-3,
        because: "half differences over 3° miss 5e-4 of a sine",
      });
    });
    expect(splitCorrection(ounce(5), degree(200), spokes).shares[0]!.uMass).toBeUndefined();
  });
  it("says where a place has no room for its share", () => {
    const places = [0, 90].map((at) => ({ angle: degree(at), most: ounce(3) }));
    expect(splitCorrection(ounce(5), degree(30), places).warnings).toEqual([
      "At 0° there is room for 3 oz, and 4.33 oz is wanted: fasten something denser there, or take metal away on the heavy side.",
    ]);
    expect(splitCorrection(ounce(3), degree(30), places).warnings).toEqual([]);
  });
  it("refuses a place whose radius stands alone or is none, and room for nothing", () => {
    const at = (radius: number, most = 1) => [
      { angle: degree(0), radius: inch(radius), most: ounce(most) },
      { angle: degree(90) },
    ];
    expect(() => splitCorrection(ounce(5), degree(30), at(10))).toThrow(
      /has a radius of its own: give radius/,
    );
    const radius = inch(14);
    expect(() => splitCorrection(ounce(5), degree(30), at(0), { radius })).toThrow(
      /radius at 0° must be above 0/,
    );
    expect(() => splitCorrection(ounce(5), degree(30), at(9, 0), { radius })).toThrow(
      /most at 0° must be above 0/,
    );
    expect(() => splitCorrection(ounce(5), degree(30), spokes, { radius: inch(0) })).toThrow(
      /radius must be above 0/,
    );
  });
  it("refuses places that lie half a turn apart or more about the angle wanted", () => {
    expect(() => splitCorrection(ounce(5), degree(90), [degree(0), degree(180)])).toThrow(
      /less than half a turn apart/,
    );
    expect(() => splitCorrection(ounce(5), degree(90), [degree(0)])).toThrow(/at least 2 places/);
  });
});

describe("correctionPlaces(table, wheel)", () => {
  const header = "wheel [text],angle [deg],radius [in],most [oz]";
  it("gives the places of one wheel, with radius and room where they are said", () => {
    const table = tableOf(header, "pulley,0,14,6", "other,45,8,-", "Pulley,60,-,-");
    const places = correctionPlaces(table, "pulley");
    expect(places.map(({ angle }) => angle.toString())).toEqual(["0°", "60°"]);
    expect(places.map(({ radius }) => radius?.in("inch"))).toEqual([14, undefined]);
    expect(places[0]!.most!.in("ounce")).toBe(6);
    const { shares } = splitCorrection(ounce(1), degree(0), places, { radius: inch(7) });
    expectClose(shares[0]!.mass.in("ounce"), 0.5, rounding);
  });
  it("takes a table of angles alone", () => {
    expect(correctionPlaces(tableOf("wheel [text],angle [deg]", "p,0", "p,180"), "P")).toHaveLength(2);
  });
  it("names the line of a place without angle or that stands twice, and the wheels there are", () => {
    expect(() => correctionPlaces(tableOf(header, "pulley,0,14,6"), "fan")).toThrow(
      /no place of "fan"; its wheels are pulley/,
    );
    expect(() => correctionPlaces(tableOf(header, "pulley,-,14,6"), "pulley")).toThrow(
      /line 2: a place needs its angle/,
    );
    expect(() => correctionPlaces(tableOf(header, "pulley,0,14,6", "pulley,360,14,6"), "pulley")).toThrow(
      /line 3: 360° stands twice/,
    );
  });
});

describe("drilledDepth(mass, diameter, density)", () => {
  const iron = quantity(0.26, "poundPerCubicInch");
  it("takes away just the mass of the cylinder and the cone it drills", () => {
    const [d, depth] = [0.5, drilledDepth(ounce(1), inch(0.5), iron).in("inch")];
    const height = d / 2 / Math.tan((59 * Math.PI) / 180);
    expectClose((Math.PI / 4) * d * d * (depth + height / 3) * 0.26 * 16, 1, rounding);
  });
  it("is the plain cylinder for a flat point", () => {
    expectClose(
      drilledDepth(ounce(1), inch(0.5), iron, 180).in("inch"),
      1 / 16 / 0.26 / ((Math.PI / 4) * 0.25),
      rounding,
    );
  });
  it("refuses a drill whose point alone takes more, and sizes that are none", () => {
    expect(() => drilledDepth(ounce(0.01), inch(1), iron)).toThrow(/use a smaller drill/);
    expect(() => drilledDepth(ounce(1), inch(0), iron)).toThrow(/diameter must be above 0/);
    expect(() => drilledDepth(ounce(1), inch(1), iron, 20)).toThrow(/point must lie between/);
  });
});

describe("drilledHoles(mass, angle, options)", () => {
  const iron = quantity(0.26, "poundPerCubicInch");
  const options = { drill: inch(0.5), density: iron, deepest: inch(0.5) };
  it("takes out the mass on the heavy side, in the fewest holes that stay above the depth", () => {
    const found = drilledHoles(ounce(4), degree(280), options);
    expectClose(found.angle.in("degree"), 100, rounding);
    expectClose(found.count * found.each.in("ounce"), 4, rounding);
    const hole = (depth: number): number => {
      const point = 0.25 / Math.tan((59 * Math.PI) / 180);
      return (Math.PI / 16) * (depth + point / 3) * 0.26 * 16;
    };
    expectClose(found.count * hole(found.depth.in("inch")), 4, rounding);
    expect(found.depth.si).toBeLessThanOrEqual(inch(0.5).si);
    // One hole less would have to go deeper.
    expect((found.count - 1) * hole(0.5)).toBeLessThan(4);
  });
  it("is one hole where that is shallow enough, and refuses a rim that cannot give so much", () => {
    expect(drilledHoles(ounce(0.3), degree(10), options).count).toBe(1);
    expect(() => drilledHoles(pound(10), degree(10), options)).toThrow(/more than 100 holes/);
    expect(() => drilledHoles(ounce(4), degree(10), { ...options, deepest: inch(0) })).toThrow(
      /deepest must be above 0/,
    );
  });
});
