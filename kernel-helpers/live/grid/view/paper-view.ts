import {
  aboutPieces,
  bodyPieces,
  type ColumnLook,
  cellAt,
  type EmptyForm,
  emptyForm,
  lineNumbers,
  remarkText,
} from "../model/index.js";
import type { TableSession } from "../table-session.js";
import { element } from "./element.js";

/**
 * What a printer gets: the table as it stands, or an empty form to take to the bench. It is made when printing
 * begins, for on the screen not all lines of a long table are drawn.
 */
export class PaperView {
  readonly root: HTMLElement = element("section", { class: "paper", "aria-hidden": "true" });
  readonly #session: TableSession;
  #wantsForm = false;

  constructor(session: TableSession) {
    this.#session = session;
    addEventListener("beforeprint", () => {
      this.root.replaceChildren(...(this.#wantsForm ? this.#form() : this.#table()));
    });
    addEventListener("afterprint", () => {
      this.#wantsForm = false;
      this.root.replaceChildren();
    });
  }

  printForm(): void {
    this.#session.editor.commit();
    this.#wantsForm = true;
    print();
  }

  #table(): readonly Node[] {
    const { editor, saveState } = this.#session;
    const { document, columns } = editor;
    const numbers = lineNumbers(document);
    const remarks = aboutPieces(document).map((at) => {
      const piece = document.pieces[at]!;
      return element("li", {}, piece.kind === "remark" ? remarkText(piece.text) : "");
    });
    const rows = bodyPieces(document).map((at) => {
      const piece = document.pieces[at]!;
      const cells =
        piece.kind === "remark"
          ? [element("td", { colspan: columns.length, class: "words" }, remarkText(piece.text))]
          : columns.map(({ holds }, column) => element("td", { class: holds }, cellAt(document, at, column)));
      return element("tr", {}, element("th", { scope: "row" }, String(numbers[at])), ...cells);
    });
    return [
      element("h1", {}, this.#session.name),
      element(
        "p",
        {},
        saveState === "saved" ? this.#where() : `${this.#where()} Printed before it was saved.`,
      ),
      element("ul", {}, ...remarks),
      tableOf(columns, rows, "line"),
    ];
  }

  #form(): readonly Node[] {
    const { columns, remarks, rows }: EmptyForm = emptyForm(this.#session.editor.document);
    const fields = remarks.map(({ label, value }) =>
      element("div", {}, element("dt", {}, label), element("dd", {}, value)),
    );
    const lines = rows.map((cells) =>
      element("tr", {}, ...cells.map((cell, i) => element("td", { class: columns[i]!.holds }, cell))),
    );
    return [
      element("h1", {}, this.#session.name),
      element("p", {}, `${this.#where()} Write - where no reading was taken.`),
      element("dl", {}, ...fields),
      tableOf(columns, lines),
    ];
  }

  #where(): string {
    const title = this.#session.sheets.rebuild?.title;
    return title === undefined ? "" : `${title}.`;
  }
}

function tableOf(columns: readonly ColumnLook[], rows: readonly HTMLElement[], numbers = ""): HTMLElement {
  const heads = columns.map(({ name, angle, unit, holds }) =>
    element(
      "th",
      { scope: "col", class: holds },
      name,
      angle === "" ? "" : ` @ ${angle}`,
      unit === "" ? "" : ` [${unit}]`,
    ),
  );
  return element(
    "table",
    {},
    element(
      "thead",
      {},
      element("tr", {}, ...(numbers === "" ? [] : [element("th", { scope: "col" }, numbers)]), ...heads),
    ),
    element("tbody", {}, ...rows),
  );
}
