/**
 * The colours of every figure. Chosen so that they keep apart for eyes with any of the three colour
 * deficiencies and in a grey print; nothing is ever said by colour alone (each has a marker, a hatch or a word).
 */

/** Paper, pen and pencil. */
export const paper = "#ffffff";
export const ink = "#1d2730";
export const pencil = "#5c6975";
export const hairline = "#b9c2c9";
export const grid = "#e6eaed";

/** Where a band may end. */
export const edgeColor = "rgba(92,105,117,0.22)";

/** Something that must not be passed, or is wrong. */
export const alarm = "#a3123a";

/** The look of one series, e.g. of one angle read round the shaft. */
export interface SeriesLook {
  readonly color: string;
  /** A plotly marker symbol. */
  readonly symbol: "circle" | "square" | "diamond" | "triangle-up" | "triangle-down" | "hexagon";
}

/** Blue, orange, black, violet, old rose, brown. */
export const seriesLooks: readonly SeriesLook[] = Object.freeze([
  { color: "#0b4f8a", symbol: "circle" },
  { color: "#d2691e", symbol: "square" },
  { color: "#12201c", symbol: "diamond" },
  { color: "#7f35d8", symbol: "triangle-up" },
  { color: "#a98593", symbol: "triangle-down" },
  { color: "#63300f", symbol: "hexagon" },
]);

/** The look of a series by its place. The first 36 differ: past the sixth, colours meet other markers. */
export function seriesLook(index: number): SeriesLook {
  const count = seriesLooks.length;
  const { color } = seriesLooks[index % count]!;
  const { symbol } = seriesLooks[(index + Math.floor(index / count)) % count]!;
  return { color, symbol };
}

/** How a stretch of shaft is filled: by its state, as a hatch as well as a colour. */
export interface StateLook {
  readonly color: string;
  /** The colour, thinned, for a surface under readings. */
  readonly wash: string;
  /** A plotly hatch; "" is plain. */
  readonly hatch: "" | "/" | "x" | ".";
}

export const stateLooks: Readonly<Record<"as made" | "worn" | "over size" | "not judged", StateLook>> =
  Object.freeze({
    "as made": { color: "#9fb3c1", wash: "rgba(159,179,193,0.14)", hatch: "" },
    worn: { color: "#c8562b", wash: "rgba(200,86,43,0.13)", hatch: "/" },
    "over size": { color: "#3b6fb0", wash: "rgba(59,111,176,0.13)", hatch: "x" },
    "not judged": { color: "#aeb6bc", wash: "rgba(174,182,188,0.10)", hatch: "." },
  });
