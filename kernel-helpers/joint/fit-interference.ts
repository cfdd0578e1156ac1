import { type Length, type Measured, measured, quantityFromSi } from "../quantity/index.js";
import { requireBetween, requireQuantity } from "./fit-check.js";

/** A length known only to lie between two others. */
export interface LengthRange {
  readonly low: Length;
  readonly high: Length;
}

/** The interference that the trade gives a hub of this size. */
export interface InterferenceByPractice extends LengthRange {
  readonly kind: "interference by practice";
  readonly diameter: Length;
  /** Of the diameter, least and most [-]. */
  readonly shares: readonly [low: number, high: number];
  readonly source: string;
}

/**
 * DIAMETRAL interference of a fit from what was measured: shaft minus bore.
 *
 * δ = d_shaft − d_bore; u² = u_shaft² + u_bore²
 *
 * Valid when: both are at one temperature and the two uncertainties are independent. Below 0 it is a clearance,
 * and is given as such.
 *
 * @param shaft  diameter of the shaft [m]
 * @param bore   diameter of the bore at the same place along the seat [m]
 * @returns interference on diameter with its standard uncertainty [m], degrees of freedom by Welch–Satterthwaite
 *   left out: the smaller of the two is taken, which is the safe side
 * @throws RangeError  a diameter is not more than 0
 * @example
 * const shaft = measured(inch(2.4385), thou(0.2));
 * interferenceFromReadings(shaft, measured(inch(2.437), thou(0.3))).value.in("thou") // 1.5
 * @source geometry; JCGM 100:2008 (GUM), 5.1.2
 */
export function interferenceFromReadings(shaft: Measured<Length>, bore: Measured<Length>): Measured<Length> {
  requireQuantity("interferenceFromReadings", "shaft", shaft.value, "length", "more than 0");
  requireQuantity("interferenceFromReadings", "bore", bore.value, "length", "more than 0");
  return measured(
    shaft.value.minus(bore.value),
    quantityFromSi(
      "length",
      Math.hypot(shaft.standardUncertainty.si, bore.standardUncertainty.si),
      shaft.value.writtenIn,
    ),
    Math.min(shaft.degreesOfFreedom, bore.degreesOfFreedom),
  );
}

/**
 * DIAMETRAL interference of a taper from how far it was drawn up beyond first contact.
 *
 * δ = s·C with s the draw-up along the axis and C the taper, diameter per length; u² = (C u_s)² + (s u_C)²
 *
 * Valid when: both tapers are alike, so that they touch all along at first contact.
 *
 * @param drawUp  along the axis from first contact [m], 0 or more
 * @param taper   diameter per length [-], more than 0; NOT the half angle and not per foot
 * @returns interference on diameter [m] with its standard uncertainty
 * @throws RangeError  the draw-up is negative, or the taper is not from 0 to 1
 * @example interferenceFromDrawUp(measured(inch(0.144), inch(0)), measured(1 / 12, 0)).value.in("inch") // 0.012
 * @source geometry of the cone: 1 in 12, 0.012 in on diameter for 0.144 in along the axis
 */
export function interferenceFromDrawUp(drawUp: Measured<Length>, taper: Measured<number>): Measured<Length> {
  requireQuantity("interferenceFromDrawUp", "drawUp", drawUp.value, "length", "0 or more");
  requireBetween("interferenceFromDrawUp", "taper", taper.value, 0, 1);
  const u = Math.hypot(
    taper.value * drawUp.standardUncertainty.si,
    drawUp.value.si * taper.standardUncertainty,
  );
  return measured(
    drawUp.value.times(taper.value),
    quantityFromSi("length", u, drawUp.value.writtenIn),
    Math.min(drawUp.degreesOfFreedom, taper.degreesOfFreedom),
  );
}

/** Interference per diameter that the trade gives a hub drawn up on a taper or shrunk on [-]: common practice, no source. */
const practice = { low: 0.0005, high: 0.001 };

/**
 * DIAMETRAL interference that a hub of this size was likely put on with, where nobody can measure it any more.
 *
 * 0.0005 to 0.001 of the diameter
 *
 * Valid when: it was put on as the trade does. A hub driven on harder, or swollen with rust, has more; one that was
 * once pressed too hard and stretched has less.
 *
 * @param diameter  of the seat [m]
 * @returns the two ends of the range, on diameter [m]
 * @throws RangeError  the diameter is not more than 0
 * @example interferenceByPractice(inch(2)).high.in("thou") // 2
 * @source common practice, no source
 */
export function interferenceByPractice(diameter: Length): InterferenceByPractice {
  requireQuantity("interferenceByPractice", "diameter", diameter, "length", "more than 0");
  return Object.freeze<InterferenceByPractice>({
    kind: "interference by practice",
    diameter,
    low: diameter.times(practice.low),
    high: diameter.times(practice.high),
    shares: Object.freeze([practice.low, practice.high] as const),
    source: "common practice, no source",
  });
}
