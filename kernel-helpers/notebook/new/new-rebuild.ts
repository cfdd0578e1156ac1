import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { bytesOf, type Files } from "../../record/bundle/index.js";
import {
  codeSources,
  findSheets,
  orderOfRun,
  rebuildFileName,
  type SheetFile,
  sheetLinks,
  templateFolder,
} from "../../record/index.js";
import { readNotebook } from "../file/notebook-file.js";
import { quotedTexts } from "./asked-names.js";
import { emptyTable } from "./empty-table.js";

/** How a rebuild begins. */
export interface NewRebuildOptions {
  readonly title: string;
  readonly units: "inch" | "metric";
  /** Names of worksheets, or how they begin: "04"; all where not given. */
  readonly sheets?: readonly string[];
  /** Short names of instruments of the examples; those the tables name where not given. */
  readonly instruments?: readonly string[];
}

/** The files of a new rebuild, and what is to be said of it. */
export interface NewRebuild {
  /** By path within its folder. */
  readonly files: Files;
  readonly sheets: readonly string[];
  /** Names of tables, to be filled. */
  readonly tables: readonly string[];
  /** What sheets take over that none of those chosen hands on, each as a sentence. */
  readonly missing: readonly string[];
}

/** Sections of rebuild.json whose entries worksheets ask for by name. */
const sections = ["dimensions", "angles", "quantities", "numbers", "words"] as const;

/** Reasons for going against a limit: nobody begins with somebody else's. */
const neverExamples: readonly string[] = ["below the smallest diameter because"];

type Json = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

/**
 * The beginning of a rebuild: the worksheets, a rebuild.json with what they ask for, and the tables they read, without
 * readings. Everything is taken from the worksheets themselves and from the demo rebuilds they run on, so that a new
 * worksheet needs no list here. Values of rebuild.json are examples, and are named as such in it, until somebody has
 * put in the machine's own and taken the name off that list.
 *
 * @throws RangeError  there is no worksheet or instrument of a name given; the message lists those there are
 */
export function newRebuild(options: NewRebuildOptions): NewRebuild {
  const { units } = options;
  const sheets = chosenSheets(options.sheets);
  const sources = sheets.map(({ path }) => codeSources(readNotebook(path).cells));
  const asked = new Set(sources.flatMap(quotedTexts).filter((name) => !neverExamples.includes(name)));
  const tables = templateTables(units).filter(({ name }) => asked.has(name));
  const empty = tables.map(({ name, text }) => ({ name, ...emptyTable(text, units) }));
  const facts = exampleFacts(units);
  const instruments = chosenInstruments(options.instruments, empty, units);

  const examples: string[] = [];
  const take = (section: string, wanted: (name: string) => boolean): Readonly<Record<string, unknown>> => {
    const entries = Object.entries(facts[section] ?? {}).filter(([name]) => wanted(name));
    examples.push(...entries.map(([name]) => `${section}.${name}`));
    return Object.fromEntries(entries);
  };
  const byName = Object.fromEntries(
    sections.map((section) => [section, take(section, (name) => asked.has(name))] as const),
  );
  const parts = take("parts", (name) => empty.some((table) => table.parts.includes(name)));
  const known = take("instruments", (name) => instruments.includes(name));
  const json = {
    schema: 1,
    title: options.title,
    units,
    examples,
    machine: { "what it is": "say what it is", rotation: "say which way it turns, and seen from where" },
    ...Object.fromEntries(Object.entries(byName).filter(([, entries]) => Object.keys(entries).length > 0)),
    parts,
    instruments: known,
  };
  const tableText = (table: (typeof empty)[number]): string =>
    withKnownInstruments(table.text, Object.keys(known));
  return {
    files: new Map([
      [rebuildFileName, bytesOf(`${JSON.stringify(json, null, 2)}\n`)],
      ...empty.map((table) => [`tables/${table.name}.csv`, bytesOf(tableText(table))] as const),
      ...sheets.map(({ name, path }) => [`sheets/${name}.ipynb`, readFileSync(path)] as const),
    ]),
    sheets: sheets.map(({ name }) => name),
    tables: empty.map(({ name }) => name),
    missing: orderOfRun(sheets.map(({ name }, i) => ({ name, links: sheetLinks(sources[i]!) }))).missing,
  };
}

/** The worksheets one can begin with. */
export function templateSheets(): readonly SheetFile[] {
  return findSheets(join(templateFolder(), "demo"));
}

/** Short name and title of the instruments of the examples. */
export function exampleInstruments(units: "inch" | "metric"): ReadonlyMap<string, string> {
  return new Map(
    Object.entries(exampleFacts(units).instruments ?? {}).map(([name, instrument]) => [
      name,
      String((instrument as { readonly title?: unknown }).title),
    ]),
  );
}

function chosenSheets(wanted: readonly string[] | undefined): readonly SheetFile[] {
  const all = templateSheets();
  if (wanted === undefined || wanted.length === 0) return all;
  for (const name of wanted)
    if (!all.some((sheet) => sheet.name.startsWith(name)))
      throw new RangeError(
        `newRebuild: there must be a worksheet ${name}; there are ${all.map((sheet) => sheet.name).join(", ")}`,
      );
  return all.filter((sheet) => wanted.some((name) => sheet.name.startsWith(name)));
}

function chosenInstruments(
  wanted: readonly string[] | undefined,
  tables: readonly { readonly instruments: readonly string[] }[],
  units: "inch" | "metric",
): readonly string[] {
  if (wanted === undefined) return tables.flatMap(({ instruments }) => instruments);
  const known = exampleInstruments(units);
  const stranger = wanted.find((name) => !known.has(name));
  if (stranger !== undefined)
    throw new RangeError(
      `newRebuild: there must be an example of the instrument ${stranger}; there are ${[...known.keys()].join(", ")}`,
    );
  return wanted;
}

/** A table may name instruments of which the new rebuild knows nothing: these become examples too. */
function withKnownInstruments(text: string, known: readonly string[]): string {
  return text.replace(/^# (instrument[^:\n]*: *(.*))$/gm, (line, said: string, name: string) =>
    known.includes(name.trim()) ? line : `# example: ${said}`,
  );
}

const demoOf = { inch: "demo", metric: "demo-metric" } as const;

/** The tables of the demo in these units, and those that only the other demo has. */
function templateTables(
  units: "inch" | "metric",
): readonly { readonly name: string; readonly text: string }[] {
  const tables = new Map<string, string>();
  for (const demo of [demoOf[units], ...Object.values(demoOf)]) {
    const folder = join(templateFolder(), demo, "tables");
    if (!existsSync(folder)) continue;
    for (const file of readdirSync(folder).filter((each) => each.endsWith(".csv"))) {
      const name = basename(file, ".csv");
      if (!tables.has(name)) tables.set(name, readFileSync(join(folder, file), "utf8"));
    }
  }
  return [...tables].map(([name, text]) => ({ name, text })).sort((a, b) => (a.name < b.name ? -1 : 1));
}

function exampleFacts(units: "inch" | "metric"): Json {
  return JSON.parse(readFileSync(join(templateFolder(), demoOf[units], rebuildFileName), "utf8"));
}
