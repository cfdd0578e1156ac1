import {
  bodyPieces,
  type ColumnLook,
  cellAt,
  lineNumbers,
  type PlacedFault,
  remarkText,
  visibleRange,
} from "../model/index.js";
import type { TableSession } from "../table-session.js";
import type { CellFaults } from "./cell-faults.js";
import { element, setAttribute } from "./element.js";

/** The id of the text that describes the fault of the cell one is in. */
export const cellFaultId = "cell-fault";

/**
 * Draws the table: the head, a line for each row and remark, and the empty row that goes on. Lines are drawn
 * where they are looked at; the line one is in always is.
 */
export class TableView {
  readonly scroller: HTMLElement;
  readonly table: HTMLTableElement;
  readonly #session: TableSession;
  readonly #faults: CellFaults;
  readonly #columns = element("colgroup");
  readonly #head: HTMLTableRowElement = element("tr", { role: "row", "aria-rowindex": 1 });
  readonly #body = element("tbody");
  readonly #lines = new Map<number, HTMLTableRowElement>();
  #headers = "";

  constructor(session: TableSession, faults: CellFaults) {
    this.#session = session;
    this.#faults = faults;
    this.table = element(
      "table",
      { role: "grid", "aria-label": `Readings of ${session.name}`, "aria-describedby": "grid-keys" },
      this.#columns,
      element("thead", {}, this.#head),
      this.#body,
    );
    this.scroller = element("div", { class: "scroller" }, this.table);
    this.scroller.addEventListener("scroll", () => this.#drawLines(), { passive: true });
    new ResizeObserver(() => this.#drawLines()).observe(this.scroller);
  }

  /** The input of a cell, drawn or undefined. */
  inputAt(line: number, column: number): HTMLInputElement | undefined {
    const row = line < 0 ? this.#head : this.#lines.get(line);
    const inputs = row?.querySelectorAll("input");
    return inputs?.[inputs.length === 1 ? 0 : column];
  }

  /** The cell an input stands for. */
  placeOf(input: Element): { readonly line: number; readonly column: number } | undefined {
    const row = input.closest("tr");
    const cell = input.closest("td, th");
    if (row === null || cell === null || !this.table.contains(row)) return undefined;
    return { line: Number(row.dataset.line), column: Number((cell as HTMLElement).dataset.column) };
  }

  /** Puts the focus into the cell one is in, and the cell where it can be seen unless the page is to stay. */
  focus(pageStays = false): void {
    const { line, column } = this.#session.editor.place;
    this.#drawLines();
    const input = this.inputAt(line, column);
    input?.focus({ preventScroll: true });
    input?.select();
    if (!pageStays) this.reveal();
  }

  draw(): void {
    const { editor } = this.#session;
    this.table.hidden = editor.columns.length === 0;
    this.#drawHead(editor.columns);
    this.#drawLines();
  }

  #drawHead(columns: readonly ColumnLook[]): void {
    setAttribute(this.table, "aria-colcount", String(columns.length + 1));
    const headers = JSON.stringify(columns.map(({ holds, isStation }) => [holds, isStation]));
    if (headers !== this.#headers) {
      this.#headers = headers;
      this.#columns.replaceChildren(
        element("col", { class: "line-number" }),
        ...columns.map(({ holds }) => element("col", { class: holds })),
      );
      const words = columns.filter(({ holds }) => holds === "words").length;
      this.table.style.setProperty("--word-columns", String(words));
      this.table.style.setProperty("--number-columns", String(columns.length - words));
      this.#head.dataset.line = "-1";
      this.#head.replaceChildren(
        element(
          "th",
          { class: "line-number", scope: "col", role: "columnheader", title: "line of the file" },
          "line",
        ),
        ...columns.map((_, column) => this.#headCell(column)),
      );
      this.#lines.clear();
      this.#body.replaceChildren();
    }
    const { document, place } = this.#session.editor;
    for (const [column, look] of columns.entries()) {
      const cell = this.#head.children[column + 1] as HTMLElement;
      cell.className = cellClass(look);
      const [name, angle, unit] = cell.querySelectorAll("span");
      name!.textContent = look.name || "no name";
      angle!.textContent = look.angle === "" ? "" : `@ ${look.angle}`;
      angle!.hidden = look.angle === "";
      unit!.textContent = look.unit;
      const input = cell.querySelector("input")!;
      this.#fill(input, look.header, place.line === -1 && place.column === column, cell, [
        ...this.#faults.at(document.header, column),
        ...(column === 0 ? this.#faults.at(document.header, -1) : []),
      ]);
      setAttribute(input, "aria-label", `header of column ${column + 1}: ${look.header}`);
    }
  }

