import { cellsOfCodeText } from "./code-text.js";

/** One thing that is not as it was, in a file. */
export interface InputChange {
  /** Where: "line 14, diameter @ 90 deg", "dimensions.shaft nominal", "cell wear". */
  readonly place: string;
  /** What happened there, e.g. "2.4319 became 2.4329". */
  readonly what: string;
  /** For a table: the line it is about, counted from 1 in the later state (in the earlier for a line that has gone). */
  readonly line?: number;
}

/**
 * What changed between two states of a file: a table row by row and field by field, rebuild.json by the names of its
 * parameters, the code of a sheet by cell.
 */
export function whatChanged(file: string, before: string, after: string): readonly InputChange[] {
  if (file.endsWith(".csv")) return tableChanges(before, after);
  if (file.endsWith(".json")) return jsonChanges(before, after);
  return codeChanges(before, after);
}

/** Changes in words, the first few of them: "line 14, diameter: 2.4319 became 2.4329; and 3 more". */
export function changesText(changes: readonly InputChange[], most = 3): string {
  const told = changes.slice(0, most).map(({ place, what }) => `${place}: ${what}`);
  const rest = changes.length - told.length;
  return [...told, ...(rest > 0 ? [`${rest} more`] : [])].join("; ");
}

function tableChanges(before: string, after: string): readonly InputChange[] {
  const [old, now] = [linesOf(before), linesOf(after)];
  const header = headerOf(now);
  if (old.length === now.length)
    return now.flatMap((line, i) => (line === old[i] ? [] : lineChanges(i + 1, old[i]!, line, header)));
  // Lines came or went: what is alike at the start and at the end is left aside.
  let start = 0;
  while (start < Math.min(old.length, now.length) && old[start] === now[start]) start += 1;
  let end = 0;
  while (
    end < Math.min(old.length, now.length) - start &&
    old[old.length - 1 - end] === now[now.length - 1 - end]
  )
    end += 1;
  const gone = old.slice(start, old.length - end);
  const come = now.slice(start, now.length - end);
  return [
    ...gone.map((line, i) => ({
      place: `line ${start + 1 + i}`,
      what: `was “${line}”, has gone`,
      line: start + 1 + i,
    })),
    ...come.map((line, i) => ({
      place: `line ${start + 1 + i}`,
      what: `“${line}” has come`,
      line: start + 1 + i,
    })),
  ];
}

function lineChanges(
  line: number,
  old: string,
  now: string,
  header: readonly string[],
): readonly InputChange[] {
  const [oldCells, cells] = [cellsOf(old), cellsOf(now)];
  if (now.startsWith("#") || oldCells.length !== cells.length)
    return [{ place: `line ${line}`, what: `“${old}” became “${now}”`, line }];
  const changed = cells.flatMap((cell, i) => (cell === oldCells[i] ? [] : [i]));
  if (changed.length === 0) return [{ place: `line ${line}`, what: "blanks have changed", line }];
  return changed.map((i) => ({
    place: `line ${line}${header[i] === undefined ? "" : `, ${header[i]}`}`,
    what: `${oldCells[i] || "nothing"} became ${cells[i] || "nothing"}`,
    line,
  }));
}

/** The names of the columns, without their units: the first line that is no remark. */
function headerOf(lines: readonly string[]): readonly string[] {
  const header = lines.find((line) => line.trim() !== "" && !line.startsWith("#")) ?? "";
  return cellsOf(header).map((cell) => cell.replace(/\s*\[[^\]]*\]\s*$/, ""));
}

function cellsOf(line: string): readonly string[] {
  return line.split(/[,;\t]/).map((cell) => cell.trim());
}

function linesOf(text: string): readonly string[] {
  return text.replace(/\r?\n$/, "").split(/\r?\n/);
}

function jsonChanges(before: string, after: string): readonly InputChange[] {
  const [old, now] = [leavesOf(before), leavesOf(after)];
  if (old === undefined || now === undefined)
    return [{ place: "the file", what: "it cannot be read as JSON" }];
  const places = [...new Set([...old.keys(), ...now.keys()])];
  return places.flatMap((place) => {
    const [a, b] = [old.get(place), now.get(place)];
    if (a === b) return [];
    const what = a === undefined ? `${b} has come` : b === undefined ? `${a} has gone` : `${a} became ${b}`;
    return [{ place, what }];
  });
}

/** Every value of a JSON text by the names that lead to it. */
function leavesOf(text: string): ReadonlyMap<string, string> | undefined {
  const leaves = new Map<string, string>();
  const walk = (value: unknown, place: string): void => {
    if (typeof value !== "object" || value === null) leaves.set(place, JSON.stringify(value));
    else
      for (const [name, inner] of Object.entries(value))
        walk(inner, place === "" ? name : `${place}.${name}`);
  };
  try {
    walk(JSON.parse(text.replace(/^\uFEFF/, "")), "");
    return leaves;
  } catch {
    return undefined;
  }
}

function codeChanges(before: string, after: string): readonly InputChange[] {
  const [old, now] = [before, after].map(
    (text) => new Map(cellsOfCodeText(text).map(({ id, source }) => [id, source])),
  ) as [Map<string, string>, Map<string, string>];
  const changes = [...new Set([...old.keys(), ...now.keys()])].flatMap((id) => {
    const [a, b] = [old.get(id), now.get(id)];
    if (a === b) return [];
    const what = a === undefined ? "it has come" : b === undefined ? "it has gone" : lineOfDifference(a, b);
    return [{ place: `cell ${id}`, what }];
  });
  return changes.length > 0 ? changes : [{ place: "the cells", what: "their order has changed" }];
}

function lineOfDifference(before: string, after: string): string {
  const [old, now] = [before.split("\n"), after.split("\n")];
  const at = now.findIndex((line, i) => line !== old[i]);
  const [a, b] = [old[at === -1 ? now.length : at], now[at]];
  if (a === undefined) return `“${b?.trim()}” has come`;
  return b === undefined ? `“${a.trim()}” has gone` : `“${a.trim()}” became “${b.trim()}”`;
}
