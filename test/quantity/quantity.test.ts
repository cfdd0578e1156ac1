import { inspect } from "node:util";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type AnyQuantity,
  degree,
  hertz,
  hp,
  inch,
  inch2,
  isQuantity,
  kilogram,
  type Length,
  lbf,
  lbfFoot,
  metre,
  mm,
  poundPerCubicInch,
  psi,
  quantity,
  quantityFromJson,
  quantityFromSi,
  radian,
  rpm,
  second,
  thou,
  turn,
  type UnitName,
  unitsOf,
} from "../../kernel-helpers/quantity/index.js";
import { kinds } from "../../kernel-helpers/quantity/kinds.js";
import { expectClose } from "../support/expect-close.js";

const rounding = { rel: 4 * Number.EPSILON, because: "a few roundings" };
const sizes = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
const signed = fc.tuple(sizes, fc.boolean()).map(([size, negative]) => (negative ? -size : size));
const allUnits = Object.keys(kinds).flatMap((kind) => unitsOf(kind));

// Worked out from the exact definitions of NIST SP 811, 2008, Appendix B, with 30 decimal digits.
describe("quantities converted", () => {
  it("agree with the published factors", () => {
    expectClose(lbfFoot(250).in("newtonMetre"), 338.95448708285, {
      ...rounding,
      because: "exact definitions",
    });
    expectClose(psi(3000).in("megapascal"), 20.684271879505, { rel: 1e-13, because: "14 digits are given" });
    expectClose(hp(1).in("watt"), 745.6998715822702, rounding);
    expectClose(poundPerCubicInch(0.284).in("kilogramPerCubicMetre"), 7861.092937697687, rounding);
  });
  it("come back from every unit", () => {
    fc.assert(
      fc.property(signed, fc.constantFrom(...allUnits), (value, unit) => {
        const there: AnyQuantity & { in(unit: UnitName): number } = quantity(value, unit) as never;
        expectClose(there.in(unit), value, rounding);
      }),
    );
  });
});

describe("a.plus(b), a.minus(b)", () => {
  it("undo each other within the rounding of the larger", () => {
    fc.assert(
      fc.property(signed, signed, (x, y) => {
        const [a, b] = [inch(x), mm(y)];
        const abs = 4 * Number.EPSILON * Math.max(Math.abs(a.si), Math.abs(b.si));
        expectClose(a.plus(b).minus(b).si, a.si, { abs, because: "two roundings of the larger" });
      }),
    );
  });
  it("add inches to millimetres, shown as the first was written", () => {
    expect(String(inch(1).plus(mm(25.4)))).toBe("2 in");
    expect(String(mm(25.4).minus(inch(0.5)))).toBe("12.7 mm");
  });
  it("reject another kind, a plain number and a text, as the cell runs", () => {
    const untyped = inch(2) as unknown as { plus(x: unknown): unknown; minus(x: unknown): unknown };
    expect(() => untyped.plus(lbf(3))).toThrow(
      /^plus: a length and a force do not go together, got 2 in and 3 lbf$/,
    );
    expect(() => untyped.minus(3)).toThrow(/^minus: a quantity .* the plain number 3, which has no unit$/);
    expect(() => untyped.plus("3 in")).toThrow(TypeError);
  });
});

