import { type CsvDocument, lineNumbers } from "./csv-document.js";
import { cellAt } from "./edit-cells.js";

/** A fault as the server's check reports it. */
export interface ReportedFault {
  /** Line of the file, from 1; 0 for the whole file. */
  readonly line: number;
  /** From 1; 0 for the whole line. */
  readonly columnNumber: number;
  readonly column: string;
  readonly found: string;
  readonly expected: string;
  readonly mend: string;
}

/** A fault with the place in the document it belongs to. */
export interface PlacedFault {
  /** The piece; −1 for the whole file. */
  readonly piece: number;
  /** Counted from 0; −1 for the whole line. */
  readonly column: number;
  /** Where it is, for reading: `line 12, diameter @ 90 deg`. */
  readonly where: string;
  /** What is wrong and what to do. */
  readonly text: string;
  /** Nothing stands there yet: still to be written rather than wrong. */
  readonly isEmpty: boolean;
}

/** Finds the pieces and columns of the faults a check reported; the order stays. */
export function placeFaults(document: CsvDocument, faults: readonly ReportedFault[]): readonly PlacedFault[] {
  const numbers = lineNumbers(document).slice(0, document.pieces.length);
  const pieceAt = new Map(numbers.map((line, at) => [line, at]));
  return faults.map((fault) => {
    const piece = fault.line === 0 ? -1 : (pieceAt.get(fault.line) ?? lastBefore(numbers, fault.line));
    const column = fault.columnNumber - 1;
    const isRow = document.pieces[piece]?.kind === "row";
    return Object.freeze({
      piece,
      column,
      where: whereText(fault),
      text: faultText(fault),
      isEmpty: isRow && column >= 0 && piece !== document.header && cellAt(document, piece, column) === "",
    });
  });
}

/** A line inside a cell of several lines belongs to the row that began above it. */
function lastBefore(numbers: readonly number[], line: number): number {
  return numbers.findLastIndex((number) => number <= line);
}

/** What is wrong and what to do, in a sentence. */
export function faultText({
  found,
  expected,
  mend,
}: Pick<ReportedFault, "found" | "expected" | "mend">): string {
  return `Found ${found}, expected ${expected}; ${mend}${/[.?!]$/.test(mend) ? "" : "."}`;
}

function whereText({ line, column, columnNumber }: ReportedFault): string {
  const parts = line === 0 ? ["the whole file"] : [`line ${line}`];
  if (columnNumber > 0)
    parts.push(column === "" ? `column ${columnNumber}` : column.replace(/\s*\[[^\]]*\]$/, ""));
  return parts.join(", ");
}

/** The key under which the faults of a cell are found; column −1 is the whole line. */
export function placeKey(piece: number, column: number): string {
  return `${piece}:${column}`;
}

/** The faults by the cell or line they belong to. */
export function faultsByPlace(faults: readonly PlacedFault[]): ReadonlyMap<string, readonly PlacedFault[]> {
  const places = new Map<string, PlacedFault[]>();
  for (const fault of faults) {
    const key = placeKey(fault.piece, fault.column);
    places.set(key, [...(places.get(key) ?? []), fault]);
  }
  return places;
}

/** The first line of the file a warning names, or undefined. */
export function lineNamed(warning: string): number | undefined {
  const match = /\blines? (\d+)/i.exec(warning);
  return match === null ? undefined : Number(match[1]);
}
