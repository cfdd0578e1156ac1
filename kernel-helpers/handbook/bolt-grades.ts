import { inch, ksi, type Length, type Pressure } from "../quantity/index.js";

/** One row of the table of bolt strengths: minimum values, in ksi and inches as printed. */
export interface BoltGradeRow {
  readonly grade: string;
  /** The sizes it holds for, as printed: "1/4-1 1/2". */
  readonly sizes: string;
  readonly fromSize: number;
  /** Undefined where the table gives no upper end. */
  readonly toSize: number | undefined;
  /** The standard gives none for A193. */
  readonly proof: number | undefined;
  readonly yield: number;
  readonly tensile: number;
}

/** The strength of a bolt grade at one size: the least that the standard allows. */
export interface BoltGrade {
  readonly grade: string;
  readonly proof: Pressure | undefined;
  readonly yield: Pressure;
  readonly tensile: Pressure;
  readonly source: string;
}

const source =
  "SAE J429, ASTM A307, A325, A449, A490 and A193 as tabulated in Shigley & Mischke, Mechanical Engineering Design, 5th ed., p. 341 (A193 gives no proof load)";

/**
 * Minimum strength of bolts by grade and size, as printed.
 *
 * @source SAE J429 and ASTM A307 as tabulated in J. E. Shigley & C. R. Mischke, Mechanical Engineering Design,
 * 5th ed., p. 341; ASTM A193 yield and tensile strength
 */
export const boltGradeRows: readonly BoltGradeRow[] = Object.freeze([
  row("SAE 1", "1/4-1-1/2", 0.25, 1.5, 33, 36, 60),
  row("SAE 2", "1/4-3/4", 0.25, 0.75, 55, 57, 74),
  row("SAE 2", "7/8-1-1/2", 0.875, 1.5, 33, 36, 60),
  row("SAE 4", "1/4-1-1/2", 0.25, 1.5, 65, 100, 115),
  row("SAE 5", "1/4-1", 0.25, 1, 85, 92, 120),
  row("SAE 5", "1-1/8-1-1/2", 1.125, 1.5, 74, 81, 105),
  row("SAE 5.2", "1/4-1", 0.25, 1, 85, 92, 120),
  row("SAE 7", "1/4-1-1/2", 0.25, 1.5, 105, 115, 133),
  row("SAE 8", "1/4-1-1/2", 0.25, 1.5, 120, 130, 150),
  row("ASTM A307", "1/4-1-1/2", 0.25, 1.5, 33, 36, 60),
  row("ASTM A325", "1/2-1", 0.5, 1, 85, 92, 120),
  row("ASTM A325", "1-1/8-1-1/2", 1.125, 1.5, 74, 81, 105),
  row("ASTM A449", "1-3/4-3", 1.75, 3, 55, 58, 90),
  row("ASTM A490", "1/2-1-1/2", 0.5, 1.5, 120, 130, 150),
  row("ASTM A193 B7", "to 2-1/2", 0, 2.5, undefined, 105, 125),
  row("ASTM A193 B7", "2-1/2-4", 2.5, 4, undefined, 95, 115),
  row("ASTM A193 B7", "4-7", 4, 7, undefined, 75, 100),
  row("ASTM A193 B8 class 1", "1/4+", 0.25, undefined, undefined, 30, 75),
]);

/**
 * The least strength a bolt of a grade has at a size.
 *
 * Valid when: the head carries the grade's mark, or the maker's paper says it. An unmarked stud a century old is
 * at best the lowest grade.
 *
 * @param grade  as the standard writes it, e.g. "SAE 5", "ASTM A193 B7"
 * @param size   nominal diameter [m]
 * @returns proof (undefined where the standard gives none), yield and tensile strength [Pa]
 * @throws RangeError  the table has no such grade, or not at that size; the message lists what it has
 * @example boltGrade("SAE 5", inch(0.75)).yield.in("ksi") // 92
 * @source see `boltGradeRows`
 */
export function boltGrade(grade: string, size: Length): BoltGrade {
  const named = boltGradeRows.filter((one) => plain(one.grade) === plain(grade));
  if (named.length === 0)
    throw new RangeError(
      `boltGrade: grade must be one of ${[...new Set(boltGradeRows.map((one) => one.grade))].join(", ")}, got "${grade}"`,
    );
  const found = named.find((one) => size >= inch(one.fromSize) && size <= inch(one.toSize ?? 1e3));
  if (found === undefined)
    throw new RangeError(
      `boltGrade: ${grade} is tabulated for ${named.map((one) => one.sizes).join(" and ")} in, got ${size}`,
    );
  return Object.freeze({
    grade: found.grade,
    proof: found.proof === undefined ? undefined : ksi(found.proof),
    yield: ksi(found.yield),
    tensile: ksi(found.tensile),
    source,
  });
}

function row(
  grade: string,
  sizes: string,
  fromSize: number,
  toSize: number | undefined,
  proof: number | undefined,
  yieldStrength: number,
  tensile: number,
): BoltGradeRow {
  return Object.freeze({ grade, sizes, fromSize, toSize, proof, yield: yieldStrength, tensile });
}

function plain(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/g, " ");
}
