import {
  type Length,
  type Quantity,
  quantityFromSi,
  type TemperatureDifference,
  type ThermalExpansion,
} from "../quantity/index.js";
import { requireQuantity } from "./fit-check.js";

/** A fit warmed: how much warmer than when its interference was measured. */
export interface WarmedFit {
  readonly diameter: Length;
  /** DIAMETRAL, cold. */
  readonly interference: Length;
  readonly hubExpansion: ThermalExpansion;
  readonly shaftExpansion: ThermalExpansion;
  readonly hubWarmer: TemperatureDifference;
  readonly shaftWarmer: TemperatureDifference;
}

/**
 * DIAMETRAL interference of a fit when hub and shaft are warmer (or colder) than when it was measured.
 *
 * δ' = δ − d·(α_hub·ΔT_hub − α_shaft·ΔT_shaft)
 *
 * Valid when: each is at one temperature, or that is its mean over the section, which is what a bore and a surface
 * follow. Warmed alike, iron on steel does not come loose: it is only the difference that frees it.
 *
 * @param fit  diameter, cold interference [m]; expansions [1/K]; temperature differences [K]
 * @returns interference on diameter [m]; below 0 a clearance
 * @throws RangeError  the diameter is not more than 0
 * @example
 * const cold = { diameter: inch(4), interference: thou(4), hubExpansion: perF(6.5e-6), shaftExpansion: perF(6.5e-6) };
 * interferenceWarmed({ ...cold, hubWarmer: deltaF(308), shaftWarmer: deltaF(0) }).in("thou") // -4.0, a clearance
 * @source S. Timoshenko & J. N. Goodier, Theory of Elasticity, thermal stress in a cylinder: the bore moves by α
 * times the mean temperature of the section (from memory)
 */
export function interferenceWarmed(fit: WarmedFit): Length {
  const { diameter, interference, hubExpansion, shaftExpansion, hubWarmer, shaftWarmer } = fit;
  requireQuantity("interferenceWarmed", "diameter", diameter, "length", "more than 0");
  const growth = hubExpansion.si * hubWarmer.si - shaftExpansion.si * shaftWarmer.si;
  return quantityFromSi("length", interference.si - diameter.si * growth, interference.writtenIn);
}

/** A fit to be opened by a warm hub on a cold shaft. */
export interface FitToOpen {
  readonly diameter: Length;
  /** DIAMETRAL, cold. */
  readonly interference: Length;
  /** Play wanted beyond that, on diameter; none when left out. */
  readonly play?: Length;
  readonly hubExpansion: ThermalExpansion;
}

/**
 * How much warmer than a cold shaft a hub must be to come loose, or to slip on with some play.
 *
 * ΔT = (δ + play)/(α d), both on DIAMETER
 *
 * Valid when: the shaft stays cold. It does not for long: see `heatingPlan`.
 *
 * @param fit  diameter, interference, play [m], expansion of the hub [1/K]
 * @returns temperature of the hub over that of the shaft [K]
 * @throws RangeError  the diameter or the expansion is not more than 0, or interference or play is negative
 * @example
 * const fit = { diameter: inch(4), interference: thou(4), play: thou(4), hubExpansion: perF(6.5e-6) };
 * temperatureToOpen(fit).in("deltaF") // 307.7
 * @source geometry; the example is a published heating case: 0.004 + 0.004 in on 4 in, 6.5 millionths per °F, 308 °F
 */
export function temperatureToOpen(fit: FitToOpen): Quantity<"temperature difference"> {
  const { diameter, interference, play, hubExpansion } = fit;
  requireQuantity("temperatureToOpen", "diameter", diameter, "length", "more than 0");
  requireQuantity("temperatureToOpen", "interference", interference, "length", "0 or more");
  if (play !== undefined) requireQuantity("temperatureToOpen", "play", play, "length", "0 or more");
  requireQuantity("temperatureToOpen", "hubExpansion", hubExpansion, "thermal expansion", "more than 0");
  return quantityFromSi(
    "temperature difference",
    (interference.si + (play?.si ?? 0)) / (hubExpansion.si * diameter.si),
    hubExpansion.writtenIn === "perF" ? "deltaF" : "deltaC",
  );
}
