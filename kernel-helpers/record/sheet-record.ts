import { readFileSync } from "node:fs";
import { join } from "node:path";
import { canonicalJson } from "./canonical-json.js";
import { versions } from "./package-facts.js";
import { restoreValue, storeValue } from "./stored-value.js";
import { writeFile } from "./write-file.js";

/** What one sheet published, with the inputs it read: the truth of which notebooks and reports are views. */
export interface SheetRecord {
  readonly schema: 1;
  readonly sheet: string;
  /** Each input read before publishing: path within the rebuild, and SHA-256 of its bytes. */
  readonly inputs: Readonly<Record<string, string>>;
  /** Results taken over from other sheets: "04-shaft-survey: wear" and the hash of what was taken. */
  readonly recalled: Readonly<Record<string, string>>;
  readonly versions: Readonly<Record<string, string>>;
  /** The results by name, as `storeValue` writes them. */
  readonly published: Readonly<Record<string, unknown>>;
}

/** The folder of a rebuild that holds the records. */
export const recordFolder = "record";

/** Writes a sheet's record in canonical form; returns the file's path within the rebuild. */
export function writeSheetRecord(
  directory: string,
  record: Omit<SheetRecord, "schema" | "versions">,
): string {
  const path = join(recordFolder, `${record.sheet}.json`);
  const stored = storeValue(record.published) as SheetRecord["published"];
  const full: SheetRecord = { schema: 1, ...record, published: stored, versions: { ...versions() } };
  writeFile(join(directory, path), canonicalJson(full));
  return path;
}

/**
 * Reads a sheet's record; undefined when the sheet has none yet.
 *
 * @throws Error  the file is there but is no record of this version
 */
export function readSheetRecord(directory: string, sheet: string): SheetRecord | undefined {
  const path = join(directory, recordFolder, `${sheet}.json`);
  let text: string;
  try {
    text = readFileSync(path, "utf8");
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw error;
  }
  let json: SheetRecord;
  try {
    json = JSON.parse(text);
  } catch (cause) {
    throw new Error(`${path} is not valid JSON; run the sheet ${sheet} again to write it anew`, { cause });
  }
  if (json?.schema !== 1 || typeof json.published !== "object")
    throw new Error(`${path}: expected a record of schema 1, got ${JSON.stringify(json?.schema)}`);
  return json;
}

/** A published result as a value again: quantities made anew, everything frozen. */
export function publishedValue(record: SheetRecord, name: string): unknown {
  return restoreValue(record.published[name]);
}
