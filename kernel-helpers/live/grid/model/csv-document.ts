/**
 * A CSV file as an editor must see it: every character of it, cut into pieces that put together give the file
 * again. Nothing is tidied: blank lines, remarks, spaces, quotes and line ends stay as they were written.
 */
export interface CsvDocument {
  readonly kind: "csv-document";
  /** The byte order mark the text begins with, or "". */
  readonly mark: string;
  /** What parts the cells: a comma, or the semicolon or tab the header is written with. */
  readonly delimiter: string;
  /** How new lines end: as the first line of the file does; \n in an empty file. */
  readonly lineEnd: string;
  readonly pieces: readonly Piece[];
  /** Which piece is the header; -1 where there is none. */
  readonly header: number;
}

/** A blank line, a line that begins with #, or a row; each with the line end behind it. */
export type Piece = Blank | RemarkLine | Row;

export interface Blank {
  readonly kind: "blank";
  readonly text: string;
  readonly end: string;
}

export interface RemarkLine {
  readonly kind: "remark";
  /** The whole line with its #. */
  readonly text: string;
  readonly end: string;
}

export interface Row {
  readonly kind: "row";
  /** The cells as written, with their spaces and quotes; `cellValue` reads them. */
  readonly cells: readonly string[];
  readonly end: string;
}

/**
 * The text of a document. `writeCsv(parseCsv(text))` is `text`, whatever it holds.
 *
 * @example writeCsv(parseCsv("station [in],diameter [in]\r\n1,2.4373")) // "station [in],diameter [in]\r\n1,2.4373"
 */
export function writeCsv(document: CsvDocument): string {
  const { mark, pieces, delimiter } = document;
  return mark + pieces.map((piece) => pieceText(piece, delimiter) + piece.end).join("");
}

/** A piece as it stands in the file, without the line end behind it. */
export function pieceText(piece: Piece, delimiter: string): string {
  return piece.kind === "row" ? piece.cells.join(delimiter) : piece.text;
}

/** The header's row, or undefined. */
export function headerRow(document: CsvDocument): Row | undefined {
  const piece = document.pieces[document.header];
  return piece?.kind === "row" ? piece : undefined;
}

/** The line of the file each piece begins on, counted from 1; the last entry is the line behind them all. */
export function lineNumbers(document: CsvDocument): readonly number[] {
  const numbers = [1];
  let line = 1;
  for (const piece of document.pieces) {
    line += piece.end === "" ? 0 : 1;
    if (piece.kind === "row") for (const cell of piece.cells) line += countLineEnds(cell);
    numbers.push(line);
  }
  return numbers;
}

function countLineEnds(text: string): number {
  if (!text.startsWith('"') && !/[\r\n]/.test(text)) return 0;
  return text.match(/\r\n?|\n/g)?.length ?? 0;
}
