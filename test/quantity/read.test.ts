import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  inch,
  inFraction,
  type KindName,
  quantity,
  readAngle,
  readLength,
  readQuantity,
  readTemperature,
  unitNamed,
  unitsOf,
} from "../../kernel-helpers/quantity/index.js";
import { kinds } from "../../kernel-helpers/quantity/kinds.js";
import { expectClose } from "../support/expect-close.js";

const rounding = { rel: 1e-15, because: "a few roundings" };
const allUnits = Object.keys(kinds).flatMap((kind) => unitsOf(kind));

describe("readLength(text)", () => {
  it.each([
    ["2 7/16 in", 2.4375],
    ['2.4375"', 2.4375],
    ["2-7/16 in.", 2.4375],
    ["2 7/16″", 2.4375],
    ["½ in", 0.5],
    ["2½ in", 2.5],
    ["-2 7/16 in", -2.4375],
    ["−0.0043 in", -0.0043],
    ["2 thou", 0.002],
    ["2 mils", 0.002],
    ["61.9 mm", 61.9 / 25.4],
    ["61.9mm", 61.9 / 25.4],
    ["58 µm", 0.058 / 25.4],
    ["1.2e-3 in", 0.0012],
    ["1 ft 3 in", 15],
    ["1ft 3 in", 15],
    ["-1 ft 3 in", -15],
    [`5'6"`, 66],
    [`5' 6"`, 66],
    [`5'-6 1/2"`, 66.5],
    ["5′ 6 1⁄2″", 66.5],
    ["  2 7/16   in  ", 2.4375],
    ["2 7/16\u00a0in", 2.4375],
  ])("reads %j", (text, inches) => {
    expectClose(readLength(text).in("inch"), inches, rounding);
  });

  it.each([
    ["", "nothing stands here, a number with its unit was expected"],
    ["2.4375", /^"2\.4375" has no unit: write one of m, mm, cm, µm, in, thou, ft behind the number$/],
    ["in", /^"in" is not a number with its unit: write e\.g\. 2\.4375 in/],
    ["2.5 furlong", /^"2\.5 furlong": "furlong" is not a known unit; a length is written in m, mm/],
    ["2.5 MM", /^"2\.5 MM": "MM" is not a known unit; did you mean mm\?$/],
    ["2.5O3 in", /^"2\.5O3" holds the letter O for a zero: write 2\.503$/],
    ["2.5O3in", /^"2\.5O3" holds the letter O for a zero: write 2\.503$/],
    ["O.5 in", /^"O\.5" holds the letter O for a zero: write 0\.5$/],
    ["2.l5 in", /^"2\.l5" holds a letter for a one: write 2\.15$/],
    ["2,4375 in", /^"2,4375" holds a comma: write 2\.4375/],
    ["2.5.3 in", /^"2\.5\.3" is not a number$/],
    ["2 17/16 in", /fraction of 1 or more/],
    ["10 000 mm", /^"10 000 mm": each number needs its unit; thousands are written without a space$/],
    ["3 in 1 ft", /^"3 in 1 ft": write each unit once, the larger first$/],
    ["3 in 2 in", /write each unit once/],
    ["1 ft -3 in", /only the first number may have a sign$/],
    ["2 in x", /^"2 in x": "in x" is not a known unit/],
    ["2 ± 1 in", /is not a known unit/],
  ])("refuses %j as no length, in words", (text, message) => {
    expect(() => readLength(text)).toThrow(SyntaxError);
    expect(() => readLength(text)).toThrow(message);
  });

  it("refuses a unit of another kind", () => {
    expect(() => readLength("2 psi")).toThrow(
      /^"2 psi": psi measures a pressure, but a length was expected$/,
    );
    expect(() => readLength("2 psi")).toThrow(TypeError);
  });

  it("reads what inFraction writes", () => {
    fc.assert(
      fc.property(fc.integer({ min: -6400, max: 6400 }), (parts) => {
        expect(readLength(inFraction(inch(parts / 64))).si).toBe(inch(parts / 64).si);
      }),
    );
  });

  it("gives a length or a fault in words for any text whatever", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...`0127.,/ -+−½'"inmftOle⅛±°`) }), (text) => {
        try {
          expect(Number.isFinite(readLength(text).si)).toBe(true);
        } catch (error) {
          expect(["SyntaxError", "TypeError"]).toContain((error as Error).name);
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe("readQuantity(text, kind, bareUnit)", () => {
  it.each([
    ["1200 lbf", "force", "1200 lbf"],
    ["250 ft-lb", "torque or energy", "250 lbf·ft"],
    ["250 lbf ft", "torque or energy", "250 lbf·ft"],
    ["0.284 lb/in3", "density", "0.284 lb/in³"],
    ["12 N/mm2", "pressure", "12 MPa"],
    ["3000 psi", "pressure", "3000 psi"],
    ["200 rpm", "rotational speed", "200 rpm"],
    ["5 lb 4 oz", "mass", "5.25 lb"],
    ["11.7e-6 /K", "thermal expansion", "1.17×10⁻⁵ /°C"],
    ["10 cP", "dynamic viscosity", "10 mPa·s"],
  ] as const)("reads %j as %s", (text, kind, shown) => {
    expect(String(readQuantity(text, kind))).toBe(shown);
  });
  it("reads back what every unit prints", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e12, max: 1e12, noNaN: true }),
        fc.constantFrom(...allUnits),
        (value, unit) => {
          const there: { readonly si: number } = quantity(value, unit);
          const back: { readonly si: number } = readQuantity(String(there), unitNamed(unit).kind as KindName);
          expectClose(back.si, there.si, { rel: 5.1e-6, abs: 1e-300, because: "six digits are printed" });
        },
      ),
    );
  });
  it("takes a number without unit only where a unit is given for it", () => {
    expect(String(readQuantity("0.0043", "length", "inch"))).toBe("0.0043 in");
    expect(String(readQuantity("61.9 mm", "length", "inch"))).toBe("61.9 mm");
    expect(() => readQuantity("0.0043", "length")).toThrow(/has no unit/);
  });
  it("tells pounds of mass from pounds of force", () => {
    expect(() => readQuantity("12 lb", "force")).toThrow(
      /a force was expected; a force in pounds is written lbf$/,
    );
    expect(() => readQuantity("12 lbf", "mass")).toThrow(
      /a mass was expected; a mass in pounds is written lb$/,
    );
  });
});

