/** What the readings of a stretch say of its line: Σw, Σw d, Σw d² about a reference place; a level line has no d. */
export interface Information {
  readonly reference: number;
  readonly sloping: boolean;
  readonly w: number;
  readonly wd: number;
  readonly wdd: number;
}

/** A place read, and the weight 1/u² of what was read there. */
export interface WeightedPlace {
  readonly position: number;
  readonly weight: number;
}

/**
 * Information of weighted readings about a line, level or sloping.
 *
 * M = Σ w (1, d)ᵀ(1, d), d = position − reference; the covariance of height and slope is M⁻¹. It holds before a reading
 * is taken, for only where it lies and how good it is go in, so the gain of one not yet taken is exact.
 *
 * @source V. V. Fedorov, Theory of Optimal
 * Experiments, 1972, chapter 2 (from memory)
 */
export function informationOf(
  places: readonly WeightedPlace[],
  reference: number,
  sloping: boolean,
): Information {
  return places.reduce(withReading, { reference, sloping, w: 0, wd: 0, wdd: 0 });
}

/** The information with one more reading. */
export function withReading(information: Information, { position, weight }: WeightedPlace): Information {
  const d = position - information.reference;
  return {
    ...information,
    w: information.w + weight,
    wd: information.wd + weight * d,
    wdd: information.wdd + weight * d * d,
  };
}

/** Variance of the line's height at a place: (1, d) M⁻¹ (1, d)ᵀ [unit of y²]. */
export function heightVariance({ reference, sloping, w, wd, wdd }: Information, position: number): number {
  if (!sloping) return 1 / w;
  const d = position - reference;
  return (wdd - 2 * d * wd + d * d * w) / (w * wdd - wd * wd);
}

/** Variance of the line's slope: Σw/(Σw Σw d² − (Σw d)²) [unit of y²/m²]. */
export function slopeVariance({ w, wd, wdd }: Information): number {
  return w / (w * wdd - wd * wd);
}

/** Places worth asking about on a stretch: the stations read, and midway between each two. */
export function candidates(stations: readonly number[]): readonly number[] {
  const between = stations.slice(1).map((s, i) => (s + stations[i]!) / 2);
  return [...stations, ...between].sort((a, b) => a - b);
}
