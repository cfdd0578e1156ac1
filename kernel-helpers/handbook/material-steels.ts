import {
  degC,
  gigapascal,
  kilogramPerCubicMetre,
  megapascal,
  perC,
  quantityFromSi,
} from "../quantity/index.js";
import { sources } from "./material-sources.js";
import { heatProperty, type Material, property } from "./material-type.js";

/** Steels of shafts, studs and rigs. Old shafting is near the first: plain, low in carbon, rolled or hammered. */
export const steels: readonly Material[] = Object.freeze([
  steel("steel", ["mild steel", "steel 1020", "low carbon steel", "shafting"], {
    yield: 210,
    tensile: 380,
    expansion: 11.7,
    condition: "1020 hot rolled, minimum",
    hottest: 300,
    why: "below this a plain steel keeps its strength; above it scales, and straightens or bends under its own load more easily",
  }),
  steel("steel A36", ["structural steel", "A36"], {
    yield: 220,
    tensile: 400,
    expansion: 11.7,
    condition: "A36 hot rolled, low end",
    hottest: 300,
    why: "below this a plain steel keeps its strength",
  }),
  steel("steel 1040", ["medium carbon steel"], {
    yield: 290,
    tensile: 520,
    expansion: 11.3,
    condition: "1040 hot rolled, minimum",
    hottest: 300,
    why: "below this a plain rolled steel keeps its strength; a hardened one loses its temper sooner",
  }),
  steel("steel 4140", ["alloy steel"], {
    yield: 417,
    tensile: 655,
    expansion: 12.3,
    condition: "4140 annealed",
    hottest: 200,
    why: "a hardened and tempered part softens above the heat it was tempered at, which may be little more than this",
  }),
]);

interface SteelRow {
  /** [MPa] */
  readonly yield: number;
  /** [MPa] */
  readonly tensile: number;
  /** [10⁻⁶/°C] */
  readonly expansion: number;
  readonly condition: string;
  /** [°C] */
  readonly hottest: number;
  readonly why: string;
}

function steel(name: string, also: readonly string[], row: SteelRow): Material {
  const strength = `${sources.strength}, ${row.condition}`;
  return Object.freeze<Material>({
    kind: "material",
    name,
    also: Object.freeze([...also]),
    family: "steel",
    brittle: false,
    modulus: property<"pressure">(gigapascal(207), sources.modulus, [gigapascal(200), gigapascal(207)]),
    poisson: property<"number">(0.3, sources.poisson, [0.29, 0.3]),
    expansion: property<"thermal expansion">(perC(row.expansion / 1e6), sources.expansion),
    yield: property<"pressure">(megapascal(row.yield), strength),
    tensile: property<"pressure">(megapascal(row.tensile), strength),
    compressive: undefined,
    density: property<"density">(kilogramPerCubicMetre(7850), sources.density),
    specificHeat: heatProperty(quantityFromSi("specific heat", 486), sources.specificHeat),
    conductivity: heatProperty(quantityFromSi("thermal conductivity", 51.9), sources.conductivity),
    hottest: Object.freeze({ value: degC(row.hottest), why: row.why, source: sources.practice }),
  });
}
