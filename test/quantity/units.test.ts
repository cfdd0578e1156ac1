import { describe, expect, it } from "vitest";
import {
  quantity,
  type UnitName,
  unitButForCapitals,
  unitNamed,
  unitSpelled,
  unitsOf,
} from "../../kernel-helpers/quantity/index.js";
import { kinds } from "../../kernel-helpers/quantity/kinds.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

const allUnits = Object.keys(kinds).flatMap((kind) => unitsOf(kind));

/** A quantity whose kind is known only as the test runs. */
interface Untyped {
  readonly dimension: string;
  readonly si: number;
  times(other: Untyped): Untyped;
  over(other: Untyped): Untyped;
}

describe("unitNamed(name).si", () => {
  const published = readReference("nist-sp811-factors");
  const [unit, exact] = ["unit", "exact"].map((name) => published.columns.indexOf(name));
  const factors = published.numbers("factor");

  it.each(published.rows.map((row, i) => [row[unit!] as UnitName, factors[i]!, row[exact!]] as const))(
    "of %s is the published factor %d",
    (name, factor, isExact) => {
      const rel = isExact === "yes" ? 4 * Number.EPSILON : 5e-7;
      const because = isExact === "yes" ? "exact by definition" : "7 digits are printed";
      expectClose(unitNamed(name).si, factor, { rel, because });
    },
  );

  // NIST SP 811, 2008, footnote on standard gravity: 1 lbf = 4.448 221 615 260 5 N exactly. The others are
  // worked out from it with 30 decimal digits.
  it.each([
    ["lbf", 4.4482216152605],
    ["psi", 6894.757293168361],
    ["hp", 745.6998715822702],
    ["poundPerCubicInch", 27679.90471020312],
    ["longTonForce", 9964.01641818352],
    ["ounceInch", 0.000720077887375],
  ] as const)("of %s is right to the last digits", (name, factor) => {
    expectClose(unitNamed(name).si, factor, { rel: 4 * Number.EPSILON, because: "exact, but for rounding" });
  });

  it("keeps the ratios the units are made by", () => {
    const ratio = (a: UnitName, b: UnitName): number => quantity(1, a).si / quantity(1, b).si;
    const because = "exact ratio, one division";
    for (const [a, b, times] of [
      ["foot", "inch", 12],
      ["inch", "thou", 1000],
      ["inch", "mm", 25.4],
      ["metre", "mm", 1000],
      ["cm", "mm", 10],
      ["m3", "litre", 1000],
      ["kilogram", "gram", 1000],
      ["kilonewton", "newton", 1000],
      ["kilowatt", "watt", 1000],
      ["megapascal", "kilopascal", 1000],
      ["gigapascal", "megapascal", 1000],
      ["megapascal", "bar", 10],
      ["pascalSecond", "millipascalSecond", 1000],
      ["mm", "micrometre", 1000],
      ["pound", "ounce", 16],
      ["longTonForce", "shortTonForce", 1.12],
      ["lbfFoot", "lbfInch", 12],
      ["degree", "arcMinute", 60],
      ["arcMinute", "arcSecond", 60],
      ["turn", "degree", 360],
      ["turnPerSecond", "rpm", 60],
      ["hour", "minute", 60],
      ["deltaC", "deltaF", 1.8],
      ["perF", "perC", 1.8],
      ["ksi", "psi", 1000],
    ] as const)
      expectClose(ratio(a, b), times, { rel: 8 * Number.EPSILON, because });
  });

  const made: readonly (readonly [UnitName, readonly UnitName[], readonly UnitName[]])[] = [
    ["mm2", ["mm", "mm"], []],
    ["m2", ["metre", "metre"], []],
    ["inch2", ["inch", "inch"], []],
    ["mm3", ["mm2", "mm"], []],
    ["m3", ["m2", "metre"], []],
    ["inch3", ["inch2", "inch"], []],
    ["mm4", ["mm2", "mm2"], []],
    ["inch4", ["inch2", "inch2"], []],
    ["metrePerSecond", ["metre"], ["second"]],
    ["footPerMinute", ["foot"], ["minute"]],
    ["footPerSecond", ["foot"], ["second"]],
    ["metrePerSecondSquared", ["metre"], ["second", "second"]],
    ["radianPerSecond", ["radian"], ["second"]],
    ["rpm", ["turn"], ["minute"]],
    ["hertz", ["turnPerSecond"], ["turn"]],
    ["kilogramPerCubicMetre", ["kilogram"], ["m3"]],
    ["poundPerCubicInch", ["pound"], ["inch3"]],
    ["gramMillimetre", ["gram", "mm"], []],
    ["ounceInch", ["ounce", "inch"], []],
    ["kilogramSquareMetre", ["kilogram", "m2"], []],
    ["poundSquareInch", ["pound", "inch2"], []],
    ["newton", ["kilogram", "metrePerSecondSquared"], []],
    ["pascal", ["newton"], ["m2"]],
    ["megapascal", ["newton"], ["mm2"]],
    ["psi", ["lbf"], ["inch2"]],
    ["newtonMetre", ["newton", "metre"], []],
    ["joule", ["watt", "second"], []],
    ["lbfInch", ["lbf", "inch"], []],
    ["lbfFoot", ["lbf", "foot"], []],
    ["watt", ["newtonMetre", "radianPerSecond"], []],
    ["newtonPerMillimetre", ["newton"], ["mm"]],
    ["lbfPerInch", ["lbf"], ["inch"]],
    ["perC", ["metre"], ["deltaC", "metre"]],
    ["perF", ["metre"], ["deltaF", "metre"]],
    ["pascalSecond", ["pascal", "second"], []],
    ["reyn", ["psi", "second"], []],
    ["centistokes", ["mm2"], ["second"]],
    ["litrePerMinute", ["litre"], ["minute"]],
    ["cm3PerHour", ["cm", "cm", "cm"], ["hour"]],
  ];
  it.each(made)("%s is made of %j over %j, in kind and size", (name, over, under) => {
    const one = (unit: UnitName): Untyped => quantity(1, unit) as unknown as Untyped;
    const [first, ...rest] = over.map(one);
    const product = rest.reduce((a, b) => a.times(b), first!);
    const whole = under.map(one).reduce((a, b) => a.over(b), product);
    expect(whole.dimension).toBe(unitNamed(name).kind);
    expectClose(whole.si, unitNamed(name).si, { rel: 4 * Number.EPSILON, because: "a few roundings" });
  });

  it("stands in a table that cannot be changed", () => {
    for (const name of allUnits)
      expect(Object.isFrozen(unitNamed(name)) && Object.isFrozen(unitNamed(name).also)).toBe(true);
  });

  it("rejects a name that is no unit's, an inherited one too", () => {
    expect(() => unitNamed("cubit" as UnitName)).toThrow(/^unitNamed: unit must be .* got cubit$/);
    expect(() => unitNamed("constructor" as UnitName)).toThrow(RangeError);
  });
});

