import {
  type Angle,
  isQuantity,
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  type UnitSystem,
} from "../../quantity/index.js";
import { halfAngleOf } from "../../survey/index.js";

/** What an indicator is to show while a slide is set to a taper. */
export interface IndicatorSchedule {
  readonly kind: "indicator schedule";
  readonly unitSystem: UnitSystem;
  /** Change of DIAMETER per length along the axis [-], without sign. */
  readonly taper: Measured<number>;
  readonly against: "parallel bar" | "flank";
  readonly rows: readonly {
    readonly travel: Length;
    /** What it is to show when the travel is along the axis: the carriage's. */
    readonly alongAxis: Measured<Length>;
    /** What it is to show when the travel is along the flank: the compound slide's. Not against a flank, where it stands still. */
    readonly alongSlide?: Measured<Length>;
    /** What it shows over that travel along the axis if it leans, the slide set right. */
    readonly leaning: Length;
  }[];
  /** How far the indicator may lean from square to the axis. */
  readonly lean: Angle;
  /** Shown by the leaning indicator over true, less 1 [-]: its cosine error. */
  readonly tooMuch: number;
  /** By how much the taper comes out too small from end to end when a leaning indicator sets it: ON DIAMETER. */
  readonly overSeat: Length;
  readonly seat: Length;
  readonly allowed: Length;
  /** The lean that alone would use up what is allowed; undefined where none below 60° does. */
  readonly mostLean?: Angle;
}

/** Beyond this nobody sets an indicator. */
const steepest = Math.PI / 3;

/**
 * What an indicator is to show, travel by travel, while a slide is set to a taper; and what a lean of the indicator spoils.
 *
 * C = change of DIAMETER per length, tan θ = C/2.
 * - along the axis (carriage): rise = t·tan θ, on RADIUS
 * - along the flank (compound slide, by its own dial): rise = t·sin θ, less by cos θ
 * - leaning by φ from square to the axis: a parallel bar shows 1/cos φ too much, a flank cos θ/cos(φ + θ); the one that
 *   leans the worse way is taken
 * - set by it, the taper is too small by the part x = shown/true − 1: C·seat·x/(1 + x) ON DIAMETER from end to end
 *
 * A lever indicator whose finger makes an angle φ with the surface shows 1/cos φ too much likewise.
 *
 * Valid when: the travel is read where it is meant, along the axis or on the slide's own dial; tip at centre height.
 *
 * @param given.taper  > 0 [-]
 * @param given.seat  length of the taper to be cut, > 0 [m]
 * @param given.allowed  by how much it may be wrong from end to end, ON DIAMETER, > 0 [m]
 * @param given.travel  the longest, > 0 [m]
 * @param given.lean  from square to the axis, 0 to 60° [rad]
 * @param given.against  what the tip touches; default "parallel bar"
 * @param given.steps  equal parts of the travel, a whole number from 1 to 20 [-]; default 4
 * @returns the schedule; lengths [m], the uncertainties those of the taper
 * @throws RangeError  one of these is not given or out of its bounds
 * @example
 * const job = { seat: inch(5), allowed: thou(1), travel: inch(4), lean: degree(5) };
 * indicatorSchedule({ taper: measured(1 / 16, 0), ...job }).rows[3].alongAxis.value.in("inch") // 0.125
 * @source geometry; that a finger's reading falls off by the cosine of its angle: common practice, no source
 */
export function indicatorSchedule(given: {
  readonly taper: Measured<number>;
  readonly seat: Length;
  readonly allowed: Length;
  readonly travel: Length;
  readonly lean: Angle;
  readonly against?: "parallel bar" | "flank";
  readonly steps?: number;
}): IndicatorSchedule {
  const { taper, seat, allowed, travel, lean, against = "parallel bar", steps = 4 } = given;
  check({ taper, seat, allowed, travel, lean, against, steps });
  const system: UnitSystem = travel.writtenIn === "mm" ? "metric" : "inch";
  const size = (si: number): Length => quantityFromSi("length", si, system === "inch" ? "inch" : "mm");
  const small = (si: number): Length =>
    quantityFromSi("length", si, system === "inch" ? "thou" : "micrometre");
  const { value, standardUncertainty: u, degreesOfFreedom } = taper;
  const theta = halfAngleOf(taper).value.si;
  const tilt = against === "flank" ? theta : 0;
  const shownOverTrue = Math.cos(tilt) / Math.cos(lean.si + tilt);
  const rows = Array.from({ length: steps }, (_, i) => {
    const t = (travel.si * (i + 1)) / steps;
    const rise = (si: number, change: number): Measured<Length> =>
      measured(size(si), size(change), degreesOfFreedom);
    return Object.freeze({
      travel: size(t),
      alongAxis: rise((t * value) / 2, (t * u) / 2),
      // d(sin θ)/dC = cos³ θ / 2
      ...(against === "parallel bar" && {
        alongSlide: rise(t * Math.sin(theta), (t * Math.cos(theta) ** 3 * u) / 2),
      }),
      leaning: size((t * value * shownOverTrue) / 2),
    });
  });
  // cos(φ + θ) at which the taper is too small by just what is allowed
  const least = Math.cos(tilt) * (1 - allowed.si / (value * seat.si));
  const most = least > Math.cos(steepest + tilt) ? Math.acos(least) - tilt : undefined;
  return Object.freeze<IndicatorSchedule>({
    kind: "indicator schedule",
    unitSystem: system,
    taper,
    against,
    rows: Object.freeze(rows),
    lean,
    tooMuch: shownOverTrue - 1,
    overSeat: small(value * seat.si * (1 - 1 / shownOverTrue)),
    seat,
    allowed,
    ...(most !== undefined && { mostLean: quantityFromSi("angle", most, "degree") }),
  });
}

function check(given: Required<Parameters<typeof indicatorSchedule>[0]>): void {
  const { taper, lean, against, steps } = given;
  if (!(taper?.value > 0 && Number.isFinite(taper.value)))
    throw new RangeError(
      `indicatorSchedule: taper must be above 0, without its sign, got ${String(taper?.value)}`,
    );
  for (const name of ["seat", "allowed", "travel"] as const)
    if (!isQuantity(given[name], "length") || !(given[name].si > 0))
      throw new RangeError(`indicatorSchedule: ${name} must be a length above 0, got ${String(given[name])}`);
  if (!isQuantity(lean, "angle") || !(lean.si >= 0 && lean.si <= steepest))
    throw new RangeError(
      `indicatorSchedule: lean must be an angle from 0 to 60° off square, got ${String(lean)}`,
    );
  if (against !== "parallel bar" && against !== "flank")
    throw new RangeError(
      `indicatorSchedule: against must be "parallel bar" or "flank", got "${String(against)}"`,
    );
  if (!Number.isInteger(steps) || steps < 1 || steps > 20)
    throw new RangeError(`indicatorSchedule: steps must be a whole number from 1 to 20, got ${steps}`);
}
