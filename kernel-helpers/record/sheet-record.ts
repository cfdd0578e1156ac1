import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { canonicalJson } from "./canonical-json.js";
import type { ShownCaution } from "./sheet-reads.js";
import type { StoredDecision, StoredGrounds } from "./stored-decision.js";
import { restoreValue } from "./stored-value.js";
import { writeFile } from "./write-file.js";

/** What one sheet handed on and decided, and on what it stood: the truth of which notebooks and reports are views. */
export interface SheetRecord {
  readonly schema: 2;
  readonly sheet: string;
  /** Each input read: path within the rebuild, and SHA-256 of its bytes. */
  readonly inputs: Readonly<Record<string, string>>;
  /** Results taken over from other sheets: "04-shaft-survey: wear" and the hash of what was taken. */
  readonly recalled: Readonly<Record<string, string>>;
  readonly versions: Readonly<Record<string, string>>;
  /** The results by name, as `storeValue` writes them. */
  readonly published: Readonly<Record<string, unknown>>;
  /** What was decided, by name. */
  readonly decisions: Readonly<Record<string, StoredDecision>>;
  /** Decisions the sheet wanted to make and may not: the choice violates a limit, or is no option any more. */
  readonly refused: Readonly<Record<string, RefusedDecision>>;
  /** Open items, parts and readings still to be taken, as `storeValue` writes them. */
  readonly notes: StoredNotes;
  /** Cautions the sheet showed. */
  readonly cautions: readonly ShownCaution[];
  /** Sources named in what the sheet showed and handed on: the books and standards behind its constants. */
  readonly sources: readonly string[];
  /** Of the code as run, the hash by which a copy is kept; not given while no run from top to bottom has ended. */
  readonly code?: string;
  /** How the run that wrote this ended; not given while none has. */
  readonly ended?: "ran through" | "failed";
}

export interface RefusedDecision extends StoredGrounds {
  readonly question: string;
  readonly choice: string;
  readonly why: string;
}

export interface StoredNotes {
  readonly open?: readonly unknown[];
  readonly parts?: readonly unknown[];
  readonly measure?: readonly unknown[];
}

/** The folder of a rebuild that holds the records. */
export const recordFolder = "record";

/** The path of a sheet's record within the rebuild. */
export function recordPath(sheet: string): string {
  return `${recordFolder}/${sheet}.json`;
}

/** Writes a sheet's record in canonical form; what is empty is left out. Returns the file's path within the rebuild. */
export function writeSheetRecord(directory: string, record: Omit<SheetRecord, "schema">): string {
  const path = recordPath(record.sheet);
  const { decisions, refused, notes, cautions, sources, ...rest } = record;
  const filled = Object.entries({ decisions, refused, notes, cautions, sources }).filter(
    ([, part]) => Object.keys(part).length > 0,
  );
  writeFile(join(directory, path), canonicalJson({ schema: 2, ...rest, ...Object.fromEntries(filled) }));
  return path;
}

/**
 * Reads a sheet's record; undefined when the sheet has none yet. A record of an earlier version is read as one of
 * this version that says less.
 *
 * @throws Error  the file is there but is no record this version can read
 */
export function readSheetRecord(directory: string, sheet: string): SheetRecord | undefined {
  const path = recordPath(sheet);
  let text: string;
  try {
    text = readFileSync(join(directory, path), "utf8");
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw error;
  }
  return parseSheetRecord(sheet, text);
}

/** The record of a sheet, from the text of its file; throws as {@link readSheetRecord} does. */
export function parseSheetRecord(sheet: string, text: string): SheetRecord {
  const path = recordPath(sheet);
  let json: Partial<Omit<SheetRecord, "schema">> & { readonly schema?: unknown };
  try {
    json = JSON.parse(text);
  } catch (cause) {
    throw new Error(
      `${path} is not valid JSON; bring it back from a copy, or remove it and run the sheet ${sheet} again`,
      { cause },
    );
  }
  const { schema } = json ?? {};
  if (typeof schema === "number" && schema > 2)
    throw new Error(
      `${path} was written by a newer Journalbox (schema ${schema}); this one reads up to schema 2`,
    );
  if (!(schema === 1 || schema === 2) || typeof json.published !== "object")
    throw new Error(`${path}: expected a record of schema 1 or 2, got ${JSON.stringify(schema)}`);
  const nothing = { inputs: {}, recalled: {}, versions: {}, decisions: {}, refused: {}, notes: {} };
  const { published } = json;
  return { cautions: [], sources: [], ...nothing, ...json, published, schema: 2, sheet };
}

/** The sheets that have a record, by name. */
export function sheetsWithRecord(directory: string): readonly string[] {
  const folder = join(directory, recordFolder);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((file) => file.endsWith(".json"))
    .sort()
    .map((file) => basename(file, ".json"));
}

/** The records there are, in the order of their sheets' names. */
export function readRecords(directory: string): readonly SheetRecord[] {
  return sheetsWithRecord(directory).flatMap((sheet) => readSheetRecord(directory, sheet) ?? []);
}

/** A published result as a value again: quantities made anew, everything frozen. */
export function publishedValue(record: SheetRecord, name: string): unknown {
  return restoreValue(record.published[name]);
}

/** The hash by which a later sheet remembers what it took over. */
export function hashOfStored(stored: unknown): string {
  return createHash("sha256").update(canonicalJson(stored)).digest("hex");
}

/** How a sheet that takes over a decision calls it among what it recalled. */
export function decisionPlace(name: string): string {
  return `decision ${name}`;
}

/** The hash of what can be taken over from a record under a name: a result, or a decision; undefined for neither. */
export function hashOfRecalled(record: SheetRecord, name: string): string | undefined {
  if (Object.hasOwn(record.published, name)) return hashOfStored(record.published[name]);
  const decision = Object.entries(record.decisions).find(([decided]) => decisionPlace(decided) === name);
  return decision === undefined ? undefined : hashOfStored(decision[1]);
}
