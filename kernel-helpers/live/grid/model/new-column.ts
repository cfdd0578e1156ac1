import { isAngleName } from "../../../survey/column-names.js";
import { readTableHeader } from "../../../survey/read-table-header.js";
import { columnLook } from "./column-look.js";
import { faultText } from "./fault-places.js";

/** A header to begin with, and where the column goes. */
export interface ColumnProposal {
  readonly header: string;
  readonly at: number;
}

/**
 * A column for the readings at another angle: named and measured as those that are there, behind the last of
 * them, in the middle of the widest gap between their angles. Half a turn is looked at, for the diameter at
 * 180 deg is the one at 0 deg.
 *
 * @param headers  of the table
 * @returns undefined where the table has no column of readings, or says the angle in a column of its own
 * @example nextAngleColumn(["station [in]", "diameter @ 0 deg [in]"]) // { header: "diameter @ 90 deg [in]", at: 2 }
 */
export function nextAngleColumn(headers: readonly string[]): ColumnProposal | undefined {
  const looks = headers.map(columnLook);
  if (looks.some(({ name }) => isAngleName(name.toLowerCase()))) return undefined;
  const readings = looks.filter(
    ({ holds, unit, isStation }) => holds === "numbers" && unit !== "" && !isStation,
  );
  const last = readings.findLast(({ angle }) => angle !== "") ?? readings.at(-1);
  if (last === undefined) return undefined;
  const name = last.name.toLowerCase();
  const degrees = readings
    .filter((look) => look.name.toLowerCase() === name)
    .map(({ angle }) => Number(/^([\d.]+)\s*(?:deg|°)$/.exec(angle)?.[1] ?? Number.NaN))
    .filter((angle) => !Number.isNaN(angle));
  const header = `${last.name} @ ${middleOfWidestGap(degrees)} deg [${last.unit}]`;
  return { header, at: looks.lastIndexOf(last) + 1 };
}

/** [deg]; 90 where nothing was read yet, for what has no angle was most likely read at 0. */
function middleOfWidestGap(degrees: readonly number[]): number {
  const read = [...new Set(degrees.length === 0 ? [0] : degrees.map((angle) => angle % 180))];
  read.sort((a, b) => a - b);
  let [widest, middle] = [0, 90];
  for (const [i, angle] of read.entries()) {
    const gap = (read[i + 1] ?? read[0]! + 180) - angle;
    if (gap > widest) [widest, middle] = [gap, (angle + gap / 2) % 180];
  }
  return Number(middle.toPrecision(6));
}

/**
 * What the table reader would say against the headers with a new one among them; only what concerns the new
 * one. Empty where it may go in.
 */
export function headerFaults(headers: readonly string[], header: string, at: number): readonly string[] {
  const all = headers.toSpliced(at, 0, header);
  const said: string[] = [];
  if (header.trim() === "") return ['Write a header such as "diameter @ 90 deg [in]".'];
  readTableHeader(all, 1, (_line, column, found, expected, mend) => {
    if (column?.number === at + 1) said.push(faultText({ found, expected, mend }));
    // Of two columns alike the second is reported, whichever of them is new.
    else if (column !== undefined && !isOldFault(headers, found))
      said.push(`In "${column.header}": ${faultText({ found, expected, mend })}`);
  });
  return said;
}

function isOldFault(headers: readonly string[], found: string): boolean {
  let old = false;
  readTableHeader(headers, 1, (_line, _column, foundThere) => {
    old ||= foundThere === found;
  });
  return old;
}
