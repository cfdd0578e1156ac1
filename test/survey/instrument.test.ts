import { describe, expect, it } from "vitest";
import { instrumentFrom, partFrom, readingUncertainty } from "../../kernel-helpers/survey/instrument.js";
import { expectClose } from "../support/expect-close.js";

const entry = {
  title: "Micrometer 2-3 in",
  resolution: "0.0001 in",
  repeatability: "0.15 thou",
  calibration: "2 µm",
  expansion: "6.5e-6 1/°F",
};

describe("instrumentFrom(id, json)", () => {
  it("reads each quantity in the unit it is written in", () => {
    const mic = instrumentFrom("mic", entry);
    expect(mic).toMatchObject({ kind: "instrument", id: "mic", title: "Micrometer 2-3 in" });
    expect([mic.resolution, mic.repeatability, mic.calibration].map(String)).toEqual([
      "0.0001 in",
      "0.15 thou",
      "2 µm",
    ]);
    expect(Object.isFrozen(mic)).toBe(true);
  });
  it("reads an expansion per degree of either scale, however it is spelled", () => {
    for (const text of ["6.5e-6 1/°F", "6.5e-6 1/degF", "6.5e-6 per degF", "6.5e-6 /degF"])
      expectClose(instrumentFrom("mic", { ...entry, expansion: text }).expansion!.in("perC"), 11.7e-6, {
        rel: 1e-14,
        because: "6.5 × 9/5 = 11.7, three roundings",
      });
    for (const text of ["11.7e-6 1/°C", "11.7e-6 1/K", "11.7e-6 per degC"])
      expect(instrumentFrom("mic", { ...entry, expansion: text }).expansion!.in("perC")).toBe(11.7e-6);
  });
  it("does without calibration and expansion", () => {
    const { title, resolution, repeatability } = entry;
    const mic = instrumentFrom("mic", { title, resolution, repeatability });
    expect([mic.calibration, mic.expansion]).toEqual([undefined, undefined]);
  });
  it.each([
    [
      { ...entry, repeatability: undefined },
      TypeError,
      /instrument "mic": repeatability must be given, with its unit/,
    ],
    [{ ...entry, resolution: undefined }, TypeError, /resolution must be given/],
    [{ ...entry, title: " " }, TypeError, /title must be a text/],
    [{ ...entry, resolution: 0.0001 }, TypeError, /resolution must be a text, got 0\.0001/],
    [{ ...entry, precision: "1 thou" }, TypeError, /"precision" is not known; it may have title, resolution/],
    [{ ...entry, resolution: "0.0001" }, SyntaxError, /instrument "mic": resolution: "0\.0001" has no unit/],
    [{ ...entry, resolution: "0.0001 lb" }, TypeError, /resolution: .*a mass.*a length was expected/],
    [{ ...entry, resolution: "0 in" }, RangeError, /resolution must be greater than 0, got 0 in/],
    [{ ...entry, repeatability: "-1 thou" }, RangeError, /repeatability must be 0 or more/],
    [{ ...entry, expansion: "6.5 1/°F" }, RangeError, /expansion must not be greater than 1e-4 1\/°C/],
    [undefined, TypeError, /instrument "mic": must be an object/],
    [[], TypeError, /must be an object/],
  ])("refuses %j", (json, kind, message) => {
    expect(() => instrumentFrom("mic", json)).toThrow(kind);
    expect(() => instrumentFrom("mic", json)).toThrow(message);
  });
});

describe("partFrom(id, json)", () => {
  it("reads title, material and expansion; the last two may be left out", () => {
    const shaft = partFrom("shaft", { title: "Line shaft", material: "steel", expansion: "11.5e-6 1/°C" });
    expect(shaft).toMatchObject({ id: "shaft", title: "Line shaft", material: "steel" });
    expect(shaft.expansion!.in("perC")).toBe(11.5e-6);
    expect(partFrom("shaft", { title: "Shaft" })).toMatchObject({
      material: undefined,
      expansion: undefined,
    });
  });
  it("refuses what it does not know", () => {
    expect(() => partFrom("shaft", { title: "Shaft", colour: "red" })).toThrow(
      /part "shaft": "colour" is not known/,
    );
    expect(() => partFrom("shaft", { title: "Shaft", expansion: "6 in" })).toThrow(
      /part "shaft": expansion: /,
    );
  });
});

describe("readingUncertainty(instrument)", () => {
  const of = (repeatability: string, resolution: string): number =>
    readingUncertainty(instrumentFrom("mic", { title: "Mic", repeatability, resolution })).in("thou");

  // Source: JCGM 100:2008 (GUM), F.2.2.1: an indicating device with a last digit of 1 has u = 0.29 from its resolution.
  it("is 0.29 of the resolution where readings repeat without scatter", () => {
    expectClose(of("0 in", "1 thou"), 0.29, { abs: 0.005, because: "2 printed digits" });
  });
  it("is the repeatability where the resolution is fine against it", () => {
    expectClose(of("1 thou", "0.001 thou"), 1, { rel: 5e-8, because: "1e-6/24 is left of the resolution" });
  });
  it("adds the two in squares: 0.15 and 0.1 thou make √(0.0225 + 0.01/12)", () => {
    expectClose(of("0.15 thou", "0.1 thou") ** 2, 0.0225 + 0.01 / 12, {
      rel: 1e-14,
      because: "a few roundings",
    });
  });
  it("leaves the calibration out, for it moves all readings together", () => {
    const u = readingUncertainty(instrumentFrom("mic", entry)).si;
    expect(readingUncertainty(instrumentFrom("mic", { ...entry, calibration: "1 in" })).si).toBe(u);
  });
});
