import type { Length } from "../quantity/index.js";
import { thouLike } from "./thou-like.js";

/** Classes of ANSI B4.1 for parts pressed or shrunk together, from light drive to heavy shrink. */
export type ForceFitClass = "FN1" | "FN2" | "FN3" | "FN4" | "FN5";

/** A force fit: limits of hole and shaft from the nominal, and DIAMETRAL interference from least to most. */
export interface ForceFit {
  readonly name: string;
  readonly nominal: Length;
  readonly low: Length;
  readonly high: Length;
  /** Deviations from the nominal, on diameter. */
  readonly hole: { readonly lower: Length; readonly upper: Length };
  readonly shaft: { readonly lower: Length; readonly upper: Length };
  readonly source: string;
}

const source =
  "ANSI B4.1-1967, force and shrink fits (read in Machinery's Handbook, 27th edition, p. 663, table 11)";

/** Over, to [in]; then of FN1 to FN5 the hole's upper limit, the shaft's lower and upper [thou]; the hole's lower is 0. */
const rows: readonly (readonly number[])[] = [
  [0.95, 1.19, 0.5, 0.8, 1.2, 0.8, 1.4, 1.9, 0.8, 1.6, 2.1, 0.8, 1.8, 2.3, 1.2, 2.5, 3.3],
  [1.19, 1.58, 0.6, 0.9, 1.3, 1.0, 1.8, 2.4, 1.0, 2.0, 2.6, 1.0, 2.5, 3.1, 1.6, 3.0, 4.0],
  [1.58, 1.97, 0.6, 1.0, 1.4, 1.0, 1.8, 2.4, 1.0, 2.2, 2.8, 1.0, 2.8, 3.4, 1.6, 4.0, 5.0],
  [1.97, 2.56, 0.7, 1.3, 1.8, 1.2, 2.0, 2.7, 1.2, 2.5, 3.2, 1.2, 3.5, 4.2, 1.8, 5.0, 6.2],
  [2.56, 3.15, 0.7, 1.4, 1.9, 1.2, 2.2, 2.9, 1.2, 3.0, 3.7, 1.2, 4.0, 4.7, 1.8, 6.0, 7.2],
];

/**
 * Limits and DIAMETRAL interference of a force or shrink fit of ANSI B4.1.
 *
 * interference = shaft less hole: least = shaft's lower − hole's upper, most = shaft's upper − hole's lower
 *
 * Valid when: nominal diameter over 0.95 up to 3.15 in.
 *
 * @param nominal  diameter [m]
 * @param of  class, e.g. "FN2"
 * @returns the fit; all on diameter [m]
 * @throws RangeError  the diameter is outside, or no such class
 * @example standardForceFit(inch(2), "FN2").high.in("thou") // 2.7
 * @source ANSI B4.1-1967, force and shrink fits (Machinery's Handbook, 27th edition, p. 663, table 11)
 */
export function standardForceFit(nominal: Length, of: ForceFitClass): ForceFit {
  const grade = /^FN([1-5])$/.exec(of);
  if (grade === null) throw new RangeError(`standardForceFit: class must be FN1 to FN5, got ${of}`);
  const size = nominal.in("inch");
  const row = rows.find(([over, to]) => size > over! && size <= to!);
  if (row === undefined)
    throw new RangeError(`standardForceFit: nominal must be over 0.95 up to 3.15 in, got ${nominal}`);
  const [holeUpper, shaftLower, shaftUpper] = row.slice(3 * Number(grade[1]) - 1) as [number, number, number];
  const thouOf = (printed: number): Length => thouLike(nominal, printed);
  return Object.freeze({
    name: `ANSI B4.1 ${of}`,
    nominal,
    low: thouOf(shaftLower - holeUpper),
    high: thouOf(shaftUpper),
    hole: Object.freeze({ lower: thouOf(0), upper: thouOf(holeUpper) }),
    shaft: Object.freeze({ lower: thouOf(shaftLower), upper: thouOf(shaftUpper) }),
    source,
  });
}