describe("unitSpelled(spelling)", () => {
  it("knows each unit by its name, its symbol and its other spellings, and no two by one", () => {
    expect(new Set(allUnits).size).toBe(allUnits.length);
    for (const name of allUnits)
      for (const spelling of [name, unitNamed(name).symbol, ...unitNamed(name).also])
        expect([spelling, unitSpelled(spelling)]).toEqual([spelling, name]);
  });
  it.each([
    [" in ", "inch"],
    ["in.", "inch"],
    ['"', "inch"],
    ["mm^2", "mm2"],
    ["mm²", "mm2"],
    ["lb/in^3", "poundPerCubicInch"],
    ["m/s2", "metrePerSecondSquared"],
    ["lbf ft", "lbfFoot"],
    ["ft-lbf", "lbfFoot"],
    ["ft-lb", "lbfFoot"],
    ["N m", "newtonMetre"],
    ["N·m", "newtonMetre"],
    ["N⋅m", "newtonMetre"],
    ["oz-in", "ounceInch"],
    ["um", "micrometre"],
    ["μm", "micrometre"],
    ["µm", "micrometre"],
    ["kg·m²", "kilogramSquareMetre"],
    ["short tonf", "shortTonForce"],
  ])("reads %j as %s", (spelling, name) => {
    expect(unitSpelled(spelling)).toBe(name);
  });
  it.each(["", "MM", "cubit", "inn", "m m", "constructor", "°F", "F"])("does not guess %j", (spelling) => {
    expect(unitSpelled(spelling)).toBeUndefined();
  });
});

describe("unitButForCapitals(spelling)", () => {
  it("names the one unit meant", () => {
    expect(unitButForCapitals("RPM")).toBe("rpm");
    expect(unitButForCapitals("IN")).toBe("inch");
    expect(unitButForCapitals("mpa")).toBe("megapascal");
  });
  it("names none where there is none", () => {
    expect(unitButForCapitals("cubit")).toBeUndefined();
  });
});

describe("unitsOf(kind)", () => {
  it("names the units of a kind in the order of the table", () => {
    expect(unitsOf("length")).toEqual(["metre", "mm", "cm", "micrometre", "inch", "thou", "foot"]);
    expect(unitsOf("bending stiffness")).toEqual([]);
  });
});
