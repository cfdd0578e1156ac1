import { type Length, type Measured, measured, quantityFromSi } from "../../quantity/index.js";
import type { AlignedBox } from "./box-alignment.js";

/** What of a box's taper comes of its lying askew, and what is its own. */
export interface TiltInGaps {
  /** Part of the taper that the tilt makes, over the stations of the gaps. */
  readonly part: Measured<Length>;
  /** What is left of the taper: the bore's own. */
  readonly own: Measured<Length>;
  /** DIAMETRAL clearance half-way, once the box lies in line. */
  readonly onceInLine: Measured<Length>;
}

/**
 * The part of the taper in a box's gaps that its tilt makes.
 *
 * A straight shaft in a tilted box lies on the high end of its bottom. There the gap at the crown is the whole clearance;
 * towards the low end bottom and crown sink away together, and the gap shrinks by as much: part = tilt·(stations of the
 * gaps)/(stations of the heights), own = taper − part, and half-way the clearance once in line is the gap + |part|/2.
 *
 * Valid when: gaps at the crown with the shaft down in the bottom, heights of the bottom; stations of both run the same
 * way; boxes far apart to their length; line and gaps read on the box as it stands.
 *
 * @param box  one of `boxAlignment`
 * @param gaps.clearance  DIAMETRAL, half-way [m]
 * @param gaps.taper  gap at the last station less that at the first [m]
 * @param gaps.over  from the first station of the gaps to the last, > 0 [m]
 * @returns the parts, with their uncertainties added as squares
 * @throws RangeError  over not above 0
 * @example
 * const readings = [162, 228].map((station) => ({ station: mm(station), height: micrometre(0) }));
 * const tilt = measured(micrometre(40), micrometre(3));
 * const box = { name: "far box", readings: readings, offset: measured(mm(0), micrometre(1)), tilt: tilt, verdict: "out of line", shim: undefined };
 * const gaps = { clearance: measured(micrometre(90), micrometre(2)), taper: measured(micrometre(50), micrometre(4)), over: mm(66) };
 * tiltInGaps(box, gaps).own.value.in("micrometre").toFixed(0) // "10"
 * @source elementary geometry
 */
export function tiltInGaps(
  box: AlignedBox,
  gaps: { readonly clearance: Measured<Length>; readonly taper: Measured<Length>; readonly over: Length },
): TiltInGaps {
  const { clearance, taper, over } = gaps;
  if (!(over.si > 0)) throw new RangeError(`tiltInGaps: over must be above 0, got ${over}`);
  const stations = box.readings.map(({ station }) => station.si);
  const share = over.si / (Math.max(...stations) - Math.min(...stations));
  const part = { si: box.tilt.value.si * share, u: box.tilt.standardUncertainty.si * share };
  const shown = (si: number, u: number): Measured<Length> => {
    const unit = clearance.value.writtenIn as "thou";
    return measured(quantityFromSi("length", si, unit), quantityFromSi("length", u, unit));
  };
  return Object.freeze({
    part: shown(part.si, part.u),
    own: shown(taper.value.si - part.si, Math.hypot(taper.standardUncertainty.si, part.u)),
    onceInLine: shown(
      clearance.value.si + Math.abs(part.si) / 2,
      Math.hypot(clearance.standardUncertainty.si, part.u / 2),
    ),
  });
}
