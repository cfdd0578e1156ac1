import {
  degC,
  gigapascal,
  kilogramPerCubicMetre,
  ksi,
  megapascal,
  perC,
  psi,
  quantityFromSi,
} from "../quantity/index.js";
import { sources } from "./material-sources.js";
import { heatProperty, type Material, property } from "./material-type.js";

/**
 * Grey iron by its ASTM A48 class. The modulus is a range in the source: it falls with the graphite and with the
 * load, and differs from heavy to light sections of one casting. The tensile strength reckoned with is the class
 * itself, the least its test bar must bear; a heavy section of a casting bears less than the bar, a light one more.
 */
const greyRows: readonly GreyRow[] = [
  { class: 20, typical: 22, compressive: 83, modulus: [9.6, 14] },
  { class: 25, typical: 26, compressive: 97, modulus: [11.5, 14.8] },
  { class: 30, typical: 31, compressive: 109, modulus: [13, 16.4] },
  { class: 35, typical: 36.5, compressive: 124, modulus: [14.5, 17.2] },
  { class: 40, typical: 42.5, compressive: 140, modulus: [16, 20] },
  { class: 50, typical: 52.5, compressive: 164, modulus: [18.8, 22.8] },
  { class: 60, typical: 62.5, compressive: 187.5, modulus: [20.4, 23.5] },
];

interface GreyRow {
  /** [ksi] */
  readonly class: number;
  /** Typical tensile strength [ksi]. */
  readonly typical: number;
  /** [ksi] */
  readonly compressive: number;
  /** [10⁶ psi] */
  readonly modulus: readonly [low: number, high: number];
}

interface DuctileRow {
  readonly grade: string;
  /** [MPa] */
  readonly yield: number;
  readonly tensile: number;
  /** [GPa] */
  readonly modulus: number;
  /** [-] */
  readonly poisson: number;
  /** [10⁻⁶/°C] */
  readonly expansion: number;
  /** [W/(m·K)] */
  readonly conductivity: number;
}

const ductileRows: readonly DuctileRow[] = [
  {
    grade: "60-40-18",
    yield: 276,
    tensile: 414,
    modulus: 169,
    poisson: 0.29,
    expansion: 11.2,
    conductivity: 36,
  },
  {
    grade: "80-55-06",
    yield: 379,
    tensile: 552,
    modulus: 168,
    poisson: 0.31,
    expansion: 10.6,
    conductivity: 31,
  },
];

const gently = Object.freeze({
  value: degC(260),
  why: "iron cracks from uneven heat long before it is hot: warm it slowly and all round, keep below this with a torch, and never quench it",
  source: sources.practice,
});

/** Between room temperature and the heat that a hub may get: the mean over that way. */
const ironHeat = heatProperty(quantityFromSi("specific heat", 500), sources.ironHeat, [
  quantityFromSi("specific heat", 450),
  quantityFromSi("specific heat", 544),
]);

/** Grey irons by class, and two ductile irons. */
export const irons: readonly Material[] = Object.freeze([
  ...greyRows.map(greyIron),
  ...ductileRows.map(ductileIron),
]);

function greyIron(row: GreyRow): Material {
  const [low, high] = row.modulus.map((millionPsi) => psi(millionPsi * 1e6));
  const name = `grey iron class ${row.class}`;
  return Object.freeze<Material>({
    kind: "material",
    name,
    also: Object.freeze([
      `cast iron class ${row.class}`,
      `grey cast iron class ${row.class}`,
      // What is only called cast iron is taken for the weakest class.
      ...(row.class === 20 ? ["cast iron", "grey iron", "grey cast iron"] : []),
    ]),
    family: "grey iron",
    brittle: true,
    modulus: property<"pressure">(psi(((row.modulus[0] + row.modulus[1]) / 2) * 1e6), sources.shigleyIrons, [
      low!,
      high!,
    ]),
    poisson: property<"number">(
      0.26,
      `${sources.poisson}; low end ${sources.shigleyConstants}`,
      [0.21, 0.26],
    ),
    expansion: property<"thermal expansion">(
      perC(11.4e-6),
      `${sources.expansion}; low end another table, 6.0 per °F`,
      [perC(10.8e-6), perC(11.4e-6)],
    ),
    yield: undefined,
    tensile: property<"pressure">(ksi(row.class), `${sources.astmA48}; typical: ${sources.shigleyIrons}`, [
      ksi(row.class),
      ksi(row.typical),
    ]),
    compressive: property<"pressure">(ksi(row.compressive), sources.shigleyIrons),
    density: property<"density">(
      kilogramPerCubicMetre(7200),
      `${sources.density} 7300; a ${sources.sheet} 7200 (read)`,
      [kilogramPerCubicMetre(7000), kilogramPerCubicMetre(7300)],
    ),
    specificHeat: ironHeat,
    conductivity: heatProperty(
      quantityFromSi("thermal conductivity", 46),
      `${sources.conductivity}; ${sources.sheet} (read)`,
    ),
    hottest: gently,
  });
}

function ductileIron(row: DuctileRow): Material {
  return Object.freeze<Material>({
    kind: "material",
    name: `ductile iron ${row.grade}`,
    also: Object.freeze([`nodular iron ${row.grade}`, `spheroidal graphite iron ${row.grade}`]),
    family: "ductile iron",
    brittle: false,
    modulus: property<"pressure">(gigapascal(row.modulus), sources.modulus),
    poisson: property<"number">(row.poisson, sources.poisson),
    expansion: property<"thermal expansion">(perC(row.expansion / 1e6), sources.expansion),
    yield: property<"pressure">(megapascal(row.yield), `${sources.strength}, minimum`),
    tensile: property<"pressure">(megapascal(row.tensile), `${sources.strength}, minimum`),
    compressive: undefined,
    density: property<"density">(kilogramPerCubicMetre(7100), sources.density),
    specificHeat: ironHeat,
    conductivity: heatProperty(
      quantityFromSi("thermal conductivity", row.conductivity),
      sources.conductivity,
    ),
    hottest: gently,
  });
}
