import { canonicalJson } from "../canonical-json.js";
import { sha256 } from "./bag.js";
import { bytesOf, type Files, sortedPaths, textOf } from "./files.js";
import { notebookWithout, valueWithout } from "./json-without.js";
import type { LeftOut, LeftOutFile, LeftOutPart } from "./left-out.js";
import type { PrivateList, PrivateName } from "./private-list.js";
import { privateSections, sameName } from "./private-list.js";
import { namesInTable, tableWithout } from "./table-without.js";
import { searchFor, type TextSearch } from "./text-search.js";

/** Files of a rebuild without what is private, and what that was. */
export interface SharedFiles {
  readonly files: Files;
  readonly leftOut: LeftOut;
  /** Places where something left out is still named: texts and programs of people, which are not altered here. */
  readonly stillNamed: readonly string[];
  /** Entries too short to be looked for in results [-]. */
  readonly tooShort: number;
}

/**
 * The files of a rebuild without what is private: columns and remarks of tables, machine facts and words of
 * rebuild.json. What stood there is then looked for in records and in the outputs of executed worksheets: texts of
 * three characters and more, as whole words; where one is found, the text or the output is left out too. Copies of the
 * altered files in record/inputs are left out whole. The sheets themselves are programs and prose of a person, and
 * stay as they are; where they name something left out, the place is told.
 *
 * @param files  of the rebuild, by path
 * @param names  what to leave out
 * @param known  names that were left out of these files before, and need not be found
 * @throws RangeError  a name is nowhere in the rebuild, or a table cannot be taken apart
 */
export function leaveOut(
  files: Files,
  names: readonly PrivateName[],
  known: readonly string[] = [],
): SharedFiles {
  requireKnown(names, namesIn(files), known);
  const work = new Work(files, names);
  work.shortenFacts();
  work.shortenTables();
  const search = searchFor(work.texts);
  work.dropCopies();
  work.shortenResults(search);
  const { readers, asking } = sheetsBehind(files, work.changed, names);
  return {
    files: work.result,
    leftOut: { schema: 1, files: work.changed, cannotRun: asking, mayDiffer: readers },
    stillNamed: work.changed.length === 0 ? [] : namedIn(work.result, search),
    tooShort: search.tooShort,
  };
}

/** Names there are in a rebuild that could be left out, by section. */
function namesIn(files: Files): PrivateList {
  const tables = tablePaths(files).map((path) => namesInTable(textOf(files.get(path)!)));
  const { machine = {}, words = {} } = factsOf(files);
  return {
    columns: [...new Set(tables.flatMap(({ columns }) => columns))],
    remarks: [...new Set(tables.flatMap(({ remarks }) => remarks))],
    machine: Object.keys(machine),
    words: Object.keys(words),
  };
}

/** A name that is nowhere may be a slip of the pen, and what it meant would be shared. */
function requireKnown(names: readonly PrivateName[], there: PrivateList, known: readonly string[]): void {
  for (const { section, name } of names) {
    const places = section === "any" ? Object.values(there).flat() : there[section];
    if ([...places, ...known].some((place: string) => sameName(place, name))) continue;
    const lists = Object.entries(privateSections)
      .filter(([key]) => section === "any" || section === key)
      .map(([key, called]) => `${called}s ${there[key as keyof PrivateList].join(", ") || "none"}`);
    const what = section === "any" ? "name" : privateSections[section];
    throw new RangeError(
      `leaveOut: there must be a ${what} "${name}" to leave out; there are ${lists.join("; ")}`,
    );
  }
}

interface Facts {
  readonly machine?: Readonly<Record<string, string>>;
  readonly words?: Readonly<Record<string, string>>;
}

function factsOf(files: Files): Facts {
  return JSON.parse(textOf(files.get("rebuild.json") ?? bytesOf("{}")).replace(/^\uFEFF/, ""));
}

function tablePaths(files: Files): readonly string[] {
  return sortedPaths(files).filter((path) => /^tables\/.*\.csv$/.test(path));
}

/** Files while something is taken out of them. */
class Work {
  readonly #before: Files;
  readonly #names: readonly PrivateName[];
  readonly #after: Map<string, Uint8Array>;
  readonly #changed: LeftOutFile[] = [];
  readonly texts: string[] = [];

  constructor(files: Files, names: readonly PrivateName[]) {
    this.#before = files;
    this.#names = names;
    this.#after = new Map(files);
  }

  get result(): Files {
    return this.#after;
  }

