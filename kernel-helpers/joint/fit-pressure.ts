import { type Length, type Pressure, quantityFromSi } from "../quantity/index.js";
import { requireBetween, requireQuantity, requireSmaller } from "./fit-check.js";
import { pressureOf, wallRatio } from "./fit-numbers.js";

/** A hub on a shaft, as sizes and elastic constants. */
export interface FitPair {
  /** Diameter of the seat (of a taper: half-way along the hub). */
  readonly diameter: Length;
  /** DIAMETRAL interference: shaft diameter minus bore, before they are together. */
  readonly interference: Length;
  readonly hub: { readonly outside: Length; readonly modulus: Pressure; readonly poisson: number };
  /** A hollow shaft has a bore. */
  readonly shaft: { readonly bore?: Length; readonly modulus: Pressure; readonly poisson: number };
}

/** The pressure of a fit and the stresses it makes; tension is positive. */
export interface FitPressure {
  readonly pressure: Pressure;
  /** Largest in the hub: at its bore. */
  readonly hubHoopAtBore: Pressure;
  readonly hubHoopOutside: Pressure;
  /** At the shaft's surface. */
  readonly shaftHoopAtSurface: Pressure;
  /** At the bore of a hollow shaft; at the centre of a solid one. */
  readonly shaftHoopInside: Pressure;
}

/**
 * Pressure between a hub and its shaft from the DIAMETRAL interference, and the hoop stresses it makes.
 *
 * p = δ/{ d·[ ((D² + d²)/(D² − d²) + ν_h)/E_h + ((d² + b²)/(d² − b²) − ν_s)/E_s ] }
 *
 * Valid when: both stay elastic and the hub is as long as its seat; a web, a rim or overhanging shaft stiffens
 * the ends, where the pressure is higher than this mean. Some books write the same with the RADIAL interference,
 * half of this one: δ here is on diameter.
 *
 * @param pair.diameter      of the seat, d [m]
 * @param pair.interference  on diameter, δ [m], 0 or more
 * @param pair.hub           outside diameter D [m], modulus [Pa], Poisson's ratio [-]
 * @param pair.shaft         bore b [m] (none: solid), modulus [Pa], Poisson's ratio [-]
 * @returns pressure and hoop stresses [Pa]
 * @throws RangeError  a size, a modulus or a ratio is impossible, the interference is negative (a clearance), or so
 *   large that it must be a slip of units
 * @example
 * const same = { modulus: gigapascal(200), poisson: 0.3 };
 * const hub = { outside: mm(500), ...same };
 * const shaft = { bore: mm(300), ...same };
 * fitPressure({ diameter: mm(400), interference: mm(0.2), hub, shaft }).pressure.in("megapascal") // 12.3
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, section 3-16 and equations 7-39 to 7-47;
 * the example is A. C. Ugural & S. K. Fenster, Advanced Strength and Applied Elasticity, example 8.3, which gives
 * the interference on RADIUS, 0.1 mm
 */
export function fitPressure(pair: FitPair): FitPressure {
  const { diameter, interference, hub, shaft } = pair;
  const where = "fitPressure";
  const bore = shaft.bore ?? quantityFromSi("length", 0, diameter.writtenIn);
  requireQuantity(where, "diameter", diameter, "length", "more than 0");
  requireQuantity(where, "hub.outside", hub.outside, "length", "more than 0");
  requireSmaller(where, ["diameter", diameter], ["hub.outside", hub.outside]);
  requireQuantity(where, "shaft.bore", bore, "length", "0 or more");
  requireSmaller(where, ["shaft.bore", bore], ["diameter", diameter]);
  requireQuantity(where, "hub.modulus", hub.modulus, "pressure", "more than 0");
  requireQuantity(where, "shaft.modulus", shaft.modulus, "pressure", "more than 0");
  requireBetween(where, "hub.poisson", hub.poisson, 0, 0.5);
  requireBetween(where, "shaft.poisson", shaft.poisson, 0, 0.5);
  requireInterference(where, interference, diameter);
  const p = pressureOf({
    diameter: diameter.si,
    length: 0,
    taper: 0,
    friction: 0,
    interference: interference.si,
    hubOutside: hub.outside.si,
    hubModulus: hub.modulus.si,
    hubPoisson: hub.poisson,
    shaftBore: bore.si,
    shaftModulus: shaft.modulus.si,
    shaftPoisson: shaft.poisson,
  });
  const [d, outside, inside] = [diameter.si, hub.outside.si, bore.si];
  const stress = (si: number): Pressure => quantityFromSi("pressure", si, hub.modulus.writtenIn);
  return Object.freeze({
    pressure: stress(p),
    hubHoopAtBore: stress(p * wallRatio(outside, d)),
    hubHoopOutside: stress((2 * p * d ** 2) / (outside ** 2 - d ** 2)),
    shaftHoopAtSurface: stress(-p * wallRatio(d, inside)),
    shaftHoopInside: stress(inside === 0 ? -p : (-2 * p * d ** 2) / (d ** 2 - inside ** 2)),
  });
}

/** The largest interference per diameter taken for a fit; beyond it any metal gives way, or a unit is wrong. */
const most = 0.01;

/** Rejects a clearance, and an interference of more than a hundredth of the diameter. */
export function requireInterference(where: string, interference: Length, diameter: Length): void {
  if (interference.si < 0)
    throw new RangeError(
      `${where}: interference must be 0 or more: shaft minus bore, on diameter; a clearance makes no pressure, got ${interference}`,
    );
  requireQuantity(where, "interference", interference, "length", "0 or more");
  if (interference.si > most * diameter.si)
    throw new RangeError(
      `${where}: interference must not be more than 1/100 of the diameter of ${diameter}; is its unit right? got ${interference}`,
    );
}