describe("readAngle(text)", () => {
  it.each([
    ["90 deg", 90],
    ["90°", 90],
    ["0.25 turn", 90],
    [`2° 23' 10"`, 2 + 23 / 60 + 10 / 3600],
    [`2°23'10"`, 2 + 23 / 60 + 10 / 3600],
    ["2° 23′ 10″", 2 + 23 / 60 + 10 / 3600],
    ["-1° 30'", -1.5],
    ["30'", 0.5],
  ])("reads %j", (text, degrees) => {
    expectClose(readAngle(text).in("degree"), degrees, rounding);
  });
  it("refuses a length", () => {
    expect(() => readAngle("2 in")).toThrow(/in measures a length, but an angle was expected/);
  });
});

describe("readTemperature(text)", () => {
  it.each([
    ["68 °F", "68 °F"],
    ["68F", "68 °F"],
    ["68 degF", "68 °F"],
    ["68 deg F", "68 °F"],
    ["20 °C", "20 °C"],
    ["20 ° C", "20 °C"],
    ["−5 °C", "−5 °C"],
    ["300 K", "300 K"],
    ["300 kelvin", "300 K"],
  ])("reads %j", (text, shown) => {
    expect(String(readTemperature(text))).toBe(shown);
  });
  it("refuses a text without scale, a difference, a bad number and what lies below absolute zero", () => {
    for (const text of ["68", "", "68 °", "68 °F (difference)", "68 °R"])
      expect(() => readTemperature(text)).toThrow(/a temperature with its scale was expected/);
    expect(() => readTemperature("6B °F")).toThrow(/"6B" is not a number/);
    expect(() => readTemperature("°F")).toThrow(/nothing stands here/);
    expect(() => readTemperature("-300 °C")).toThrow(/absolute zero/);
  });
});