  get changed(): readonly LeftOutFile[] {
    return [...this.#changed].sort((a, b) => (a.file < b.file ? -1 : 1));
  }

  shortenFacts(): void {
    const facts = factsOf(this.#before);
    const parts: LeftOutPart[] = [];
    for (const section of ["machine", "words"] as const) {
      const hidden = this.#of(section);
      for (const [name, text] of Object.entries(facts[section] ?? {})) {
        if (!hidden.some((one) => sameName(one, name))) continue;
        delete (facts[section] as Record<string, string>)[name];
        this.texts.push(text);
        parts.push({ what: `the ${privateSections[section]} "${name}"`, count: 1 });
      }
    }
    if (parts.length > 0) this.#put("rebuild.json", `${JSON.stringify(facts, null, 2)}\n`, parts);
  }

  shortenTables(): void {
    const hide = { columns: this.#of("columns"), remarks: this.#of("remarks") };
    for (const path of tablePaths(this.#before)) {
      const { text, parts, texts } = this.#inTable(path, hide);
      this.texts.push(...texts);
      if (parts.length > 0) this.#put(path, text, parts);
    }
  }

  /** Copies of altered files, kept for the audit, hold what was left out. */
  dropCopies(): void {
    const bases = this.#changed.map(({ file }) => /([^/]+)\.[^.]+$/.exec(file)![1]!);
    for (const path of sortedPaths(this.#before)) {
      const base = /^record\/inputs\/(.+)\.[0-9a-f]+\.[^.]+$/.exec(path)?.[1];
      if (base === undefined || !bases.includes(base)) continue;
      this.#after.delete(path);
      this.#note(path, [{ what: "a copy of a file that is not shared whole", count: 1 }], true);
    }
  }

  shortenResults(search: TextSearch): void {
    for (const path of sortedPaths(this.#after)) {
      const isRecord = /^record\/[^/]+\.json$/.test(path);
      if (!isRecord && !/^out\/.*\.ipynb$/.test(path)) continue;
      const json: unknown = JSON.parse(textOf(this.#after.get(path)!));
      const { value, count } = isRecord ? valueWithout(json, search) : notebookWithout(json, search);
      if (count === 0) continue;
      const what = isRecord ? "texts that repeat something left out" : "outputs that show something left out";
      const text = isRecord ? canonicalJson(value) : `${JSON.stringify(value, null, 1)}\n`;
      this.#put(path, text, [{ what, count }]);
    }
  }

  #inTable(path: string, hide: Parameters<typeof tableWithout>[1]): ReturnType<typeof tableWithout> {
    try {
      return tableWithout(textOf(this.#before.get(path)!), hide);
    } catch (cause) {
      const why = cause instanceof Error ? cause.message : String(cause);
      throw new RangeError(
        `leaveOut: ${path} must be a table that can be read, to leave anything out: ${why}`,
        {
          cause,
        },
      );
    }
  }

  #of(section: keyof PrivateList): readonly string[] {
    return this.#names
      .filter((one) => one.section === section || one.section === "any")
      .map(({ name }) => name);
  }

  #put(path: string, text: string, parts: readonly LeftOutPart[]): void {
    this.#after.set(path, bytesOf(text));
    this.#note(path, parts);
  }

  #note(file: string, parts: readonly LeftOutPart[], whole?: true): void {
    const entry = { file, sha256: sha256(this.#before.get(file)!), parts };
    this.#changed.push(whole ? { ...entry, whole } : entry);
  }
}

/** Sheets that read an altered file, by their records; and sheets whose code asks by name for what is gone. */
function sheetsBehind(
  files: Files,
  changed: readonly LeftOutFile[],
  names: readonly PrivateName[],
): { readers: readonly string[]; asking: LeftOut["cannotRun"] } {
  const inputs = changed.map(({ file }) => file).filter((file) => /^(?:rebuild\.json$|tables\/)/.test(file));
  const readers: string[] = [];
  const asking: { sheet: string; asksFor: string }[] = [];
  for (const path of sortedPaths(files)) {
    const sheet = /^sheets\/(.+)\.ipynb$/.exec(path)?.[1];
    if (sheet === undefined || inputs.length === 0) continue;
    const asked = names.filter(({ name }) => codeOf(files.get(path)!).some((code) => quotes(code, name)));
    for (const { name } of asked) asking.push({ sheet, asksFor: `"${name}"` });
    const record = files.get(`record/${sheet}.json`);
    const read: Readonly<Record<string, unknown>> =
      record === undefined ? {} : (JSON.parse(textOf(record)).inputs ?? {});
    if (asked.length === 0 && inputs.some((file) => Object.hasOwn(read, file))) readers.push(sheet);
  }
  return { readers, asking };
}

/** The sources of the code cells of a notebook file; none where it is no notebook. */
function codeOf(notebook: Uint8Array): readonly string[] {
  try {
    const cells: readonly { cell_type?: unknown; source?: unknown }[] = JSON.parse(textOf(notebook)).cells;
    return cells
      .filter(({ cell_type }) => cell_type === "code")
      .map(({ source }) => [source].flat().join(""));
  } catch {
    return [];
  }
}

function quotes(code: string, name: string): boolean {
  return [...code.matchAll(/(["'`])((?:(?!\1).)*)\1/g)].some(([, , text]) => sameName(text!, name));
}

/** Files of people, and lines of them where that can be told, in which something left out is still named. */
function namedIn(files: Files, search: TextSearch): readonly string[] {
  return sortedPaths(files).flatMap((path) => {
    if (!/\.(?:ipynb|json|csv|ts|txt|md)$/.test(path)) return [];
    const text = textOf(files.get(path)!);
    if (!path.endsWith(".ipynb")) return search.standsIn(text) ? [path] : [];
    return cellsOf(text)
      .filter(({ source }) => search.standsIn(source))
      .map(({ id }) => `${path}, cell ${id}`);
  });
}

function cellsOf(notebook: string): readonly { readonly id: string; readonly source: string }[] {
  try {
    const cells: readonly { id?: unknown; source?: unknown }[] = JSON.parse(notebook).cells;
    return cells.map(({ id, source }, at) => ({
      id: String(id ?? at + 1),
      source: [source].flat().join(""),
    }));
  } catch {
    return [{ id: "?", source: notebook }];
  }
}
