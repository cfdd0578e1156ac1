/** One thing a check of a rebuild found. */
export interface CheckFault {
  /** "fault": it must be put right before a run can go well. "open": something to be done or looked at. */
  readonly severity: "fault" | "open";
  /** Path within the rebuild. */
  readonly file: string;
  /** The cell of a worksheet. */
  readonly cell?: string;
  /** Counted from 1, in the file or in the cell; 0 where the whole is meant [-]. */
  readonly line: number;
  /** Counted from 1: the place in the line or, in a table, the column; 0 where the whole line is meant [-]. */
  readonly column: number;
  readonly what: string;
}

/** A fault in one line: where, then what. */
export function describeCheckFault({ file, cell, line, column, what }: CheckFault): string {
  const places = [file, cell && `cell ${cell}`, line > 0 && `line ${line}`, column > 0 && `column ${column}`];
  return `${places.filter(Boolean).join(", ")}: ${what}`;
}
