import type { Block, Presentation, TableBlock } from "../blocks.js";
import { countText } from "./count-text.js";
import { figureText, type ShownFigure } from "./figure-text.js";

/** Open items, parts and consumables, readings still to be taken; with the sheet that noted each, in a handover. */
export interface ShownNotes {
  readonly open: readonly { readonly what: string; readonly waitsFor?: string; readonly sheet?: string }[];
  readonly parts: readonly {
    readonly what: string;
    readonly count?: ShownFigure;
    readonly size?: ShownFigure;
    readonly for?: string;
    readonly sheet?: string;
  }[];
  readonly measure: readonly {
    readonly what: string;
    readonly where?: ShownFigure;
    readonly with?: string;
    readonly why?: string;
    readonly sheet?: string;
  }[];
}

/** What a sheet noted for whoever takes over. */
export interface ShownNoted extends ShownNotes {
  readonly kind: "noted";
  readonly sheet: string;
  readonly file: string;
}

/** What was noted, list by list. */
export function presentNoted(noted: ShownNoted): Presentation {
  const count = noted.open.length + noted.parts.length + noted.measure.length;
  return Object.freeze<Presentation>({
    title: `Noted for the handover: ${countText(count, "entry", "entries")}`,
    blocks: [openTable(noted.open), partsTable(noted.parts), measureTable(noted.measure)].filter(
      (block): block is TableBlock => block !== undefined,
    ) satisfies readonly Block[],
  });
}

/** Questions still open; undefined for none. */
export function openTable(open: ShownNotes["open"]): TableBlock | undefined {
  return table("Still open", ["question", "waits for", "noted in"], open, ({ what, waitsFor, sheet }) => [
    what,
    waitsFor,
    sheet,
  ]);
}

/** Parts and consumables; undefined for none. */
export function partsTable(parts: ShownNotes["parts"]): TableBlock | undefined {
  return table("Parts and consumables", ["what", "how many", "size", "for", "noted in"], parts, (part) => [
    part.what,
    part.count,
    part.size,
    part.for,
    part.sheet,
  ]);
}

/** Readings still to be taken; undefined for none. */
export function measureTable(measure: ShownNotes["measure"]): TableBlock | undefined {
  return table("Still to be measured", ["what", "where", "with", "why", "noted in"], measure, (reading) => [
    reading.what,
    reading.where,
    reading.with,
    reading.why,
    reading.sheet,
  ]);
}

/** A table without the columns in which nothing stands. */
function table<T>(
  caption: string,
  titles: readonly string[],
  entries: readonly T[],
  cellsOf: (entry: T) => readonly (ShownFigure | undefined)[],
): TableBlock | undefined {
  if (entries.length === 0) return undefined;
  const rows = entries.map((entry) =>
    cellsOf(entry).map((cell) => (cell === undefined ? "" : figureText(cell))),
  );
  const filled = titles.map((_, column) => column === 0 || rows.some((row) => row[column] !== ""));
  return {
    type: "table",
    caption,
    columns: titles.filter((_, i) => filled[i]).map((title) => ({ title, align: "left" })),
    rows: rows.map((row) => ({ cells: row.filter((_, i) => filled[i]) })),
    stacked: true,
  };
}
