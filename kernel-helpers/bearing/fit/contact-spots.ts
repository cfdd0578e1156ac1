import { chiSquareSurvival } from "../../statistics/index.js";
import { numbersOf, type Table, textOf } from "../../survey/index.js";

/** The marking of one box. */
export interface MarkedBox {
  readonly name: string;
  /** Squares counted. */
  readonly squares: number;
  /** Spots a square, and the standard uncertainty of it [-]. */
  readonly mean: number;
  readonly standardUncertainty: number;
  readonly least: number;
  readonly most: number;
  /** Chance that evenly spread spots would scatter at least so much [-]. */
  readonly evenChance: number;
  readonly verdict: "bears" | "scrape on" | "cannot tell yet";
  readonly because: string;
}

/** Spots counted after marking, box by box. */
export interface ContactSpots {
  readonly kind: "contact spots";
  readonly table: string;
  /** Spots a square inch wanted [-]. */
  readonly wanted: number;
  readonly boxes: readonly MarkedBox[];
}

/** Spots thrown evenly would be so uneven in less than this share of the cases [-]. */
const uneven = 0.05;

/**
 * Whether a scraped box bears enough and evenly, from the spots counted in squares of one inch.
 *
 * Mean m of n squares with standard uncertainty s/√n, s² the larger of m and the scatter; evenness: Σ(k − m)²/m against
 * χ² with n − 1 degrees of freedom.
 *
 * Valid when: squares of one size, spread over the loaded arc; a spot is counted once.
 *
 * @param table  columns box and spots, a square a row; empty cells are left out
 * @param wanted  spots a square inch, > 0 [-]
 * @returns a box each
 * @throws RangeError  wanted not above 0, a count that is no whole number, or fewer than 4 squares in a box
 * @example
 * const rows = [9, 8, 10, 9, 8, 10].map((spots) => `far box,${spots}`);
 * const bytes = new TextEncoder().encode(["box [text],spots [-]", ...rows].join("\n"));
 * contactSpots(readTable(bytes, { name: "spots", file: "spots.csv" }), 6).boxes[0].verdict // "bears"
 * @source R. A. Fisher, Statistical Methods for Research Workers, section 16 (index of dispersion; from memory)
 */
export function contactSpots(table: Table, wanted: number): ContactSpots {
  if (!(wanted > 0)) throw new RangeError(`contactSpots: wanted must be above 0, got ${wanted}`);
  const [names, counts] = [textOf(table, "box"), numbersOf(table, "spots")];
  const groups = new Map<string, number[]>();
  names.forEach((cell, row) => {
    const count = counts[row]!;
    if (Number.isNaN(count)) return;
    if (!(Number.isInteger(count) && count >= 0))
      throw new RangeError(
        `contactSpots: ${table.name}: spots must be whole numbers from 0 on, got ${count}`,
      );
    groups.set(cell.trim(), [...(groups.get(cell.trim()) ?? []), count]);
  });
  return Object.freeze({
    kind: "contact spots",
    table: table.name,
    wanted,
    boxes: Object.freeze([...groups].map(([name, spots]) => marked(name, spots, wanted))),
  });
}

function marked(name: string, spots: readonly number[], wanted: number): MarkedBox {
  const n = spots.length;
  if (n < 4) throw new RangeError(`contactSpots: ${name} must have at least 4 squares counted, got ${n}`);
  const mean = spots.reduce((sum, k) => sum + k, 0) / n;
  const squares = spots.reduce((sum, k) => sum + (k - mean) ** 2, 0);
  const standardUncertainty = Math.sqrt(Math.max(mean, squares / (n - 1)) / n);
  const evenChance = mean === 0 ? 1 : chiSquareSurvival(squares / mean, n - 1);
  const reach = 1.645 * standardUncertainty;
  const [enough, short] = [mean - reach >= wanted, mean + reach < wanted];
  const verdict = evenChance < uneven || short ? "scrape on" : enough ? "bears" : "cannot tell yet";
  const because =
    evenChance < uneven
      ? "the spots crowd: scrape where they are thick"
      : short
        ? "too few spots: scrape all that mark"
        : enough
          ? "enough spots, evenly spread"
          : "count more squares";
  const [least, most] = [Math.min(...spots), Math.max(...spots)];
  return Object.freeze({
    name,
    squares: n,
    mean,
    standardUncertainty,
    least,
    most,
    evenChance,
    verdict,
    because,
  });
}
