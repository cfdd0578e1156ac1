import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import type { Angle, AnyQuantity, Length, Temperature, UnitSystem } from "../quantity/index.js";
import { readAngle, readAnyQuantity, readLength, readTemperature } from "../quantity/index.js";
import { type Instrument, instrumentFrom, type Part, partFrom } from "../survey/index.js";
import type { PrivateList } from "./bundle/private-list.js";
import { formFaults } from "./form-faults.js";
import { readWithLimits } from "./read-with-limits.js";
import { rebuildSchema } from "./rebuild-schema.js";

/** A number without unit that somebody chose, with the reason for it: a number alone can be judged by nobody later. */
export interface ChosenNumber {
  readonly value: number;
  readonly because: string;
}

/** The machine and its facts, as rebuild.json gives them. */
export interface RebuildFacts {
  readonly file: string;
  readonly sha256: string;
  readonly title: string;
  /** True for a demonstration with made-up readings. */
  readonly invented: boolean;
  readonly unitSystem: UnitSystem;
  /** What it is, which way it turns, how fast: label and text, in the order of the file. */
  readonly machine: readonly { readonly label: string; readonly value: string }[];
  /** Sizes that worksheets ask for by name. */
  readonly dimensions: Readonly<Record<string, Length>>;
  /** Directions that worksheets ask for by name, counted as in the tables, e.g. "load direction". */
  readonly angles: Readonly<Record<string, Angle>>;
  /** Everything else with a unit that worksheets ask for by name, e.g. "power", "shop temperature". */
  readonly quantities: Readonly<Record<string, AnyQuantity | Temperature>>;
  /**
   * How far dimensions and quantities may be off, where a ± stands behind them: half the width of their limits, by
   * section and name, e.g. "quantities.driven pulley mass".
   */
  readonly limits: Readonly<Record<string, AnyQuantity>>;
  /** Numbers without unit that worksheets ask for by name, each with its reason, e.g. "demanded safety factor". */
  readonly numbers: Readonly<Record<string, ChosenNumber>>;
  /** What worksheets ask for in a word, e.g. "driven by". */
  readonly words: Readonly<Record<string, string>>;
  readonly parts: Readonly<Record<string, Part>>;
  readonly instruments: Readonly<Record<string, Instrument>>;
  /** Entries that are still the examples a new rebuild begins with: "dimensions.shaft nominal". */
  readonly examples: readonly string[];
  /** What is left out whenever the rebuild is shared. */
  readonly private: PrivateList;
}

/** Everything wrong with a rebuild.json, at once. */
export class RebuildFileFaults extends Error {
  readonly file: string;
  readonly faults: readonly string[];

  constructor(file: string, faults: readonly string[]) {
    const count = faults.length === 1 ? "one fault" : `${faults.length} faults`;
    super(`${file} has ${count}:\n${faults.map((fault) => `  ${fault}`).join("\n")}`);
    this.name = "RebuildFileFaults";
    this.file = file;
    this.faults = Object.freeze([...faults]);
  }
}

interface RebuildJson {
  readonly title: string;
  readonly invented?: boolean;
  readonly units: UnitSystem;
  readonly machine?: Readonly<Record<string, string>>;
  readonly dimensions?: Readonly<Record<string, string>>;
  readonly angles?: Readonly<Record<string, string>>;
  readonly quantities?: Readonly<Record<string, string>>;
  readonly numbers?: Readonly<Record<string, ChosenNumber>>;
  readonly words?: Readonly<Record<string, string>>;
  readonly parts?: Readonly<Record<string, unknown>>;
  readonly instruments?: Readonly<Record<string, unknown>>;
  readonly examples?: readonly string[];
  readonly private?: Partial<PrivateList>;
}

/**
 * Reads and checks a rebuild.json. All faults are reported at once, each with its place in the file, what
 * was found and what was expected.
 *
 * @throws RebuildFileFaults  the file is no JSON, does not fit the form, or a quantity in it cannot be read
 */
