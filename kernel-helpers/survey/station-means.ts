import type { Profile, ProfileStation } from "./profile-types.js";

/** One diameter a station, comparable from station to station, in SI. */
export interface StationMean {
  readonly station: ProfileStation;
  /** Where along the shaft [m]. */
  readonly position: number;
  /** Mean diameter over the angles [m]. */
  readonly diameter: number;
  /** Its standard uncertainty against other stations [m]. */
  readonly u: number;
  /** "all": read at every usual angle; "filled": a missing angle taken from a neighbour; "other": read elsewhere. */
  readonly angles: "all" | "filled" | "other";
}

/**
 * The mean diameter of each station, made comparable where an angle is missing.
 *
 * A journal worn on one side has a different diameter at each angle. A station that lacks a reading (not taken,
 * or left out as gross) would seem thicker or thinner than its neighbours for that alone. So the missing
 * diameter is taken to differ from the others as it does at the nearest complete station before or behind,
 * whichever is more like it at the angles read, and the uncertainty is that of this estimate:
 *
 * complete:  d̄ = mean over the angles,  u² = Σ u²(angle) / M²
 * filled:    d̄ = mean of the A angles read + (M − A)/M · (missing − read, at the neighbour)
 *
 * Valid when: most stations are read at the same (usual) angles. A station read at other angles gets the plain
 * mean of what was read and is marked "other".
 *
 * @param profile  the diameter along the shaft
 * @param stations  the stations wanted, in order
 * @param leftOut  indices of readings without weight
 * @returns one mean a station in order; stations all of whose readings are left out are missing
 * @source mean and its uncertainty: JCGM 100:2008 (GUM), 4.2 and 5.1.2; the filling: common practice, no source
 */
export function stationMeans(
  profile: Profile,
  stations: readonly ProfileStation[],
  leftOut: ReadonlySet<number>,
): readonly StationMean[] {
  const usual = usualAngles(profile, stations);
  const known = stations.map((station) => angleMeans(profile, station, leftOut));
  const complete = known.map((means) => usual.length > 0 && usual.every((angle) => means.has(angle)));
  const before = nearestComplete(complete);
  const behind = nearestComplete([...complete].reverse())
    .reverse()
    .map((i) => (i < 0 ? -1 : complete.length - 1 - i));
  return stations.flatMap((station, i): StationMean[] => {
    const means = known[i]!;
    if (means.size === 0) return [];
    const at = { station, position: station.station.si };
    if (complete[i]) return [{ ...at, ...meanOf(means, usual), angles: "all" }];
    const read = usual.filter((angle) => means.has(angle));
    if (read.length === 0) return [{ ...at, ...meanOf(means, [...means.keys()]), angles: "other" }];
    const here = meanOf(means, read);
    const likest = [before[i]!, behind[i]!]
      .filter((k) => k >= 0)
      .map((k) => ({ k, off: Math.abs(meanOf(known[k]!, read).diameter - here.diameter) }))
      .sort((a, b) => a.off - b.off)[0];
    if (likest === undefined) return [{ ...at, ...here, angles: "other" }];
    const there = known[likest.k]!;
    const [missing, same] = [
      meanOf(
        there,
        usual.filter((angle) => !means.has(angle)),
      ),
      meanOf(there, read),
    ];
    const share = (usual.length - read.length) / usual.length;
    return [
      {
        ...at,
        diameter: here.diameter + share * (missing.diameter - same.diameter),
        u: Math.hypot(here.u, share * missing.u, share * same.u),
        angles: "filled",
      },
    ];
  });
}

/** The angles [rad] read at half of the stations or more; NaN stands for readings without an angle. */
export function usualAngles(profile: Profile, stations: readonly ProfileStation[]): readonly number[] {
  const count = new Map<number, number>();
  for (const station of stations) {
    const here = new Set(station.readings.map((i) => angleOf(profile, i)));
    for (const angle of here) count.set(angle, (count.get(angle) ?? 0) + 1);
  }
  return [...count].filter(([, n]) => 2 * n >= stations.length).map(([angle]) => angle);
}

/** The angle of a reading [rad], NaN where the table does not say (a Map holds NaN as one key). */
export function angleOf(profile: Profile, reading: number): number {
  return profile.readings[reading]!.angle?.si ?? Number.NaN;
}

/** A diameter and its standard uncertainty [m]. */
export interface Diameter {
  readonly diameter: number;
  readonly u: number;
}

/** The diameter at each angle of a station: the mean where one angle was read more than once. */
export function angleMeans(
  profile: Profile,
  station: ProfileStation,
  leftOut: ReadonlySet<number>,
): ReadonlyMap<number, Diameter> {
  const byAngle = new Map<number, number[]>();
  for (const i of station.readings) {
    if (leftOut.has(i)) continue;
    const angle = angleOf(profile, i);
    const same = byAngle.get(angle);
    if (same === undefined) byAngle.set(angle, [i]);
    else same.push(i);
  }
  const means = new Map<number, Diameter>();
  for (const [angle, readings] of byAngle) {
    let sum = 0;
    let squares = 0;
    for (const i of readings) {
      sum += profile.readings[i]!.diameter.si;
      squares += profile.readings[i]!.standardUncertainty.si ** 2;
    }
    means.set(angle, { diameter: sum / readings.length, u: Math.sqrt(squares) / readings.length });
  }
  return means;
}

/** Mean over some of a station's angles. */
function meanOf(means: ReadonlyMap<number, Diameter>, angles: readonly number[]): Diameter {
  let sum = 0;
  let squares = 0;
  for (const angle of angles) {
    const { diameter, u } = means.get(angle)!;
    sum += diameter;
    squares += u * u;
  }
  return { diameter: sum / angles.length, u: Math.sqrt(squares) / angles.length };
}

/** For each station the index of the last complete one before it, or −1. */
function nearestComplete(complete: readonly boolean[]): number[] {
  let last = -1;
  return complete.map((is, i) => {
    const before = last;
    if (is) last = i;
    return before;
  });
}
