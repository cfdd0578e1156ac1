import {
  type Force,
  type Length,
  type Pressure,
  quantityFromSi,
  systemOf,
  type Torque,
} from "../quantity/index.js";
import { requireBetween, requireQuantity, requireSmaller } from "./fit-check.js";
import { forcesPerPressure } from "./fit-numbers.js";

/** The seat of a hub: straight or tapered. */
export interface FitSeat {
  readonly pressure: Pressure;
  /** Half-way along the hub. */
  readonly diameter: Length;
  /** In contact, along the axis. */
  readonly length: Length;
  /** Diameter per length [-]; 0 or left out for a straight fit. */
  readonly taper?: number;
  /** [-] */
  readonly friction: number;
}

/** What a fit takes and gives along the axis and round it. */
export interface FitForces {
  /** To press the hub on to where this pressure stands. */
  readonly on: Force;
  /** To press it off; below 0 a taper lets go of itself. */
  readonly off: Force;
  /** Torque at which it slips. */
  readonly torque: Torque;
  /** Whether friction holds it without nut or press: always so for a straight fit. */
  readonly selfHolding: boolean;
  /** Friction above which it holds itself: the tangent of the half angle [-]. */
  readonly holdsAbove: number;
}

/**
 * Force to press a hub on and off, and the torque at which it slips, straight or tapered.
 *
 * on F = π d L p (µ + tan α), off F = π d L p (µ − tan α), with L along the AXIS, d half-way along and α the HALF
 * angle, tan α = taper/2. Torque T = ½ µ p π L d²/cos α, with the mean of d² over the seat. It holds itself when
 * µ > tan α.
 *
 * Valid when: the pressure is the same all along (both tapers alike) and friction acts along one way at a time: a
 * fit that is turned while it is pressed comes off with less.
 *
 * @param seat.pressure  between hub and shaft, p [Pa], 0 or more
 * @param seat.diameter  mean diameter of the seat, d [m]
 * @param seat.length    in contact along the axis, L [m]
 * @param seat.taper     diameter per length [-], 0 to 1, default 0
 * @param seat.friction  µ [-], 0 to 1
 * @returns forces [N] and torque [N·m]
 * @throws RangeError  one of them is out of its bounds, or the taper comes to a point within the seat
 * @example
 * const seat = { pressure: megapascal(20), diameter: mm(55), length: mm(70), friction: 0.15 };
 * taperFitForces({ ...seat, taper: 0.1 }).off.in("kilonewton") // 24.2
 * @source Shigley & Nisbett, Mechanical Engineering Design, 9th edition, equations 7-48 and 7-49 (straight); taper:
 * equilibrium of the cone
 */
export function taperFitForces(seat: FitSeat): FitForces {
  const { pressure, diameter, length, taper = 0, friction } = seat;
  const where = "taperFitForces";
  requireQuantity(where, "pressure", pressure, "pressure", "0 or more");
  requireQuantity(where, "diameter", diameter, "length", "more than 0");
  requireQuantity(where, "length", length, "length", "more than 0");
  requireBetween(where, "taper", taper, 0, 1);
  requireBetween(where, "friction", friction, 0, 1);
  requireSmaller(where, ["taper × length / 2", length.times(taper / 2)], ["diameter", diameter]);
  const inch = systemOf(diameter.writtenIn ?? "mm") === "inch";
  const per = forcesPerPressure({
    diameter: diameter.si,
    length: length.si,
    taper,
    friction,
  });
  const force = (si: number): Force => quantityFromSi("force", si, inch ? "lbf" : "newton");
  return Object.freeze({
    on: force(per.on * pressure.si),
    off: force(per.off * pressure.si),
    torque: quantityFromSi("torque or energy", per.torque * pressure.si, inch ? "lbfFoot" : "newtonMetre"),
    selfHolding: friction > taper / 2,
    holdsAbove: taper / 2,
  });
}
