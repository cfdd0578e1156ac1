import { afterEach, describe, expect, it } from "vitest";
import {
  degC,
  degF,
  deltaC,
  inch,
  lbfFoot,
  mm,
  psi,
  rpm,
  setUnitSystem,
  shownUnit,
  systemOf,
  thou,
  turnPerSecond,
  unitNamed,
  unitSystem,
  unitsOf,
  usualUnit,
} from "../../kernel-helpers/quantity/index.js";
import { kinds } from "../../kernel-helpers/quantity/kinds.js";

describe("setUnitSystem(system)", () => {
  afterEach(() => setUnitSystem(undefined));

  it("shows quantities of the other system in the usual unit of this one, and changes no value", () => {
    const [bore, step, pressure, torque] = [inch(1), thou(2), psi(1000), lbfFoot(100)];
    setUnitSystem("metric");
    expect([bore, step, pressure, torque].map(String)).toEqual([
      "25.4 mm",
      "0.0508 mm",
      "6.89476 MPa",
      "135.582 N·m",
    ]);
    expect(bore.in("inch")).toBe(1);
    setUnitSystem("inch");
    expect(String(mm(25.4))).toBe("1 in");
    expect(String(thou(2))).toBe("2 thou");
  });
  it("leaves a unit of both systems, and one asked for by as(unit)", () => {
    setUnitSystem("metric");
    expect([rpm(200), turnPerSecond(2)].map(String)).toEqual(["200 rpm", "2 rev/s"]);
    expect(String(mm(25.4).as("inch"))).toBe("1 in");
    expect(String(mm(25.4).as("inch").plus(inch(1)))).toBe("2 in");
    expect(mm(25.4).as("inch").shownIn).toBe("inch");
    expect(inch(1).shownIn).toBe("mm");
  });
  it("shows temperatures and differences on the scale of the system", () => {
    setUnitSystem("inch");
    expect([degC(20), deltaC(10)].map(String)).toEqual(["68 °F", "18 °F (difference)"]);
    setUnitSystem("metric");
    expect(String(degF(68))).toBe("20 °C");
  });
  it("is known and can be undone", () => {
    expect(unitSystem()).toBeUndefined();
    setUnitSystem("inch");
    expect(unitSystem()).toBe("inch");
    setUnitSystem(undefined);
    expect(String(mm(1))).toBe("1 mm");
  });
  it("rejects another word", () => {
    expect(() => setUnitSystem("imperial" as never)).toThrow(
      /^setUnitSystem: system must be .* got imperial$/,
    );
  });
});

describe("usualUnit(kind, system)", () => {
  it("is a unit of that kind and of that system or both", () => {
    for (const kind of Object.keys(kinds))
      for (const system of ["inch", "metric"] as const) {
        const unit = usualUnit(kind, system);
        if (unit === undefined) expect([kind, unitsOf(kind)]).toEqual([kind, []]);
        else expect([unitNamed(unit).kind, [system, "both"].includes(systemOf(unit))]).toEqual([kind, true]);
      }
  });
  it("is none for a word that is no kind", () => {
    expect(usualUnit("constructor", "inch")).toBeUndefined();
  });
});

describe("shownUnit(kind, writtenIn)", () => {
  it("is the unit written in, else the usual metric one", () => {
    expect(shownUnit("length", "foot")).toBe("foot");
    expect(shownUnit("length")).toBe("mm");
    expect(shownUnit("bending stiffness")).toBeUndefined();
  });
});
