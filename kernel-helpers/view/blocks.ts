import type { Drawing } from "./drawing/drawing.js";

/**
 * What a result looks like, free of any output format: the same blocks become rich HTML, plain text,
 * and the report. Plain JSON data, so that an executed notebook can carry them and a report can draw
 * them again without trusting anybody's HTML.
 */
export interface Presentation {
  /** One line that names the result, e.g. "Wear bands of shaft-survey". */
  readonly title: string;
  readonly blocks: readonly Block[];
  /** Printed on a page of its own: a card that is taken to the work. */
  readonly ownPage?: boolean;
}

export type Block =
  | TextBlock
  | FactsBlock
  | TableBlock
  | FigureBlock
  | DrawingBlock
  | VerdictBlock
  | CautionBlock
  | WarningBlock;

/** A sentence or two; plain text, no markup. */
export interface TextBlock {
  readonly type: "text";
  readonly text: string;
}

/** Label and value, one a line: the figures a user acts on, each with its unit and uncertainty. */
export interface FactsBlock {
  readonly type: "facts";
  readonly facts: readonly Fact[];
}

export interface Fact {
  readonly label: string;
  /** Ready to read, with unit and uncertainty, e.g. "2.4332 ± 0.0002 in (95 %)". */
  readonly value: string;
  /** A remark in small type: variant, source, what it means. */
  readonly note?: string;
}

export interface TableBlock {
  readonly type: "table";
  readonly caption?: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly TableRow[];
  /**
   * Rows past this many are folded away in rich views and cut, with the count said, in text. With 0 all rows stand folded
   * under the caption, and print leaves them out: for lists that are kept elsewhere.
   */
  readonly showRows?: number;
  /**
   * Where the table is too wide for a telephone or a terminal, each row stands by itself: its first cell as a heading, every
   * other cell after the title of its column. For tables of few rows that are read row by row. On a telephone a table of up
   * to 14 rows does so by itself where it is too wide; `false` lets it scroll.
   */
  readonly stacked?: boolean;
}

export interface TableColumn {
  readonly title: string;
  /** The unit as shown under the title, e.g. "in". */
  readonly unit?: string;
  /** Numbers line up on the right, words on the left. */
  readonly align: "left" | "right";
}

export interface TableRow {
  readonly cells: readonly string[];
  /** Set for a row that wants the eye: said in words in the row too, never by colour alone. */
  readonly mark?: "warn" | "bad";
}

export interface FigureBlock {
  readonly type: "figure";
  readonly figure: Figure;
  /** What the figure shows, for those who cannot see it. */
  readonly alt: string;
  readonly caption?: string;
}

/** A line drawing: an elevation, a section, a card for the bench. */
export interface DrawingBlock {
  readonly type: "drawing";
  readonly drawing: Drawing;
  /** The same laid out for a telephone, at most 366 px wide, where closing it up by a rule would cover its letters. */
  readonly narrow?: Drawing;
  /** What the drawing shows, for those who cannot see it. */
  readonly alt: string;
  readonly caption?: string;
}

/** A plotly figure specification: plain JSON. Width and height are set in the layout [px]. */
export interface Figure {
  readonly data: readonly Readonly<Record<string, unknown>>[];
  readonly layout: Readonly<Record<string, unknown>>;
}

/** The answer to a yes-or-no question about the machine. */
export interface VerdictBlock {
  readonly type: "verdict";
  readonly outcome: "yes" | "no" | "cannot tell yet";
  /** The answer in the words of the trade, e.g. "fits", "within limits". */
  readonly text: string;
  /** Margin, probability, and the reading to take next where it cannot be told. */
  readonly because: string;
}

/** Where a hand could get hurt. */
export interface CautionBlock {
  readonly type: "caution";
  readonly title: string;
  readonly points: readonly string[];
}

/** The computation's own doubt about its input or its validity. */
export interface WarningBlock {
  readonly type: "warning";
  readonly text: string;
}

/** The MIME type under which an executed notebook carries a presentation. */
export const blocksMimeType = "application/vnd.journalbox.blocks.v1+json";
