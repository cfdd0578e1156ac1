import { type Length, quantityFromSi } from "../quantity/index.js";

/** A running fit: DIAMETRAL clearance, bore less journal, from least to most. */
export interface RunningFit {
  readonly name: string;
  readonly low: Length;
  readonly high: Length;
  readonly source: string;
}

/** Classes of ANSI B4.1, from close sliding to loose running. */
export type RunningFitClass = "RC1" | "RC2" | "RC3" | "RC4" | "RC5" | "RC6" | "RC7" | "RC8" | "RC9";

const b41Source = "ANSI B4.1-1967, running and sliding fits (as reprinted)";
/** Over, to [in]; then least and most DIAMETRAL clearance of RC1 to RC9 [thou]. */
const b41Rows: readonly (readonly number[])[] = [
  [0.4, 0.71, 0.25, 0.75, 0.25, 0.95, 0.6, 1.7, 0.6, 2.3, 1.2, 2.9, 1.2, 3.8, 2.0, 4.6, 3.5, 7.9, 6.0, 12.8],
  [0.71, 1.19, 0.3, 0.95, 0.3, 1.2, 0.8, 2.1, 0.8, 2.8, 1.6, 3.6, 1.6, 4.8, 2.5, 5.7, 4.5, 10.0, 7.0, 15.5],
  [1.19, 1.97, 0.4, 1.1, 0.4, 1.4, 1.0, 2.6, 1.0, 3.6, 2.0, 4.6, 2.0, 6.1, 3.0, 7.1, 5.0, 11.5, 8.0, 18.0],
  [1.97, 3.15, 0.4, 1.2, 0.4, 1.6, 1.2, 3.1, 1.2, 4.2, 2.5, 5.5, 2.5, 7.3, 4.0, 8.8, 6.0, 13.5, 9.0, 20.5],
  [3.15, 4.73, 0.5, 1.5, 0.5, 2.0, 1.4, 3.7, 1.4, 5.0, 3.0, 6.6, 3.0, 8.7, 5.0, 10.7, 7.0, 15.5, 10.0, 24.0],
];

/**
 * DIAMETRAL clearance of a running fit of ANSI B4.1, between the tightest and the loosest pair of parts.
 *
 * Valid when: nominal diameter over 0.40 up to 4.73 in.
 *
 * @param nominal  diameter [m]
 * @param of  class, e.g. "RC5"
 * @returns the fit; low and high are DIAMETRAL [m]
 * @throws RangeError  the diameter is outside, or no such class
 * @example standardRunningFit(inch(2.4375), "RC5").high.in("thou") // 5.5
 * @source ANSI B4.1-1967, running and sliding fits (as reprinted)
 */
export function standardRunningFit(nominal: Length, of: RunningFitClass): RunningFit {
  const grade = /^RC([1-9])$/.exec(of);
  if (grade === null) throw new RangeError(`standardRunningFit: class must be RC1 to RC9, got ${of}`);
  const size = nominal.in("inch");
  const row = b41Rows.find(([over, to]) => size > over! && size <= to!);
  if (row === undefined)
    throw new RangeError(`standardRunningFit: nominal must be over 0.40 up to 4.73 in, got ${nominal}`);
  const at = 2 * Number(grade[1]);
  return fitOf(`ANSI B4.1 ${of}`, nominal, row[at]! * 25.4e-6, row[at + 1]! * 25.4e-6, b41Source);
}

/**
 * DIAMETRAL clearance of a poured bearing by the rule of thumb: 1 to 1.5 thousandths of the diameter, and a thousandth
 * of an inch.
 *
 * Valid when: slow shafts of 1 to 6 in with drop or ring oiling.
 *
 * @param diameter  of the journal [m]
 * @returns the fit; low and high are DIAMETRAL [m]
 * @throws RangeError  the diameter is outside 1 to 6 in
 * @example runningFitByThumb(inch(2)).low.in("thou") // 3
 * @source common practice, no source
 */
export function runningFitByThumb(diameter: Length): RunningFit {
  const size = diameter.in("inch");
  if (!(size >= 1 && size <= 6))
    throw new RangeError(`runningFitByThumb: diameter must be from 1 to 6 in, got ${diameter}`);
  const [low, high] = [1e-3 * diameter.si + 25.4e-6, 1.5e-3 * diameter.si + 25.4e-6];
  return fitOf("rule of thumb", diameter, low, high, "common practice, no source");
}

function fitOf(name: string, diameter: Length, low: number, high: number, source: string): RunningFit {
  const inchShop = diameter.writtenIn === "inch" || diameter.writtenIn === "thou";
  const unit = inchShop ? "thou" : "micrometre";
  return Object.freeze({
    name,
    low: quantityFromSi("length", low, unit),
    high: quantityFromSi("length", high, unit),
    source,
  });
}
