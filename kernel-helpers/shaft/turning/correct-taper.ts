import {
  type Angle,
  isQuantity,
  type Length,
  type Measured,
  measured,
  quantityFromSi,
} from "../../quantity/index.js";
import { coverageFactor } from "../../statistics/index.js";

/** A trial cut along a taper, measured at two places. */
export interface TrialCut {
  /** Wanted change of DIAMETER per length [-], without sign. */
  readonly wanted: number;
  /** Diameters measured nearer to the end that is to be small, and to that which is to be large. */
  readonly smallEnd: Measured<Length>;
  readonly largeEnd: Measured<Length>;
  /** Along the axis, from one place to the other. */
  readonly apart: Length;
  /** Between the points of the centres, for the tailstock. */
  readonly betweenCentres?: Length;
}

/** How to move after a trial cut. Above 0 is more taper, below 0 less. */
export interface TaperCorrection {
  readonly kind: "taper correction";
  readonly wanted: number;
  /** As cut. */
  readonly cut: Measured<number>;
  /** Wanted less cut [-]. */
  readonly change: Measured<number>;
  /** Whether the measuring can tell it from none, 95 %. */
  readonly real: boolean;
  /** The same from end to end of the places measured, ON DIAMETER. */
  readonly onDiameter: Measured<Length>;
  /** Swing of the compound slide. */
  readonly compound: Measured<Angle>;
  /** Of the taper attachment, per foot on diameter. */
  readonly attachmentPerFoot: Measured<Length>;
  /** Of the tailstock, sideways; undefined where the length is not given. */
  readonly tailstock: Measured<Length> | undefined;
  readonly text: string;
}

/**
 * How to move the slide, the attachment or the tailstock after a trial cut, from two diameters measured on it.
 *
 * C = (D_large − D_small)/apart; change = wanted − C; compound: atan(wanted/2) − atan(C/2); attachment: change·12 in;
 * tailstock: change·L/2. u(C) = √(u²(D_large) + u²(D_small))/apart
 *
 * Valid when: both diameters are measured square to the axis, at marked places; `apart` taken as exact.
 *
 * @param trial  wanted > 0 [-]; diameters, apart, betweenCentres [m] > 0
 * @returns the moves; above 0 more taper, below 0 less
 * @throws RangeError  the taper runs the wrong way, or wanted or a length is not above 0
 * @example
 * const ends = { smallEnd: measured(inch(2.14), inch(0)), largeEnd: measured(inch(2.388), inch(0)) };
 * const found = correctTaper({ wanted: 0.0625, ...ends, apart: inch(4), betweenCentres: inch(32) });
 * found.tailstock.value.in("thou").toFixed(2) // "8.00"
 * @source geometry
 */
export function correctTaper(trial: TrialCut): TaperCorrection {
  const { wanted, smallEnd, largeEnd, apart, betweenCentres } = trial;
  if (!(wanted > 0 && Number.isFinite(wanted)))
    throw new RangeError(`correctTaper: wanted must be above 0, without sign, got ${wanted}`);
  for (const [name, value] of [
    ["apart", apart],
    ["betweenCentres", betweenCentres],
  ] as const)
    if (value !== undefined && !(isQuantity(value, "length") && value.si > 0))
      throw new RangeError(`correctTaper: ${name} must be a length above 0, got ${String(value)}`);
  const taper = (largeEnd.value.si - smallEnd.value.si) / apart.si;
  const u = Math.hypot(smallEnd.standardUncertainty.si, largeEnd.standardUncertainty.si) / apart.si;
  const k = coverageFactor(0.95, Number.POSITIVE_INFINITY);
  if (taper < -k * u)
    throw new RangeError(
      `correctTaper: the taper runs the wrong way: the end that is to be large measures ${largeEnd.value}, the small one ${smallEnd.value}; swing to the other side, or the readings are exchanged`,
    );
  const change = wanted - taper;
  const real = Math.abs(change) > k * u;
  const metric = apart.writtenIn === "mm" || apart.writtenIn === "micrometre";
  const small = (si: number): Length => quantityFromSi("length", si, metric ? "micrometre" : "thou");
  const moved = (factor: number): Measured<Length> => measured(small(change * factor), small(u * factor));
  const angle = Math.atan(wanted / 2) - Math.atan(taper / 2);
  return Object.freeze<TaperCorrection>({
    kind: "taper correction",
    wanted,
    cut: measured(taper, u),
    change: measured(change, u),
    real,
    onDiameter: moved(apart.si),
    compound: measured(
      quantityFromSi("angle", angle, "arcMinute"),
      quantityFromSi("angle", u / 2 / (1 + taper ** 2 / 4), "arcMinute"),
    ),
    attachmentPerFoot: moved(0.3048),
    tailstock: betweenCentres && moved(betweenCentres.si / 2),
    text: real
      ? change > 0
        ? "Too little taper: set for more, take another trial cut, and measure again."
        : "Too much taper: set for less, take another trial cut, and measure again."
      : "The trial cut shows no error that the measuring can tell: leave the setting, and try by blue.",
  });
}

/**
 * What is still to come off a taper whose gauge, or whose hub, stands off by so much.
 *
 * on diameter = C · stand-off; the dial moves half of it where it counts the radius
 * u² = (C·u(stand-off))² + (stand-off·u(C))²
 *
 * @param taper  change of DIAMETER per length, > 0 [-]
 * @param standOff  how far it has still to go on, along the axis [m]; below 0 it has gone too far
 * @returns metal ON DIAMETER [m]; with its uncertainty where taper and stand-off have theirs
 * @throws RangeError  the taper is not above 0
 * @example metalByGauge(1 / 16, inch(0.16)).in("thou") // 10
 * @source geometry
 */
export function metalByGauge(taper: number, standOff: Length): Length;
export function metalByGauge(taper: Measured<number>, standOff: Measured<Length>): Measured<Length>;
export function metalByGauge(
  taper: number | Measured<number>,
  standOff: Length | Measured<Length>,
): Length | Measured<Length> {
  const value = typeof taper === "number" ? taper : taper.value;
  if (!(value > 0)) throw new RangeError(`metalByGauge: taper must be above 0, got ${value}`);
  const off = isQuantity(standOff, "length") ? standOff : standOff.value;
  const metric = off.writtenIn === "mm" || off.writtenIn === "micrometre";
  const length = (si: number): Length => quantityFromSi("length", si, metric ? "micrometre" : "thou");
  if (typeof taper === "number" || isQuantity(standOff, "length")) return length(value * off.si);
  const u = Math.hypot(value * standOff.standardUncertainty.si, off.si * taper.standardUncertainty);
  return measured(length(value * off.si), length(u), taper.degreesOfFreedom);
}
