import { describe, expect, it } from "vitest";
import { material } from "../../../kernel-helpers/handbook/index.js";
import {
  foot,
  inch,
  mm,
  poundPerCubicInch,
  psi,
  quantity,
  rpm,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import { beltAlignment, rimSpeed, stringGaps, wheelRunOut } from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";
import { tableOf } from "../balance/support.js";

const rounding = { rel: 1e-9, because: "a few roundings" };

describe("rimSpeed(options)", () => {
  const metal = { density: quantity(450 / 1728, "poundPerCubicInch"), tensileStrength: psi(10_000) };
  const at100 = { diameter: foot(10), speed: rpm((100 / 5 / (2 * Math.PI)) * 60) };
  it("agrees with the old rule of 0.097 v²: 970 psi, or about 1000, at 100 ft/s", () => {
    // Older handbooks: p = 0.097 v² psi, v in ft/s, for cast iron of 450 lb/ft³; 1000 psi at 6000 ft/min.
    const found = rimSpeed({ ...at100, metal });
    expectClose(found.stress.in("psi"), 970, { rel: 2e-3, because: "0.097 is printed to two digits" });
    expectClose(found.rimSpeed.in("footPerMinute"), 6000, rounding);
    expectClose(found.permitted.in("footPerMinute"), 6000, {
      rel: 0.02,
      because: "1000 psi for 970 psi: the rule is rounded",
    });
  });
  it("permits the speed at which the stress is just what is permitted", () => {
    const found = rimSpeed({ ...at100, metal, jointEfficiency: 0.25 });
    const again = rimSpeed({ ...at100, speed: found.permittedTurning, metal, jointEfficiency: 0.25 });
    expectClose(again.stress.si, found.permittedStress.si, rounding);
    // Half the speed for a quarter of the strength.
    expectClose(found.permitted.si, rimSpeed({ ...at100, metal }).permitted.si / 2, rounding);
    expect(found.state).toBe("beyond");
  });
  it("takes a material of the handbook at its heaviest and weakest", () => {
    const iron = material("grey iron class 20");
    const found = rimSpeed({ ...at100, metal: iron });
    expectClose(found.permittedStress.si, iron.tensile!.low.si / 10, rounding);
    expectClose(found.stress.si, iron.density.high.si * 30.48 ** 2, rounding);
  });
  it("refuses a rim at rest and factors out of range", () => {
    expect(() => rimSpeed({ ...at100, metal, speed: rpm(0) })).toThrow(/speed must be above 0/);
    expect(() => rimSpeed({ ...at100, metal, safetyFactor: 0.5 })).toThrow(/safetyFactor must be at least 1/);
    expect(() => rimSpeed({ ...at100, metal, jointEfficiency: 1.5 })).toThrow(/jointEfficiency/);
    expect(() => rimSpeed({ ...at100, metal: { ...metal, density: poundPerCubicInch(0) } })).toThrow(
      /density/,
    );
  });
});

describe("wheelRunOut(table, options)", () => {
  const options = { faceRadius: inch(14), readingUncertainty: thou(0.3) };
  const eighths = [0, 45, 90, 135, 180, 225, 270, 315];
  const cos = (degrees: number): number => Math.cos((degrees * Math.PI) / 180);
  const table = (
    rim: (a: number) => number,
    face: (a: number) => number,
    angles: readonly number[] = eighths,
  ) => tableOf("angle [deg],rim [thou],face [thou]", ...angles.map((a) => `${a},${rim(a)},${face(a)}`));
  it("finds offset, lean and out of round of known truth, each by itself", () => {
    const found = wheelRunOut(
      table(
        (a) => 3 + 5 * cos(a - 30) + 2 * cos(2 * (a - 10)),
        (a) => 7 * cos(a - 200),
      ),
      options,
    );
    expectClose(found.rim.once.value.in("thou"), 5, rounding);
    expectClose(found.rim.towards.value.in("degree"), 30, rounding);
    expectClose(found.lean!.value.in("radian"), 0.007 / 14, rounding);
    expectClose(found.face!.towards.value.in("degree"), 200, rounding);
    expect(found.rim.rest.in("thou")).toBeGreaterThan(3);
    expect(found.face!.rest.in("thou")).toBeLessThan(1e-9);
  });
  it("reads twice the eccentricity on the indicator where nothing else is wrong", () => {
    const found = wheelRunOut(
      table(
        (a) => 5 * cos(a),
        () => 0,
      ),
      options,
    );
    expectClose(found.rim.tir.in("thou"), 10, rounding);
    expect(found.face!.real).toBe(false);
  });
  it("keeps an oval out of the offset also where the marks are unevenly spaced", () => {
    const angles = [0, 20, 50, 100, 160, 230, 300, 340];
    const found = wheelRunOut(
      table(
        (a) => 4 * cos(2 * a),
        () => 0,
        angles,
      ),
      options,
    );
    expect(found.rim.once.value.in("thou")).toBeLessThan(1e-9);
  });
  it("tells the seat's offset and lean, which the hub shows, from the wheel's own", () => {
    // The hub 2 thou off towards 90°, the rim 5 thou off it towards 0°: the rim is √29 off the axis, at atan(2/5).
    const [seat, own] = [2, 5];
    const header = "angle [deg],rim [thou],face [thou],hub [thou],hub face [thou]";
    const rows = eighths.map((a) =>
      [a, seat * cos(a - 90) + own * cos(a), 7 * cos(a - 200), seat * cos(a - 90), 1.5 * cos(a - 20)].join(),
    );
    const found = wheelRunOut(tableOf(header, ...rows), { ...options, hubFaceRadius: inch(3) });
    expectClose(found.rim.once.value.in("thou"), Math.sqrt(29), rounding);
    expectClose(found.hub!.once.value.in("thou"), seat, rounding);
    expectClose(found.ownOffset!.amount.value.in("thou"), own, rounding);
    expectClose(found.ownOffset!.towards.value.in("degree") % 360, 0, {
      rel: 1,
      abs: 1e-6,
      because: "degrees, a few roundings",
    });
    // Leans opposite each other add up: 7/14 + 1.5/3 thou an inch.
    expectClose(found.ownLean!.amount.value.in("radian"), 0.001, rounding);
    // Of two readings alike, the difference has √2 of one's uncertainty.
    const u = found.hub!.once.standardUncertainty.si;
    expectClose(found.ownOffset!.amount.standardUncertainty.si, Math.SQRT2 * u, rounding);
    expect(found.warnings).toEqual([]);
  });
  it("finds a wheel true to a hub that sits off centre", () => {
    const rows = eighths.map((a) => `${a},${4 * cos(a - 70)},${4 * cos(a - 70)}`);
    const found = wheelRunOut(tableOf("angle [deg],rim [thou],hub [thou]", ...rows), options);
    expect(found.hub!.real).toBe(true);
    expect(found.ownOffset!.real).toBe(false);
    expect(found.ownLean).toBeUndefined();
  });
  it("names what goes twice and three times a turn, peak to valley, and nothing of noise", () => {
    const found = wheelRunOut(
      table(
        (a) => 3 * cos(a) + 1.5 * cos(2 * (a - 25)) + 0.8 * cos(3 * a),
        (a) => 2 * cos(a),
      ),
      options,
    );
    expect(found.rim.lobes.map(({ order }) => order)).toEqual([2, 3]);
    expectClose(found.rim.lobes[0]!.peakToValley.value.in("thou"), 3, rounding);
    expect(found.face!.lobes).toEqual([]);
  });
  it("widens what it states where a ring is rougher than the indicator explains", () => {
    const rough = (a: number): number => 5 * cos(a) + 2 * cos(5 * a);
    const many = Array.from({ length: 24 }, (_, i) => 15 * i);
    const [calm, wild] = [(a: number) => 5 * cos(a), rough].map((rim) =>
      wheelRunOut(
        table(rim, () => 0, many),
        options,
      ),
    );
    // √(χ²/ν): χ² = 24·(2²/2)/0.3² over 17 degrees of freedom.
    const factor = Math.sqrt((24 * 2) / 0.09 / 17);
    const widths = [calm!, wild!].map(({ rim }) => rim.once.standardUncertainty.si);
    expectClose(widths[1]! / widths[0]!, factor, rounding);
  });
  it("warns where the face was not read, and asks for four marks and a good reading", () => {
    const rimOnly = tableOf("angle [deg],rim [thou]", ...eighths.map((a) => `${a},0`));
    expect(wheelRunOut(rimOnly, options).warnings.join()).toMatch(/face was not read/);
    expect(() => wheelRunOut(rimOnly, { faceRadius: inch(14) })).toThrow(/nothing says how good a reading/);
    expect(() =>
      wheelRunOut(
        table(
          (a) => a,
          () => 0,
          [0, 120, 240],
        ),
        options,
      ),
    ).toThrow(/4 different angles/);
    expect(() => wheelRunOut(tableOf("angle [deg],face [thou]", "0,1"), options)).toThrow(/a column "rim"/);
    expect(() => wheelRunOut(rimOnly, { ...options, faceRadius: inch(0) })).toThrow(/faceRadius/);
    expect(() => wheelRunOut(rimOnly, { ...options, hubFaceRadius: inch(0) })).toThrow(/hubFaceRadius/);
    expect(wheelRunOut(rimOnly, options).warnings.join()).toMatch(/hub was not read/);
    const withHub = tableOf("angle [deg],rim [thou],hub face [thou]", ...eighths.map((a) => `${a},0,0`));
    expect(() => wheelRunOut(withHub, options)).toThrow(/has a column "hub face": give hubFaceRadius/);
  });
});

describe("beltAlignment(gaps, options)", () => {
  const options = { spans: [mm(600), mm(300)] as const, centres: mm(2400), gapUncertainty: mm(0.3) };
  /** Gaps of pulleys whose planes and places are known: the string is the line y = 0. */
  const gaps = (offset: number, alpha1: number, alpha2: number, lift = 10) => {
    const first = [lift - 300 * alpha1, lift + 300 * alpha1] as const;
    const middle = lift + 2400 * alpha1 + offset;
    const second = [middle - 150 * alpha2, middle + 150 * alpha2] as const;
    return { first: first.map(mm) as never, second: second.map(mm) as never } as Parameters<
      typeof beltAlignment
    >[0];
  };
  it("finds offset and angle of known truth, however the string lies", () => {
    for (const lift of [0, 10, 35]) {
      const found = beltAlignment(gaps(4, 0.002, -0.003, lift), options);
      expectClose(found.offset.value.in("mm"), 4, rounding);
      expectClose(found.angle.value.in("radian"), -0.005, rounding);
      expectClose(found.perFoot.value.in("mm"), -1.5, rounding);
    }
  });
  it("counts the middles of faces of different width", () => {
    const found = beltAlignment(gaps(0, 0, 0), { ...options, faceWidths: [mm(120), mm(100)] });
    expectClose(found.offset.value.in("mm"), -10, rounding);
  });
  it("states the uncertainty that moving each gap by it gives", () => {
    const base = gaps(4, 0.002, -0.003);
    const keys = [
      ["first", 0],
      ["first", 1],
      ["second", 0],
      ["second", 1],
    ] as const;
    const moved = (what: "offset" | "angle"): number =>
      Math.hypot(
        ...keys.map(([pulley, i]) => {
          const pair = [...base[pulley]];
          pair[i] = pair[i]!.plus(mm(0.3));
          const other = beltAlignment({ ...base, [pulley]: pair }, options);
          return other[what].value.si - beltAlignment(base, options)[what].value.si;
        }),
      );
    const found = beltAlignment(base, options);
    expectClose(found.offset.standardUncertainty.si, moved("offset"), {
      rel: 1e-6,
      because: "linear; differences round",
    });
    expectClose(found.angle.standardUncertainty.si, moved("angle"), {
      rel: 1e-6,
      because: "linear; differences round",
    });
  });
  it("refuses spans of nothing", () => {
    expect(() => beltAlignment(gaps(0, 0, 0), { ...options, spans: [mm(0), mm(300)] })).toThrow(/first span/);
    expect(() => beltAlignment(gaps(0, 0, 0), { ...options, faceWidths: [mm(1), mm(0)] })).toThrow(
      /face width/,
    );
  });
});

describe("stringGaps(table)", () => {
  const rows = ["second away,4", "first away,1", "second towards,3", "first towards,2"];
  it("takes the four gaps in any order of rows", () => {
    const { first, second } = stringGaps(tableOf("at [text],gap [mm]", ...rows));
    expect([...first, ...second].map((gap) => gap.toString())).toEqual(["1 mm", "2 mm", "3 mm", "4 mm"]);
  });
  it("names the place that is missing, doubled or unknown", () => {
    expect(() => stringGaps(tableOf("at [text],gap [mm]", ...rows.slice(1)))).toThrow(
      /"second away" once, got 0 rows/,
    );
    expect(() => stringGaps(tableOf("at [text],gap [mm]", ...rows, "first away,1"))).toThrow(
      /"first away" once, got 2/,
    );
    expect(() => stringGaps(tableOf("at [text],gap [mm]", "third,1"))).toThrow(
      /line 2: at must be one of first away/,
    );
  });
});