describe("a.times(b), a.over(b)", () => {
  it("undo each other", () => {
    fc.assert(
      fc.property(signed, signed, (x, y) => {
        const force: { readonly si: number; readonly dimension: string } = lbf(x)
          .times(inch(y))
          .over(inch(y));
        expectClose(force.si, lbf(x).si, rounding);
        expect(force.dimension).toBe("force");
        expectClose(inch(x).times(y).over(y).si, inch(x).si, rounding);
      }),
    );
  });
  it("give the kind the trade knows", () => {
    expect(lbf(1).times(inch(1)).dimension).toBe("torque or energy");
    expect(lbf(1).over(inch2(1)).dimension).toBe("pressure");
    expect(lbfFoot(1).times(rpm(1)).dimension).toBe("power");
    expect(turn(1).over(second(1)).dimension).toBe("rotational speed");
    expect(rpm(1).times(inch(1)).dimension).toBe("speed");
    expect(hp(1).over(rpm(1)).dimension).toBe("torque or energy");
    expect(hertz(1).times(radian(1)).dimension).toBe("rotational speed");
    expect(inch(1).times(degree(1)).dimension).toBe("length");
    expect(psi(1).times(psi(1)).dimension).toMatch(/^unnamed \(length -2, mass 2, time -4/);
  });
  it("give a plain number where all units cancel", () => {
    expect(inch(5).over(inch(2))).toBe(2.5);
    expect(hertz(2).times(second(3))).toBe(6);
  });
  // 1 hp = 33 000 ft·lbf/min by definition, so P[hp] = T[lbf·ft]·n[rpm]/5252.113…
  it("turn torque and speed into horsepower", () => {
    expectClose(lbfFoot(100).times(rpm(200)).in("hp"), (100 * 200 * 2 * Math.PI) / 33000, rounding);
  });
  it("reject a divisor of 0 and a factor that is no finite number", () => {
    expect(() => inch(2).over(0)).toThrow(/^over: the divisor must not be 0, got 0$/);
    expect(() => inch(2).over(inch(0))).toThrow(/^over: the divisor must not be 0, got 0 in$/);
    expect(() => inch(2).times(Number.NaN)).toThrow(/^times: value must be a finite number, got NaN$/);
    expect(() => inch(2).over(Number.POSITIVE_INFINITY)).toThrow(RangeError);
    expect(() => metre(1e300).times(1e300)).toThrow(/^quantity: a length must be a finite number/);
  });
});

describe("a.squareRoot(), a.absolute()", () => {
  it("take the side of a square", () => {
    fc.assert(
      fc.property(sizes, (x) => {
        expectClose(inch(x).times(inch(x)).squareRoot().si, inch(x).si, rounding);
      }),
    );
    expect(String(inch2(9).squareRoot())).toBe("3 in");
    expect(String(inch(-2).absolute())).toBe("2 in");
  });
  it("reject an odd kind and a negative value", () => {
    expect(() => lbf(4).squareRoot()).toThrow(/^squareRoot: a force has no square root/);
    expect(() => inch2(-4).squareRoot()).toThrow(/^squareRoot: value must not be negative, got −4 in²$/);
  });
});

describe("a.in(unit), a.as(unit)", () => {
  it("read and show in another unit of the kind", () => {
    expectClose(inch(2.4375).in("mm"), 61.9125, rounding);
    expect(String(inch(1).as("mm"))).toBe("25.4 mm");
    expect(inch(1).as("mm").si).toBe(inch(1).si);
  });
  it("reject a unit of another kind and an unknown one", () => {
    const untyped = inch(2) as unknown as { in(x: string): number; as(x: string): unknown };
    expect(() => untyped.in("psi")).toThrow(/^in: psi measures a pressure, but this is a length$/);
    expect(() => untyped.as("rpm")).toThrow(/^as: rpm measures a rotational speed, but this is a length$/);
    expect(() => untyped.in("cubit")).toThrow(RangeError);
  });
});

describe("quantity(value, unit), quantityFromSi(kind, si, unit)", () => {
  it("make the same quantity", () => {
    expect(quantityFromSi("length", 0.0254, "inch").in("inch")).toBe(1);
    expect(quantity(1, "inch").si).toBe(0.0254);
  });
  it("reject what is no finite number, naming the maker", () => {
    expect(() => inch(Number.NaN)).toThrow(/^inch: value must be a finite number, got NaN$/);
    expect(() => inch("2" as unknown as number)).toThrow(/^inch: value must be a finite number, got 2$/);
    expect(() => inch(Number.POSITIVE_INFINITY)).toThrow(RangeError);
    expect(() => quantityFromSi("length", Number.NaN)).toThrow(RangeError);
  });
  it("reject a kind that is none, a plain number's, and a unit of another kind", () => {
    expect(() => quantityFromSi("weight", 1)).toThrow(/kind must be a known kind/);
    expect(() => quantityFromSi("number", 1)).toThrow(
      /^quantityFromSi: a plain number is no quantity, got 1$/,
    );
    expect(() => quantityFromSi("length", 1, "psi" as never)).toThrow(
      /^quantityFromSi: unit must measure a length, got psi$/,
    );
  });
});

describe("JSON.stringify(a), quantityFromJson(json)", () => {
  it("keep value, kind and unit to the last bit", () => {
    fc.assert(
      fc.property(signed, fc.constantFrom(...allUnits), (value, unit) => {
        const there: AnyQuantity = quantity(value, unit);
        const back = quantityFromJson(JSON.parse(JSON.stringify(there)));
        expect(back.si).toBe(there.si);
        expect([back.dimension, back.writtenIn]).toEqual([there.dimension, there.writtenIn]);
      }),
    );
  });
  it("keep a kind without a name and a quantity without a unit", () => {
    const there = psi(3).times(psi(2));
    expect(String(quantityFromJson(JSON.parse(JSON.stringify(there))))).toBe(String(there));
    expect(JSON.stringify(quantityFromSi("length", 1))).toBe('{"dimension":"length","si":1}');
  });
  it("reject what is no quantity", () => {
    for (const broken of [null, {}, { dimension: "length" }, { dimension: "length", si: "1" }])
      expect(() => quantityFromJson(broken as never)).toThrow(/^quantityFromJson: a quantity has/);
    expect(() => quantityFromJson({ dimension: "length", si: 1, unit: "psi" })).toThrow(TypeError);
    expect(() => quantityFromJson({ dimension: "length", si: 1, unit: "cubit" as never })).toThrow(
      RangeError,
    );
    expect(() => quantityFromJson({ dimension: "constructor", si: 1 })).toThrow(RangeError);
  });
});

describe("a quantity", () => {
  it("is frozen", () => {
    const a = inch(1);
    expect(Object.isFrozen(a)).toBe(true);
    expect(() => Object.assign(a, { si: 2 })).toThrow(TypeError);
  });
  it("compares with < and >, whatever the units", () => {
    expect(inch(1) < mm(26)).toBe(true);
    expect(inch(1) > mm(25)).toBe(true);
    expect(thou(1000) >= inch(1)).toBe(true);
  });
  it("prints itself with its unit, in a text, in a list and as plain tslab shows a last value", () => {
    expect(`${inch(2.4375)}`).toBe("2.4375 in");
    expect(inspect(inch(2.4375))).toBe("2.4375 in");
    expect(inspect([inch(1), degree(30)])).toBe("[ 1 in, 30° ]");
    expect(inspect({ bore: mm(61.9) })).toBe("{ bore: 61.9 mm }");
  });
  it("joined to a text is written with its unit, not in metres", () => {
    const join = (a: unknown, b: unknown): unknown => (a as string) + (b as string);
    expect(join("bore ", inch(2.5))).toBe("bore 2.5 in");
    expect(join(inch(1), inch(2))).toBe("1 in2 in");
  });
  it("without a unit of the trade shows itself in SI base units", () => {
    expect(String(psi(1).times(inch2(1)).times(inch2(1)))).toBe("0.00286981 m³·kg·s⁻²");
  });
  it("that was computed shows itself in the system of its parts", () => {
    expect(String(lbf(50).times(inch(30)))).toBe("125 lbf·ft");
    expect(String(kilogram(2).over(mm(10).times(mm(10)).times(mm(10))))).toBe("2000000 kg/m³");
    expect(String(rpm(300).times(inch(2)))).toBe("314.159 ft/min");
  });
});

describe("isQuantity(value, kind)", () => {
  it("tells quantities from the rest", () => {
    expect(isQuantity(inch(1))).toBe(true);
    expect(isQuantity(inch(1), "length")).toBe(true);
    expect(isQuantity(inch(1), "force")).toBe(false);
    for (const other of [1, "1 in", null, undefined, { dimension: "length", si: 1 }])
      expect(isQuantity(other)).toBe(false);
  });
  it("narrows the type", () => {
    const value: unknown = inch(1);
    const length: Length | undefined = isQuantity(value, "length") ? value : undefined;
    expect(length?.in("inch")).toBe(1);
  });
});
