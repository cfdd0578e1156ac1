import { formatFixed } from "../quantity/index.js";

/** A gross reading, what it should have been, and how the table is written; all numbers in the table's unit. */
export interface Slip {
  readonly unit: "inch" | "mm";
  /** As read. */
  readonly read: number;
  /** What its neighbours say it should read. */
  readonly expected: number;
  /** Standard uncertainty of the difference. */
  readonly u: number;
  /** Decimals the table is written to. */
  readonly decimals: number;
}

interface Step {
  readonly size: number;
  readonly name: string;
}

/** The steps by which a micrometer is misread. */
const steps: Readonly<Record<Slip["unit"], readonly Step[]>> = {
  inch: [
    { size: 0.025, name: "one turn of the thimble (0.025 in)" },
    { size: 0.05, name: "two turns of the thimble (0.050 in)" },
    { size: 0.001, name: "one thou" },
  ],
  mm: [
    { size: 0.5, name: "one turn of the thimble (0.5 mm)" },
    { size: 0.01, name: "one division of the thimble (0.01 mm)" },
  ],
};

/** Within so many standard uncertainties the mended reading must fit. */
const fitsWithin = 3;
/** A digit is named as wrong only where one of its steps is so many uncertainties: else any reading would fit. */
const digitStepInU = 20;

/**
 * The slip that would explain a gross reading, or "" where none is evident.
 *
 * Tried in turn: the point one place off; one or two turns of the thimble (0.025 in a turn on an inch micrometer,
 * 0.5 mm on a metric one) or its smallest division missed; two neighbouring digits swapped; one digit wrong. A slip
 * is named only if undoing it brings the reading to within 3 standard uncertainties of what was expected. It is a
 * hint where to look, no reason to mend the table.
 *
 * @param slip  the reading, in the unit of the table
 * @returns a few words with the mended reading, e.g. "ten times too large: 2.4373 in?"
 * @example likelySlip({ unit: "inch", read: 2.4123, expected: 2.4372, u: 0.00015, decimals: 4 }) // "one turn of the thimble (0.025 in) short: 2.4373 in?"
 * @source common practice, no source
 */
export function likelySlip(slip: Slip): string {
  const { unit, read, expected, u, decimals } = slip;
  // A hair more than 3 u, so that rounding in the last binary digit does not decide.
  const fits = (mended: number): boolean => Math.abs(mended - expected) <= fitsWithin * u * (1 + 1e-9);
  const asked = (what: string, mended: number): string =>
    `${what}: ${formatFixed(mended, decimals)} ${unit === "inch" ? "in" : "mm"}?`;
  if (fits(read / 10)) return asked("ten times too large", read / 10);
  if (fits(read * 10)) return asked("ten times too small", read * 10);
  for (const { size, name } of steps[unit]) {
    if (fits(read + size)) return asked(`${name} short`, read + size);
    if (fits(read - size)) return asked(`${name} over`, read - size);
  }
  const digits = read.toFixed(decimals);
  for (let i = 0; i + 1 < digits.length; i++) {
    const next = digits[i + 1] === "." ? i + 2 : i + 1;
    if (digits[i] === "." || next >= digits.length) continue;
    const swapped = [...digits];
    [swapped[i], swapped[next]] = [swapped[next]!, swapped[i]!];
    const mended = Number(swapped.join(""));
    if (mended !== read && fits(mended)) return asked("two digits swapped", mended);
  }
  for (let i = 0; i < digits.length; i++) {
    const place = placeValue(digits, i);
    if (place === undefined || place < digitStepInU * u) continue;
    for (let digit = 0; digit <= 9; digit++) {
      const mended = Number(digits.slice(0, i) + digit + digits.slice(i + 1));
      if (mended !== read && fits(mended)) return asked("one digit wrong", mended);
    }
  }
  return "";
}

/** What 1 in a place of a written number is worth, e.g. 0.1 right of the point; undefined for the point itself. */
function placeValue(digits: string, at: number): number | undefined {
  if (!/\d/.test(digits[at]!)) return undefined;
  const point = digits.indexOf(".");
  const end = point < 0 ? digits.length : point;
  return 10 ** (at < end ? end - 1 - at : end - at);
}

/** Decimals needed to write every reading of a table, at most 6. */
export function decimalsWritten(readings: readonly number[]): number {
  let most = 0;
  for (const reading of readings) {
    const text = String(Number(reading.toPrecision(10)));
    const point = text.indexOf(".");
    if (point >= 0) most = Math.max(most, text.length - point - 1);
  }
  return Math.min(most, 6);
}
