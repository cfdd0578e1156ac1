import type { RotationalSpeed, Temperature, Time } from "../../quantity/index.js";
import { columnsNamed, quantitiesOf, type Table, temperaturesOf, textOf } from "../../survey/index.js";
import type { RunInStretch } from "./run-in-types.js";

/** A row of the table, every box read. */
export interface RunInRow {
  readonly line: number;
  readonly time: Time;
  readonly room: Temperature;
  readonly stretch: number;
  /** By box; undefined where it was not read. */
  readonly boxes: readonly (Temperature | undefined)[];
}

/** The table of a run-in, by row. */
export interface RunInTable {
  readonly names: readonly string[];
  readonly rows: readonly RunInRow[];
  readonly stretches: readonly RunInStretch[];
  readonly warnings: readonly string[];
}

/** Speeds nearer than this share are one speed. */
const sameSpeed = 0.02;
/** A pause longer than so many usual steps is told. */
const longPause = 4;

/**
 * Reads the table of a run-in: time, room, and one temperature column a box; speed and oil where they were changed.
 * Rows of one speed and one oil that follow each other make a stretch.
 *
 * @throws RangeError  a column is missing, times out of order, or a gap where a time or the room's temperature belongs
 */
export function readRunIn(table: Table, room: Temperature | undefined): RunInTable {
  const where = "runIn";
  const times = quantitiesOf(table, "time", "time");
  const names = table.columns
    .filter(({ dimension, name }) => dimension === "temperature" && name !== "room")
    .map(({ name }) => name);
  if (names.length === 0)
    throw new RangeError(
      `${where}: ${table.file} must have a column of temperatures for each box, e.g. "pulley box [degF]", got ${table.columns.map(({ header }) => `"${header}"`).join(", ")}`,
    );
  const boxes = names.map((name) => temperaturesOf(table, name));
  const rooms = columnsNamed(table, "room").length > 0 ? temperaturesOf(table, "room") : undefined;
  const speeds =
    columnsNamed(table, "speed").length > 0 ? quantitiesOf(table, "speed", "rotational speed") : undefined;
  const oils = columnsNamed(table, "oil").length > 0 ? textOf(table, "oil") : undefined;

  const rows: RunInRow[] = [];
  const stretches: { from: Time; to: Time; speed: RotationalSpeed | undefined; oil: string }[] = [];
  let lastRoom = room;
  table.lines.forEach((line, row) => {
    const at = `${where}: ${table.file} line ${line}`;
    const time = times[row];
    if (time === undefined) throw new RangeError(`${at}: the time is missing`);
    const before = rows.at(-1);
    if (before !== undefined && time.si <= before.time.si)
      throw new RangeError(
        `${at}: times must grow, got ${time} after ${before.time} on line ${before.line}; count on past midnight and past a stop`,
      );
    lastRoom = rooms?.[row] ?? lastRoom;
    if (lastRoom === undefined)
      throw new RangeError(`${at}: the room's temperature is missing: fill the column "room", or give room`);
    const speed = speeds?.[row] ?? stretches.at(-1)?.speed;
    // An empty cell says that nothing was changed.
    const oil = oils?.[row] !== undefined && oils[row] !== "" ? oils[row]! : (stretches.at(-1)?.oil ?? "");
    const current = stretches.at(-1);
    if (current !== undefined && current.oil === oil && alike(current.speed, speed)) current.to = time;
    else stretches.push({ from: time, to: time, speed, oil });
    rows.push({
      line,
      time,
      room: lastRoom,
      stretch: stretches.length - 1,
      boxes: boxes.map((values) => values[row]),
    });
  });
  if (rows.length === 0) throw new RangeError(`${where}: ${table.file} holds no readings yet`);
  return {
    names,
    rows,
    stretches: Object.freeze(stretches.map((stretch) => Object.freeze(stretch))),
    warnings: [...pauses(rows), ...unread(rows, names)],
  };
}

/** Whether two speeds are one, or neither is told. */
export function alike(a: RotationalSpeed | undefined, b: RotationalSpeed | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  return Math.abs(a.si - b.si) <= sameSpeed * Math.max(a.si, b.si);
}

function pauses(rows: readonly RunInRow[]): string[] {
  const steps = rows
    .slice(1)
    .map((row, i) => ({ row, before: rows[i]!, step: row.time.si - rows[i]!.time.si }));
  const usual = [...steps].map(({ step }) => step).sort((a, b) => a - b)[Math.floor(steps.length / 2)];
  return steps
    .filter(({ step }) => usual !== undefined && step > longPause * usual)
    .map(
      ({ row, before }) =>
        `Nothing was read between ${before.time} and ${row.time} (lines ${before.line} and ${row.line}).`,
    );
}

/** Boxes that were passed over while another was read. */
function unread(rows: readonly RunInRow[], names: readonly string[]): string[] {
  return names.flatMap((name, i) => {
    const gaps = rows.filter(({ boxes }) => boxes[i] === undefined);
    const last = rows.at(-1)!;
    if (gaps.length === 0 || gaps.length === rows.length) return [];
    return [
      `"${name}" was not read on ${gaps.length === 1 ? "line" : "lines"} ${gaps.map(({ line }) => line).join(", ")}${gaps.includes(last) ? `: what is said of it holds for its reading before ${last.time}` : "; its curve is drawn through the others"}.`,
    ];
  });
}
