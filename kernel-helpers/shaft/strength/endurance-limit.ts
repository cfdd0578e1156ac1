import {
  isQuantity,
  isTemperature,
  type Length,
  type Pressure,
  quantityFromSi,
  type Temperature,
} from "../../quantity/index.js";
import { normalQuantile } from "../../statistics/index.js";

/** How the surface at a place was made. */
export type SurfaceFinish = "ground" | "machined" | "hot-rolled" | "as forged";

/** What lowers the endurance limit of a polished test bar at a place of a shaft. */
export interface EnduranceConditions {
  readonly diameter: Length;
  readonly surface: SurfaceFinish;
  /** Default: room temperature. */
  readonly temperature?: Temperature;
  /** Share of shafts that bear more [-]; default 0.5, the mean, with the scatter beside it. */
  readonly reliability?: number;
}

/** The endurance limit at a place, with the factors that make it. */
export interface EnduranceLimit {
  readonly kind: "endurance limit";
  readonly value: Pressure;
  /** Of a polished test bar: S_e′. */
  readonly testBar: Pressure;
  /** k_a, k_b, k_d and k_e [-]. */
  readonly factors: {
    readonly surface: number;
    readonly size: number;
    readonly temperature: number;
    readonly reliability: number;
  };
  readonly surface: SurfaceFinish;
  /** Relative standard uncertainty of the limit [-]: of steel and surface; of the surface alone where a reliability is asked for. */
  readonly relativeUncertainty: number;
}

/** k_a = a S^b, S in ksi; coefficient of variation of the surface factor. */
const surfaces: Readonly<Record<SurfaceFinish, readonly [a: number, b: number, variation: number]>> = {
  ground: [1.34, -0.085, 0.12],
  machined: [2.7, -0.265, 0.058],
  "hot-rolled": [14.4, -0.718, 0.11],
  "as forged": [39.9, -0.995, 0.145],
};

/** Scatter of the endurance limit when only the tensile strength is known [-]. */
const steelScatter = 0.138;

/**
 * The endurance limit of steel at a place of a rotating shaft: the stress it bears reversed for ever, by Marin's factors.
 *
 * S_e = k_a k_b k_d k_e S_e′, S_e′ = S_ut/2, at most 100 ksi. k_a = a S_ut^b, not above 1; k_b = 0.879 d^−0.107 up to
 * 2 in, 0.91 d^−0.157 above; k_d = 0.975 + 0.432e-3 T − 0.115e-5 T² + 0.104e-8 T³ − 0.595e-12 T⁴ [°F], 1 below 70 °F;
 * k_e = 1 − 0.08 z. The load factor is 1: bending and torsion are put together by distortion energy.
 *
 * Valid when: carbon and low-alloy steel, dry, no fretting, no rust pits; 0.11 to 10 in; 0 °C to 1000 °F. Corrosion takes
 * away the limit altogether: a shaft that runs wet has none.
 *
 * @param tensile  tensile strength [Pa]
 * @param conditions.diameter     of the place [m]; of a hollow shaft the outside
 * @param conditions.surface      as it was made
 * @param conditions.temperature  of the shaft
 * @param conditions.reliability  0.5 to 0.999999 [-]
 * @returns the limit [Pa], its factors [-] and its relative standard uncertainty [-]
 * @throws RangeError  a value is out of its range
 * @example enduranceLimit(ksi(105), { diameter: inch(1.1), surface: "machined", reliability: 0.99 }).value.in("ksi") // 29.24
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, equations 6-8 and 6-18 to 6-29, tables 6-2 and
 * 6-5 (from memory; example 7-1 read); scatter: the same, equation 6-70 and table 6-10 (from memory)
 */
export function enduranceLimit(tensile: Pressure, conditions: EnduranceConditions): EnduranceLimit {
  const where = "enduranceLimit";
  const { diameter, surface, temperature, reliability = 0.5 } = conditions;
  if (!isQuantity(tensile, "pressure") || !(tensile.si > 0))
    throw new RangeError(`${where}: tensile must be a strength above 0, got ${String(tensile)}`);
  if (!isQuantity(diameter, "length") || !(diameter.in("inch") >= 0.11 && diameter.in("inch") <= 10))
    throw new RangeError(
      `${where}: diameter must be a length from 0.11 to 10 in (2.8 to 254 mm), got ${String(diameter)}`,
    );
  if (!Object.hasOwn(surfaces, surface))
    throw new RangeError(
      `${where}: surface must be one of ${Object.keys(surfaces)
        .map((s) => `"${s}"`)
        .join(", ")}, got ${JSON.stringify(surface)}`,
    );
  if (!(reliability >= 0.5 && reliability <= 0.999999))
    throw new RangeError(`${where}: reliability must be from 0.5 to 0.999999, got ${String(reliability)}`);
  const ksi = tensile.in("ksi");
  const [a, b, variation] = surfaces[surface];
  const inches = diameter.in("inch");
  const factors = Object.freeze({
    surface: Math.min(1, a * ksi ** b),
    size: inches <= 2 ? 0.879 * inches ** -0.107 : 0.91 * inches ** -0.157,
    temperature: temperatureFactor(where, temperature),
    reliability: 1 - 0.08 * normalQuantile(reliability),
  });
  const testBar = Math.min(0.5 * ksi, 100) * (tensile.si / ksi);
  const shown = (si: number): Pressure => quantityFromSi("pressure", si, tensile.writtenIn);
  return Object.freeze<EnduranceLimit>({
    kind: "endurance limit",
    value: shown(testBar * factors.surface * factors.size * factors.temperature * factors.reliability),
    testBar: shown(testBar),
    factors,
    surface,
    relativeUncertainty: reliability === 0.5 ? Math.hypot(steelScatter, variation) : variation,
  });
}

function temperatureFactor(where: string, temperature: Temperature | undefined): number {
  if (temperature === undefined) return 1;
  if (!isTemperature(temperature))
    throw new TypeError(`${where}: temperature must be a temperature, got ${String(temperature)}`);
  const t = temperature.in("degF");
  if (t < 32 || t > 1000)
    throw new RangeError(
      `${where}: temperature must be from 32 to 1000 °F (0 to 538 °C), got ${temperature}; in frost a notched old steel breaks without warning, whatever its endurance limit`,
    );
  if (t < 70) return 1;
  return 0.975 + 0.432e-3 * t - 0.115e-5 * t ** 2 + 0.104e-8 * t ** 3 - 0.595e-12 * t ** 4;
}
