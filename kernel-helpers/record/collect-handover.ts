import { join } from "node:path";
import type { PartsLedger } from "../intake/index.js";
import { fileHash } from "./file-hash.js";
import { findSheets } from "./find-sheets.js";
import type { From, Handover, Standing } from "./handover-types.js";
import { splitPlace } from "./inputs-behind.js";
import { keptText } from "./kept-inputs.js";
import type { NeededPart, OpenItem, WantedReading } from "./note-types.js";
import { fileText } from "./read-text.js";
import {
  hashOfRecalled,
  hashOfStored,
  publishedValue,
  readRecords,
  recordPath,
  type SheetRecord,
} from "./sheet-record.js";
import { restoreDecision, type StoredDecision } from "./stored-decision.js";
import { restoreValue } from "./stored-value.js";
import { changesText, whatChanged } from "./what-changed.js";

/** How a sheet that collects from all others calls that among what it recalled. */
export const allSheets = "all sheets";

/** The hash of all that sheets other than one hand over, by the records there are. */
export function hashOfHandover(records: readonly SheetRecord[], except: string): string {
  const others = records.filter(({ sheet }) => sheet !== except);
  return hashOfStored(
    others.map(
      ({ sheet, published, inputs, recalled, decisions, refused, notes, cautions, sources, ended }) => ({
        sheet,
        ...ledgersIn(published),
        inputs,
        recalled,
        decisions,
        refused,
        notes,
        cautions,
        sources,
        ended,
      }),
    ),
  );
}

/** Collects what all sheets but one have decided, noted and warned of, and how it stands to the files as they are. */
export function collectHandover(directory: string, title: string, except: string): Handover {
  const records = othersThan(directory, except);
  return Object.freeze({
    kind: "handover",
    title,
    sheets: Object.freeze(
      findSheets(directory)
        .filter(({ name }) => name !== except)
        .map(({ name }) =>
          Object.freeze({ name, ended: endOf(records.find(({ sheet }) => sheet === name)) }),
        ),
    ),
    book: Object.freeze({
      kind: "decision book",
      decisions: Object.freeze(
        records.flatMap(({ sheet, decisions }) =>
          Object.entries(decisions).map(([name, decision]) =>
            restoreDecision(sheet, recordPath(sheet), name, decision),
          ),
        ),
      ),
      refused: Object.freeze(
        records.flatMap(({ sheet, refused }) =>
          Object.entries(refused).map(([name, { question, choice, why }]) =>
            Object.freeze({ sheet, name, question, choice, why }),
          ),
        ),
      ),
    }),
    lists: Object.freeze({
      kind: "handover lists",
      open: noted<OpenItem>(records, "open"),
      parts: noted<NeededPart>(records, "parts"),
      measure: noted<WantedReading>(records, "measure"),
    }),
    cautions: Object.freeze({ kind: "cautions in force", cautions: cautionsOf(records) }),
    ledger: ledgerOf(records),
    standings: Object.freeze(records.flatMap((record) => standingsOf(directory, record, records))),
    sources: Object.freeze([...new Set(records.flatMap(({ sources }) => sources))].sort()),
  });
}

/** Stored ledgers; left out where there are none, so that hashes of records without one stay as they were. */
function ledgersIn(published: SheetRecord["published"]): { readonly ledgers?: readonly unknown[] } {
  const ledgers = Object.values(published).filter(
    (value) => (value as { readonly kind?: unknown } | null)?.kind === "parts ledger",
  );
  return ledgers.length === 0 ? {} : { ledgers };
}

function ledgerOf(records: readonly SheetRecord[]): PartsLedger | string {
  const ledgers = records.flatMap((record) =>
    Object.keys(record.published)
      .map((name) => publishedValue(record, name) as { readonly kind?: string } | null)
      .filter((value): value is PartsLedger => value?.kind === "parts ledger"),
  );
  return ledgers.at(-1) ?? "No sheet has published a parts ledger yet; sheet 01 does, from tables/parts.csv.";
}

function othersThan(directory: string, except: string): readonly SheetRecord[] {
  return readRecords(directory).filter(({ sheet }) => sheet !== except);
}

function endOf(record: SheetRecord | undefined): string {
  if (record === undefined) return "not run yet";
  return record.ended ?? "cells run one by one";
}

function noted<T>(records: readonly SheetRecord[], list: "open" | "parts" | "measure"): readonly From<T>[] {
  return Object.freeze(
    records.flatMap(({ sheet, notes }) =>
      (restoreValue(notes[list] ?? []) as readonly T[]).map((entry) => Object.freeze({ ...entry, sheet })),
    ),
  );
}

function cautionsOf(records: readonly SheetRecord[]): Handover["cautions"]["cautions"] {
  const byTitle = new Map<string, { title: string; points: readonly string[]; sheets: string[] }>();
  for (const { sheet, cautions } of records)
    for (const { title, points } of cautions) {
      const known = byTitle.get(title) ?? { title, points, sheets: [] };
      known.sheets.push(sheet);
      byTitle.set(title, known);
    }
  return Object.freeze([...byTitle.values()].map((caution) => Object.freeze(caution)));
}

/** A record and its decisions against the files and the other records as they are now; nothing is run. */
function standingsOf(
  directory: string,
  record: SheetRecord,
  records: readonly SheetRecord[],
): readonly Standing[] {
  const { sheet, decisions, inputs, recalled } = record;
  const faults = [
    ...Object.entries(inputs).flatMap(([file, hash]) => fileFault(directory, file, hash)),
    ...Object.entries(recalled).flatMap(([place, hash]) => {
      const [from, name] = splitPlace(place);
      const other = records.find((one) => one.sheet === from);
      return other !== undefined && hashOfRecalled(other, name) === hash
        ? []
        : [`“${name}” from ${from} is another by now`];
    }),
  ];
  const ofRecord: Standing = {
    of: sheet,
    holds: faults.length === 0,
    text: faults.length === 0 ? "Its inputs are as it read them." : `Not any more: ${faults.join("; ")}.`,
  };
  return [
    Object.freeze(ofRecord),
    ...Object.entries(decisions).map(([name, decision]) =>
      Object.freeze(standingOf(directory, name, decision)),
    ),
  ];
}

function standingOf(directory: string, name: string, { basis, now, withdrawn }: StoredDecision): Standing {
  const changed = Object.entries(basis.inputs).flatMap(([file, hash]) => fileFault(directory, file, hash));
  if (withdrawn) return { of: name, holds: false, text: "Its sheet does not make it any more." };
  if (now !== undefined)
    return {
      of: name,
      holds: false,
      text: `Its figures have moved since it was decided${changed.length === 0 ? "" : `: ${changed.join("; ")}`}.`,
    };
  if (changed.length === 0)
    return { of: name, holds: true, text: "All behind it is as it was when it was decided." };
  return { of: name, holds: true, text: `Its figures are as they were, though ${changed.join("; ")}.` };
}

function fileFault(directory: string, file: string, hash: string): readonly string[] {
  const now = fileHash(join(directory, file));
  if (now === hash) return [];
  if (now === null) return [`${file} has gone`];
  const before = keptText(directory, file, hash);
  const details =
    before === undefined
      ? ""
      : ` (${changesText(whatChanged(file, before, fileText(directory, file) ?? ""))})`;
  return [`${file} has changed${details}`];
}
