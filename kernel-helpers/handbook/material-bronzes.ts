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

/** The bronzes of bushes, nuts and hubs. Strengths are the low end of the cast metal. */
export const bronzes: readonly Material[] = Object.freeze([
  bronze("bronze C93200", ["bronze", "bearing bronze", "leaded bronze", "SAE 660"], {
    modulus: 100,
    poisson: 0.34,
    expansion: 18.0,
    yield: 125,
    tensile: 240,
    density: 8930,
    specificHeat: 376,
    conductivity: 59,
    source: sources.strength.replace("(read)", "(from memory)"),
  }),
  bronze("bronze C90500", ["gun metal", "tin bronze", "SAE 62"], {
    modulus: 103,
    poisson: 0.34,
    expansion: 19.8,
    yield: 150,
    tensile: 300,
    density: 8720,
    specificHeat: 376,
    conductivity: 75,
    source: sources.astmB505,
  }),
  bronze("bronze C95400", ["aluminium bronze", "aluminum bronze"], {
    modulus: 107,
    poisson: 0.32,
    expansion: 16.2,
    yield: 220,
    tensile: 515,
    density: 7450,
    specificHeat: 419,
    conductivity: 59,
    source: sources.astmB505,
  }),
]);

interface BronzeRow {
  /** [GPa] */
  readonly modulus: number;
  /** [-] */
  readonly poisson: number;
  /** [10⁻⁶/°C] */
  readonly expansion: number;
  /** [MPa] */
  readonly yield: number;
  readonly tensile: number;
  /** [kg/m³] */
  readonly density: number;
  /** [J/(kg·K)] */
  readonly specificHeat: number;
  /** [W/(m·K)] */
  readonly conductivity: number;
  readonly source: string;
}

function bronze(name: string, also: readonly string[], row: BronzeRow): Material {
  const { source } = row;
  return Object.freeze<Material>({
    kind: "material",
    name,
    also: Object.freeze([...also]),
    family: "bronze",
    brittle: false,
    modulus: property<"pressure">(gigapascal(row.modulus), source),
    poisson: property<"number">(row.poisson, source),
    expansion: property<"thermal expansion">(
      perC(row.expansion / 1e6),
      name === "bronze C93200" ? sources.expansion : source,
    ),
    yield: property<"pressure">(megapascal(row.yield), source),
    tensile: property<"pressure">(megapascal(row.tensile), source),
    compressive: undefined,
    density: property<"density">(kilogramPerCubicMetre(row.density), source),
    specificHeat: heatProperty(quantityFromSi("specific heat", row.specificHeat), source),
    conductivity: heatProperty(quantityFromSi("thermal conductivity", row.conductivity), source),
    hottest: Object.freeze({
      value: degC(260),
      why: "a leaded bronze sweats its lead from about 320 °C on and is hot short: it breaks at a blow",
      source: sources.practice,
    }),
  });
}
