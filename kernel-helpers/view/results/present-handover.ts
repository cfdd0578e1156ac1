import type { Block, Presentation } from "../blocks.js";
import { countText } from "./count-text.js";
import { decisionBlocks, type ShownDecision } from "./present-decision.js";
import { measureTable, openTable, partsTable, type ShownNotes } from "./present-noted.js";

export interface ShownBook {
  readonly kind: "decision book";
  readonly decisions: readonly (ShownDecision & { readonly sheet: string })[];
  readonly refused: readonly {
    readonly sheet: string;
    readonly name: string;
    readonly question: string;
    readonly choice: string;
    readonly why: string;
  }[];
}

export interface ShownLists extends ShownNotes {
  readonly kind: "handover lists";
}

export interface ShownCautions {
  readonly kind: "cautions in force";
  readonly cautions: readonly {
    readonly title: string;
    readonly points: readonly string[];
    readonly sheets: readonly string[];
  }[];
}

export interface ShownHandover {
  readonly kind: "handover";
  readonly title: string;
  readonly sheets: readonly { readonly name: string; readonly ended: string }[];
  readonly book: ShownBook;
  readonly lists: ShownLists;
  readonly cautions: ShownCautions;
  readonly standings: readonly { readonly of: string; readonly holds: boolean; readonly text: string }[];
  readonly sources: readonly string[];
}

/** What there is to hand over, and whether it still stands on the files as they are. */
export function presentHandover(handover: ShownHandover): Presentation {
  const { title, sheets, book, lists, cautions, standings, sources } = handover;
  const ran = sheets.filter(({ ended }) => ended === "ran through").length;
  const [holds, others] = [standings.filter((one) => one.holds), standings.filter((one) => !one.holds)];
  return Object.freeze<Presentation>({
    title: `Handover of ${title}`,
    blocks: [
      {
        type: "facts",
        facts: [
          { label: "worksheets", value: `${ran} of ${sheets.length} ran through` },
          { label: "decisions", value: countOr(book.decisions.length, "none is on record yet") },
          { label: "still open", value: countOr(lists.open.length, "nothing") },
          { label: "parts and consumables", value: countOr(lists.parts.length, "none is noted") },
          { label: "still to be measured", value: countOr(lists.measure.length, "nothing") },
          { label: "cautions in force", value: countOr(cautions.cautions.length, "none was shown") },
          { label: "sources named", value: countOr(sources.length, "none") },
        ],
      },
      {
        type: "verdict",
        outcome: standings.length === 0 ? "cannot tell yet" : others.length === 0 ? "yes" : "no",
        text: standingText(standings.length, others.length),
        because: `${countText(holds.length, "record or decision", "records and decisions")} of ${standings.length} ${holds.length === 1 ? "does" : "do"}, by their hashes. That each figure comes out again is checked by running everything again: journalbox audit.`,
      },
      ...table(
        "Does not stand on the files as they are",
        ["what", "why"],
        others.map(({ of, text }) => [of, text]),
      ),
      ...table(
        "Not run through",
        ["worksheet", "state"],
        sheets.filter(({ ended }) => ended !== "ran through").map(({ name, ended }) => [name, ended]),
      ),
    ],
  });
}

/** All decisions, one after the other. */
export function presentBook({ decisions, refused }: ShownBook): Presentation {
  const blocks: Block[] = decisions.flatMap((decision): readonly Block[] => [
    { type: "text", text: `${decision.question} (${decision.name}, in ${decision.sheet})` },
    ...decisionBlocks(decision),
  ]);
  for (const { sheet, question, choice, why } of refused)
    blocks.push({
      type: "warning",
      text: `${sheet} wanted to take “${choice}” for “${question}”, and may not: ${why}.`,
    });
  if (blocks.length === 0) blocks.push({ type: "text", text: "No decision is on record yet." });
  return Object.freeze<Presentation>({
    title: `Decision book: ${countText(decisions.length, "decision")}`,
    blocks,
  });
}

/** What is open, what is needed, and what is to be measured. */
export function presentLists({ open, parts, measure }: ShownLists): Presentation {
  const tables = [openTable(open), partsTable(parts), measureTable(measure)].flatMap((block) => block ?? []);
  const nothing: Block = { type: "text", text: "No sheet has noted anything yet." };
  return Object.freeze<Presentation>({
    title: "Open items, parts, and readings to be taken",
    blocks: tables.length === 0 ? [nothing] : tables,
  });
}

/** The cautions, each once, with the sheets that showed it. */
export function presentCautions({ cautions }: ShownCautions): Presentation {
  const nothing: Block = { type: "text", text: "No sheet has shown a caution yet." };
  return Object.freeze<Presentation>({
    title: "Cautions in force",
    blocks:
      cautions.length === 0
        ? [nothing]
        : cautions.map(({ title, points, sheets }) => ({
            type: "caution",
            title: `${title} (${sheets.join(", ")})`,
            points,
          })),
  });
}

function standingText(all: number, not: number): string {
  if (all === 0) return "nothing is on record yet";
  return `${not === 0 ? "" : "not "}all on record stands on the files as they are`;
}

function countOr(count: number, none: string): string {
  return count === 0 ? none : String(count);
}

function table(
  caption: string,
  titles: readonly string[],
  rows: readonly (readonly string[])[],
): readonly Block[] {
  if (rows.length === 0) return [];
  return [
    {
      type: "table",
      caption,
      columns: titles.map((title) => ({ title, align: "left" })),
      rows: rows.map((cells) => ({ cells, mark: "warn" })),
    },
  ];
}
