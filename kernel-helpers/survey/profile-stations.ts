import type { Angle } from "../quantity/index.js";
import { profileStation } from "./profile-station.js";
import type { DiameterReading, ProfileStation } from "./profile-types.js";

/** Stations closer than this are one [m]. */
const sameStation = 1e-9;

/** The readings of each station along the shaft; within one by angle (unknown first), size and line. */
export function groupedByStation(readings: readonly DiameterReading[]): DiameterReading[][] {
  const groups: DiameterReading[][] = [];
  for (const reading of [...readings].sort((a, b) => a.station.si - b.station.si)) {
    const group = groups[groups.length - 1];
    if (group !== undefined && reading.station.si - group[0]!.station.si <= sameStation) group.push(reading);
    else groups.push([reading]);
  }
  for (const group of groups)
    group.sort(
      (a, b) =>
        (a.angle?.si ?? -1e9) - (b.angle?.si ?? -1e9) || a.diameter.si - b.diameter.si || a.line - b.line,
    );
  return groups;
}

/** The stations of a profile, their readings numbered as in the list of all. */
export function stationsOf(
  groups: readonly (readonly DiameterReading[])[],
  readings: readonly DiameterReading[],
): ProfileStation[] {
  let next = 0;
  return groups.map((group) =>
    profileStation(
      readings,
      group.map(() => next++),
    ),
  );
}

/** The angles read, sorted; readings share one object for each angle. */
export function anglesIn(readings: readonly DiameterReading[]): Angle[] {
  const angles = new Set(readings.flatMap(({ angle }) => (angle === undefined ? [] : [angle])));
  return [...angles].sort((a, b) => a.si - b.si);
}
