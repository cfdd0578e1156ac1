import {
  isQuantity,
  isTemperature,
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  referenceTemperature,
  type Temperature,
  type TemperatureDifference,
  type ThermalExpansion,
} from "../quantity/index.js";

/** How warm part and instrument were, and how each expands. */
export interface MeasuringTemperature {
  /** Of part and instrument while measuring; both must have had time to come to it. */
  readonly temperature: Temperature;
  /** Its standard uncertainty, a difference (`deltaF`, `deltaC`); none is taken as 0. */
  readonly uncertainty?: TemperatureDifference | undefined;
  /** Of the part. */
  readonly partExpansion: ThermalExpansion;
  /** Of the instrument's frame or scale; 0 for one that does not expand. */
  readonly instrumentExpansion: ThermalExpansion;
}

/** A length brought to 20 °C. */
export interface LengthAtReference {
  readonly kind: "length at 20 °C";
  /** At 20 °C; its uncertainty is that of the correction alone. */
  readonly length: Measured<Length>;
  /** What was added to the reading. */
  readonly correction: Length;
}

/**
 * The length a part has at 20 °C, from what an instrument of the same temperature reads.
 *
 * L₂₀ = L (1 + α_i ΔT) / (1 + α_p ΔT), ΔT = T − 20 °C; to first order L₂₀ − L = L (α_i − α_p) ΔT.
 * A warm instrument reads short, a warm part long.
 *
 * The standard uncertainty is that from ΔT: u = L |α_i − α_p| u(ΔT) / (1 + α_p ΔT)². The uncertainty of
 * the expansions is not in it.
 *
 * Valid when: part and instrument have one temperature, between −50 and 150 °C; outside it throws.
 *
 * @param length  as read [m]
 * @param conditions.temperature  of part and instrument while measuring [K]
 * @param conditions.uncertainty  standard uncertainty of that temperature, a difference [K]
 * @param conditions.partExpansion  mean coefficient α_p of the part [1/K]
 * @param conditions.instrumentExpansion  mean coefficient α_i of the instrument [1/K]
 * @returns the length at 20 °C and the correction [m]
 * @throws TypeError   a condition is missing or of another kind, e.g. a temperature for a difference
 * @throws RangeError  the temperature is outside −50 to 150 °C, or the uncertainty is negative
 * @example
 * const warm = { temperature: degC(25), partExpansion: perC(11.5e-6), instrumentExpansion: perC(0) };
 * toReferenceTemperature(mm(100), warm).correction.in("micrometre") // -5.750
 * @source ISO 1:2022 (20 °C), from memory; JCGM 100:2008 (GUM), 5.1.2 and H.1.2 (the end gauge: l(1 + αθ) = l_S(1 + α_S θ_S))
 */
export function toReferenceTemperature(length: Length, conditions: MeasuringTemperature): LengthAtReference {
  if (!isQuantity(length, "length"))
    throw new TypeError(`toReferenceTemperature: length must be a length, got ${String(length)}`);
  const factor = referenceTemperatureFactor(conditions);
  const at20 = quantityFromSi("length", length.si * factor.value, length.writtenIn as never);
  const u = quantityFromSi(
    "length",
    Math.abs(length.si) * factor.standardUncertainty,
    length.writtenIn as never,
  );
  return Object.freeze({
    kind: "length at 20 °C",
    length: measured(at20, u),
    correction: at20.minus(length),
  });
}

/**
 * The factor L₂₀ / L by which `toReferenceTemperature` brings every length of a table to 20 °C.
 *
 * @param conditions  as for `toReferenceTemperature`
 * @returns the factor with its standard uncertainty from the temperature [-]
 * @throws TypeError, RangeError  as `toReferenceTemperature`
 * @example
 * const warm = { temperature: degC(25), partExpansion: perC(11.5e-6), instrumentExpansion: perC(0) };
 * referenceTemperatureFactor(warm).value // 0.9999425
 * @source as `toReferenceTemperature`
 */
export function referenceTemperatureFactor(conditions: MeasuringTemperature): Measured<number> {
  const { temperature, uncertainty, partExpansion, instrumentExpansion } = conditions;
  const where = "toReferenceTemperature";
  if (!isTemperature(temperature))
    throw new TypeError(
      `${where}: temperature must be a temperature (degF, degC), got ${String(temperature)}`,
    );
  if (uncertainty !== undefined && !isQuantity(uncertainty, "temperature difference"))
    throw new TypeError(
      `${where}: uncertainty must be a temperature difference (deltaF, deltaC), got ${String(uncertainty)}`,
    );
  for (const [name, value] of Object.entries({ partExpansion, instrumentExpansion }))
    if (!isQuantity(value, "thermal expansion"))
      throw new TypeError(`${where}: ${name} must be a thermal expansion (perF, perC), got ${String(value)}`);
  const celsius = temperature.in("degC");
  if (celsius < -50 || celsius > 150)
    throw new RangeError(`${where}: temperature must lie between −50 and 150 °C, got ${temperature}`);
  if (uncertainty !== undefined && uncertainty.si < 0)
    throw new RangeError(`${where}: uncertainty must be 0 or more, got ${uncertainty}`);
  const warmer = temperature.minus(referenceTemperature).si;
  const part = 1 + partExpansion.si * warmer;
  const instrument = 1 + instrumentExpansion.si * warmer;
  const perKelvin = Math.abs(instrumentExpansion.si - partExpansion.si) / part ** 2;
  return measured(instrument / part, perKelvin * (uncertainty?.si ?? 0));
}
