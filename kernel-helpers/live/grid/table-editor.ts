import {
  aboutPieces,
  appendRow,
  bodyPieces,
  type ColumnLook,
  type CsvDocument,
  cellAt,
  columnLook,
  deletePiece,
  type History,
  headerRow,
  insertColumn,
  insertRemark,
  insertRow,
  type Move,
  movedPlace,
  nextPlace,
  type Place,
  parseCsv,
  record,
  redo,
  setBlock,
  setCell,
  setRemark,
  startHistory,
  startTable,
  type TableShape,
  undo,
  writeCsv,
} from "./model/index.js";

/** What a listener is told: that the text or the place changed, or a sentence to say. */
export interface EditorNews {
  readonly document?: true;
  readonly place?: true;
  readonly say?: string;
}

interface Typing {
  readonly document: CsvDocument;
  readonly what: string;
  readonly place: Place;
}

/**
 * The table being edited: its text with all steps back and forward, the cell one is in, and what is being typed
 * there. It knows no page and no server.
 */
export class TableEditor {
  #history: History<Place> = startHistory(parseCsv(""));
  /** What is being typed: the document as it would be, until it is recorded as a step. */
  #typing: Typing | undefined;
  /** Where it is typed: the cell one is in, or a part of a remark. */
  #target = "";
  #place: Place = { line: 0, column: 0 };
  #direction: "across" | "down" = "across";
  readonly #listeners = new Set<(news: EditorNews) => void>();

  /** The table as it stands, with what is being typed. */
  get document(): CsvDocument {
    return this.#typing?.document ?? this.#history.present;
  }

  get text(): string {
    return writeCsv(this.document);
  }

  get place(): Place {
    return this.#place;
  }

  get isTyping(): boolean {
    return this.#typing !== undefined;
  }

  get canUndo(): boolean {
    return this.isTyping || this.#history.past.length > 0;
  }

  get canRedo(): boolean {
    return !this.isTyping && this.#history.future.length > 0;
  }

  get direction(): "across" | "down" {
    return this.#direction;
  }

  set direction(direction: "across" | "down") {
    this.#direction = direction;
    this.#tell({ place: true });
  }

  get columns(): readonly ColumnLook[] {
    const { document } = this;
    const count = headerRow(document)?.cells.length ?? 0;
    return Array.from({ length: count }, (_, column) =>
      columnLook(cellAt(document, document.header, column)),
    );
  }

  get shape(): TableShape {
    const lines = bodyPieces(this.document);
    return {
      lines: lines.length,
      columns: this.columns.length,
      isRemark: (line) => this.document.pieces[lines[line]!]?.kind === "remark",
    };
  }

  listen(listener: (news: EditorNews) => void): void {
    this.#listeners.add(listener);
  }

  /** Begins with a text; there is nothing to undo then. */
  open(text: string): void {
    this.#typing = undefined;
    this.#history = startHistory(parseCsv(text));
    this.#place = this.#placeInside({ line: 0, column: 0 });
    this.#tell({ document: true, place: true });
  }

  /** Puts another text in place of all, as one step that can be undone. */
  replaceText(text: string, what: string): void {
    this.commit();
    this.#record(parseCsv(text), what);
  }

