import type { ShaftDuty, ShaftPlace } from "./safety-types.js";
import { preparePlace } from "./shaft-safety.js";

/**
 * The two factors of safety at a place, from its estimates alone: for a simulation or a sweep that brings its own
 * draws, at a hundredth of the work of `shaftSafety`.
 *
 * @param place  as for `shaftSafety`; uncertainties are left aside
 * @param duty   likewise
 * @param off    factors drawn for what the published figures are off by: stress concentration and endurance limit, 1 for
 *   not at all [-]
 * @returns factors against fatigue and yielding [-]
 * @throws RangeError  as `shaftSafety`
 * @throws TypeError   as `shaftSafety`
 * @example
 * const duty = { steel: assumedSteel("mild steel of the period"), surface: "machined", demanded: 2 };
 * const place = { name: "journal", diameter: mm(60), moment: newtonMetre(400), torque: newtonMetre(600), feature: { shape: "plain" } };
 * safetyFactors(place, duty).fatigue // 5.034
 * @source as `shaftSafety`
 */
export function safetyFactors(
  place: ShaftPlace,
  duty: ShaftDuty,
  off: { readonly notch?: number; readonly endurance?: number } = {},
): { readonly fatigue: number; readonly yielding: number } {
  const { numbers, evaluate } = preparePlace("safetyFactors", place, duty);
  const { notch = 1, endurance = 1 } = off;
  if (!(notch > 0 && endurance > 0))
    throw new RangeError(
      `safetyFactors: off.notch and off.endurance must be more than 0, got ${notch} and ${endurance}`,
    );
  const { fatigue, yielding } = evaluate({ ...numbers, notch, endurance });
  return { fatigue, yielding };
}
