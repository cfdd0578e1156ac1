import {
  readAngle,
  systemOf,
  type TemperatureScale,
  type UnitName,
  unitButForCapitals,
  unitNamed,
  unitSpelled,
  unitsOf,
  withArticle,
} from "../quantity/index.js";
import { isAngleName, isDiameterName, isPlaceName, isWordsName } from "./column-names.js";
import { sameDirection } from "./same-direction.js";
import { type FaultColumn, type ReportFault, shown } from "./table-faults.js";

/** What a header says of its column. */
export interface HeaderColumn {
  readonly name: string;
  readonly header: string;
  /** A kind of quantity, "temperature", "number", "text", or "unknown" where the header is at fault. */
  readonly dimension: string;
  readonly unit: UnitName | undefined;
  /** The scale of a column of temperatures. */
  readonly scale?: TemperatureScale;
  /** Where round the shaft the column was read [rad]. */
  readonly angle: number | undefined;
  /** The place among the cells of a row, counted from 0. */
  readonly at: number;
  /** For faults. */
  readonly place: FaultColumn;
}

/**
 * Reads the header of a table: `station [in]`, `diameter @ 90 deg [in]`, `repeat [-]`, `box [text]`,
 * `remark`. Columns without header are left out; `readTableCells` checks that they are empty.
 */
export function readTableHeader(
  headers: readonly string[],
  line: number,
  report: ReportFault,
): readonly HeaderColumn[] {
  if (headers.every((header) => header.trim() === "")) {
    report(
      line,
      undefined,
      "only empty cells",
      exampleHeader,
      "write the names of the columns with their units",
    );
    return [];
  }
  if (headers.every((header) => header.trim() === "" || /^[+-]?[\d.]+$/.test(header.trim()))) {
    report(line, undefined, "numbers", exampleHeader, "write a header above the first row");
    return [];
  }
  const columns = headers.flatMap((header, at) =>
    header.trim() === "" ? [] : [readHeader(header.trim().replace(/\s+/g, " "), at, line, report)],
  );
  checkAlike(columns, line, report);
  checkSystems(columns, line, report);
  return columns;
}

const exampleHeader = 'a header such as "station [in],diameter [in]"';

function readHeader(header: string, at: number, line: number, report: ReportFault): HeaderColumn {
  const place = { header, number: at + 1 };
  const [, label, spelling] = /^([^[\]]*)\[([^[\]]*)\]$/.exec(header) ?? [undefined, header, undefined];
  const [nameText, angleText, ...more] = label!.split("@").map((part) => part.trim());
  const name = nameText!.toLowerCase();
  const known = { name, header, at, place };
  const unknown = { ...known, dimension: "unknown", unit: undefined, angle: undefined };

  if (name === "") {
    report(line, place, shown(header), "a name before the unit", 'write e.g. "diameter [in]"');
    return unknown;
  }
  const angle = angleText === undefined ? undefined : angleOf(angleText);
  if (more.length > 0 || (angle !== undefined && typeof angle !== "number")) {
    const mend = `write e.g. "${name} @ 90 deg [${spelling ?? "in"}]"`;
    report(line, place, shown(header), "an angle with its unit behind the @", mend);
    return unknown;
  }
  if (spelling === undefined) {
    if (isWordsName(name) && angle === undefined)
      return { ...known, dimension: "text", unit: undefined, angle };
    report(line, place, shown(header), "a unit in square brackets behind the name", unitMend(header));
    return unknown;
  }
  const word = spelling.trim();
  if (word === "-") return { ...known, dimension: "number", unit: undefined, angle };
  if (word === "text") return { ...known, dimension: "text", unit: undefined, angle };
  const scale = scaleSpelled(word);
  if (scale !== undefined && kindNeeded(name) === undefined)
    return { ...known, dimension: "temperature", unit: undefined, scale, angle };
  const unit = unitSpelled(word);
  if (unit === undefined) {
    report(line, place, shown(header), `a unit that is known: ${someUnits()}`, unknownUnitMend(word));
    return unknown;
  }
  const { kind, symbol } = unitNamed(unit);
  const needed = kindNeeded(name);
  if (needed !== undefined && needed !== kind) {
    const mend = `${symbol} measures ${withArticle(kind)}; correct the unit or the name`;
    report(line, place, shown(header), `${withArticle(needed)}, for this is called ${name}`, mend);
    return unknown;
  }
  return { ...known, dimension: kind, unit, angle };
}