  #headCell(column: number): HTMLElement {
    return element(
      "th",
      { scope: "col", role: "columnheader", "data-column": column, "aria-colindex": column + 2 },
      element(
        "div",
        { class: "head", "aria-hidden": "true" },
        element("span"),
        element("span"),
        element("span"),
      ),
      element("input", {
        type: "text",
        tabindex: -1,
        autocomplete: "off",
        spellcheck: "false",
        enterkeyhint: "next",
      }),
    );
  }

  #drawLines(): void {
    const { editor } = this.#session;
    const columns = editor.columns;
    if (columns.length === 0) return;
    const pieces = bodyPieces(editor.document);
    const numbers = lineNumbers(editor.document);
    const count = pieces.length + 1;
    setAttribute(this.table, "aria-rowcount", String(count + 1));
    const rowHeight = this.#lines.values().next().value?.offsetHeight ?? 0;
    const range = visibleRange(count, this.scroller.scrollTop, this.scroller.clientHeight, rowHeight);
    const wanted = new Set<number>();
    for (let line = range.start; line < range.end; line++) wanted.add(line);
    if (editor.place.line >= 0) wanted.add(editor.place.line);
    for (const [line, row] of this.#lines)
      if (!wanted.has(line)) {
        row.remove();
        this.#lines.delete(line);
      }
    this.#body.querySelectorAll(".gap").forEach((gap) => {
      gap.remove();
    });
    let next = 0;
    let before: Element | null = null;
    for (const line of [...wanted].sort((a, b) => a - b)) {
      const row = this.#lines.get(line) ?? element("tr", { role: "row", "data-line": line });
      this.#lines.set(line, row);
      this.#fillLine(row, line, pieces[line], numbers, columns);
      if (line > next) before = this.#placeBehind(before, gapOf(line - next, columns.length));
      before = this.#placeBehind(before, row);
      next = line + 1;
    }
    if (next < count) this.#placeBehind(before, gapOf(count - next, columns.length));
  }

  /** Moves a row only where it does not stand there already: a row that is moved loses the focus in it. */
  #placeBehind(before: Element | null, row: Element): Element {
    const follows = before === null ? this.#body.firstElementChild : before.nextElementSibling;
    if (follows !== row) this.#body.insertBefore(row, follows);
    return row;
  }

  #fillLine(
    row: HTMLTableRowElement,
    line: number,
    piece: number | undefined,
    numbers: readonly number[],
    columns: readonly ColumnLook[],
  ): void {
    const { document, place } = this.#session.editor;
    const shown = piece === undefined ? undefined : document.pieces[piece];
    const kind = shown === undefined ? "new" : shown.kind;
    const isRemark = kind === "remark";
    const cellCount = isRemark ? 1 : columns.length;
    setAttribute(row, "aria-rowindex", String(line + 2));
    // The new row becomes an ordinary one at its first letter: the input one types into must stay.
    if (row.children.length !== cellCount + 1 || isRemark !== (row.className === "remark")) {
      row.replaceChildren(
        element("th", { class: "line-number", scope: "row", role: "rowheader", "aria-colindex": 1 }),
        ...Array.from({ length: cellCount }, (_, column) => bodyCell(column, isRemark ? columns.length : 1)),
      );
    }
    setAttribute(row, "class", kind);
    const number = piece === undefined ? "new" : String(numbers[piece]);
    const label = row.children[0]!;
    if (label.textContent !== number) label.textContent = number;
    const lineFaults = piece === undefined ? [] : this.#faults.at(piece, -1);
    setAttribute(label, "class", lineFaults.length > 0 ? "line-number faulty" : "line-number");
    for (let column = 0; column < cellCount; column++) {
      const cell = row.children[column + 1] as HTMLElement;
      const input = cell.querySelector("input")!;
      const look = columns[column]!;
      const value =
        shown?.kind === "remark"
          ? remarkText(shown.text)
          : piece === undefined
            ? ""
            : cellAt(document, piece, column);
      const faults = piece === undefined || isRemark ? [] : this.#faults.at(piece, column);
      cell.className = isRemark ? "remark-cell" : cellClass(look);
      setAttribute(input, "inputmode", isRemark || look.holds === "words" ? "text" : "decimal");
      const what = isRemark ? "remark" : look.header;
      setAttribute(input, "aria-label", `${what}, ${piece === undefined ? "new row" : `line ${number}`}`);
      const isHere = place.line === line && (isRemark || place.column === column);
      const all = column === 0 ? [...faults, ...lineFaults] : faults;
      this.#fill(input, value.replace(/\n/g, " ⏎ "), isHere, cell, all);
    }
  }

  #fill(
    input: HTMLInputElement,
    value: string,
    isHere: boolean,
    cell: HTMLElement,
    faults: readonly PlacedFault[],
  ): void {
    const isTypedInto = this.#session.editor.isTyping && input === globalThis.document.activeElement;
    if (!isTypedInto && input.value !== value) input.value = value;
    setAttribute(input, "title", value.length > 12 ? value : undefined);
    setAttribute(input, "tabindex", isHere ? "0" : "-1");
    const wrong = faults.filter(({ isEmpty }) => !isEmpty);
    cell.classList.toggle("here", isHere);
    cell.classList.toggle("faulty", wrong.length > 0);
    cell.classList.toggle("to-write", faults.length > 0 && wrong.length === 0);
    setAttribute(input, "aria-invalid", wrong.length > 0 ? "true" : undefined);
    const described =
      faults.length === 0
        ? undefined
        : isHere
          ? cellFaultId
          : `fault-${faults[0]!.piece}-${faults[0]!.column}`;
    setAttribute(input, "aria-describedby", described);
  }

  /** Brings the cell one is in out from under the head and the first columns, which stay where they are. */
  reveal(): void {
    const { line, column } = this.#session.editor.place;
    const cell = this.inputAt(line, column)?.closest("td, th");
    cell?.scrollIntoView({ block: "nearest", inline: "nearest" });
  }
}

function bodyCell(column: number, span: number): HTMLElement {
  return element(
    "td",
    {
      role: "gridcell",
      "data-column": column,
      "aria-colindex": column + 2,
      colspan: span > 1 ? span : undefined,
    },
    element("input", {
      type: "text",
      tabindex: -1,
      autocomplete: "off",
      spellcheck: "false",
      enterkeyhint: "next",
    }),
  );
}

function cellClass({ holds, isStation }: ColumnLook): string {
  return isStation ? `${holds} station` : holds;
}

function gapOf(lines: number, columns: number): HTMLElement {
  return element(
    "tr",
    { class: "gap", "aria-hidden": "true" },
    element("td", { colspan: columns + 1, style: `height:calc(var(--row) * ${lines})` }),
  );
}
