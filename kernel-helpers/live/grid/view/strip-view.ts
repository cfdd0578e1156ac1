import { cellAt, lineNumbers } from "../model/index.js";
import type { TableSession } from "../table-session.js";
import type { CellFaults } from "./cell-faults.js";
import type { CellInput } from "./cell-input.js";
import { button, element } from "./element.js";
import { cellFaultId } from "./table-view.js";

/**
 * The strip at the lower edge: what is wrong with the cell one is in, and the keys a tablet's number pad lacks.
 */
export class StripView {
  readonly root: HTMLElement;
  readonly #session: TableSession;
  readonly #faults: CellFaults;
  readonly #where = element("strong");
  readonly #fault = element("span", { id: cellFaultId, class: "fault-text" });
  readonly #none: HTMLButtonElement;

  constructor(session: TableSession, faults: CellFaults, input: CellInput, focus: () => void) {
    this.#session = session;
    this.#faults = faults;
    const { editor } = session;
    this.#none = button("– not taken", () => input.write("-"), { title: "writes - : no reading was taken" });
    const acting = (act: () => void) => (): void => {
      act();
      focus();
    };
    const keys = [
      button("Back", () => input.step(-1), { title: "Shift Enter" }),
      button("Next", () => input.step(1), { class: "main", title: "Enter" }),
      this.#none,
      button("Letters", () => input.switchKeyboard(), {
        class: "touch",
        title: "letters or numbers on the screen's keyboard",
      }),
      button(
        "Row above",
        acting(() => editor.insertRow("above")),
        { title: "Alt Shift ↑" },
      ),
      button(
        "Row below",
        acting(() => editor.insertRow("below")),
        { title: "Alt Shift ↓" },
      ),
      button(
        "Delete row",
        acting(() => editor.deleteLine()),
        { title: "Alt Shift Delete" },
      ),
    ];
    const row = element("div", { class: "keys", role: "group", "aria-label": "Cell and row" }, ...keys);
    // A press on these must not take the focus, and with it the keyboard of a tablet, out of the cell.
    row.addEventListener("pointerdown", (event) => event.preventDefault());
    this.root = element(
      "footer",
      { class: "strip" },
      element("p", { class: "here-text" }, this.#where, " ", this.#fault),
      row,
    );
  }

  draw(): void {
    const { editor } = this.#session;
    const { columns, document, place } = editor;
    this.root.hidden = columns.length === 0;
    const piece = editor.pieceOf(place.line);
    const isRemark = piece !== undefined && document.pieces[piece]!.kind === "remark";
    const look = columns[place.column];
    const line =
      piece === undefined ? "new row" : place.line < 0 ? "header" : `line ${lineNumbers(document)[piece]}`;
    const what = isRemark ? "remark" : (look?.header ?? "");
    this.#where.textContent = `${line}, ${what}`;
    const faults =
      piece === undefined ? [] : [...this.#faults.at(piece, place.column), ...this.#faults.at(piece, -1)];
    this.#fault.textContent = faults.map(({ text }) => text).join(" ");
    this.#fault.className = faults.some(({ isEmpty }) => !isEmpty) ? "fault-text faulty" : "fault-text";
    this.#none.disabled = isRemark || place.line < 0 || look?.holds !== "numbers" || look.isStation;
    if (faults.length === 0 && piece !== undefined && look?.holds === "words" && !isRemark)
      this.#fault.textContent = cellAt(document, piece, place.column);
  }
}
