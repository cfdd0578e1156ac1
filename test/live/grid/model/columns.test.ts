import { describe, expect, it } from "vitest";
import {
  columnLook,
  headerFaults,
  nextAngleColumn,
} from "../../../../kernel-helpers/live/grid/model/index.js";

describe("columnLook(header)", () => {
  it("takes name, angle and unit apart", () => {
    expect(columnLook(" diameter @ 90 deg [in]")).toEqual({
      header: "diameter @ 90 deg [in]",
      name: "diameter",
      angle: "90 deg",
      unit: "in",
      holds: "numbers",
      isStation: false,
    });
  });

  it.each([
    ["remark", "words", ""],
    ["box [text]", "words", ""],
    ["repeat [-]", "numbers", ""],
    ["diameter", "numbers", ""],
    ["angle [deg]", "numbers", "deg"],
  ])("%s holds %s", (header, holds, unit) => {
    expect(columnLook(header)).toMatchObject({ holds, unit });
  });

  it("knows the station", () => {
    expect(columnLook("Station [mm]").isStation).toBe(true);
  });
});

describe("nextAngleColumn(headers)", () => {
  const wide = (...angles: number[]): string[] => [
    "station [in]",
    ...angles.map((angle) => `diameter @ ${angle} deg [in]`),
    "remark",
  ];

  it.each([
    [[0], 90],
    [[0, 90], 45],
    [[0, 45, 90], 135],
    [[0, 60], 120],
    [[0, 180], 90],
    [[30], 120],
  ])("after readings at %j proposes %d deg, behind the last of them", (angles, next) => {
    expect(nextAngleColumn(wide(...angles))).toEqual({
      header: `diameter @ ${next} deg [in]`,
      at: angles.length + 1,
    });
  });

  it("tells a second diameter from one without angle", () => {
    expect(nextAngleColumn(["station [mm]", "diameter [mm]", "remark"])).toEqual({
      header: "diameter @ 90 deg [mm]",
      at: 2,
    });
  });

  it("proposes nothing where the angle has a column of its own, or nothing is read", () => {
    expect(nextAngleColumn(["station [in]", "angle [deg]", "diameter [in]"])).toBeUndefined();
    expect(nextAngleColumn(["station [in]", "remark"])).toBeUndefined();
  });

  it("proposes what the table reader takes", () => {
    const headers = wide(0, 90);
    const { header, at } = nextAngleColumn(headers)!;
    expect(headerFaults(headers, header, at)).toEqual([]);
  });
});

describe("headerFaults(headers, header, at)", () => {
  const headers = ["station [in]", "diameter @ 0 deg [in]", "remark"];

  it.each([
    ["diameter @ 90 deg", /a unit in square brackets/],
    ["diameter @ 90 [in]", /an angle with its unit/],
    ["diameter @ 90 deg [inches of wood]", /a unit that is known/],
    ["diameter @ 90 deg [mm]", /inch or metric lengths in one table/],
    ["diameter @ 0 deg [in]", /a name of its own/],
    ["diameter @ 360 deg [in]", /a name of its own/],
    ["", /Write a header/],
  ])("says what is wrong with %j", (header, fault) => {
    expect(headerFaults(headers, header, 2).join(" ")).toMatch(fault);
  });

  it("says it too where the new column stands before the one it clashes with", () => {
    expect(headerFaults(headers, "diameter @ 0 deg [in]", 1).join(" ")).toMatch(/a name of its own/);
  });

  it("is silent on faults the table had before", () => {
    expect(headerFaults(["station [in]", "diameter"], "remark", 2)).toEqual([]);
  });
});
