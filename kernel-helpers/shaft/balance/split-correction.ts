import { type Angle, type Mass, quantityFromSi } from "../../quantity/index.js";
import { direction, polar } from "./complex.js";

/** A correction split between places that exist. */
export interface SplitCorrection {
  readonly kind: "split correction";
  readonly mass: Mass;
  readonly angle: Angle;
  /** One where a place is right there, else two neighbours. */
  readonly shares: readonly CorrectionShare[];
}

/** A share of a correction at a place that exists. */
export interface CorrectionShare {
  readonly angle: Angle;
  readonly mass: Mass;
}

/**
 * Splits a correcting mass between the two places next to it, at the same radius: spokes, or holes that are there.
 *
 * m₁ = m·sin(β)/sin(α + β), m₂ = m·sin(α)/sin(α + β), α and β from the wanted angle to the two places
 *
 * Valid when: some two neighbouring places lie less than half a turn apart with the wanted angle between them.
 *
 * @param mass  wanted, ≥ 0 [kg]
 * @param angle  wanted [rad]
 * @param places  angles of the places that exist, at least 2 [rad]
 * @returns one share where a place is right there, else two, together equal to the mass wanted [kg]
 * @throws RangeError  fewer than 2 places, a mass below 0, or a gap of half a turn or more round the wanted angle
 * @example splitCorrection(ounce(5), degree(30), [0, 90, 180, 270].map(degree)).shares[0].mass.in("ounce").toFixed(2) // "4.33"
 * @source law of sines
 */
export function splitCorrection(mass: Mass, angle: Angle, places: readonly Angle[]): SplitCorrection {
  if (!(mass.si >= 0)) throw new RangeError(`splitCorrection: mass must be 0 or more, got ${mass}`);
  if (places.length < 2)
    throw new RangeError(`splitCorrection: at least 2 places are needed, got ${places.length}`);
  // How far on from the wanted angle each place lies, from 0 to below a turn.
  const ahead = places.map((place) => direction(polar(1, place.si - angle.si)));
  const smallest = (values: readonly number[]): number =>
    values.reduce((best, value, i) => (value < values[best]! ? i : best), 0);
  const next = smallest(ahead);
  const behind = ahead.map((value) => (2 * Math.PI - value) % (2 * Math.PI));
  const previous = smallest(behind);
  const [beta, alpha] = [ahead[next]!, behind[previous]!];
  const split = (shares: readonly CorrectionShare[]): SplitCorrection =>
    Object.freeze({
      kind: "split correction",
      mass,
      angle,
      shares: Object.freeze(shares.map((share) => Object.freeze({ ...share }))),
    });
  const unit = mass.writtenIn ?? "kilogram";
  const massIn = (si: number): Mass => quantityFromSi("mass", si, unit as never);
  const exact = 1e-9;
  if (Math.min(alpha, beta) < exact) return split([{ angle: places[beta < exact ? next : previous]!, mass }]);
  if (alpha + beta >= Math.PI - exact)
    throw new RangeError(
      `splitCorrection: two places less than half a turn apart must lie on either side of ${angle}, the nearest are ${places[previous]} and ${places[next]}`,
    );
  const whole = Math.sin(alpha + beta);
  return split([
    { angle: places[previous]!, mass: massIn((mass.si * Math.sin(beta)) / whole) },
    { angle: places[next]!, mass: massIn((mass.si * Math.sin(alpha)) / whole) },
  ]);
}
