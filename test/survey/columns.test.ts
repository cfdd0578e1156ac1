import { describe, expect, it } from "vitest";
import { degree, inch, lbf, radian } from "../../kernel-helpers/quantity/index.js";
import {
  anglesOf,
  column,
  columnsNamed,
  lengthsOf,
  numbersOf,
  quantitiesOf,
  textOf,
} from "../../kernel-helpers/survey/columns.js";
import { tableOf } from "../support/faults-of.js";

const long = tableOf(
  "station [in],angle [deg],diameter [in],repeat [-],pull [lbf],remark\n1,90,2 7/16,1,120,x\n2,-,-,-,-,",
);
const wide = tableOf("station [in],bore @ 0 deg [in],bore @ 90 deg [in]\n1,2.01,2.02\n");

describe("column(table, name, choice)", () => {
  it("finds a column by its name, in any case", () => {
    expect(column(long, " Diameter ").header).toBe("diameter [in]");
  });
  it("finds one of the wide form by its angle, a whole turn more or less", () => {
    expect(column(wide, "bore", { angle: degree(90) }).header).toBe("bore @ 90 deg [in]");
    expect(column(wide, "bore", { angle: radian(-2 * Math.PI) }).header).toBe("bore @ 0 deg [in]");
  });
  it("says which columns there are where there is none of that name or angle", () => {
    expect(() => column(wide, "diameter")).toThrow(
      'column: survey has no column "diameter"; its columns are "station [in]", "bore @ 0 deg [in]", "bore @ 90 deg [in]"',
    );
    expect(() => column(wide, "bore", { angle: degree(180) })).toThrow(/has no column "bore" at 180°/);
    expect(() => column(wide, "bore", { angle: degree(45) })).toThrow(
      /has no column "bore" at 45°; its columns/,
    );
  });
  it("asks for the angle where several have one name", () => {
    expect(() => column(wide, "bore")).toThrow(/has 2 columns "bore", say which with \{ angle \}/);
  });
});

describe("columnsNamed(table, name)", () => {
  it("gives all of one name, in the order of the file, or none", () => {
    expect(columnsNamed(wide, "bore").map(({ values }) => values[0])).toEqual([2.01 * 0.0254, 2.02 * 0.0254]);
    expect(columnsNamed(wide, "angle")).toEqual([]);
  });
});

describe("lengthsOf(table, name, choice), anglesOf, quantitiesOf, numbersOf, textOf", () => {
  it("give one value a row, undefined or NaN where none was taken", () => {
    expect(lengthsOf(long, "diameter")).toEqual([inch(2.4375), undefined]);
    expect(lengthsOf(wide, "bore", { angle: degree(90) })).toEqual([inch(2.02)]);
    expect(anglesOf(long)).toEqual([degree(90), undefined]);
    expect(quantitiesOf(long, "pull", "force")).toEqual([lbf(120), undefined]);
    expect(numbersOf(long, "repeat")).toEqual([1, Number.NaN]);
    expect(textOf(long, "diameter")).toEqual(["2 7/16", "-"]);
  });
  it("show lengths in the unit of the table", () => {
    expect(String(lengthsOf(long, "diameter")[0])).toBe("2.4375 in");
  });
  it("refuse a column that holds something else", () => {
    expect(() => lengthsOf(long, "angle")).toThrow(
      new TypeError('column "angle [deg]" of survey: must hold lengths, got angles'),
    );
    expect(() => anglesOf(long, "remark")).toThrow(/must hold angles, got words/);
    expect(() => numbersOf(long, "diameter")).toThrow(/must hold numbers, got lengths/);
    expect(() => quantitiesOf(long, "pull", "mass")).toThrow(/must hold masses, got forces/);
  });
});
