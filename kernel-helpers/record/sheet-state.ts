import { readFileSync } from "node:fs";
import { join } from "node:path";
import { allSheets, hashOfHandover } from "./collect-handover.js";
import { fileHash } from "./file-hash.js";
import { splitPlace } from "./inputs-behind.js";
import { keptText } from "./kept-inputs.js";
import { versions } from "./package-facts.js";
import { readOutcome, recordHash, type SheetFailure, type SheetOutcome } from "./sheet-outcome.js";
import { hashOfRecalled, readRecords, readSheetRecord } from "./sheet-record.js";
import { changesText, whatChanged } from "./what-changed.js";

export type SheetStateName = "fresh" | "stale" | "failed" | "never run";

/** Whether what a sheet shows still follows from what is on disk. */
export interface SheetState {
  readonly name: string;
  readonly state: SheetStateName;
  /** In a sentence; "" for a fresh sheet. */
  readonly why: string;
}

/** A sheet as it is now. */
export interface SheetNow {
  readonly name: string;
  /** The hash of its code, as `codeHash` gives it; not given where the file cannot be read. */
  readonly code?: string;
  /** Why the file cannot be read. */
  readonly problem?: string;
}

/**
 * The state of each sheet of a rebuild.
 *
 * - never run: no run from first to last cell is known here.
 * - failed: the last run stopped at a cell, and nothing it stood on has changed since.
 * - stale: code, a table, rebuild.json, a recalled result, the record or the version of Journalbox is not what it
 *   was in the last run, or a recalled result comes from a sheet that is not fresh itself.
 * - fresh: none of these.
 *
 * Known are inputs read through the rebuild (`table`, `recall`, rebuild.json); a file a sheet reads by other means
 * is not seen.
 */
export function sheetStates(directory: string, sheets: readonly SheetNow[]): readonly SheetState[] {
  const judge = new Judge(directory, sheets);
  return Object.freeze(sheets.map((sheet) => judge.stateOf(sheet)));
}

class Judge {
  readonly #directory: string;
  readonly #sheets: ReadonlyMap<string, SheetNow>;
  readonly #states = new Map<string, SheetState>();
  /** Sheets being judged: two that recall from each other must not go round for ever. */
  readonly #underWay = new Set<string>();

  constructor(directory: string, sheets: readonly SheetNow[]) {
    this.#directory = directory;
    this.#sheets = new Map(sheets.map((sheet) => [sheet.name, sheet]));
  }

  stateOf(sheet: SheetNow): SheetState {
    const known = this.#states.get(sheet.name);
    if (known !== undefined) return known;
    this.#underWay.add(sheet.name);
    const state = Object.freeze({ name: sheet.name, ...this.#judge(sheet) });
    this.#underWay.delete(sheet.name);
    this.#states.set(sheet.name, state);
    return state;
  }

  #judge({ name, code, problem }: SheetNow): Omit<SheetState, "name"> {
    if (code === undefined) return { state: "failed", why: problem ?? "The sheet cannot be read." };
    const outcome = readOutcome(this.#directory, name);
    if (outcome === undefined) return { state: "never run", why: this.#neverRun(name) };
    const changes = this.#changes(outcome, code);
    const failed = outcome.status === "failed" ? failureSentence(outcome.failure) : undefined;
    if (changes.length === 0)
      return failed === undefined ? { state: "fresh", why: "" } : { state: "failed", why: failed };
    const since = `Since the last run ${listed(changes)}.`;
    return { state: "stale", why: failed === undefined ? since : `${since} That run failed: ${failed}` };
  }

  #neverRun(name: string): string {
    return recordHash(this.#directory, name) === null
      ? "It has not been run from top to bottom yet."
      : `It has not been run from top to bottom here yet; record/${name}.json was written elsewhere.`;
  }

  /** What is not as it was, each as the end of a sentence. */
  #changes(outcome: SheetOutcome, code: string): string[] {
    const changes: string[] = [];
    if (outcome.code !== code) changes.push("the code of the sheet has changed");
    for (const [file, hash] of Object.entries(outcome.inputs)) {
      const now = fileHash(join(this.#directory, file));
      if (now === hash) continue;
      if (now === null || hash === null) changes.push(`${file} has ${now === null ? "gone" : "come"}`);
      else changes.push(`${file} has changed${this.#details(file, hash)}`);
    }
    for (const [place, hash] of Object.entries(outcome.recalled))
      changes.push(...this.#recalled(outcome.sheet, place, hash));
    if (outcome.mixed) changes.push("some of its cells were run again by themselves, on other readings");
    const record = recordHash(this.#directory, outcome.sheet);
    if (record !== outcome.record)
      changes.push(
        record === null
          ? `record/${outcome.sheet}.json has gone`
          : `record/${outcome.sheet}.json was written by something else`,
      );
    const [then, now] = [outcome.versions.journalbox, versions().journalbox];
    if (then !== now) changes.push(`Journalbox has gone from version ${then} to ${now}`);
    return changes;
  }

  /** Which rows or parameters changed, where the earlier state of the file was kept; else "". */
  #details(file: string, hash: string): string {
    const before = keptText(this.#directory, file, hash);
    if (before === undefined) return "";
    const changes = whatChanged(file, before, readFileSync(join(this.#directory, file), "utf8"));
    return changes.length === 0 ? "" : ` (${changesText(changes)})`;
  }

  /** What is wrong with a result taken over from another sheet: `place` is "04-shaft-survey: wear". */
  #recalled(by: string, place: string, hash: string): string[] {
    const [from, name] = splitPlace(place);
    if (from === allSheets)
      return handoverHash(this.#directory, by) === hash ? [] : ["what other sheets hand over has changed"];
    const now = recalledHash(this.#directory, from, name);
    if (now === undefined) return [`"${name}", which ${from} published, has gone`];
    if (now !== hash) return [`"${name}" from ${from} has changed`];
    const sheet = this.#sheets.get(from);
    if (sheet === undefined)
      return [`${from}, from which it has "${name}", is no sheet of this rebuild any more`];
    if (this.#underWay.has(from)) return [];
    const { state } = this.stateOf(sheet);
    return state === "fresh" ? [] : [`${from}, from which it has "${name}", is not fresh itself (${state})`];
  }
}

function handoverHash(directory: string, except: string): string | undefined {
  try {
    return hashOfHandover(readRecords(directory), except);
  } catch {
    return undefined; // a record that cannot be read says nothing
  }
}

function recalledHash(directory: string, sheet: string, name: string): string | undefined {
  try {
    const record = readSheetRecord(directory, sheet);
    return record && hashOfRecalled(record, name);
  } catch {
    return undefined; // a record that cannot be read says nothing
  }
}

function failureSentence(failure: SheetFailure | undefined): string {
  if (failure === undefined) return "A cell failed.";
  const { cell, message } = failure;
  const end = /[.!?]$/.test(message) ? "" : ".";
  return cell === undefined ? `${message}${end}` : `Cell ${cell.number} (${cell.id}): ${message}${end}`;
}

function listed(parts: readonly string[]): string {
  return parts.length === 1 ? parts[0]! : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;
}
