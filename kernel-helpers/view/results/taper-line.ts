import type { TaperFit, TaperKink } from "../../survey/profile-types.js";

/** A fitted taper as a line over the share t of its length, 0 at the small end and 1 at the large end. */
export interface TaperLine {
  /** Station and diameter at a share of the length [m]. */
  readonly station: (t: number) => number;
  readonly diameter: (t: number) => number;
  /** Standard uncertainty of the line's diameter there [m]. */
  readonly uncertainty: (t: number) => number;
}

/**
 * The line of a fitted taper and its uncertainty between the ends.
 *
 * d(t) = (1 − t) d₀ + t d₁, u² = (1 − t)² u₀² + t² u₁² + 2 t (1 − t) c, where the covariance of the two ends,
 * c = (u₀² + u₁² − L² uₜ²)/2, follows from the uncertainty uₜ of the taper itself over the length L
 *
 * Valid when: t from 0 to 1; farther out the line is an extrapolation.
 *
 * @returns functions of the share t [-]
 * @source JCGM 100:2008 (GUM), 5.2.2, equation 13, for the difference of two correlated ends
 */
export function taperLine({ smallEnd, largeEnd, taper }: TaperFit): TaperLine {
  const [from, to] = [smallEnd.station.si, largeEnd.station.si];
  const [d0, d1] = [smallEnd.diameter.value.si, largeEnd.diameter.value.si];
  const [v0, v1] = [smallEnd, largeEnd].map((end) => end.diameter.standardUncertainty.si ** 2) as [
    number,
    number,
  ];
  const covariance = (v0 + v1 - ((to - from) * taper.standardUncertainty) ** 2) / 2;
  return {
    station: (t) => from + t * (to - from),
    diameter: (t) => d0 + t * (d1 - d0),
    // Rounding of the three given uncertainties may take the variance a hair below zero; never the line.
    uncertainty: (t) => Math.sqrt(Math.max(0, (1 - t) ** 2 * v0 + t * t * v1 + 2 * t * (1 - t) * covariance)),
  };
}

/**
 * Height of the bow over the straight line at a share of the length: a parabola that is as much above as below.
 *
 * r(t) = b (4 t (1 − t) − 2/3), so that the middle stands b above the ends and the mean is 0
 *
 * @param bow height b of the middle over the ends, on diameter [m]
 * @param t share of the length, 0 to 1 [-]
 * @returns height over the line [m]
 */
export function bowAt(bow: number, t: number): number {
  return bow * (4 * t * (1 - t) - 2 / 3);
}

/**
 * A kinked line over the straight one, at its ends and kinks.
 *
 * @param kinks from the first station to the last
 * @param line the straight line
 * @param taper its slope, of diameter on station [-]
 * @returns station and height over the line [m]
 */
export function kinkedCorners(
  kinks: readonly TaperKink[],
  line: TaperLine,
  taper: number,
): readonly { readonly station: number; readonly off: number }[] {
  const corners = kinks.map(({ station, offLine }) => ({ station: station.value.si, off: offLine.si }));
  const [one, two] = [line.station(0), line.station(1)];
  const endBeyond = ({ value }: TaperKink["before"], from: (typeof corners)[number], station: number) => ({
    station,
    off: from.off + (value - taper) * (station - from.station),
  });
  return [
    endBeyond(kinks[0]!.before, corners[0]!, Math.min(one, two)),
    ...corners,
    endBeyond(kinks.at(-1)!.behind, corners.at(-1)!, Math.max(one, two)),
  ];
}
