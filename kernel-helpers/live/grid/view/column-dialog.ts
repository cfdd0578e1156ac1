import { headerFaults, nextAngleColumn } from "../model/index.js";
import type { TableEditor } from "../table-editor.js";
import { button, element } from "./element.js";

/** Asks for a new column: readings at another angle to begin with, or whatever header is written. */
export class ColumnDialog {
  readonly root: HTMLDialogElement = element("dialog", {
    class: "column",
    "aria-labelledby": "column-title",
  });
  readonly #editor: TableEditor;
  readonly #focus: () => void;
  readonly #header = element("input", {
    type: "text",
    autocomplete: "off",
    spellcheck: "false",
    "aria-describedby": "column-faults",
  });
  readonly #place = element("select");
  readonly #faults = element("p", { id: "column-faults", class: "fault-text faulty", role: "status" });
  readonly #add: HTMLButtonElement;

  constructor(editor: TableEditor, focus: () => void) {
    this.#editor = editor;
    this.#focus = focus;
    this.#add = button("Add the column", () => this.#finish(), { class: "main" });
    this.root.append(
      element("h2", { id: "column-title" }, "Add a column"),
      element("label", {}, "Header: name, angle, unit", this.#header),
      element(
        "p",
        { class: "hint" },
        "Such as diameter @ 45 deg [in], repeat [-] or remark. A unit stands in square brackets; [-] is a plain number, [text] words.",
      ),
      element("label", {}, "Place", this.#place),
      this.#faults,
      element(
        "div",
        { class: "keys" },
        this.#add,
        button("Cancel", () => this.root.close()),
      ),
    );
    this.#header.addEventListener("input", () => this.#check());
    this.#place.addEventListener("change", () => this.#check());
    this.root.addEventListener("keydown", (event) => {
      if (event.key !== "Enter" || event.target !== this.#header) return;
      event.preventDefault();
      this.#finish();
    });
    this.root.addEventListener("close", () => this.#focus());
  }

  open(): void {
    this.#editor.commit();
    const headers = this.#headers();
    const proposal = nextAngleColumn(headers) ?? { header: "", at: headers.length };
    const places = headers.map((header, i) => element("option", { value: i + 1 }, `behind ${header}`));
    this.#place.replaceChildren(element("option", { value: 0 }, "first"), ...places);
    this.#place.value = String(proposal.at);
    this.#header.value = proposal.header;
    this.#check();
    this.root.showModal();
    this.#header.focus();
    this.#header.select();
  }

  #headers(): readonly string[] {
    return this.#editor.columns.map(({ header }) => header);
  }

  #check(): boolean {
    const faults = headerFaults(this.#headers(), this.#header.value, Number(this.#place.value));
    this.#faults.textContent = faults.join(" ");
    this.#add.disabled = faults.length > 0;
    this.#header.setAttribute("aria-invalid", String(faults.length > 0));
    return faults.length === 0;
  }

  #finish(): void {
    if (!this.#check()) return;
    this.#editor.addColumn(Number(this.#place.value), this.#header.value.trim());
    this.root.close();
  }
}
