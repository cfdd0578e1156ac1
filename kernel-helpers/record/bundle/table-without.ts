import { parse } from "csv-parse/sync";
import { csvForm } from "../../survey/csv-form.js";
import type { LeftOutPart } from "./left-out.js";
import { isMarkedPrivate, sameName } from "./private-list.js";

/** What to leave out of a table, by name. */
export interface TablePrivate {
  readonly columns: readonly string[];
  readonly remarks: readonly string[];
}

/** A table without what is private. */
export interface TableWithout {
  readonly text: string;
  readonly parts: readonly LeftOutPart[];
  /** What stood there, to be looked for elsewhere. */
  readonly texts: readonly string[];
}

/**
 * A table of readings without some of its columns and remarks, and without what is marked private by its own first
 * word. What is left keeps its line numbers, for remarks may name lines; the file says at its end which columns are
 * gone. A table without anything private is given back as it was, to the byte.
 *
 * @param text  the CSV
 * @throws RangeError  it cannot be taken apart into lines and cells; then nothing private can be found in it
 * @example
 * tableWithout("a [in], by\n1, AB\n", { columns: ["by"], remarks: [] }).text
 * // "a [in]\n1\n# left out: the column \"by\" (1 entry)\n"
 */
export function tableWithout(text: string, hide: TablePrivate): TableWithout {
  const lines = text.split(/\r\n|\n|\r/);
  const headerAt = lines.findIndex((line) => line.trim() !== "" && !isRemark(line));
  const delimiter = delimiterOf(lines[headerAt] ?? "");
  const records = recordsOf(lines.join("\n"), delimiter);
  const found = new Found();
  const out: string[] = [];
  let header: readonly string[] | undefined;
  let at = 0;
  const passRemarks = (): void => {
    for (; at < lines.length && isRemark(lines[at]!); at++) out.push(remarkWithout(lines[at]!, hide, found));
  };
  for (const cells of records) {
    passRemarks();
    const next = at + 1 + lineEndsIn(cells);
    const isBlank = cells.every((cell) => cell.trim() === "");
    if (header === undefined && !isBlank) header = cells;
    const kept =
      isBlank || header === undefined ? cells : rowWithout(cells, header, cells === header, hide, found);
    out.push(kept === cells ? lines.slice(at, next).join("\n") : rowText(kept, delimiter));
    // A cell of several lines that is gone leaves blank lines, so that all others keep their numbers.
    if (kept !== cells) out.push(...Array<string>(lineEndsIn(cells) - lineEndsIn(kept)).fill(""));
    at = next;
  }
  passRemarks();
  if (found.parts.length === 0) return { text, parts: [], texts: [] };
  const said = found.parts
    .filter(({ what }) => what.startsWith("the column"))
    .map(({ what, count }) => `# left out: ${what} (${count} ${count === 1 ? "entry" : "entries"})`);
  const body = [...out, ...lines.slice(at)].join("\n").replace(/\n*$/, "");
  return { text: [body, ...said, ""].join("\n"), parts: found.parts, texts: found.texts };
}

/** Names of the columns and of the remarks of a table, to tell a name that is nowhere. */
export function namesInTable(text: string): TablePrivate {
  const lines = text.split(/\r\n|\n|\r/);
  const header = lines.find((line) => line.trim() !== "" && !isRemark(line)) ?? "";
  const [cells = []] = recordsOf(header, delimiterOf(header));
  const remarks = lines.filter(isRemark).map((line) => keyOf(line) ?? "");
  return { columns: cells.map(nameOf), remarks: remarks.filter((key) => key !== "") };
}

class Found {
  readonly #counts = new Map<string, number>();
  readonly texts: string[] = [];

  get parts(): readonly LeftOutPart[] {
    return [...this.#counts].map(([what, count]) => ({ what, count }));
  }

  /** Something is left out, with what stood there. */
  add(what: string, text: string): void {
    const trimmed = text.trim();
    this.#counts.set(what, (this.#counts.get(what) ?? 0) + (trimmed === "" ? 0 : 1));
    if (trimmed !== "") this.texts.push(trimmed);
  }
}

function rowWithout(
  cells: readonly string[],
  header: readonly string[],
  isHeader: boolean,
  { columns }: TablePrivate,
  found: Found,
): readonly string[] {
  let changed = false;
  const kept = cells.flatMap((cell, i) => {
    const name = nameOf(header[i] ?? "");
    if (columns.some((column) => sameName(column, name))) {
      changed = true;
      found.add(`the column "${name}"`, isHeader ? "" : cell);
      return [];
    }
    if (isHeader || !isMarkedPrivate(cell)) return [cell];
    changed = true;
    found.add(`entries of the column "${name}" marked private`, cell);
    return [""];
  });
  return changed ? kept : cells;
}

function remarkWithout(line: string, { remarks }: TablePrivate, found: Found): string {
  const text = line.trim().slice(1).trim();
  const key = keyOf(line);
  if (key !== undefined && remarks.some((remark) => sameName(remark, key))) {
    found.add(`the remark "${key}"`, text.slice(text.indexOf(":") + 1));
    return `# left out: the remark "${key}"`;
  }
  if (!isMarkedPrivate(text)) return line;
  found.add("remarks marked private", text);
  return "# left out: a remark marked private";
}

/** The word before the colon of a remark. */
function keyOf(line: string): string | undefined {
  return /^\s*#\s*([^:]+):/.exec(line)?.[1]?.trim().replace(/\s+/g, " ").toLowerCase();
}

/** "diameter @ 90 deg [in]" is the column "diameter". */
function nameOf(header: string): string {
  return header
    .replace(/[@[].*$/s, "")
    .trim()
    .replace(/\s+/g, " ")
    .toLowerCase();
}

function isRemark(line: string): boolean {
  return /^\s*#/.test(line);
}

function delimiterOf(header: string): string {
  return header.includes(",") ? "," : header.includes(";") ? ";" : header.includes("\t") ? "\t" : ",";
}

/** The same reading as `readTable`'s, but for quotes that are left open: there nothing can be told apart. */
function recordsOf(text: string, delimiter: string): string[][] {
  try {
    return parse(text, { ...csvForm, delimiter });
  } catch (error) {
    throw new RangeError(
      `tableWithout: the table must be lines of cells, got one that is not: ${error instanceof Error ? error.message : String(error)}`,
    );
  }
}

function rowText(cells: readonly string[], delimiter: string): string {
  return cells
    .map((cell) =>
      /["\n]/.test(cell) || cell.includes(delimiter) ? `"${cell.replaceAll('"', '""')}"` : cell.trim(),
    )
    .join(`${delimiter} `)
    .trimEnd();
}

function lineEndsIn(cells: readonly string[]): number {
  return cells.reduce((sum, cell) => sum + cell.split("\n").length - 1, 0);
}
