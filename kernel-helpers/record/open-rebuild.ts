import { createHash } from "node:crypto";
import { existsSync, readdirSync } from "node:fs";
import { basename, join } from "node:path";
import {
  type Angle,
  isTemperature,
  type KindName,
  type Length,
  type Quantity,
  setUnitSystem,
  type Temperature,
  type UnitSystem,
  withArticle,
} from "../quantity/index.js";
import { readTableFile, type Table } from "../survey/index.js";
import { canonicalJson } from "./canonical-json.js";
import { fileHash } from "./file-hash.js";
import { findRebuild, rebuildFileName } from "./find-rebuild.js";
import { demoFolder } from "./package-facts.js";
import { type RebuildFacts, readRebuildFile } from "./rebuild-file.js";
import type { ResultKinds } from "./result-kinds.js";
import { getSession, readSoFar } from "./session.js";
import { noteReads } from "./sheet-reads.js";
import {
  publishedValue,
  readSheetRecord,
  recordFolder,
  type SheetRecord,
  writeSheetRecord,
} from "./sheet-record.js";

/** A rebuild that a worksheet works in. */
export interface Rebuild {
  readonly kind: "rebuild";
  readonly title: string;
  /** The folder that holds rebuild.json. */
  readonly directory: string;
  /** Why the demo was opened, where no rebuild.json lies above the sheet; else "". */
  readonly notice: string;
  readonly unitSystem: UnitSystem;
  readonly facts: RebuildFacts;
  /** The names of the tables there are. */
  readonly tables: readonly string[];
  /**
   * A table of readings from tables/<name>.csv.
   *
   * @throws TableFaults  everything wrong with the table, at once
   */
  table(name: string): Table;
  /**
   * A dimension of rebuild.json by name, e.g. `rebuild.length("shaft nominal")`.
   *
   * @throws RangeError  rebuild.json gives no such dimension; the message lists those it gives
   */
  length(name: string): Length;
  /** The same where the rebuild may do without it: undefined when rebuild.json does not give it. */
  lengthIfGiven(name: string): Length | undefined;
  /**
   * A direction of rebuild.json by name, counted as in the tables, e.g. `rebuild.angleIfGiven("load direction")`;
   * undefined when rebuild.json does not give it.
   */
  angleIfGiven(name: string): Angle | undefined;
  /**
   * A quantity of rebuild.json by name and kind, e.g. `rebuild.quantity("power", "power")`.
   *
   * @throws RangeError  rebuild.json gives no such quantity; the message lists those it gives
   * @throws TypeError   it is of another kind
   */
  quantity<K extends KindName>(name: string, kind: K): Quantity<K>;
  /** The same where the rebuild may do without it: undefined when rebuild.json does not give it. */
  quantityIfGiven<K extends KindName>(name: string, kind: K): Quantity<K> | undefined;
  /** A temperature of rebuild.json by name, e.g. `rebuild.temperature("shop temperature")`; throws as `quantity`. */
  temperature(name: string): Temperature;
  /** The same where the rebuild may do without it. */
  temperatureIfGiven(name: string): Temperature | undefined;
  /**
   * A word of rebuild.json by name, e.g. `rebuild.word("driven by")`.
   *
   * @throws RangeError  rebuild.json gives no such word; the message lists those it gives
   */
  word(name: string): string;
  /** The same where the rebuild may do without it. */
  wordIfGiven(name: string): string | undefined;
  /**
   * Hands results on to later sheets by name, into record/<sheet>.json, with hashes of what was read.
   *
   * @throws TypeError  a name is taken by another sheet, or a result holds what a record cannot keep
   */
  publish(results: Readonly<Record<string, unknown>>): Published;
  /**
   * Takes over what an earlier sheet published, by name and kind.
   *
   * @throws RangeError  no sheet has published it, or it is of another kind; the message lists what there is
   */
  recall<K extends keyof ResultKinds>(name: string, kind: K): ResultKinds[K];
}

/** What was published, and where it is kept. */
export interface Published {
  readonly kind: "published";
  readonly sheet: string;
  readonly names: readonly string[];
  /** The record's path within the rebuild. */
  readonly file: string;
}

export interface OpenRebuildOptions {
  /** The rebuild folder, or one inside it; the sheet's own folder without it. */
  readonly folder?: string;
  /** The sheet's name, for front ends that do not tell it; where one does, the file's own name counts. */
  readonly sheet?: string;
}

/**
 * Opens the rebuild a worksheet lies in: the nearest folder above it with a rebuild.json. Where there is
 * none, the demo is opened, and says so. Quantities then show themselves in the rebuild's unit system.
 *
 * @throws RebuildFileFaults  everything wrong with rebuild.json, at once
 */
