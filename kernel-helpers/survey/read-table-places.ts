import { unitNamed } from "../quantity/index.js";
import { isAngleName, isPlaceName, isRepeatName, isWordsName } from "./column-names.js";
import { anglesMissing, stationsOutOfOrder, stationText } from "./read-table-doubts.js";
import type { HeaderColumn } from "./read-table-header.js";
import type { Column, Remark } from "./table.js";
import type { ReportFault } from "./table-faults.js";
import { valueFor } from "./value-for.js";

/**
 * Checks where the readings of a table were taken. A place (station, with the angle and the labels of its
 * row, if any) that comes twice is reported, unless a column `repeat`, the row's remark or a remark line
 * says that it was read again.
 *
 * @returns doubts: stations out of order, and stations without an angle that most others have
 */
export function checkPlaces(
  columns: readonly Column[],
  header: readonly HeaderColumn[],
  lines: readonly number[],
  remarks: readonly Remark[],
  report: ReportFault,
): readonly string[] {
  const at = columns.findIndex(({ name, dimension }) => isPlaceName(name) && dimension === "length");
  if (at < 0) return [];
  const station = columns[at]!;
  const angle = columns.find(({ name, dimension }) => isAngleName(name) && dimension === "angle");
  const walks = walksOf(columns, angle, lines.length);
  if (!remarks.some(({ key }) => /^repeat(s|ed)?$/.test(key)))
    checkRepeats(columns, station, angle, walks, (row, first) =>
      report(
        lines[row]!,
        header[at]!.place,
        `station ${placeOf(station, angle, row)} again`,
        `each place once (it stands on line ${lines[first]} too)`,
        'if it was read again, write "repeat" in the row\'s remark, or add a column "repeat [-]"; else correct it',
      ),
    );
  return [...stationsOutOfOrder(station, walks, lines), ...anglesMissing(station, angle, lines)];
}

/**
 * Which walk along the shaft each row belongs to, by number: rows of one angle, one repeat and the same
 * labels, where a label is any column [text].
 */
function walksOf(columns: readonly Column[], angle: Column | undefined, rowCount: number): readonly number[] {
  const labels = columns.filter(({ name, dimension }) => dimension === "text" && !isWordsName(name));
  const repeats = columns.filter(({ name, dimension }) => dimension === "number" && isRepeatName(name));
  const lists = [
    angle?.values ?? [],
    ...repeats.map(({ values }) => values),
    ...labels.map(({ text }) => text),
  ];
  const walks = new Array<number>(rowCount).fill(0);
  for (const list of lists) {
    if (list.length === 0) continue;
    // Rows of one walk so far stay together where this column holds the same for them.
    const parts = new Map<number, Map<number | string, number>>();
    let count = 0;
    for (let row = 0; row < rowCount; row++) {
      const part = valueFor(parts, walks[row]!, () => new Map<number | string, number>());
      walks[row] = valueFor(part, list[row]!, () => count++);
    }
  }
  return walks;
}

function checkRepeats(
  columns: readonly Column[],
  station: Column,
  angle: Column | undefined,
  walks: readonly number[],
  found: (row: number, first: number) => void,
): void {
  const remarks = columns.filter(({ name, dimension }) => dimension === "text" && isWordsName(name));
  const firstRows = new Map<number, Map<number, number>>();
  for (const [row, walk] of walks.entries()) {
    const place = station.values[row]!;
    // Where the station or the angle is not known, nothing is known to be the same.
    if (Number.isNaN(place) || (angle !== undefined && Number.isNaN(angle.values[row]!))) continue;
    const first = valueFor(
      valueFor(firstRows, walk, () => new Map<number, number>()),
      place,
      () => row,
    );
    if (first !== row && !remarks.some(({ text }) => /\brepeat(s|ed)?\b/i.test(text[row]!)))
      found(row, first);
  }
}

function placeOf(station: Column, angle: Column | undefined, row: number): string {
  const at = stationText(station, row);
  return angle === undefined
    ? at
    : `${at} at ${angle.text[row]} ${angle.unit === "degree" ? "deg" : unitNamed(angle.unit!).symbol}`;
}
