/** The state of the two surfaces of a fit. */
export type FitSurface = "oiled" | "dry" | "rusted";

/** Friction between hub and shaft, as a range. */
export interface FitFriction {
  readonly kind: "fit friction";
  readonly surface: FitSurface;
  /** In words: what is meant by it. */
  readonly means: string;
  /** Coefficients of friction [-]. */
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

const din =
  "DIN 7190-1, adhesion of interference fits, steel on cast iron and on steel (transverse fits read in an excerpt; pressed-on fits from memory)";

/**
 * Friction of press, shrink and taper fits when they are pressed on or off along the axis.
 *
 * @example fitFrictions.map(({ surface }) => surface) // ["oiled", "dry", "rusted"]
 */
export const fitFrictions: readonly FitFriction[] = Object.freeze(
  (
    [
      {
        surface: "oiled",
        means: "oiled when put together, and still clean",
        low: 0.06,
        high: 0.12,
        source: din,
      },
      {
        surface: "dry",
        means: "put together dry or degreased, and still clean",
        low: 0.1,
        high: 0.2,
        source: din,
      },
      {
        surface: "rusted",
        means:
          "rusted, fretted or picked up: rust takes more room than the iron it came from and wedges the fit",
        low: 0.2,
        high: 0.5,
        source: "common practice, no source",
      },
    ] as const
  ).map((row) => Object.freeze({ kind: "fit friction" as const, ...row })),
);

/**
 * The friction of a fit by the state of its surfaces: a range, for no table knows it better.
 *
 * @param surface  "oiled", "dry" or "rusted"
 * @returns the range of the coefficient of friction [-] with its source
 * @throws RangeError  it is none of these
 * @example fitFriction("dry").high // 0.2
 * @source each row names its own
 */
export function fitFriction(surface: string): FitFriction {
  const found = fitFrictions.find((row) => row.surface === surface);
  if (found === undefined)
    throw new RangeError(
      `fitFriction: surface must be one of ${fitFrictions.map((row) => row.surface).join(", ")}, got ${String(surface)}`,
    );
  return found;
}
