import {
  type KindName,
  numberFault,
  readNumber,
  readQuantity,
  readTemperature,
  type TemperatureScale,
  temperature,
  type UnitName,
  unitNamed,
} from "../quantity/index.js";
import { isAngleName, isPlaceName } from "./column-names.js";
import type { HeaderColumn } from "./read-table-header.js";
import type { TableRows } from "./read-table-rows.js";
import type { Column } from "./table.js";
import { asTyped, type ReportFault, shown } from "./table-faults.js";

/**
 * Reads the cells below the header, column by column, into SI values. `-` says that no reading was taken
 * and gives NaN; an empty cell is a fault, for nobody can tell whether it was forgotten.
 */
export function readTableCells(
  rows: TableRows,
  header: readonly HeaderColumn[],
  report: ReportFault,
): readonly Column[] {
  checkLengths(rows, header, report);
  return header.map((column) => {
    const text = new Array<string>(rows.cells.length - 1);
    for (let row = 1; row < rows.cells.length; row++)
      text[row - 1] = (rows.cells[row]![column.at] ?? "").trim();
    const values = column.dimension === "text" ? [] : readValues(text, column, rows, report);
    const { name, header, dimension, unit, scale, angle } = column;
    Object.freeze(values);
    Object.freeze(text);
    return Object.freeze({
      name,
      header,
      dimension,
      unit,
      ...(scale === undefined ? {} : { scale }),
      angle,
      values,
      text,
    });
  });
}

// The common case, and the fast one: 2.4332. So many digits at most make no number too large.
const plainNumber = /^[+-]?(?:\d{1,100}(?:\.\d*)?|\.\d+)$/;

function readValues(
  text: readonly string[],
  column: HeaderColumn,
  rows: TableRows,
  report: ReportFault,
): number[] {
  const factor = siFactor(column.unit);
  const reported = column.dimension !== "unknown" || mostlyNumbers(text) ? report : () => {};
  const values = new Array<number>(text.length);
  for (let row = 0; row < text.length; row++) {
    const cell = text[row]!;
    // A cell beyond the end of a short row is reported with the row.
    if (cell === "" && column.at >= rows.cells[row + 1]!.length) values[row] = Number.NaN;
    else if (plainNumber.test(cell) && column.scale === undefined) values[row] = Number(cell) * factor;
    else values[row] = readOddCell(cell, column, rows.lines[row + 1]!, reported);
  }
  return values;
}

/** Anything but a plain number: no reading, a fraction, a power of ten, a unit of its own, or a fault. */
function readOddCell(cell: string, column: HeaderColumn, line: number, report: ReportFault): number {
  const { name, header, unit, scale, place } = column;
  const expected =
    unit === undefined && scale === undefined ? "a number" : `a number ${/\[.*\]$/.exec(header)![0]}`;
  if (cell === "" || /^[-−–—]$/.test(cell)) {
    const found = cell === "" ? `no ${whatItHolds(name)}` : shown(cell);
    if (isPlaceName(name))
      report(
        line,
        place,
        found,
        expected,
        "a row without station cannot be placed: write it, or delete the row",
      );
    else if (cell === "")
      report(line, place, found, expected, `write it, or - if no ${whatItHolds(name)} was taken`);
    return Number.NaN;
  }
  // A cell in quotes with a space behind them keeps its quotes.
  const bare = /^"([^"]*)"$/.exec(cell)?.[1] ?? cell;
  const fault = numberFault(bare);
  if (scale !== undefined) {
    const read = readOnScale(bare, scale, fault);
    if (typeof read === "number") return read;
    report(line, place, shown(cell), expected, read);
    return Number.NaN;
  }
  if (fault === undefined) return readNumber(bare) * siFactor(unit);
  const read = unit === undefined ? mendOf(bare, fault) : (ownUnit(bare, unit) ?? mendOf(bare, fault));
  if (typeof read === "number") return read;
  report(line, place, shown(cell), expected, read);
  return Number.NaN;
}

