import { existsSync, readdirSync } from "node:fs";
import { basename, join } from "node:path";
import {
  type Angle,
  type AnyQuantity,
  isTemperature,
  type KindName,
  type Length,
  type Measured,
  type Quantity,
  setUnitSystem,
  type Temperature,
  type UnitSystem,
  withArticle,
} from "../quantity/index.js";
import { fromLimits } from "../statistics/index.js";
import { readTableFile, type Table, TableFaults } from "../survey/index.js";
import type { Decision, DecisionRequest } from "./decision-types.js";
import { fileHash } from "./file-hash.js";
import { findRebuild, rebuildFileName } from "./find-rebuild.js";
import type { Handover } from "./handover-types.js";
import { nameFields } from "./name-fields.js";
import type { Noted, Notes } from "./note-types.js";
import { demoFolder } from "./package-facts.js";
import { type ChosenNumber, type RebuildFacts, readRebuildFile } from "./rebuild-file.js";
import type { ResultKinds } from "./result-kinds.js";
import { getSession } from "./session.js";
import { type Published, SheetDesk } from "./sheet-desk.js";

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
   * The same where the sheet may do without these readings: undefined while there is no such file, or nothing is
   * written under its header.
   *
   * @throws TableFaults  everything wrong with the table, at once
   */
  tableIfGiven(name: string): Table | undefined;
  /**
   * A dimension of rebuild.json by name, e.g. `rebuild.length("shaft nominal")`.
   *
   * @throws RangeError  rebuild.json gives no such dimension; the message lists those it gives
   */
  length(name: string): Length;
  /** The same where the rebuild may do without it: undefined when rebuild.json does not give it. */
  lengthIfGiven(name: string): Length | undefined;
  /**
   * An angle of rebuild.json by name, e.g. `rebuild.angle("load on the boxes")`.
   *
   * @throws RangeError  rebuild.json gives no such angle; the message lists those it gives
   */
  angle(name: string): Angle;
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
  /**
   * A quantity or dimension of rebuild.json that is given with its limits, "180 ± 10 lb", as a measured value: any value
   * between the limits is as likely as another, u = 10/√3 lb.
   *
   * @throws RangeError  rebuild.json does not give it, or gives it without ±
   * @throws TypeError   it is of another kind
   */
  measured<K extends KindName>(name: string, kind: K): Measured<Quantity<K>>;
  /** A temperature of rebuild.json by name, e.g. `rebuild.temperature("shop temperature")`; throws as `quantity`. */
  temperature(name: string): Temperature;
  /** The same where the rebuild may do without it. */
  temperatureIfGiven(name: string): Temperature | undefined;
  /**
   * A number without unit of rebuild.json by name, with the reason somebody gave for it, e.g.
   * `rebuild.number("demanded safety factor").value`.
   *
   * @throws RangeError  rebuild.json gives no such number; the message lists those it gives
   */
  number(name: string): ChosenNumber;
  /**
   * A word of rebuild.json by name, e.g. `rebuild.word("driven by")`.
   *
   * @throws RangeError  rebuild.json gives no such word; the message lists those it gives
   */
  word(name: string): string;
  /** The same where the rebuild may do without it. */
  wordIfGiven(name: string): string | undefined;
  /**
   * Runs work, and where it stops over a value it was given, adds which field of rebuild.json holds it, e.g.
   * `rebuild.naming({ clearance: "running clearance" }, () => pourPlan(options))`.
   *
   * @throws RangeError  as the work does, with the fields named; rebuild.json does not give one of the fields
   */
  naming<T>(fields: Readonly<Record<string, string>>, work: () => T): T;
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
  /**
   * Writes down a decision: the question, the options with their figures as computed, the choice, the reason, who and
   * when. The same call again changes nothing: the figures stay those of the day it was made, and where they have moved
   * since, what they are now is put beside them. A decision with another choice, reason or date supersedes the one
   * before, which is kept.
   *
   * @throws RangeError  the choice is none of the options, or violates a limit and no override gives a reason for that
   * @throws TypeError   a part is missing, or another sheet has decided under that name
   */
  decide(request: DecisionRequest): Decision;
  /**
   * What an earlier sheet decided, e.g. `rebuild.decision("shaft").choice`.
   *
   * @throws RangeError  no sheet has decided under that name; the message lists what there is
   */
  decision(name: string): Decision;
  /**
   * Notes for whoever takes over: open items, parts and consumables, readings still to be taken. The handover collects
   * them from all sheets, e.g. `rebuild.note({ open: ["which way does the nut turn?"], parts: [{ what: "key", size: inch(0.5) }] })`.
   *
   * @throws TypeError  an entry does not say what, or has a part that is not known
   */
  note(notes: Notes): Noted;
  /**
   * Collects for whoever takes over what all other sheets have decided, noted and warned of, and whether it still
   * stands on the files as they are. A sheet that calls it is run last.
   */
  handover(): Handover;
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
  const desk = new SheetDesk(directory, () => session.sheet ?? options.sheet);
  const noteFile = (file: string): void => desk.noteFile(file, fileHash(join(directory, file)));
  noteFile(rebuildFileName);
  const facts = readRebuildFile(join(directory, rebuildFileName));
  desk.noteInput(rebuildFileName, facts.sha256);
  setUnitSystem(facts.unitSystem);

  const read = (name: string): Table => {
    const file = tableFile(name);
    const { instruments, parts } = facts;
    const table = readTableFile(join(directory, file), { name, file, instruments, parts });
    desk.noteInput(file, table.sha256);
    return table;
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
      noteFile(tableFile(name));
      const names = tableNames(directory);
      if (!names.includes(name))
        throw new RangeError(
          `table: there is no tables/${name}.csv in ${directory}; there ${names.length === 1 ? "is" : "are"} ${list(names)}`,
        );
      return read(name);
    },

    tableIfGiven(name) {
      noteFile(tableFile(name));
      if (!tableNames(directory).includes(name)) return undefined;
      try {
        return read(name);
      } catch (error) {
        if (error instanceof TableFaults && error.isOnlyHeader) return undefined;
        throw error;
      }
    },

    length(name) {
      return facts.dimensions[name] ?? notGiven("length", name, "dimensions", facts.dimensions);
    },

    lengthIfGiven(name) {
      return facts.dimensions[name];
    },

    angle(name) {
      return facts.angles[name] ?? notGiven("angle", name, "angles", facts.angles);
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

    measured(name, kind) {
      return measuredOf(facts, name, kind);
    },

    temperature(name) {
      return temperatureOf(facts, name) ?? notGiven("temperature", name, "quantities", facts.quantities);
    },

    temperatureIfGiven(name) {
      return temperatureOf(facts, name);
    },

    number(name) {
      return facts.numbers[name] ?? notGiven("number", name, "numbers", facts.numbers);
    },

    word(name) {
      return facts.words[name] ?? notGiven("word", name, "words", facts.words);
    },

    wordIfGiven(name) {
      return facts.words[name];
    },

    naming: (fields, work) => nameFields(facts, fields, work),
    publish: (results) => desk.publish(results),
    recall: (name, kind) => desk.recall(name, kind) as ResultKinds[typeof kind],
    decide: (request) => desk.decide(request),
    decision: (name) => desk.decision(name),
    note: (notes) => desk.note(notes),
    handover: () => desk.handover(facts.title),
  });
}

