import { formatNumber, systemOf, type UnitName, unitNamed } from "../quantity/index.js";
import { isDiameterName } from "./column-names.js";
import type { HeaderColumn } from "./read-table-header.js";
import type { Column } from "./table.js";
import { asTyped, type ReportFault, shown } from "./table-faults.js";

// Beyond a factor of three from the middle of its kind a reading is more likely a slip than a shoulder.
const doubtful = 3;

/**
 * Reports diameters that are zero or negative, and those more than three times the median of all readings
 * of that name in the table, or less than a third of it: mostly a decimal point that slipped. Readings on
 * the lines named in `checked` are accepted, however large.
 *
 * Smaller gross errors are left to those who know the shape of the shaft.
 *
 * @source the factor 3 is our choice: shaft steps seldom exceed it, a slipped decimal point always does
 */
export function checkDiameters(
  columns: readonly Column[],
  header: readonly HeaderColumn[],
  lines: readonly number[],
  checked: ReadonlySet<number>,
  report: ReportFault,
): void {
  const names = new Set(
    columns
      .filter(({ name, dimension }) => dimension === "length" && isDiameterName(name))
      .map(({ name }) => name),
  );
  for (const name of names) {
    const alike = columns.flatMap((column, i) =>
      column.name === name && column.unit ? [{ column, i }] : [],
    );
    // Inch and metric readings of one name were faulted at the header; which of them is off cannot be told here.
    const mixed = new Set(alike.flatMap(({ column }) => systemIn(column))).size > 1;
    const median = mixed ? Number.NaN : lowerMedian(alike.map(({ column }) => column.values));
    for (const { column, i } of alike) {
      const { place } = header[i]!;
      for (let row = 0; row < lines.length; row++) {
        const value = column.values[row]!;
        if (value <= 0)
          report(
            lines[row]!,
            place,
            shown(column.text[row]!),
            "a diameter greater than 0",
            "correct the reading",
          );
        else if ((value > doubtful * median || value < median / doubtful) && !checked.has(lines[row]!))
          report(
            lines[row]!,
            place,
            shown(column.text[row]!),
            `a diameter like the others of this name (median ${inUnit(median, column.unit!)})`,
            `${slip(value, median, column.unit!)}if it is right, write "checked" in the row's remark, or a line "# checked: line ${lines[row]}"`,
          );
      }
    }
  }
}

function systemIn({ unit }: Column): readonly string[] {
  const system = unit === undefined ? "both" : systemOf(unit);
  return system === "both" ? [] : [system];
}

/** The middle of all positive readings; of an even number the smaller of the two, which was really read. */
function lowerMedian(lists: readonly (readonly number[])[]): number {
  let count = 0;
  for (const list of lists) for (const value of list) if (value > 0) count++;
  const all = new Float64Array(count);
  let at = 0;
  for (const list of lists) for (const value of list) if (value > 0) all[at++] = value;
  return all.sort()[(count - 1) >> 1] ?? Number.NaN;
}

/** What the reading may have been meant to be; "" where no usual slip comes near the median. */
function slip(value: number, median: number, unit: UnitName): string {
  const system = { inch: "mm", mm: "inches" }[unit as string];
  const guesses = [1, 2, 3, 4].flatMap((power) => [
    { factor: 10 ** power, text: "has the decimal point slipped?" },
    { factor: 10 ** -power, text: "has the decimal point slipped?" },
  ]);
  if (system !== undefined)
    guesses.push({ factor: unit === "inch" ? 25.4 : 1 / 25.4, text: `was it read in ${system}?` });
  const distance = (factor: number): number => Math.abs(Math.log(value / factor / median));
  const best = guesses.reduce((a, b) => (distance(b.factor) < distance(a.factor) ? b : a));
  if (distance(best.factor) > Math.log(1.5)) return "";
  return `${best.text} Write ${asTyped(value / best.factor / unitNamed(unit).si)}; `;
}

function inUnit(value: number, unit: UnitName): string {
  const { si, symbol } = unitNamed(unit);
  return `${formatNumber(value / si)} ${symbol}`;
}
