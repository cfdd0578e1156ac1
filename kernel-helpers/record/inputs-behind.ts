import { readSheetRecord, type SheetRecord } from "./sheet-record.js";

/** What lies behind what a sheet computes. */
export interface Behind {
  /** Path within the rebuild and SHA-256, in the order of paths. */
  readonly inputs: Readonly<Record<string, string>>;
  /** Sheets whose results were taken over, and the hash of the code they ran. */
  readonly code: Readonly<Record<string, string>>;
}

/**
 * All files behind what a sheet computes: those it read itself, and those that the sheets had read whose results it
 * took over, and so on up; and the code of those sheets. Where two sheets read one file in different states, what the
 * sheet itself read counts, then what the nearer sheet read.
 */
export function inputsBehind(
  directory: string,
  { inputs, recalled }: Pick<SheetRecord, "inputs" | "recalled">,
): Behind {
  const all: Record<string, string> = { ...inputs };
  const code: Record<string, string> = {};
  const seen = new Set<string>();
  const waiting = sheetsRecalled(recalled);
  for (let sheet = waiting.shift(); sheet !== undefined; sheet = waiting.shift()) {
    if (seen.has(sheet)) continue;
    seen.add(sheet);
    const record = readSheetRecord(directory, sheet);
    if (record === undefined) continue;
    if (record.code !== undefined) code[sheet] = record.code;
    for (const [file, hash] of Object.entries(record.inputs)) all[file] ??= hash;
    waiting.push(...sheetsRecalled(record.recalled));
  }
  const sorted = Object.entries(all).sort(([a], [b]) => (a < b ? -1 : 1));
  return { inputs: Object.fromEntries(sorted), code };
}

/** The sheets from which results were taken over: each place is "04-shaft-survey: wear". */
export function sheetsRecalled(recalled: Readonly<Record<string, string>>): string[] {
  return [...new Set(Object.keys(recalled).map((place) => splitPlace(place)[0]))];
}

/** Sheet and name of a place: "04-shaft-survey: wear". */
export function splitPlace(place: string): readonly [sheet: string, name: string] {
  const at = place.indexOf(": ");
  return [place.slice(0, at), place.slice(at + 2)];
}