export function openRebuild(options: OpenRebuildOptions = {}): Rebuild {
  const session = getSession();
  const from = options.folder ?? session.directory ?? process.cwd();
  const found = findRebuild(from);
  if (found === undefined && options.folder !== undefined)
    throw new RangeError(`openRebuild: no ${rebuildFileName} in ${options.folder} or above it`);
  const directory = found ?? demoFolder();
  const read = readSoFar(directory);
  const note = (): void => {
    const sheet = session.sheet ?? options.sheet;
    if (sheet !== undefined) noteReads(directory, sheet, read);
  };
  // Noted before it is read: a sheet that fails at a faulty file must know when that file is mended.
  const noteFile = (file: string): void => {
    read.inputs[file] = fileHash(join(directory, file));
    note();
  };
  noteFile(rebuildFileName);
  const facts = readRebuildFile(join(directory, rebuildFileName));
  setUnitSystem(facts.unitSystem);

  const inputs: Record<string, string> = { [rebuildFileName]: facts.sha256 };
  const recalled: Record<string, string> = {};
  const published: Record<string, unknown> = {};
  const sheetName = (): string => {
    const sheet = session.sheet ?? options.sheet;
    if (sheet === undefined)
      throw new TypeError(
        'publish: this front end does not tell which sheet is running; write openRebuild({ sheet: "04-shaft-survey" }) with the sheet\'s name',
      );
    return sheet;
  };

  return Object.freeze<Rebuild>({
    kind: "rebuild",
    title: facts.title,
    directory,
    notice:
      found === undefined
        ? "No rebuild.json lies in this folder or above it, so this is the demo rebuild with invented readings."
        : "",
    unitSystem: facts.unitSystem,
    facts,
    tables: Object.freeze(tableNames(directory)),

    table(name) {
      const file = `tables/${name}.csv`;
      noteFile(file);
      const names = tableNames(directory);
      if (!names.includes(name))
        throw new RangeError(
          `table: there is no tables/${name}.csv in ${directory}; there ${names.length === 1 ? "is" : "are"} ${list(names)}`,
        );
      const table = readTableFile(join(directory, file), {
        name,
        file,
        instruments: facts.instruments,
        parts: facts.parts,
      });
      inputs[file] = table.sha256;
      return table;
    },

    length(name) {
      return facts.dimensions[name] ?? notGiven("length", name, "dimensions", facts.dimensions);
    },

    lengthIfGiven(name) {
      return facts.dimensions[name];
    },

    angleIfGiven(name) {
      return facts.angles[name];
    },

    quantity(name, kind) {
      return quantityOf(facts, name, kind) ?? notGiven("quantity", name, "quantities", facts.quantities);
    },

    quantityIfGiven(name, kind) {
      return quantityOf(facts, name, kind);
    },

    temperature(name) {
      return temperatureOf(facts, name) ?? notGiven("temperature", name, "quantities", facts.quantities);
    },

    temperatureIfGiven(name) {
      return temperatureOf(facts, name);
    },

    word(name) {
      return facts.words[name] ?? notGiven("word", name, "words", facts.words);
    },

    wordIfGiven(name) {
      return facts.words[name];
    },

    publish(results) {
      const sheet = sheetName();
      const names = Object.keys(results);
      if (names.length === 0) throw new TypeError("publish: nothing was given to publish");
      for (const name of names) {
        const other = sheetThatPublished(directory, name);
        if (other !== undefined && other.sheet !== sheet)
          throw new TypeError(
            `publish: "${name}" is already published by sheet ${other.sheet}; choose another name`,
          );
      }
      Object.assign(published, results);
      const file = writeSheetRecord(directory, { sheet, inputs, recalled, published });
      return Object.freeze({ kind: "published", sheet, names: Object.freeze(names), file });
    },

    recall(name, kind) {
      const record = sheetThatPublished(directory, name);
      if (record === undefined)
        throw new RangeError(
          `recall: no sheet has published "${name}"; run the sheet that does first; published are ${list(publishedNames(directory))}`,
        );
      const value = publishedValue(record, name) as { readonly kind?: string };
      if (value?.kind !== kind)
        throw new RangeError(
          `recall: "${name}" from sheet ${record.sheet} is of kind ${value?.kind ?? "unknown"}, not ${kind}`,
        );
      const hash = createHash("sha256").update(canonicalJson(record.published[name])).digest("hex");
      recalled[`${record.sheet}: ${name}`] = hash;
      read.recalled[`${record.sheet}: ${name}`] = hash;
      note();
      return value as ResultKinds[typeof kind];
    },
  });
}

function notGiven(
  asked: string,
  name: string,
  section: string,
  given: Readonly<Record<string, unknown>>,
): never {
  const withUnit = section === "words" ? "" : " with its unit";
  throw new RangeError(
    `${asked}: ${rebuildFileName} gives no "${name}"; add it under "${section}"${withUnit}; given are ${list(Object.keys(given))}`,
  );
}

function quantityOf<K extends KindName>(facts: RebuildFacts, name: string, kind: K): Quantity<K> | undefined {
  const value = facts.quantities[name];
  if (value === undefined) return undefined;
  if (isTemperature(value) || value.dimension !== kind)
    throw new TypeError(
      `quantity: "${name}" of ${rebuildFileName} is ${isTemperature(value) ? "a temperature" : withArticle(value.dimension)}, but ${withArticle(kind)} was expected: ${value}`,
    );
  return value as unknown as Quantity<K>;
}

function temperatureOf(facts: RebuildFacts, name: string): Temperature | undefined {
  const value = facts.quantities[name];
  if (value === undefined || isTemperature(value)) return value;
  throw new TypeError(
    `temperature: "${name}" of ${rebuildFileName} is ${withArticle(value.dimension)}, but a temperature was expected: ${value}`,
  );
}

function tableNames(directory: string): string[] {
  const folder = join(directory, "tables");
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((file) => file.endsWith(".csv"))
    .map((file) => basename(file, ".csv"))
    .sort();
}

/** The records there are, by sheet name. */
function records(directory: string): SheetRecord[] {
  const folder = join(directory, recordFolder);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((file) => file.endsWith(".json"))
    .sort()
    .flatMap((file) => readSheetRecord(directory, basename(file, ".json")) ?? []);
}

function sheetThatPublished(directory: string, name: string): SheetRecord | undefined {
  return records(directory).find((record) => Object.hasOwn(record.published, name));
}

function publishedNames(directory: string): string[] {
  return records(directory).flatMap((record) => Object.keys(record.published));
}

function list(names: readonly string[]): string {
  return names.length === 0 ? "none" : names.join(", ");
}