/** A temperature on the column's scale [K], or what to do about the cell. */
function readOnScale(cell: string, scale: TemperatureScale, fault: string | undefined): number | string {
  try {
    if (fault === undefined) return temperature(readNumber(cell), scale).kelvin;
  } catch {
    return "it lies below absolute zero: correct it";
  }
  try {
    const read = readTemperature(cell);
    const written = read.toJSON().scale;
    return written === scale
      ? read.kelvin
      : `it is on another scale than its column: write ${asTyped(read.in(scale))}`;
  } catch {
    return mendOf(cell, fault);
  }
}

function whatItHolds(name: string): string {
  return isAngleName(name) ? "angle" : isPlaceName(name) ? "station" : "reading";
}

function siFactor(unit: UnitName | undefined): number {
  return unit === undefined ? 1 : unitNamed(unit).si;
}

/** A cell with a unit of its own: its SI value if the unit is the column's, else what to do about it. */
function ownUnit(cell: string, unit: UnitName): number | string | undefined {
  const { kind, symbol, si } = unitNamed(unit);
  try {
    const quantity = readQuantity(cell, kind as KindName, unit as never);
    if (quantity.writtenIn === unit) return quantity.si;
    return `it has another unit than its column: write ${asTyped(quantity.si / si)} (${symbol})`;
  } catch {
    return undefined;
  }
}

function mendOf(cell: string, fault: string): string {
  if (/\p{Cf}/u.test(cell)) return "it holds a character that cannot be seen: type the cell again";
  if (cell.includes("\n")) return "a cell of numbers has one line: is there a quote too many?";
  const mend = fault.replace(`"${cell.trim()}" `, "it ");
  return mend === "it is not a number" ? "correct it, or write - if no reading was taken" : mend;
}

/** Whether a column without a known unit holds numbers, so that slips in it can be told. */
function mostlyNumbers(text: readonly string[]): boolean {
  const filled = text.filter((cell) => cell !== "");
  return filled.filter((cell) => plainNumber.test(cell)).length > filled.length / 2;
}

/** A row has a cell for each column; only words at its end may be left out. */
function checkLengths(rows: TableRows, header: readonly HeaderColumn[], report: ReportFault): void {
  const width = rows.cells[0]!.length;
  const lastNeeded = header.findLast(({ dimension }) => dimension !== "text");
  const needed = lastNeeded === undefined ? 1 : lastNeeded.at + 1;
  const unnamed = rows.cells[0]!.flatMap((cell, at) => (cell.trim() === "" ? [at] : []));
  for (let row = 1; row < rows.cells.length; row++) {
    const cells = rows.cells[row]!;
    const line = rows.lines[row]!;
    if (cells.length > width)
      report(line, undefined, count(cells.length), `${width}, as in the header`, tooMany(cells));
    else if (cells.length < needed)
      report(
        line,
        undefined,
        count(cells.length),
        `${width}, as in the header`,
        "add what is missing; write - for a reading that was not taken",
      );
    for (const at of unnamed) {
      const cell = (cells[at] ?? "").trim();
      if (cell !== "")
        report(
          line,
          { header: "", number: at + 1 },
          shown(cell),
          "nothing: the column has no header",
          "give it a header, or empty the cell",
        );
    }
  }
}

function count(cells: number): string {
  return cells === 1 ? "1 cell" : `${cells} cells`;
}

function tooMany(cells: readonly string[]): string {
  const quotes = 'words that hold a comma stand in quotes: "light rust, filed"';
  const twoWholeNumbers = cells.some(
    (cell, i) => /^\s*[+-]?\d+$/.test(cell) && /^\d+\s*$/.test(cells[i + 1] ?? ""),
  );
  return twoWholeNumbers
    ? `is a comma meant as decimal or thousands mark? Write a decimal point and no thousands mark; ${quotes}`
    : quotes;
}
