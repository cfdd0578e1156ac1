import type { Length } from "../quantity/index.js";
import type { ForceFit } from "./force-fit.js";
import { thouLike } from "./thou-like.js";

/** Classes of ANSI B4.1 for parts that locate each other: clearance (LC), transition (LT), interference (LN). */
export type LocationalFitClass =
  | `LC${1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9}`
  | `LT${1 | 2 | 3 | 4 | 5 | 6}`
  | `LN${1 | 2 | 3}`;

/** A locational fit: limits of hole and shaft from the nominal, and what lies between the parts, on DIAMETER. */
export interface LocationalFit extends Pick<ForceFit, "name" | "nominal" | "hole" | "shaft" | "source"> {
  /** DIAMETRAL clearance, hole less shaft, from least to most; below 0 it is an interference. */
  readonly least: Length;
  readonly most: Length;
}

/** Running classes of ANSI B4.1 whose limits of hole and shaft follow from its grades. */
export type RunningLimitsClass = `RC${1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9}`;

const runningSource =
  "ANSI/ASME B4.1-1967 (2009), running and sliding fits: limits from its grades, the clearances between them as printed";
const source =
  "ANSI/ASME B4.1-1967 (2009), locational fits (LT to 3.15 in, LN, and LC6 to LC9 to 1.97 in read in public copies of the tables; the rest from its grades and from memory)";

/** Sizes up to [in]; each row below has a figure for each [thou]. */
const steps = [0.71, 1.19, 1.97, 3.15, 4.73];

/** Width of the grades; the same for holes and shafts. */
const grades: Readonly<Record<number, readonly number[]>> = {
  4: [0.2, 0.25, 0.3, 0.3, 0.4],
  5: [0.3, 0.4, 0.4, 0.5, 0.6],
  6: [0.4, 0.5, 0.6, 0.7, 0.9],
  7: [0.7, 0.8, 1.0, 1.2, 1.4],
  8: [1.0, 1.2, 1.6, 1.8, 2.2],
  9: [1.6, 2.0, 2.5, 3.0, 3.5],
  10: [2.8, 3.5, 4.0, 4.5, 5.0],
  11: [4, 5, 6, 7, 9],
};

/** Upper limit of a shaft below the nominal, or lower limit of one above it. The shaft of RC9 has no letter: "b" here. */
const deviations: Readonly<Record<string, readonly number[]>> = {
  b: [-6, -7, -8, -9, -10],
  c: [-3.5, -4.5, -5, -6, -7],
  d: [-2.0, -2.5, -3.0, -4.0, -5.0],
  e: [-1.2, -1.6, -2.0, -2.5, -3.0],
  f: [-0.6, -0.8, -1.0, -1.2, -1.4],
  g: [-0.25, -0.3, -0.4, -0.4, -0.5],
  h: [0, 0, 0, 0, 0],
  k: [0.1, 0.1, 0.1, 0.1, 0.1],
  n: [0.5, 0.6, 0.7, 0.8, 1.0],
  p: [0.7, 0.8, 1.0, 1.4, 1.6],
  r: [1.0, 1.2, 1.4, 1.6, 2.0],
};

/** Limits that do not follow from grade and deviation: lower, upper. js is rounded, n5 begins where H6 ends. */
const asPrinted: Readonly<Record<string, readonly (readonly [number, number])[]>> = {
  js6: [0.2, 0.25, 0.3, 0.3, 0.4].map((half) => [-half, half] as const),
  js7: [0.35, 0.4, 0.5, 0.6, 0.7].map((half) => [-half, half] as const),
  n5: [
    [0.4, 0.8],
    [0.5, 1.0],
    [0.6, 1.1],
    [0.8, 1.3],
    [1.0, 1.6],
  ],
};

/** Grade of the hole, and the shaft's zone. */
type HoleAndShaft = readonly [hole: number, shaft: string];
const runningClasses: Readonly<Record<RunningLimitsClass, HoleAndShaft>> = {
  RC1: [5, "g4"],
  RC2: [6, "g5"],
  RC3: [7, "f6"],
  RC4: [8, "f7"],
  RC5: [8, "e7"],
  RC6: [9, "e8"],
  RC7: [9, "d8"],
  RC8: [10, "c9"],
  RC9: [11, "b10"],
};
const classes: Readonly<Record<LocationalFitClass, HoleAndShaft>> = {
  LC1: [6, "h5"],
  LC2: [7, "h6"],
  LC3: [8, "h7"],
  LC4: [10, "h9"],
  LC5: [7, "g6"],
  LC6: [9, "f8"],
  LC7: [10, "e9"],
  LC8: [10, "d9"],
  LC9: [11, "c10"],
  LT1: [7, "js6"],
  LT2: [8, "js7"],
  LT3: [7, "k6"],
  LT4: [8, "k7"],
  LT5: [7, "n6"],
  LT6: [7, "n7"],
  LN1: [6, "n5"],
  LN2: [7, "p6"],
  LN3: [7, "r6"],
};

