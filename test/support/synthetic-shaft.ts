import { seededNoise } from "./seeded-noise.js";
import type { ShaftReading } from "./shaft-table.js";

/** A stretch of an invented shaft, in inches, up to and including station `to`. */
export interface TrueBand {
  readonly to: number;
  /** Diameter at the middle of its stations. */
  readonly diameter: number;
  /** Diameter per length; default 0. */
  readonly slope?: number;
  /** Diameter less mean diameter at each angle, in the order of the angles; default round. */
  readonly offsets?: readonly number[];
}

export interface SyntheticShaft {
  readonly bands: readonly TrueBand[];
  /** Stations 1, 2, 3, … in steps of this; default 1 in. */
  readonly step?: number;
  readonly angles?: readonly number[];
  /** Standard deviation of a reading [in]. */
  readonly noise: number;
  readonly seed: number;
}

/** Stations of each band of a synthetic shaft, as numbers of inches. */
export function stationsOf(bands: readonly TrueBand[], step = 1): number[][] {
  let next = 1;
  return bands.map(({ to }) => {
    const stations: number[] = [];
    for (; next * step <= to + 1e-9; next++) stations.push(next * step);
    return stations;
  });
}

/** Readings of a shaft whose true bands are known, with seeded normal noise. */
export function syntheticShaft({
  bands,
  step = 1,
  angles = [0, 90],
  noise,
  seed,
}: SyntheticShaft): ShaftReading[] {
  const { normal } = seededNoise(seed);
  return stationsOf(bands, step).flatMap((stations, k) => {
    const { diameter, slope = 0, offsets } = bands[k]!;
    const middle = (stations[0]! + stations[stations.length - 1]!) / 2;
    return stations.flatMap((station) =>
      angles.map((angle, a) => ({
        station,
        angle,
        diameter: diameter + slope * (station - middle) + (offsets?.[a] ?? 0) + noise * normal(),
      })),
    );
  });
}
