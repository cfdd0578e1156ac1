import { degF, gigapascal, kilogramPerCubicMetre, perC, psi, quantityFromSi } from "../quantity/index.js";
import { sources } from "./material-sources.js";
import { heatProperty, type Material, property } from "./material-type.js";

/** White metals by their ASTM B23 number, for what stands near heat and load. How to choose and pour them is elsewhere. */
export const whiteMetals: readonly Material[] = Object.freeze([
  whiteMetal(2, ["tin Babbitt", "white metal"], {
    modulus: 53,
    expansion: 21,
    yield: 6100,
    compressive: 14900,
    gravity: 7.39,
    solidus: 466,
    specificHeat: 230,
    conductivity: 55,
  }),
  whiteMetal(3, [], {
    modulus: 56,
    expansion: 21,
    yield: 6600,
    compressive: 17600,
    gravity: 7.46,
    solidus: 464,
    specificHeat: 230,
    conductivity: 55,
  }),
  whiteMetal(7, ["lead Babbitt"], {
    modulus: 26,
    expansion: 26,
    yield: 3550,
    compressive: 15650,
    gravity: 9.73,
    solidus: 464,
    specificHeat: 150,
    conductivity: 24,
  }),
]);

interface WhiteMetalRow {
  /** [GPa] */
  readonly modulus: number;
  /** [10⁻⁶/°C] */
  readonly expansion: number;
  /** At 0.125 % set, in compression, 68 °F [psi]. */
  readonly yield: number;
  readonly compressive: number;
  /** Specific gravity [-]. */
  readonly gravity: number;
  /** Where it begins to melt [°F]. */
  readonly solidus: number;
  /** [J/(kg·K)] */
  readonly specificHeat: number;
  /** [W/(m·K)] */
  readonly conductivity: number;
}

function whiteMetal(number: number, also: readonly string[], row: WhiteMetalRow): Material {
  return Object.freeze<Material>({
    kind: "material",
    name: `Babbitt ${number}`,
    also: Object.freeze([`ASTM B23 alloy ${number}`, `white metal ${number}`, ...also]),
    family: "white metal",
    brittle: false,
    modulus: property<"pressure">(gigapascal(row.modulus), `${sources.sheet} (read)`),
    poisson: property<"number">(0.37, `${sources.sheet}, 0.35 and 0.4 (read)`, [0.35, 0.4]),
    expansion: property<"thermal expansion">(perC(row.expansion / 1e6), `${sources.sheet} (read)`),
    yield: property<"pressure">(psi(row.yield), sources.astmB23),
    tensile: undefined,
    compressive: property<"pressure">(psi(row.compressive), sources.astmB23),
    density: property<"density">(kilogramPerCubicMetre(row.gravity * 1000), sources.astmB23),
    specificHeat: heatProperty(quantityFromSi("specific heat", row.specificHeat), `${sources.sheet} (read)`),
    conductivity: heatProperty(quantityFromSi("thermal conductivity", row.conductivity), sources.memory),
    hottest: Object.freeze({
      value: degF(250),
      why: `it begins to melt at ${row.solidus} °F (${Math.round(((row.solidus - 32) * 5) / 9)} °C) and is soft long before: keep heat for other parts away from it, or shield it with wet rags`,
      source: `${sources.practice}; solidus: ${sources.astmB23}`,
    }),
  });
}