/**
 * Limits of a locational fit of ANSI B4.1, and the DIAMETRAL clearance between the tightest and the loosest pair.
 *
 * clearance = hole less shaft: least = −(shaft's upper), most = hole's upper − shaft's lower
 *
 * Valid when: nominal diameter over 0.40 up to 4.73 in; LC10 and LC11, the loosest, are not in it.
 *
 * @param nominal  diameter [m]
 * @param of  class: LC1 to LC9, LT1 to LT6, LN1 to LN3
 * @returns the fit; all on diameter [m]
 * @throws RangeError  the diameter is outside, or no such class
 * @example standardLocationalFit(inch(2.4375), "LT3").most.in("thou") // 1.1
 * @source ANSI/ASME B4.1-1967 (2009), tables of locational fits (Machinery's Handbook, 31st edition, tables 9, 10, 12; see
 * `source` for what was read)
 */
export function standardLocationalFit(nominal: Length, of: LocationalFitClass): LocationalFit {
  if (!Object.hasOwn(classes, of))
    throw new RangeError(
      `standardLocationalFit: class must be LC1 to LC9, LT1 to LT6 or LN1 to LN3 (LC10 and LC11 are not held), got ${of}`,
    );
  return fitOfZones("standardLocationalFit", nominal, of, classes[of], source);
}

/**
 * Limits of hole and shaft of a running or sliding fit of ANSI B4.1, and the DIAMETRAL clearance between the tightest and
 * the loosest pair (`standardRunningFit` gives the clearance alone, as printed).
 *
 * clearance = hole less shaft: least = −(shaft's upper), most = hole's upper − shaft's lower
 *
 * Valid when: nominal diameter over 0.40 up to 4.73 in.
 *
 * @param nominal  diameter [m]
 * @param of  class: RC1 to RC9
 * @returns the fit; all on diameter [m]
 * @throws RangeError  the diameter is outside, or no such class
 * @example standardRunningLimits(inch(2.4375), "RC5").shaft.upper.in("thou") // -2.5
 * @source ANSI/ASME B4.1-1967 (2009), running and sliding fits: hole and shaft from its grades (RC5: H8 and e7)
 */
export function standardRunningLimits(nominal: Length, of: RunningLimitsClass): LocationalFit {
  if (!Object.hasOwn(runningClasses, of))
    throw new RangeError(`standardRunningLimits: class must be RC1 to RC9, got ${of}`);
  return fitOfZones("standardRunningLimits", nominal, of, runningClasses[of], runningSource);
}

function fitOfZones(
  caller: string,
  nominal: Length,
  of: string,
  [holeGrade, zone]: HoleAndShaft,
  from: string,
): LocationalFit {
  const size = Number(nominal.in("inch").toPrecision(12));
  const step = size > 0.4 ? steps.findIndex((to) => size <= to) : -1;
  if (step < 0) throw new RangeError(`${caller}: nominal must be over 0.40 up to 4.73 in, got ${nominal}`);
  const holeUpper = grades[holeGrade]![step]!;
  const [lower, upper] = asPrinted[zone]?.[step] ?? zoneLimits(zone, step);
  const thouOf = (printed: number): Length => thouLike(nominal, printed);
  return Object.freeze({
    name: `ANSI B4.1 ${of}`,
    nominal,
    least: thouOf(-upper),
    most: thouOf(holeUpper - lower),
    hole: Object.freeze({ lower: thouOf(0), upper: thouOf(holeUpper) }),
    shaft: Object.freeze({ lower: thouOf(lower), upper: thouOf(upper) }),
    source: from,
  });
}

function zoneLimits(zone: string, step: number): readonly [lower: number, upper: number] {
  const [letter, grade] = [zone.slice(0, 1), Number(zone.slice(1))];
  const [from, width] = [deviations[letter]![step]!, grades[grade]![step]!];
  return letter <= "h" ? [from - width, from] : [from, from + width];
}
