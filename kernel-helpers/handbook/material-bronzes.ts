import { degC, gigapascal, kilogramPerCubicMetre, ksi, perC, quantityFromSi } from "../quantity/index.js";
import { sources } from "./material-sources.js";
import { heatProperty, type Material, type MaterialProperty, property } from "./material-type.js";

/** The bronzes of bushes, nuts and hubs. Strengths are the least that a sand casting must have. */
export const bronzes: readonly Material[] = Object.freeze([
  bronze("bronze C93200", ["bronze", "bearing bronze", "leaded bronze", "SAE 660"], {
    modulus: 100,
    expansion: 18.0,
    yield: [14, 18],
    tensile: [30, 35],
    density: 8910,
    specificHeat: 377,
    conductivity: 58.2,
  }),
  bronze("bronze C90500", ["gun metal", "tin bronze", "SAE 62"], {
    modulus: 103,
    expansion: 19.8,
    yield: [18, 22],
    tensile: [40, 45],
    density: 8720,
    specificHeat: 377,
    conductivity: 74.8,
  }),
  bronze("bronze C95400", ["aluminium bronze", "aluminum bronze"], {
    modulus: 107,
    expansion: 16.2,
    yield: [30, 32],
    tensile: [75, 85],
    density: 7450,
    specificHeat: 419,
    conductivity: 58.7,
  }),
]);

interface BronzeRow {
  /** [GPa] */
  readonly modulus: number;
  /** [10⁻⁶/°C] */
  readonly expansion: number;
  /** Of sand castings: the least, and what is usual or what other castings must have [ksi]. */
  readonly yield: readonly [least: number, usual: number];
  readonly tensile: readonly [least: number, usual: number];
  /** [kg/m³] */
  readonly density: number;
  /** [J/(kg·K)] */
  readonly specificHeat: number;
  /** [W/(m·K)] */
  readonly conductivity: number;
}

function bronze(name: string, also: readonly string[], row: BronzeRow): Material {
  const sheet = sources.bronzeSheet;
  const strength = ([least, usual]: readonly [number, number]): MaterialProperty<"pressure"> =>
    property<"pressure">(ksi(least), `${sources.bronzeSand}; upper end: ${sheet}`, [ksi(least), ksi(usual)]);
  return Object.freeze<Material>({
    kind: "material",
    name,
    also: Object.freeze([...also]),
    family: "bronze",
    brittle: false,
    modulus: property<"pressure">(gigapascal(row.modulus), sheet),
    poisson: property<"number">(0.34, `${sources.sheet}, 0.34 and 0.35 (read)`, [0.34, 0.35]),
    expansion: property<"thermal expansion">(perC(row.expansion / 1e6), sheet),
    yield: strength(row.yield),
    tensile: strength(row.tensile),
    compressive: undefined,
    density: property<"density">(kilogramPerCubicMetre(row.density), sheet),
    specificHeat: heatProperty(quantityFromSi("specific heat", row.specificHeat), sheet),
    conductivity: heatProperty(quantityFromSi("thermal conductivity", row.conductivity), sheet),
    hottest: Object.freeze({
      value: degC(260),
      why: "a leaded bronze sweats its lead from about 320 °C (610 °F) on and is hot short: it breaks at a blow",
      source: sources.practice,
    }),
  });
}
