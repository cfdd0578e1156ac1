import { type Length, micrometre } from "../../quantity/index.js";

/** Roughness that feed and nose leave on a turned surface. */
export interface TurnedRoughness {
  /** Height of the ridges, peak to valley. */
  readonly rz: Length;
  /** Mean deviation from the mean line. */
  readonly ra: Length;
}

/**
 * The least roughness a turned surface can have, from the feed and the radius of the tool's nose.
 *
 * Rz = f²/(8 r), the height of the ridge between two turns; Ra = f²/(18√3 r) ≈ 0.032 f²/r, the mean deviation of a
 * row of parabolas
 *
 * Valid when: f < r, the nose alone cuts the surface. A real surface is rougher, by half to twice in steel below 100
 * ft/min, where metal builds up on the edge (common practice, no source).
 *
 * @param feed  along the work for one turn [m]
 * @param noseRadius  of the tool [m]
 * @returns Rz and Ra [m]
 * @throws RangeError  feed or radius is not above 0, or the feed is not below the radius
 * @example turnedRoughness(mm(0.1), mm(0.4)).rz.in("micrometre").toFixed(3) // "3.125"
 * @source geometry; G. Boothroyd & W. A. Knight, Fundamentals of Machining and Machine Tools (from memory): Ra = 0.0321 f²/r
 */
export function turnedRoughness(feed: Length, noseRadius: Length): TurnedRoughness {
  for (const [name, value] of [
    ["feed", feed],
    ["noseRadius", noseRadius],
  ] as const)
    if (!(value.si > 0)) throw new RangeError(`turnedRoughness: ${name} must be above 0, got ${value}`);
  if (!(feed.si < noseRadius.si))
    throw new RangeError(
      `turnedRoughness: feed must be below the nose radius, ${noseRadius}, got ${feed}: it would cut a thread`,
    );
  const square = (feed.si ** 2 / noseRadius.si) * 1e6;
  return Object.freeze({ rz: micrometre(square / 8), ra: micrometre(square / (18 * Math.sqrt(3))) });
}
