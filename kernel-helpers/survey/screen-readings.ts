import type { Profile, ProfileStation } from "./profile-types.js";
import { angleOf, usualAngles } from "./station-means.js";

/** Judges the readings of one angle along the shaft: which of them (by place in the lists) are gross. */
export type Judge = (
  positions: readonly number[],
  diameters: readonly number[],
  u: readonly number[],
) => readonly number[];

/** Fewer readings than this at an angle cannot contradict one of them. */
export const fewestToJudge = 5;

/**
 * Looks for gross readings angle by angle.
 *
 * Each angle's readings along the shaft are judged on their own. So a journal worn on one side, where a whole
 * stretch reads less at 90° than at 0°, is a band of the 90° readings and not a row of gross ones, while a
 * single reading off its neighbours at the same angle stands out whatever the other angles say.
 *
 * Valid when: an angle is read at half of the stations or more and at 5 at least; other readings are not judged.
 *
 * @param profile  the diameter along the shaft
 * @param stations  the stations to look at, in order
 * @param judge  finds the gross ones in one row of readings
 * @returns indices of the gross readings
 * @source common practice, no source
 */
export function screenReadings(
  profile: Profile,
  stations: readonly ProfileStation[],
  judge: Judge,
): Set<number> {
  const gross = new Set<number>();
  const rows = new Map<number, Row>(
    usualAngles(profile, stations).map((angle) => [angle, { readings: [], x: [], y: [], u: [] }]),
  );
  for (const station of stations) {
    for (const i of station.readings) {
      const row = rows.get(angleOf(profile, i));
      if (row === undefined) continue;
      const reading = profile.readings[i]!;
      row.readings.push(i);
      row.x.push(station.station.si);
      row.y.push(reading.diameter.si);
      row.u.push(reading.standardUncertainty.si);
    }
  }
  for (const { readings, x, y, u } of rows.values())
    if (readings.length >= fewestToJudge) for (const k of judge(x, y, u)) gross.add(readings[k]!);
  return gross;
}

interface Row {
  readonly readings: number[];
  readonly x: number[];
  readonly y: number[];
  readonly u: number[];
}