export function readRebuildFile(path: string): RebuildFacts {
  const bytes = readFileSync(path);
  const json = parse(path, bytes.toString("utf8").replace(/^\uFEFF/, ""));
  const misfits = formFaults(json, rebuildSchema);
  if (misfits.length > 0) throw new RebuildFileFaults(path, misfits);
  const rebuild = json as RebuildJson;

  const faults: string[] = [];
  const readEach = <T>(
    place: string,
    entries: Readonly<Record<string, unknown>> | undefined,
    read: (id: string, entry: never) => T,
  ): Readonly<Record<string, T>> => {
    const result: Record<string, T> = {};
    for (const [id, entry] of Object.entries(entries ?? {})) {
      try {
        result[id] = read(id, entry as never);
      } catch (error) {
        faults.push(`${place}.${id}: ${error instanceof Error ? error.message : String(error)}`);
      }
    }
    return Object.freeze(result);
  };
  const limits: Record<string, AnyQuantity> = {};
  const withLimits = <T>(section: string, id: string, text: string, read: (text: string) => T): T => {
    const fact = readWithLimits(text);
    if (fact.limits !== undefined) limits[`${section}.${id}`] = fact.limits;
    return read(fact.value);
  };
  const dimensions = readEach("dimensions", rebuild.dimensions, (id, text: string) =>
    withLimits("dimensions", id, text, readLength),
  );
  const angles = readEach("angles", rebuild.angles, (_, text: string) => readAngle(text));
  const quantities = readEach("quantities", rebuild.quantities, (id, text: string) =>
    withLimits("quantities", id, text, readFact),
  );
  const numbers = readEach(
    "numbers",
    rebuild.numbers,
    (_, { value, because }: ChosenNumber): ChosenNumber => {
      if (!Number.isFinite(value)) throw new RangeError(`value: found ${value}, expected a finite number`);
      return Object.freeze({ value, because });
    },
  );
  const parts = readEach("parts", rebuild.parts, partFrom);
  const instruments = readEach("instruments", rebuild.instruments, instrumentFrom);
  faults.push(...strayExamples(rebuild));
  if (faults.length > 0) throw new RebuildFileFaults(path, faults);

  return Object.freeze({
    file: path,
    sha256: createHash("sha256").update(bytes).digest("hex"),
    title: rebuild.title,
    invented: rebuild.invented ?? false,
    unitSystem: rebuild.units,
    machine: Object.freeze(Object.entries(rebuild.machine ?? {}).map(([label, value]) => ({ label, value }))),
    dimensions,
    angles,
    quantities,
    limits: Object.freeze(limits),
    numbers,
    words: Object.freeze({ ...rebuild.words }),
    parts,
    instruments,
    examples: Object.freeze([...(rebuild.examples ?? [])]),
    private: Object.freeze({ columns: [], remarks: [], machine: [], words: [], ...rebuild.private }),
  });
}

/** Names on the list of examples that are no entries: a slip of the pen would keep an example from being found. */
function strayExamples(rebuild: RebuildJson): string[] {
  return (rebuild.examples ?? []).flatMap((entry, at) => {
    const dot = entry.indexOf(".");
    const section = rebuild[entry.slice(0, dot) as "dimensions"];
    if (
      dot > 0 &&
      section !== null &&
      typeof section === "object" &&
      Object.hasOwn(section, entry.slice(dot + 1))
    )
      return [];
    return [
      `examples.${at}: found "${entry}", expected the section and name of an entry, e.g. "dimensions.shaft nominal"`,
    ];
  });
}

/** A temperature where a scale stands behind the number, else a quantity of the kind its unit measures. */
function readFact(text: string): AnyQuantity | Temperature {
  return /[\d½¼¾]\s*(?:[°º]\s*|deg\s*)?[CFK]$|kelvin$/.test(text.trim())
    ? readTemperature(text)
    : readAnyQuantity(text);
}

function parse(path: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const at = /position (\d+)/.exec(message);
    const line = at === null ? "" : `line ${text.slice(0, Number(at[1])).split("\n").length}: `;
    throw new RebuildFileFaults(path, [`${line}not valid JSON: ${message}`]);
  }
}
