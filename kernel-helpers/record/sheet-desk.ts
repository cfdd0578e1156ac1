import { canonicalJson } from "./canonical-json.js";
import { checkDecision, refusalOf } from "./check-decision.js";
import { fullNotes } from "./check-notes.js";
import { allSheets, collectHandover, hashOfHandover } from "./collect-handover.js";
import type { Decision, DecisionRequest } from "./decision-types.js";
import type { Handover } from "./handover-types.js";
import { inputsBehind } from "./inputs-behind.js";
import { keepInputs } from "./kept-inputs.js";
import { noteSheet } from "./note-sheet.js";
import type { Noted, Notes } from "./note-types.js";
import { versions } from "./package-facts.js";
import { type HandedOn, handedOnSoFar, readSoFar, shownSoFar } from "./session.js";
import {
  decisionPlace,
  hashOfStored,
  publishedValue,
  readRecords,
  readSheetRecord,
  recordPath,
  type SheetRecord,
  writeSheetRecord,
} from "./sheet-record.js";
import { sourcesIn } from "./sources-in.js";
import { mergeDecision, restoreDecision, storeDecision } from "./stored-decision.js";
import { storeValue } from "./stored-value.js";

/** What was published, and where it is kept. */
export interface Published {
  readonly kind: "published";
  readonly sheet: string;
  readonly names: readonly string[];
  /** The record's path within the rebuild. */
  readonly file: string;
}

/** Where a running sheet hands on results, decisions and notes, and takes over those of others. */
export class SheetDesk {
  readonly #directory: string;
  /** The sheet's name; undefined where the front end does not tell it. */
  readonly #running: () => string | undefined;

  constructor(directory: string, running: () => string | undefined) {
    this.#directory = directory;
    this.#running = running;
  }

