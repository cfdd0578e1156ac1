import { describe, expect, it } from "vitest";
import {
  type Exponents,
  exponentsOf,
  kindOf,
  siSymbol,
  withArticle,
} from "../../kernel-helpers/quantity/index.js";
import { kinds } from "../../kernel-helpers/quantity/kinds.js";

describe("kinds", () => {
  it("gives no two kinds the same exponents", () => {
    const spelled = Object.values(kinds).map(String);
    expect(new Set(spelled).size).toBe(spelled.length);
  });
  // Base units as in the SI Brochure, 9th edition, 2019, tables 4 to 6 (from memory).
  it.each([
    ["frequency", "s⁻¹"],
    ["force", "m·kg·s⁻²"],
    ["pressure", "m⁻¹·kg·s⁻²"],
    ["torque or energy", "m²·kg·s⁻²"],
    ["power", "m²·kg·s⁻³"],
    ["dynamic viscosity", "m⁻¹·kg·s⁻¹"],
    ["heat capacity", "m²·kg·s⁻²·K⁻¹"],
    ["specific heat", "m²·s⁻²·K⁻¹"],
    ["specific energy", "m²·s⁻²"],
    ["thermal conductivity", "m·kg·s⁻³·K⁻¹"],
    ["heat transfer coefficient", "kg·s⁻³·K⁻¹"],
    ["angular acceleration", "s⁻²·rad"],
    ["mass flow", "kg·s⁻¹"],
    ["bending stiffness", "m³·kg·s⁻²"],
  ])("has %s in base units %s", (kind, symbol) => {
    expect(siSymbol(kind)).toBe(symbol);
  });
});

describe("kindOf(exponents)", () => {
  it("is the inverse of exponentsOf, for kinds with a name and without", () => {
    for (const kind of Object.keys(kinds)) expect(kindOf(exponentsOf(kind))).toBe(kind);
    const unnamed = kindOf([5, -1, 2, 0, 0]);
    expect(unnamed).toBe("unnamed (length 5, mass -1, time 2, temperature 0, angle 0)");
    expect(exponentsOf(unnamed)).toEqual([5, -1, 2, 0, 0]);
  });
  it("keeps the radian where turning is meant, and drops it elsewhere", () => {
    expect(kindOf([0, 0, -1, 0, 1])).toBe("rotational speed");
    expect(kindOf([0, 0, -2, 0, 1])).toBe("angular acceleration");
    expect(kindOf([1, 0, 0, 0, 1])).toBe("length");
    expect(kindOf([2, 1, -2, 0, -1])).toBe("torque or energy");
    expect(kindOf([0, 0, 0, 0, 2])).toBe("number");
  });
  it("rejects exponents that are broken or beyond 6", () => {
    expect(() => kindOf([0.5, 0, 0, 0, 0])).toThrow(/^kindOf: exponents must be whole .* got 0\.5, 0/);
    expect(() => kindOf([7, 0, 0, 0, 0])).toThrow(RangeError);
    expect(() => kindOf([Number.NaN, 0, 0, 0, 0] as Exponents)).toThrow(RangeError);
  });
});

describe("exponentsOf(kind)", () => {
  it("rejects what is no kind, an inherited name too", () => {
    expect(() => exponentsOf("weight")).toThrow(/^exponentsOf: kind must be .* got weight$/);
    expect(() => exponentsOf("constructor")).toThrow(RangeError);
  });
});

describe("withArticle(kind)", () => {
  it("says a or an", () => {
    expect(withArticle("length")).toBe("a length");
    expect(withArticle("angle")).toBe("an angle");
  });
});
