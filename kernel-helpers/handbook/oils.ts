import { millipascalSecond, type Quantity, quantityFromSi, type Temperature } from "../quantity/index.js";

/** A lubricating oil by its grade. */
export interface Oil {
  readonly kind: "oil";
  readonly name: string;
  /** How its viscosity follows the temperature. */
  readonly law:
    | {
        /** Kinematic viscosity at 40 and 100 °C [mm²/s], joined by the equation of ASTM D341. */
        readonly form: "two points";
        readonly at40: number;
        readonly at100: number;
        readonly density: number;
      }
    | {
        /** µ = µ₀·e^(b/(T + 95)), T in °F, µ₀ in µreyn. */
        readonly form: "exponential";
        readonly mu0: number;
        readonly b: number;
      };
  readonly source: string;
}

const isoSource =
  "ISO 3448:1992 (viscosity at 40 °C, ± 10 %); at 100 °C the usual value of a mineral oil of viscosity index 95 and density 880 kg/m³ at 15 °C: common practice, no source";
/** Grade, viscosity at 100 °C [mm²/s]. */
const isoRows: readonly (readonly [grade: number, at100: number])[] = [
  [32, 5.4],
  [46, 6.7],
  [68, 8.7],
  [100, 11.2],
  [150, 14.6],
  [220, 18.8],
  [320, 24.0],
  [460, 30.3],
];

const saeSource =
  "A. S. Seireg & S. Dandage, ASME Journal of Lubrication Technology 104, 1982; as Shigley, Table 12-1 (a fit of the SAE chart, within some 12 % of it; from memory)";
/** Grade, µ₀ [µreyn], b [°F]. */
const saeRows: readonly (readonly [grade: number, mu0: number, b: number])[] = [
  [10, 0.0158, 1157.5],
  [20, 0.0136, 1271.6],
  [30, 0.0141, 1360.0],
  [40, 0.0121, 1474.4],
  [50, 0.017, 1509.6],
  [60, 0.0187, 1564.0],
];

/** The oils that are tabled. */
export const oils: readonly Oil[] = Object.freeze([
  ...isoRows.map(
    ([grade, at100]): Oil =>
      Object.freeze({
        kind: "oil",
        name: `ISO VG ${grade}`,
        law: Object.freeze({ form: "two points", at40: grade, at100, density: 880 }),
        source: isoSource,
      }),
  ),
  ...saeRows.map(
    ([grade, mu0, b]): Oil =>
      Object.freeze({
        kind: "oil",
        name: `SAE ${grade}`,
        law: Object.freeze({ form: "exponential", mu0, b }),
        source: saeSource,
      }),
  ),
]);

/**
 * An oil by its grade, in any case and spacing: "ISO VG 100", "SAE 30".
 *
 * @throws RangeError  it is not tabled; the message lists those that are
 * @example oil("iso vg 68").name // "ISO VG 68"
 * @source see `source` of each
 */
export function oil(name: string): Oil {
  const plain = (text: string): string => text.toLowerCase().replace(/[\s-]+/g, "");
  const found = oils.find((one) => plain(one.name) === plain(name));
  if (found === undefined)
    throw new RangeError(
      `oil: must be one of ${oils.map((one) => one.name).join(", ")}, got "${name}"; for another oil take the grade nearest to its viscosity at 40 °C`,
    );
  return found;
}

/** No oil of these is reckoned with outside [K]: −10 to 150 °C. */
const coldest = 263.15;
const hottest = 423.15;

/**
 * Dynamic viscosity of an oil.
 *
 * Two points: log₁₀log₁₀(ν + 0.7) = A − B·log₁₀T, T in kelvin, through 40 and 100 °C; µ = ν·ρ, ρ falling by 0.65
 * kg/m³ a kelvin from 15 °C on. Exponential: µ = µ₀·e^(b/(T + 95)), T in °F.
 *
 * Valid when: −10 to 150 °C, clean oil of its grade; a grade allows ± 10 % at 40 °C.
 *
 * @param of  as `oil` returns it
 * @param temperature  of the film [K]
 * @returns dynamic viscosity [Pa·s]
 * @throws RangeError  the temperature is outside
 * @example viscosity(oil("SAE 30"), degF(140)).in("reyn").toExponential(2) // "4.60e-6"
 * @source ASTM D341-20, equation 1 without its terms for thin oils (from memory); see `source` of the oil
 */
export function viscosity(of: Oil, temperature: Temperature): Quantity<"dynamic viscosity"> {
  const { kelvin } = temperature;
  if (!(kelvin >= coldest && kelvin <= hottest))
    throw new RangeError(`viscosity: the temperature must lie between -10 and 150 °C, got ${temperature}`);
  const { law } = of;
  if (law.form === "exponential") {
    const microreyn = law.mu0 * Math.exp(law.b / (temperature.in("degF") + 95));
    return quantityFromSi("dynamic viscosity", microreyn * 1e-6 * 6894.757293168361, "millipascalSecond");
  }
  const inner = (nu: number): number => Math.log10(Math.log10(nu + 0.7));
  const [t1, t2] = [Math.log10(313.15), Math.log10(373.15)];
  const b = (inner(law.at40) - inner(law.at100)) / (t2 - t1);
  const nu = 10 ** (10 ** (inner(law.at40) - b * (Math.log10(kelvin) - t1))) - 0.7;
  const density = law.density - 0.65 * (kelvin - 288.15);
  return millipascalSecond(nu * density * 1e-3);
}
