import { inch } from "../quantity/index.js";
import type { StandardTaper } from "./standard-taper.js";

/** One row of the Morse table, in inches as printed. */
export interface MorseRow {
  /** 0 to 7; 4.5 is number 4½. */
  readonly number: number;
  /** Plug diameter at the end of the socket, A. */
  readonly largeEnd: number;
  /** Diameter at the small end, D. */
  readonly smallEnd: number;
  /** The length over which A falls to D. */
  readonly length: number;
  readonly taperPerFoot: number;
}

/**
 * The Morse tapers as printed. The taper per foot is 12(A − D)/length to five digits; it is a little different
 * for each number, so that a measured taper often allows several.
 *
 * @source ASME B5.10 and Machinery's Handbook, table of Morse tapers, read in public reprints to four digits;
 * the fifth digit of the taper per foot from memory, agrees with 12(A − D)/length
 */
export const morseRows: readonly MorseRow[] = Object.freeze(
  [
    { number: 0, largeEnd: 0.3561, smallEnd: 0.252, length: 2.0, taperPerFoot: 0.6246 },
    { number: 1, largeEnd: 0.475, smallEnd: 0.369, length: 2.125, taperPerFoot: 0.59858 },
    { number: 2, largeEnd: 0.7, smallEnd: 0.572, length: 2.5625, taperPerFoot: 0.59941 },
    { number: 3, largeEnd: 0.938, smallEnd: 0.778, length: 3.1875, taperPerFoot: 0.60235 },
    { number: 4, largeEnd: 1.231, smallEnd: 1.02, length: 4.0625, taperPerFoot: 0.62326 },
    { number: 4.5, largeEnd: 1.5, smallEnd: 1.266, length: 4.5, taperPerFoot: 0.624 },
    { number: 5, largeEnd: 1.748, smallEnd: 1.475, length: 5.1875, taperPerFoot: 0.63151 },
    { number: 6, largeEnd: 2.494, smallEnd: 2.116, length: 7.25, taperPerFoot: 0.62565 },
    { number: 7, largeEnd: 3.27, smallEnd: 2.75, length: 10.0, taperPerFoot: 0.624 },
  ].map((row) => Object.freeze(row)),
);

/** The Morse tapers 0 to 7 and 4½. */
export const morseTapers: readonly StandardTaper[] = Object.freeze(
  morseRows.map((row) =>
    Object.freeze<StandardTaper>({
      name: row.number === 4.5 ? "Morse 4½" : `Morse ${row.number}`,
      family: "Morse",
      taper: row.taperPerFoot / 12,
      largeEnd: inch(row.largeEnd),
      smallEnd: inch(row.smallEnd),
      length: inch(row.length),
      source: "ASME B5.10 / Machinery's Handbook, Morse tapers (public reprints)",
    }),
  ),
);
