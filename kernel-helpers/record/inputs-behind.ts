import { readSheetRecord, type SheetRecord } from "./sheet-record.js";

/**
 * All files behind what a sheet computes: those it read itself, and those that the sheets had read whose results it
 * took over, and so on up. Where two sheets read one file in different states, what the sheet itself read counts, then
 * what the nearer sheet read.
 *
 * @returns path within the rebuild and SHA-256, in the order of paths
 */
export function inputsBehind(
  directory: string,
  { inputs, recalled }: Pick<SheetRecord, "inputs" | "recalled">,
): Readonly<Record<string, string>> {
  const all: Record<string, string> = { ...inputs };
  const seen = new Set<string>();
  const waiting = sheetsOf(recalled);
  for (let sheet = waiting.shift(); sheet !== undefined; sheet = waiting.shift()) {
    if (seen.has(sheet)) continue;
    seen.add(sheet);
    const record = readSheetRecord(directory, sheet);
    if (record === undefined) continue;
    for (const [file, hash] of Object.entries(record.inputs)) all[file] ??= hash;
    waiting.push(...sheetsOf(record.recalled));
  }
  return Object.fromEntries(Object.entries(all).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** The sheets from which results were taken over: each place is "04-shaft-survey: wear". */
function sheetsOf(recalled: Readonly<Record<string, string>>): string[] {
  return [...new Set(Object.keys(recalled).map((place) => place.slice(0, place.lastIndexOf(": "))))];
}
