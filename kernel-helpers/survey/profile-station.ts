import { type Length, quantityFromSi } from "../quantity/index.js";
import type { DiameterReading, ProfileStation } from "./profile-types.js";

/**
 * One station of a profile from its readings; those left out stay listed and count for nothing.
 *
 * Mean over the angles, each angle's repeated readings averaged first; u(mean) = √(Σ u²(angle))/number of angles.
 * Ovality: largest less smallest angle mean, undefined for one angle.
 *
 * @param readings  all readings of the profile
 * @param here  indices of those at this station, at least one of them not left out
 * @param leftOut  indices of readings without weight
 * @returns mean, extremes, ovality and uncertainty [m]
 */
export function profileStation(
  readings: readonly DiameterReading[],
  here: readonly number[],
  leftOut: ReadonlySet<number> = new Set(),
): ProfileStation {
  const counted = here.filter((i) => !leftOut.has(i)).map((i) => readings[i]!);
  const byAngle = groupByAngle(counted);
  const means = [...byAngle.values()].map(
    (same) => same.reduce((sum, { diameter }) => sum + diameter.si, 0) / same.length,
  );
  const variances = [...byAngle.values()].map(
    (same) => same.reduce((sum, { standardUncertainty: u }) => sum + u.si ** 2, 0) / same.length ** 2,
  );
  const like = counted[0]!.diameter;
  const lengthOf = (si: number): Length => quantityFromSi("length", si, like.writtenIn as never);
  const inOrder = [...counted].sort((a, b) => a.diameter.si - b.diameter.si);
  return Object.freeze({
    station: readings[here[0]!]!.station,
    mean: lengthOf(means.reduce((sum, mean) => sum + mean, 0) / means.length),
    smallest: inOrder[0]!.diameter,
    largest: inOrder[inOrder.length - 1]!.diameter,
    ovality: means.length < 2 ? undefined : lengthOf(Math.max(...means) - Math.min(...means)),
    standardUncertainty: lengthOf(Math.sqrt(variances.reduce((sum, v) => sum + v, 0)) / means.length),
    readings: Object.freeze([...here]),
  });
}

function groupByAngle(readings: readonly DiameterReading[]): Map<number, DiameterReading[]> {
  const groups = new Map<number, DiameterReading[]>();
  for (const reading of readings) {
    const angle = reading.angle?.si ?? Number.NaN;
    const group = groups.get(angle);
    if (group === undefined) groups.set(angle, [reading]);
    else group.push(reading);
  }
  return groups;
}
