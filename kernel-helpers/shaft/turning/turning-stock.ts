import {
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  type UnitSystem,
} from "../../quantity/index.js";
import type { RunOut, WearBands } from "../../survey/index.js";

/** What a stretch of shaft offers to the tool as it turns about its centres. */
export interface TurningStock {
  readonly kind: "turning stock";
  readonly unitSystem: UnitSystem;
  readonly from: Length;
  readonly to: Length;
  /** The diameter of the circle that its highest place runs through: where the tool touches first. */
  readonly reach: Measured<Length>;
  readonly reachAt: Length;
  /** The diameter below which the tool cuts all round and all along. */
  readonly unbroken: Measured<Length>;
  readonly unbrokenAt: Length;
  /** Whether the run-out between centres is in it. */
  readonly withRunOut: boolean;
  readonly warnings: readonly string[];
}

/**
 * What is there to be turned off: the circle of the highest place, and the one of the lowest.
 *
 * reach = max(D_largest + 2e), unbroken = min(D_smallest − 2e) over the stations of the stretch; e the distance of the
 * surface's centre from the line of centres ON RADIUS, of the station read nearest
 *
 * Valid when: stations close enough that nothing higher or lower lies between; the work turns about the centres that
 * the run-out was read on.
 *
 * @param wear  wear bands of the shaft
 * @param options.from, options.to  the stretch [m]
 * @param options.runOut  indicator readings between centres, stations counted alike
 * @returns both circles, on diameter [m]
 * @throws RangeError  the stretch is the wrong way round, or holds no reading that counts
 * @example
 * const rows = ["0,2.4375", "1,2.4375", "2,2.4375", "3,2.4345", "4,2.4345", "5,2.4345"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const wear = wearBands(profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) }), { nominal: inch(2.4375), wornBeyond: thou(1) });
 * turningStock(wear, { from: inch(1), to: inch(5) }).reach.value.in("inch") // 2.4375
 * @source geometry
 */
export function turningStock(
  wear: WearBands,
  options: { readonly from: Length; readonly to: Length; readonly runOut?: RunOut },
): TurningStock {
  const { from, to, runOut } = options;
  if (!(to.si > from.si))
    throw new RangeError(
      `turningStock: the stretch must run from a lower to a higher station, got ${from} to ${to}`,
    );
  const { profile } = wear;
  const gross = new Set(wear.gross.map(({ reading }) => reading));
  const places = profile.readings.flatMap((reading, index) => {
    if (gross.has(index) || reading.station.si < from.si || reading.station.si > to.si) return [];
    const off = offAt(runOut, reading.station);
    const u = Math.hypot(reading.standardUncertainty.si, 2 * off.u, profile.commonUncertainty.si);
    return [{ station: reading.station, diameter: reading.diameter.si, off: off.distance, u }];
  });
  if (places.length === 0)
    throw new RangeError(
      `turningStock: no reading that counts lies from ${from} to ${to} in ${profile.file}`,
    );
  const high = places.reduce((a, b) => (b.diameter + 2 * b.off > a.diameter + 2 * a.off ? b : a));
  const low = places.reduce((a, b) => (b.diameter - 2 * b.off < a.diameter - 2 * a.off ? b : a));
  const unit = profile.unitSystem === "inch" ? "inch" : "mm";
  const known = (value: number, u: number): Measured<Length> =>
    measured(quantityFromSi("length", value, unit), quantityFromSi("length", u, unit));
  const covered = (runOut?.stations ?? []).some(
    ({ station }) => station.si >= from.si && station.si <= to.si,
  );
  return Object.freeze<TurningStock>({
    kind: "turning stock",
    unitSystem: profile.unitSystem,
    from,
    to,
    reach: known(high.diameter + 2 * high.off, high.u),
    reachAt: high.station,
    unbroken: known(low.diameter - 2 * low.off, low.u),
    unbrokenAt: low.station,
    withRunOut: covered,
    warnings: Object.freeze(
      covered
        ? []
        : [
            `No run-out was read between centres from ${from} to ${to}: the highest place may stand higher than its diameter tells, and the cut may clean up later. Come in by touch, slowly, and indicate first.`,
          ],
    ),
  });
}

/** Distance from the line of centres at the station with run-out nearest to this one [m]. */
function offAt(runOut: RunOut | undefined, station: Length): { distance: number; u: number } {
  if (runOut === undefined || runOut.stations.length === 0) return { distance: 0, u: 0 };
  const { distance } = runOut.stations.reduce((a, b) =>
    Math.abs(b.station.si - station.si) < Math.abs(a.station.si - station.si) ? b : a,
  ).centre;
  return { distance: distance.value.si, u: distance.standardUncertainty.si };
}