function notGiven(
  asked: string,
  name: string,
  section: string,
  given: Readonly<Record<string, unknown>>,
): never {
  const withUnit =
    section === "words" ? "" : section === "numbers" ? " with value and because" : " with its unit";
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

function measuredOf<K extends KindName>(facts: RebuildFacts, name: string, kind: K): Measured<Quantity<K>> {
  const inQuantities = Object.hasOwn(facts.quantities, name);
  const value = inQuantities
    ? quantityOf(facts, name, kind)!
    : kind === "length" && facts.dimensions[name] !== undefined
      ? (facts.dimensions[name] as unknown as Quantity<K>)
      : notGiven("measured", name, "quantities", facts.quantities);
  const limits = facts.limits[`${inQuantities ? "quantities" : "dimensions"}.${name}`];
  if (limits === undefined)
    throw new RangeError(
      `measured: "${name}" of ${rebuildFileName} is given without limits, ${value}; write how far it may be off, e.g. "${value} ± …"`,
    );
  return fromLimits(value as AnyQuantity, limits) as unknown as Measured<Quantity<K>>;
}

function temperatureOf(facts: RebuildFacts, name: string): Temperature | undefined {
  const value = facts.quantities[name];
  if (value === undefined || isTemperature(value)) return value;
  throw new TypeError(
    `temperature: "${name}" of ${rebuildFileName} is ${withArticle(value.dimension)}, but a temperature was expected: ${value}`,
  );
}

function tableFile(name: string): string {
  return `tables/${name}.csv`;
}

function tableNames(directory: string): string[] {
  const folder = join(directory, "tables");
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((file) => file.endsWith(".csv"))
    .map((file) => basename(file, ".csv"))
    .sort();
}

function list(names: readonly string[]): string {
  return names.length === 0 ? "none" : names.join(", ");
}
