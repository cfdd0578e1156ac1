import { describe, expect, it } from "vitest";
import {
  fitFriction,
  fitFrictions,
  material,
  materialExpansions,
  materials,
} from "../../kernel-helpers/handbook/index.js";
import type { MaterialProperty } from "../../kernel-helpers/handbook/material-type.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

describe("material(name)", () => {
  // Source: Callister, appendix B, as read in public copies: B.2 steel 30e6 psi, B.4 1020 hot rolled 30/55 ksi,
  // 60-40-18 40/60 ksi; B.6 steel 6.5, 60-40-18 6.2, C93200 10.0 millionths per °F. The table gives both systems.
  it("agrees with the inch column of the tables whose metric column it was typed from", () => {
    const digits = { rel: 0.02, because: "the inch column has two or three digits" };
    expectClose(material("steel").modulus.value.in("psi"), 30e6, digits);
    expectClose(material("steel").yield!.value.in("ksi"), 30, digits);
    expectClose(material("steel").tensile!.value.in("ksi"), 55, digits);
    expectClose(material("ductile iron 60-40-18").yield!.value.in("ksi"), 40, digits);
    expectClose(material("ductile iron 60-40-18").modulus.value.in("psi"), 24.5e6, digits);
    expectClose(material("ductile iron 60-40-18").expansion.value.in("perF"), 6.2e-6, digits);
    expectClose(material("bronze").expansion.value.in("perF"), 10.0e-6, digits);
    expectClose(material("steel").density.value.in("poundPerCubicInch"), 0.283, digits);
  });
  // Source: public alloy sheets with the Copper Development Association's figures in inch units; sand castings of ASTM B584
  // and B148 as a foundry's public table prints their least tensile and yield strength.
  it.each([
    ["bronze C93200", 0.322, 10.0, 33.6, 0.09, 14500, 30, 14],
    ["bronze C90500", 0.315, 11.0, 43.2, 0.09, 15000, 40, 18],
    ["bronze C95400", 0.269, 9.0, 33.9, 0.1, 15500, 75, 30],
  ])(
    "gives %s as the sheets print it",
    (name, density, expansion, conductivity, heat, modulus, tensile, least) => {
      const metal = material(name);
      const digits = { rel: 0.006, because: "two or three digits printed" };
      expectClose(metal.density.value.in("poundPerCubicInch"), density, digits);
      expectClose(metal.expansion.value.in("perF"), expansion * 1e-6, digits);
      expectClose(metal.conductivity.value.si, conductivity * 1.730735, digits);
      expectClose(metal.specificHeat.value.si, heat * 4186.8, digits);
      expectClose(metal.modulus.value.in("ksi"), modulus, digits);
      expectClose(metal.tensile!.value.in("ksi"), tensile, digits);
      expectClose(metal.yield!.value.in("ksi"), least, digits);
    },
  );
  // Source: public material sheets and tables: cast iron 450, 460, 490 near room temperature; Callister B.8: 544.
  it("spans what the tables give for the specific heat of iron", () => {
    const { low, high, value } = material("grey iron class 20").specificHeat;
    for (const printed of [450, 460, 490, 544]) {
      expect(low.si).toBeLessThanOrEqual(printed);
      expect(high.si).toBeGreaterThanOrEqual(printed);
    }
    // Iron and graphite by mass, 3.3 % carbon, mean from 20 to 260 °C: iron 449 + 0.43·(T − 20)/2, graphite 710 to 1250.
    expectClose(value.si, 0.967 * (449 + (0.43 * 240) / 2) + (0.033 * (710 + 1250)) / 2, {
      rel: 0.04,
      because: "a mixture's heat, from textbook figures of iron and graphite",
    });
  });
  // Source: Callister B.2, G1800 66-97 GPa, G3000 90-113, G4000 110-138: the classes 20, 30 and 40 of Shigley's table.
  it("gives grey iron the modulus as a range, the same in two books", () => {
    for (const [name, low, high] of [
      ["grey iron class 20", 66, 97],
      ["grey iron class 30", 90, 113],
      ["grey iron class 40", 110, 138],
    ] as const) {
      const { modulus } = material(name);
      const digits = { abs: 0.6, because: "printed in whole GPa" };
      expectClose(modulus.low.in("gigapascal"), low, digits);
      expectClose(modulus.high.in("gigapascal"), high, digits);
    }
  });
  it("takes grey iron for brittle and reckons with the class as tensile strength, the low end", () => {
    for (const metal of materials.filter(({ family }) => family === "grey iron")) {
      expect(metal.brittle).toBe(true);
      expect(metal.yield).toBeUndefined();
      expectClose(metal.tensile!.value.in("ksi"), Number(metal.name.split(" ").at(-1)), {
        rel: 1e-12,
        because: "the class is the strength",
      });
      expect(metal.compressive!.value.si).toBeGreaterThan(3 * metal.tensile!.value.si);
    }
  });
  it("gives white metals as ASTM B23 prints them", () => {
    const published = readReference("astm-b23-white-metal");
    for (const number of [2, 3, 7]) {
      const row = published.rows.findIndex(([alloy]) => alloy === String(number));
      const metal = material(`Babbitt ${number}`);
      const exact = { rel: 1e-12, because: "the printed figure itself" };
      expectClose(metal.yield!.value.in("psi"), published.numbers("yield68_psi")[row]!, exact);
      expectClose(metal.compressive!.value.in("psi"), published.numbers("ucs68_psi")[row]!, exact);
      expectClose(metal.density.value.si / 1000, published.numbers("SG")[row]!, exact);
      expect(metal.hottest.why).toContain(`${published.numbers("melting_F")[row]} °F`);
    }
  });
  it("has the expansions of the handbook's own table", () => {
    for (const { material: name, expansion } of materialExpansions.filter(({ material: m }) => m !== "tin"))
      expectClose(material(name).expansion.value.si, expansion.si, { rel: 1e-12, because: "one figure" });
  });
  it("names a source for every figure, and keeps each value within its range", () => {
    for (const metal of materials) {
      const figures = Object.values(metal).filter(isProperty);
      expect(figures.length).toBeGreaterThanOrEqual(7);
      for (const { value, low, high, source } of figures) {
        expect(source.length).toBeGreaterThan(10);
        expect(Number(low)).toBeLessThanOrEqual(Number(value));
        expect(Number(high)).toBeGreaterThanOrEqual(Number(value));
      }
    }
  });
  it("knows each metal by one name only", () => {
    const names = materials.flatMap(({ name, also }) => [name, ...also]);
    expect(new Set(names).size).toBe(names.length);
    expect(material("  GRAY  cast iron class 30")).toBe(material("grey iron class 30"));
    expect(material("cast iron")).toBe(material("grey iron class 20"));
  });
  it("refuses a metal it has not, and lists those it has", () => {
    expect(() => material("unobtainium")).toThrow(
      /^material: must be one of steel, .*Babbitt 7, got "unobtainium"$/,
    );
  });
});

describe("fitFriction(surface)", () => {
  it("gives ranges that rise from oiled to rusted, each with its source", () => {
    for (const [i, row] of fitFrictions.entries()) {
      expect(row.low).toBeLessThan(row.high);
      if (i > 0) expect(row.high).toBeGreaterThan(fitFrictions[i - 1]!.high);
      expect(row.source).not.toBe("");
    }
  });
  // Source: DIN 7190-1, transverse fits of steel and cast iron: oiled 0.10, degreased 0.16; steel on steel 0.12 to 0.20.
  it("holds what the standard gives for clean fits", () => {
    const oiled = fitFriction("oiled");
    const dry = fitFriction("dry");
    for (const value of [0.1, 0.12]) expect(value >= oiled.low && value <= oiled.high).toBe(true);
    for (const value of [0.16, 0.2]) expect(value >= dry.low && value <= dry.high).toBe(true);
  });
  it("refuses another word", () => {
    expect(() => fitFriction("greasy")).toThrow(
      /^fitFriction: surface must be one of oiled, dry, rusted, got greasy$/,
    );
  });
});

function isProperty(value: unknown): value is MaterialProperty<"number"> {
  return typeof value === "object" && value !== null && "low" in value && "source" in value;
}