  moveTo(place: Place): void {
    if (place.line === this.#place.line && place.column === this.#place.column) return;
    this.commit();
    this.#place = this.#placeInside(place);
    this.#tell({ place: true });
  }

  move(move: Move): void {
    this.moveTo(movedPlace(this.#place, move, this.shape));
  }

  /** On to the next cell, or back; false where there is none. */
  step(step: 1 | -1): boolean {
    this.commit();
    const next = nextPlace(this.#place, this.#direction, step, this.shape);
    if (next !== undefined) this.moveTo(next);
    return next !== undefined;
  }

  /** The piece a line of the grid shows: −1 is the header; undefined for the new row. */
  pieceOf(line: number): number | undefined {
    return line < 0 ? this.document.header : bodyPieces(this.document)[line];
  }

  /** Which line of the grid shows a piece, −1 the header; undefined where it is none of the grid's. */
  lineOf(piece: number): number | undefined {
    if (piece === this.document.header) return -1;
    const line = bodyPieces(this.document).indexOf(piece);
    return line < 0 ? undefined : line;
  }

  /** Types into the cell one is in; in the new row this makes a row. */
  type(value: string): void {
    this.#typeAt("cell");
    const { present } = this.#history;
    const { line, column } = this.#place;
    const piece = line < 0 ? present.header : bodyPieces(present)[line];
    const where = piece === undefined ? undefined : present.pieces[piece];
    let document = present;
    if (where?.kind === "row") document = setCell(present, piece!, column, value);
    else if (where?.kind === "remark") document = setRemark(present, piece!, { text: value });
    else if (value.trim() !== "") document = appendRow(present, column, value);
    this.#typeDocument(document, where === undefined ? "new row" : "cell");
  }

  /** Types into a remark above the table. */
  typeRemark(piece: number, change: { readonly label?: string; readonly value?: string }): void {
    this.#typeAt(`remark ${piece} ${Object.keys(change).join()}`);
    this.#typeDocument(setRemark(this.#history.present, piece, change), "remark");
  }

  /** Keeps what was typed, as one step. */
  commit(): void {
    const typing = this.#typing;
    this.#typing = undefined;
    if (typing === undefined) return;
    this.#history = record(this.#history, typing.document, typing.what, typing.place);
    this.#tell({ document: true });
  }

  /** Drops what was typed since the cell was entered. */
  cancel(): void {
    this.#typing = undefined;
    this.#tell({ document: true });
  }

  undo(): void {
    this.commit();
    this.#travel(undo(this.#history), "Undone");
  }

  redo(): void {
    this.commit();
    this.#travel(redo(this.#history), "Done again");
  }

  insertRow(where: "above" | "below"): void {
    this.commit();
    const line = Math.max(where === "above" ? this.#place.line : this.#place.line + 1, 0);
    const { document } = this;
    const lines = bodyPieces(document);
    const at = lines[line] ?? (lines.at(-1) ?? document.header) + 1;
    this.#place = { line: Math.min(line, lines.length), column: 0 };
    this.#record(insertRow(document, at), "row put in");
  }

  /** Deletes the row or remark one is in; the header and the new row stay. */
  deleteLine(): void {
    this.commit();
    const piece = this.#place.line < 0 ? undefined : this.pieceOf(this.#place.line);
    if (piece === undefined) {
      this.#tell({ say: "There is no row here to delete." });
      return;
    }
    const what = this.document.pieces[piece]!.kind === "row" ? "row deleted" : "remark deleted";
    this.#record(deletePiece(this.document, piece), what);
  }

  /** Writes a pasted block from the cell one is in; says so and changes nothing where it is too wide. */
  paste(block: readonly (readonly string[])[]): void {
    this.commit();
    const { columns } = this;
    const { line, column } = this.#place;
    const headers = columns.map(({ header }) => header);
    const [first] = block;
    const repeatsHeader = first!.some(
      (cell) => cell !== "" && headers.slice(column).includes(cell.replace(/\s+/g, " ")),
    );
    const rows = repeatsHeader && line >= 0 ? block.slice(1) : block;
    const width = Math.max(...rows.map((row) => row.length), 0);
    const room = columns.length - column;
    const refusal =
      line < 0
        ? "Nothing was pasted: begin in a row below the header."
        : width > room
          ? `Nothing was pasted: the block is ${width} columns wide, and from here there are ${room}. Begin further left, or add a column.`
          : undefined;
    if (refusal !== undefined) this.#tell({ say: refusal });
    else this.#record(setBlock(this.document, line, column, rows), `${rows.length} × ${width} cells pasted`);
  }

  addColumn(at: number, header: string): void {
    this.commit();
    this.#place = { line: Math.max(0, this.#place.line), column: at };
    this.#record(insertColumn(this.document, at, header), `column "${header}" added`);
  }

  /** A remark above the table, behind those that are there. */
  addRemark(label: string, value = ""): void {
    this.commit();
    const last = aboutPieces(this.document).at(-1) ?? -1;
    this.#record(insertRemark(this.document, last + 1, `# ${label}: ${value}`.trimEnd()), "remark added");
  }

  deleteRemark(piece: number): void {
    this.commit();
    this.#record(deletePiece(this.document, piece), "remark deleted");
  }

  /** Gives a table without header one. */
  start(headers: readonly string[]): void {
    this.commit();
    this.#place = { line: 0, column: 0 };
    this.#record(startTable(this.document, headers), "table begun");
  }

  /** What was typed elsewhere is a step of its own. */
  #typeAt(target: string): void {
    if (target !== this.#target) this.commit();
    this.#target = target;
  }

  #typeDocument(document: CsvDocument, what: string): void {
    this.#typing = document === this.#history.present ? undefined : { document, what, place: this.#place };
    this.#tell({ document: true });
  }

  #record(document: CsvDocument, what: string): void {
    this.#history = record(this.#history, document, what, this.#place);
    this.#place = this.#placeInside(this.#place);
    this.#tell({ document: true, place: true, say: `${what[0]!.toUpperCase()}${what.slice(1)}.` });
  }

  #travel(travelled: ReturnType<typeof undo<Place>>, said: string): void {
    if (travelled === undefined) {
      this.#tell({ say: `${said}: nothing more.` });
      return;
    }
    this.#history = travelled.history;
    this.#place = this.#placeInside(travelled.step.place);
    this.#tell({ document: true, place: true, say: `${said}: ${travelled.step.what}.` });
  }

  #placeInside({ line, column }: Place): Place {
    const { lines, columns } = this.shape;
    return {
      line: Math.min(Math.max(-1, line), lines),
      column: Math.min(Math.max(0, column), Math.max(0, columns - 1)),
    };
  }

  #tell(news: EditorNews): void {
    for (const listener of this.#listeners) listener(news);
  }
}
