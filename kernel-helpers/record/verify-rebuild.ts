import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { canonicalJson } from "./canonical-json.js";
import { carriedCellHashes, cellHashesOf } from "./cell-hashes.js";
import { codeText } from "./code-text.js";
import { allSheets, hashOfHandover } from "./collect-handover.js";
import { fileHash } from "./file-hash.js";
import { splitPlace } from "./inputs-behind.js";
import { keptFolder, keptText } from "./kept-inputs.js";
import { filesOfRebuild, manifestFile, readManifest, tagManifestFile } from "./manifest.js";
import {
  hashOfRecalled,
  parseSheetRecord,
  readSheetRecord,
  recordPath,
  type SheetRecord,
  sheetsWithRecord,
} from "./sheet-record.js";
import { changesText, type InputChange, whatChanged } from "./what-changed.js";

/** Something in the folder that is not as the last run left it. */
export interface FileFinding {
  /** Path within the rebuild. */
  readonly file: string;
  readonly what: "altered" | "missing" | "added" | "unreadable" | "does not fit";
  /** In a sentence. */
  readonly text: string;
  /** For a table, rebuild.json or the code of a sheet: what changed in it, where the earlier state was kept. */
  readonly changes: readonly InputChange[];
  /** For a record that does not fit others: these. */
  readonly comparedWith?: readonly string[];
}

/** What the hashes in a rebuild's folder say; nothing of the rebuild is executed for it. */
export interface Verification {
  readonly kind: "verification";
  /** How many files were compared with the manifest. */
  readonly files: number;
  readonly findings: readonly FileFinding[];
}

/**
 * Compares every file of a rebuild with the hashes that the last run left: in the manifest, in the records, and in the
 * names of the kept copies. It reads and computes hashes; it executes nothing, so a stranger's rebuild is safe with it.
 *
 * Hashes find what was altered by accident or without care. Who alters a file and all hashes that vouch for it is found
 * by running the rebuild again, or by a signature or a history that he could not alter.
 */
export function verifyRebuild(directory: string): Verification {
  const found = new Findings(directory);
  const files = found.againstManifest();
  found.betweenRecords();
  return Object.freeze({ kind: "verification", files, findings: Object.freeze(found.list) });
}

class Findings {
  readonly #directory: string;
  readonly list: FileFinding[] = [];
  /** Each file is read once, and each record. */
  readonly #hashes = new Map<string, string | null>();
  readonly #texts = new Map<string, string>();
  readonly #records = new Map<string, SheetRecord | undefined>();
  readonly #handedOn = new Map<string, string | undefined>();
  #listed: ReadonlyMap<string, string> = new Map();

  constructor(directory: string) {
    this.#directory = directory;
  }

