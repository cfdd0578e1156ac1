/** One thing in a table that must be put right before its readings can be trusted. */
export interface TableFault {
  /** The file, as named by the caller. */
  readonly file: string;
  /** The line of the file, counted from 1; 0 where the whole file is meant. */
  readonly line: number;
  /** The header of the column as written; "" where the whole line is meant. */
  readonly column: string;
  /** The place of the column, counted from 1; 0 where the whole line is meant. */
  readonly columnNumber: number;
  /** What stands there. */
  readonly found: string;
  /** What should stand there. */
  readonly expected: string;
  /** What to do about it. */
  readonly mend: string;
}

/** Which column a fault lies in. */
export interface FaultColumn {
  readonly header: string;
  /** Counted from 1. */
  readonly number: number;
}

/** Notes a fault; reading goes on, so that all faults of a table are told at once. */
export type ReportFault = (
  line: number,
  column: FaultColumn | undefined,
  found: string,
  expected: string,
  mend: string,
) => void;

// More than a screenful helps nobody; the rest is in `faults`.
const shownFaults = 20;

/** What is found in a table under whose header nothing has been written yet. */
export const noRows = "a header and no rows";

/** Thrown by `readTable`: everything that is wrong with a table, at once, in the order of the file. */
export class TableFaults extends Error {
  readonly faults: readonly TableFault[];

  /** Whether nothing is wrong but that no reading has been written yet. */
  get isOnlyHeader(): boolean {
    return this.faults.every(({ found }) => found === noRows);
  }

  constructor(file: string, faults: readonly TableFault[]) {
    const sorted = [...faults].sort((a, b) => a.line - b.line || a.columnNumber - b.columnNumber);
    const shown = sorted.slice(0, shownFaults).map(describeFault);
    const more = sorted.length - shown.length;
    if (more > 0) shown.push(`and ${more} more`);
    const count = sorted.length === 1 ? "a fault" : `${sorted.length} faults`;
    super(`${file} has ${count}:\n${shown.join("\n")}`);
    this.name = "TableFaults";
    this.faults = Object.freeze(sorted);
  }
}

/**
 * One fault in one line.
 *
 * @example
 * const at = { file: "shaft.csv", line: 7, column: "angle [deg]", columnNumber: 2 };
 * describeFault({ ...at, found: "no angle", expected: "a number [deg]", mend: "write it" })
 * // "shaft.csv line 7, column \"angle [deg]\": found no angle, expected a number [deg]; write it"
 */
export function describeFault(fault: TableFault): string {
  const line = fault.line === 0 ? "" : ` line ${fault.line}`;
  const column =
    fault.columnNumber === 0 ? "" : `, column ${fault.column ? `"${fault.column}"` : fault.columnNumber}`;
  return `${fault.file}${line}${column}: found ${fault.found}, expected ${fault.expected}; ${fault.mend}`;
}

/**
 * What stands in a cell, for a fault: in quotes, on one line, not longer than a line.
 *
 * @example shown("light\nrust") // "\"light ⏎ rust\""
 */
export function shown(text: string): string {
  const oneLine = text.replace(/\s*\n\s*/g, " ⏎ ");
  return `"${oneLine.length > 60 ? `${oneLine.slice(0, 57)}…` : oneLine}"`;
}

/**
 * A number as it can be typed in a table, eight digits at most.
 *
 * @example asTyped(61.8 / 25.4) // "2.4330709"
 */
export function asTyped(value: number): string {
  return String(Number(value.toPrecision(8)));
}