/** The scale of `[degF]`, `[°C]`, `[kelvin]`; a difference of temperatures is spelled otherwise. */
function scaleSpelled(word: string): TemperatureScale | undefined {
  const letter = /^(?:°|deg)\s*([CF])$/.exec(word)?.[1];
  if (word === "kelvin") return "kelvin";
  return letter === "C" ? "degC" : letter === "F" ? "degF" : undefined;
}

/** The angle behind an @ [rad], or "wrong". */
function angleOf(text: string): number | "wrong" {
  try {
    return readAngle(text).si;
  } catch {
    return "wrong";
  }
}

function kindNeeded(name: string): string | undefined {
  return isAngleName(name) ? "angle" : isPlaceName(name) || isDiameterName(name) ? "length" : undefined;
}

/** `diameter (in)` and `diameter in` are near enough to show what was meant. */
function unitMend(header: string): string {
  const match = /^(.+?)(?:\s*[({](.+)[)}]|[\s,_]+([^\s,_]+))$/.exec(header);
  const spelling = (match?.[2] ?? match?.[3] ?? "").trim();
  const example = unitSpelled(spelling) === undefined ? `${header} [in]` : `${match![1]} [${spelling}]`;
  return `write e.g. "${example}"; [-] for a plain number, [text] for words`;
}

function unknownUnitMend(spelling: string): string {
  const meant = unitButForCapitals(spelling);
  if (meant !== undefined) return `capitals count: write [${unitNamed(meant).symbol}]`;
  return "write one of these; [-] for a plain number, [text] for words";
}

function someUnits(): string {
  const symbols = unitsOf("length").map((name) => unitNamed(name).symbol);
  return [...symbols, "deg", "N", "lbf", "kg", "lb", "min", "degC", "degF", "…"].join(", ");
}

/** Two columns of one name are alike unless they were read at different angles. */
function checkAlike(columns: readonly HeaderColumn[], line: number, report: ReportFault): void {
  for (const column of columns) {
    const first = columns.find((other) => isAlike(other, column))!;
    if (first === column) continue;
    report(
      line,
      column.place,
      `a second "${column.name}"`,
      `a name of its own (column ${first.place.number} is called so)`,
      `rename it, or tell the two apart by their angle: "${column.name} @ 90 deg [in]"`,
    );
  }
  const angle = columns.find(({ name }) => isAngleName(name));
  const wide = columns.find((column) => column.angle !== undefined);
  if (angle !== undefined && wide !== undefined)
    report(
      line,
      angle.place,
      `angles in a column and in the header "${wide.header}"`,
      "the angle said once",
      "delete the column, or take the angle out of the headers",
    );
}

function isAlike(a: HeaderColumn, b: HeaderColumn): boolean {
  if (a.name !== b.name) return false;
  return a.angle === undefined || b.angle === undefined
    ? a.angle === b.angle
    : sameDirection(a.angle, b.angle);
}

/** Inch and metric lengths side by side are nearly always a slip, and a costly one. */
function checkSystems(columns: readonly HeaderColumn[], line: number, report: ReportFault): void {
  const lengths = columns.filter(({ dimension }) => dimension === "length");
  const inch = lengths.find(({ unit }) => systemOf(unit!) === "inch");
  const metric = lengths.find(({ unit }) => systemOf(unit!) === "metric");
  if (inch === undefined || metric === undefined) return;
  const [first, second] = inch.at < metric.at ? [inch, metric] : [metric, inch];
  report(
    line,
    second.place,
    `lengths in "${first.header}" and in "${second.header}"`,
    "inch or metric lengths in one table, not both",
    "convert the column, or correct its unit",
  );
}