  /** @returns how many files were compared */
  againstManifest(): number {
    const manifest = readManifest(this.#directory);
    if (manifest === undefined) {
      this.#add(
        manifestFile,
        "missing",
        "There is no manifest, so only what the records say of their inputs can be compared.",
      );
      return 0;
    }
    this.#listed = manifest.files;
    const present = filesOfRebuild(this.#directory);
    const now = new Map(present.map((file) => [file, this.#hash(file)!]));
    if (manifest.fault !== undefined && this.#onlyManifestAltered(now, manifest.files, manifest.fault))
      return now.size;
    if (manifest.fault !== undefined)
      this.#add(manifestFile, "altered", `${manifestFile}: ${manifest.fault}.`);
    for (const [file, hash] of manifest.files) {
      const isNow = now.get(file);
      if (isNow === undefined) this.#add(file, "missing", `${file} has gone since the last run.`);
      else if (isNow !== hash) this.#altered(file, hash);
    }
    for (const file of present)
      if (!manifest.files.has(file)) this.#add(file, "added", `${file} has come since the last run.`);
    return now.size;
  }

  /** Whether all files are as they were, and it is the list of their hashes that was altered. */
  #onlyManifestAltered(
    now: ReadonlyMap<string, string>,
    listed: ReadonlyMap<string, string>,
    fault: string,
  ): boolean {
    const asListed = [...now].every(([file, hash]) => listed.get(file) === hash) && listed.size === now.size;
    const remade = [...now].map(([file, hash]) => `${hash}  ${file}\n`).join("");
    const vouched = textOf(join(this.#directory, tagManifestFile))?.slice(0, 64);
    if (vouched === createHash("sha256").update(remade).digest("hex")) {
      const file = asListed ? tagManifestFile : manifestFile;
      this.#add(file, "altered", `${file} was altered after the run; the files it lists are as they were.`);
      return true;
    }
    if (!asListed) return false;
    const missing = vouched === undefined;
    this.#add(
      tagManifestFile,
      missing ? "missing" : "altered",
      missing
        ? `${manifestFile}: ${fault}.`
        : `${tagManifestFile} was altered after the run: every file fits ${manifestFile}.`,
    );
    return true;
  }

  #altered(file: string, hash: string): void {
    const changes = this.#changesIn(file, hash);
    const how =
      changes === undefined ? "" : changes.length > 0 ? `: ${changesText(changes, 5)}` : unseen(file);
    this.#add(file, "altered", `${file} was altered after the last run${how}.`, changes);
  }

  /** What changed in a file; undefined where its earlier state was not kept. */
  #changesIn(file: string, hash: string): readonly InputChange[] | undefined {
    const now = textOf(join(this.#directory, file));
    if (now === undefined) return undefined;
    if (file.startsWith("sheets/")) return this.#changesInSheet(file, now);
    if (file.startsWith("out/")) return changesInOutput(now);
    const before = keptText(this.#directory, file, hash);
    return before === undefined ? undefined : whatChanged(file, before, now);
  }

  /** Compared with the code that the sheet's record vouches for. */
  #changesInSheet(file: string, now: string): readonly InputChange[] | undefined {
    const sheet = basename(file, ".ipynb");
    const record = this.#record(sheet);
    const before =
      record?.code === undefined ? undefined : keptText(this.#directory, `${sheet}.ts`, record.code);
    const code = codeOfNotebook(now);
    if (before === undefined || code === undefined) return undefined;
    return before === code ? [] : whatChanged(`${sheet}.ts`, before, code);
  }

  /** What records say of their inputs and of each other. */
  betweenRecords(): void {
    for (const sheet of sheetsWithRecord(this.#directory)) {
      const record = this.#record(sheet);
      if (record === undefined) continue;
      const path = recordPath(sheet);
      if (!this.#asListed(path) && !isCanonical(textOf(join(this.#directory, path)) ?? ""))
        this.#add(path, "altered", `${path} is not in the form in which records are written.`);
      for (const [file, hash] of Object.entries(record.inputs)) this.#input(path, file, hash);
      for (const [place, hash] of Object.entries(record.recalled)) this.#recalled(path, place, hash);
      if (record.code !== undefined) this.#copy(path, `${sheet}.ts`, record.code);
    }
  }

  /** Whether the manifest vouches for a file as it is. */
  #asListed(file: string): boolean {
    return this.#listed.get(file) === this.#hash(file);
  }

  #input(record: string, file: string, hash: string): void {
    this.#copy(record, file, hash);
    const now = this.#hash(file);
    if (now === hash || this.list.some((finding) => finding.file === file)) return;
    if (this.#asListed(file) && !this.#asListed(record)) return; // it is the record that was altered
    if (now === null) this.#add(file, "missing", `${file}, from which ${record} was computed, is not there.`);
    else {
      const changes = this.#changesIn(file, hash);
      const how = changes !== undefined && changes.length > 0 ? `: ${changesText(changes, 5)}` : "";
      this.#add(file, "does not fit", `${file} is not what ${record} was computed from${how}.`, changes);
    }
  }

  #recalled(record: string, place: string, hash: string): void {
    const [sheet, name] = splitPlace(place);
    if (sheet === allSheets) {
      this.#handover(record, hash);
      return;
    }
    const now = this.#published(sheet, name, place);
    if (now === hash) return;
    const what = now === undefined ? "is not there" : "is another by now";
    this.#add(
      record,
      "does not fit",
      `${record} took over “${name}” from ${sheet}, and that ${what}.`,
      [],
      [recordPath(sheet)],
    );
  }

  /** The hash of what a sheet hands on; many sheets may take it over, and it is computed once. */
  #published(sheet: string, name: string, place: string): string | undefined {
    if (!this.#handedOn.has(place)) {
      const from = this.#record(sheet);
      this.#handedOn.set(place, from && hashOfRecalled(from, name));
    }
    return this.#handedOn.get(place);
  }

  /** What a sheet collected from all others, which is another as soon as one of them is. */
  #handover(record: string, hash: string): void {
    if (this.list.some(({ what }) => what === "unreadable")) return;
    const records = sheetsWithRecord(this.#directory).flatMap((sheet) => this.#record(sheet) ?? []);
    if (hashOfHandover(records, basename(record, ".json")) !== hash)
      this.#add(
        record,
        "does not fit",
        `${record} collected what other sheets hand over, and that is another by now.`,
        [],
        records.map(({ sheet }) => recordPath(sheet)).filter((other) => other !== record),
      );
  }

  /** A kept copy whose content is not what its name says. */
  #copy(record: string, file: string, hash: string): void {
    const path = `${keptFolder}/${basename(file).replace(/(\.[^.]*)?$/, `.${hash.slice(0, 12)}$1`)}`;
    const now = this.#hash(path);
    // A copy that the manifest vouches for is not at fault: then it is the record that was altered.
    if (
      now === null ||
      now === hash ||
      this.#asListed(path) ||
      this.list.some((finding) => finding.file === path)
    )
      return;
    this.#add(path, "altered", `${path} is not the copy that ${record} vouches for.`);
  }

  #hash(file: string): string | null {
    const known = this.#hashes.get(file);
    if (known !== undefined) return known;
    const hash = isRecord(file) ? this.#hashOfRecord(file) : fileHash(join(this.#directory, file));
    this.#hashes.set(file, hash);
    return hash;
  }

  /** A record is read for more than its hash, and its text kept until then. */
  #hashOfRecord(file: string): string | null {
    let bytes: Buffer;
    try {
      bytes = readFileSync(join(this.#directory, file));
    } catch {
      return null;
    }
    this.#texts.set(file, bytes.toString("utf8"));
    return createHash("sha256").update(bytes).digest("hex");
  }

  /** The record of a sheet; undefined where there is none, or it cannot be read, which is found once. */
  #record(sheet: string): SheetRecord | undefined {
    if (this.#records.has(sheet)) return this.#records.get(sheet);
    let record: SheetRecord | undefined;
    try {
      const text = this.#texts.get(recordPath(sheet));
      record = text === undefined ? readSheetRecord(this.#directory, sheet) : parseSheetRecord(sheet, text);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      this.#add(recordPath(sheet), "unreadable", `${why}.`);
    }
    this.#records.set(sheet, record);
    return record;
  }

  #add(
    file: string,
    what: FileFinding["what"],
    text: string,
    changes: readonly InputChange[] | undefined = [],
    comparedWith?: readonly string[],
  ): void {
    this.list.push(Object.freeze({ file, what, text, changes, ...(comparedWith && { comparedWith }) }));
  }
}

/** Cells of an executed notebook that are not what it says the run left; undefined where it does not say. */
function changesInOutput(text: string): readonly InputChange[] | undefined {
  const [left, now] = [carriedCellHashes(text), cellHashesOf(text)];
  if (left === undefined || now === undefined) return undefined;
  return [...new Set([...Object.keys(left), ...Object.keys(now)])].flatMap((id) => {
    if (left[id] === now[id]) return [];
    const what =
      left[id] === undefined
        ? "it has come"
        : now[id] === undefined
          ? "it has gone"
          : "it is not as the run left it";
    return [{ place: `cell ${id}`, what }];
  });
}

/** Where two states differ, and nothing that counts does. */
function unseen(file: string): string {
  if (file.startsWith("out/")) return ", outside its cells: these are as the run left them";
  return file.startsWith("sheets/")
    ? ", in its text or form only: its code is that of the run"
    : ", in its form only: what it says is the same";
}

function codeOfNotebook(text: string): string | undefined {
  try {
    const { cells } = JSON.parse(text) as {
      cells: { cell_type: string; id: string; source: string | string[] }[];
    };
    return codeText(cells.map(({ source, ...cell }) => ({ ...cell, source: [source].flat().join("") })));
  } catch {
    return undefined;
  }
}

/** Whether a file is the record of a sheet, and not a copy kept beside it. */
function isRecord(file: string): boolean {
  return file.endsWith(".json") && recordPath(basename(file, ".json")) === file;
}

function isCanonical(text: string): boolean {
  try {
    return canonicalJson(JSON.parse(text)) === text;
  } catch {
    return false;
  }
}

function textOf(path: string): string | undefined {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return undefined;
  }
}
