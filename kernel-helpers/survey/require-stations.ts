import type { Profile } from "./profile-types.js";

/** Rejects a profile of fewer stations. */
export function requireStations(where: string, profile: Profile, fewest: number): void {
  const [stations, readings] = [profile.stations.length, profile.readings.length];
  if (stations >= fewest) return;
  const found = readings === 1 ? "one reading only" : `${stations} with ${readings} readings`;
  throw new RangeError(`${where}: at least ${fewest} stations along the shaft are needed, got ${found}`);
}
