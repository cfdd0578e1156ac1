import { type Length, quantityFromSi, type RotationalSpeed } from "../quantity/index.js";
import { requireQuantity } from "./fit-check.js";
import { interferenceLostBySpinning } from "./fit-speed.js";
import type { HubFit, HubOnShaft } from "./hub-fit-types.js";
import type { Spread } from "./spread.js";

/** Below this share of the least interference running changes nothing that matters [-] (common practice, no source). */
const small = 0.1;

/** What running takes from a fit. */
export interface FitAtSpeed {
  readonly kind: "fit at speed";
  readonly speed: RotationalSpeed;
  /** On diameter, at most: heaviest and softest hub. */
  readonly lost: Length;
  /** On diameter, at rest. */
  readonly interference: Spread<Length>;
  /** Lost over the least interference [-]; undefined where that is 0 or a clearance. */
  readonly share: number | undefined;
  /** At which the least interference would be gone; undefined likewise. */
  readonly loosensAt: RotationalSpeed | undefined;
  readonly verdict: "stays" | "loosens" | "weakens";
}

/**
 * Whether running loosens a hub: what its bore opens over the shaft at a speed, against the interference it has.
 *
 * loss by `interferenceLostBySpinning` with the hub's highest density and lowest modulus; it grows with ω², so that the
 * least interference is gone at ω·√(least/loss). stays: below a tenth of the least; loosens: all of it and more
 *
 * Valid when: as for `interferenceLostBySpinning`; the pull of a heavy rim on its arms is not in it.
 *
 * @param hub  as it was given to `hubFit`
 * @param fit  as `hubFit` returned it
 * @param speed  the highest it runs at, > 0 [rad/s]
 * @returns loss on diameter [m], its share [-], the speed that loosens [rad/s]
 * @throws RangeError  the speed is not above 0
 * @example
 * const hub = { material: material("grey iron class 20"), outside: inch(5.5) };
 * const place = { diameter: inch(2.25), length: inch(4.5), interference: thou(1.5), hub, shaft: { material: material("steel") }, friction: 0.15 };
 * fitAtSpeed(place, hubFit(place), rpm(110)).verdict // "stays"
 * @source see `interferenceLostBySpinning`
 */
export function fitAtSpeed(hub: HubOnShaft, fit: HubFit, speed: RotationalSpeed): FitAtSpeed {
  requireQuantity("fitAtSpeed", "speed", speed, "rotational speed", "more than 0");
  const { material: metal, outside } = hub.hub;
  const { material: core, bore } = hub.shaft;
  const lost = interferenceLostBySpinning({
    diameter: hub.diameter,
    hub: {
      outside,
      density: metal.density.high,
      modulus: metal.modulus.low,
      poisson: metal.poisson.high,
    },
    shaft: {
      ...(bore === undefined ? {} : { bore }),
      density: core.density.low,
      modulus: core.modulus.high,
      poisson: core.poisson.high,
    },
    speed,
  });
  const least = fit.interference.low.si;
  const share = least > 0 ? lost.si / least : undefined;
  return Object.freeze<FitAtSpeed>({
    kind: "fit at speed",
    speed,
    lost,
    interference: fit.interference,
    share,
    loosensAt:
      least > 0 && lost.si > 0
        ? quantityFromSi("rotational speed", speed.si * Math.sqrt(least / lost.si), speed.writtenIn)
        : undefined,
    verdict: share === undefined || share >= 1 ? "loosens" : share > small ? "weakens" : "stays",
  });
}