  /** Notes a file before it is read: a sheet that fails at a faulty file must know when that file is mended. */
  noteFile(file: string, sha256: string | null): void {
    readSoFar(this.#directory).inputs[file] = sha256;
    this.#noteReads();
  }

  /** Notes a file that was read. */
  noteInput(file: string, sha256: string): void {
    this.#handedOn().inputs[file] = sha256;
  }

  publish(results: Readonly<Record<string, unknown>>): Published {
    const sheet = this.#sheet("publish");
    const names = Object.keys(results);
    if (names.length === 0) throw new TypeError("publish: nothing was given to publish");
    const others = readRecords(this.#directory).filter((record) => record.sheet !== sheet);
    for (const name of names) {
      const other = others.find((record) => Object.hasOwn(record.published, name));
      if (other !== undefined)
        throw new TypeError(
          `publish: "${name}" is already published by sheet ${other.sheet}; choose another name`,
        );
    }
    Object.assign(this.#handedOn().published, storeValue(results));
    return Object.freeze({ kind: "published", sheet, names: Object.freeze(names), file: this.#write(sheet) });
  }

  recall(name: string, kind: string): unknown {
    const records = readRecords(this.#directory);
    const record = records.find(({ published }) => Object.hasOwn(published, name));
    if (record === undefined)
      throw new RangeError(
        `recall: no sheet has published "${name}"; run the sheet that does first; published are ${list(records.flatMap(({ published }) => Object.keys(published)))}`,
      );
    const value = publishedValue(record, name) as { readonly kind?: string };
    if (value?.kind !== kind)
      throw new RangeError(
        `recall: "${name}" from sheet ${record.sheet} is of kind ${value?.kind ?? "unknown"}, not ${kind}`,
      );
    this.#noteRecalled(`${record.sheet}: ${name}`, hashOfStored(record.published[name]));
    return value;
  }

  decide(request: DecisionRequest): Decision {
    const sheet = this.#sheet("decide");
    checkDecision(request);
    const { name } = request;
    const other = readRecords(this.#directory).find(
      (record) => record.sheet !== sheet && Object.hasOwn(record.decisions, name),
    );
    if (other !== undefined)
      throw new TypeError(
        `decide: "${name}" is already decided by sheet ${other.sheet}; choose another name`,
      );
    const handedOn = this.#handedOn();
    const behind = inputsBehind(this.#directory, handedOn);
    const made = storeDecision(request, { ...behind, versions: { ...versions() } });
    const why = refusalOf(request);
    if (why !== undefined) {
      const { question, choice, options, limits } = made;
      handedOn.refused[name] = { question, choice, options, ...(limits && { limits }), why };
      delete handedOn.decided[name];
      this.#write(sheet);
      throw new RangeError(`decide: ${why}`);
    }
    delete handedOn.refused[name];
    handedOn.decided[name] = made;
    const file = this.#write(sheet);
    const kept = readSheetRecord(this.#directory, sheet)!.decisions[name]!;
    // What was decided later, and stands further down in the sheet, is not yet known in this place.
    const earlier = kept.superseded?.filter(({ on }) => on < request.on) ?? [];
    return restoreDecision(sheet, file, name, { ...kept, superseded: earlier });
  }

  /** A decision of an earlier sheet. */
  decision(name: string): Decision {
    const records = readRecords(this.#directory);
    const record = records.find(({ decisions }) => Object.hasOwn(decisions, name));
    const decision = record?.decisions[name];
    if (record === undefined || decision === undefined || decision.withdrawn)
      throw new RangeError(
        `decision: nothing is decided under "${name}"; run the sheet that decides it first; decided are ${list(records.flatMap(({ decisions }) => Object.keys(decisions)))}`,
      );
    this.#noteRecalled(`${record.sheet}: ${decisionPlace(name)}`, hashOfStored(decision));
    return restoreDecision(record.sheet, recordPath(record.sheet), name, decision);
  }

  note(notes: Notes): Noted {
    const sheet = this.#sheet("note");
    const full = fullNotes(notes);
    const kept = this.#handedOn().notes;
    // A cell that is run again notes nothing twice.
    for (const kind of ["open", "parts", "measure"] as const)
      for (const entry of storeValue(full[kind]) as unknown[])
        if (!kept[kind].some((other) => canonicalJson(other) === canonicalJson(entry)))
          kept[kind].push(entry);
    return Object.freeze({ kind: "noted", sheet, file: this.#write(sheet), ...full });
  }

  /** All that the other sheets decided, noted and warned of. */
  handover(title: string): Handover {
    const sheet = this.#sheet("handover");
    this.#noteRecalled(`${allSheets}: handover`, hashOfHandover(readRecords(this.#directory), sheet));
    return collectHandover(this.#directory, title, sheet);
  }

  #sheet(caller: string): string {
    const sheet = this.#running();
    if (sheet === undefined)
      throw new TypeError(
        `${caller}: this front end does not tell which sheet is running; write openRebuild({ sheet: "04-shaft-survey" }) with the sheet's name`,
      );
    return sheet;
  }

  #handedOn(): HandedOn {
    return handedOnSoFar(this.#directory, this.#running() ?? "");
  }

  #noteRecalled(place: string, hash: string): void {
    this.#handedOn().recalled[place] = hash;
    readSoFar(this.#directory).recalled[place] = hash;
    this.#noteReads();
  }

  #noteReads(): void {
    const sheet = this.#running();
    if (sheet !== undefined) noteSheet(this.#directory, sheet);
  }

  /** Writes all that was handed on so far; decisions of earlier runs are kept. */
  #write(sheet: string): string {
    const { inputs, recalled, published, decided, refused, notes } = this.#handedOn();
    const decisions = { ...decisionsBefore(this.#directory, sheet) };
    for (const [name, made] of Object.entries(decided))
      decisions[name] = mergeDecision(decisions[name], made);
    const { cautions, sources } = shownSoFar();
    keepInputs(this.#directory, inputs);
    const path = writeSheetRecord(this.#directory, {
      sheet,
      inputs,
      recalled,
      versions: { ...versions() },
      published,
      decisions,
      refused,
      notes: Object.fromEntries(Object.entries(notes).filter(([, entries]) => entries.length > 0)),
      cautions,
      sources: sourcesIn({ sources, published, decisions }),
    });
    noteSheet(this.#directory, sheet);
    return path;
  }
}

/** What a person decided must not be lost with a record that cannot be read: then nothing is written over it. */
function decisionsBefore(directory: string, sheet: string): SheetRecord["decisions"] {
  return readSheetRecord(directory, sheet)?.decisions ?? {};
}

function list(names: readonly string[]): string {
  return names.length === 0 ? "none" : names.join(", ");
}
