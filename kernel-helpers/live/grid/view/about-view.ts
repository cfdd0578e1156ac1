import { aboutPieces, type RemarkLine, remarkParts } from "../model/index.js";
import type { TableSession } from "../table-session.js";
import type { CellFaults } from "./cell-faults.js";
import { button, element, setAttribute } from "./element.js";

/** Labels the table reader or the reader of a report will look for. */
const suggested = ["instrument", "temperature", "part", "who", "when", "station zero", "angle zero"];

/** The remarks above the table, as lines of label and value. */
export class AboutView {
  readonly root: HTMLElement;
  readonly #session: TableSession;
  readonly #faults: CellFaults;
  readonly #lines = element("div", { class: "about-lines" });
  readonly #summary = element("span", { class: "about-short" });
  #pieces = "";

  constructor(session: TableSession, faults: CellFaults) {
    this.#session = session;
    this.#faults = faults;
    const labels = element(
      "datalist",
      { id: "about-labels" },
      ...suggested.map((value) => element("option", { value })),
    );
    this.root = element(
      "details",
      { class: "about" },
      element(
        "summary",
        {},
        element("span", { class: "about-title" }, "About these readings"),
        this.#summary,
      ),
      this.#lines,
      button("Add a line", () => this.#add()),
      labels,
    );
    this.#lines.addEventListener("keydown", (event) => this.#key(event));
    this.#lines.addEventListener("focusout", () => session.editor.commit());
  }

  draw(): void {
    const { document, isTyping } = this.#session.editor;
    const remarks = aboutPieces(document).map((piece) => ({
      piece,
      line: document.pieces[piece] as RemarkLine,
    }));
    const pieces = remarks.map(({ piece }) => piece).join();
    if (pieces !== this.#pieces || this.#lines.children.length !== remarks.length) {
      this.#pieces = pieces;
      this.#lines.replaceChildren(...remarks.map(({ piece }) => this.#line(piece)));
    }
    const said: string[] = [];
    for (const [i, { piece, line }] of remarks.entries()) {
      const row = this.#lines.children[i]!;
      const { label, value } = remarkParts(line.text);
      const faults = this.#faults.at(piece, -1);
      row.classList.toggle("faulty", faults.length > 0);
      const [labelInput, valueInput] = row.querySelectorAll("input");
      for (const [input, text] of [
        [labelInput!, label],
        [valueInput!, value],
      ] as const) {
        if (!(isTyping && input === globalThis.document.activeElement) && input.value !== text)
          input.value = text;
        setAttribute(input, "aria-invalid", faults.length > 0 ? "true" : undefined);
        setAttribute(input, "aria-describedby", faults.length > 0 ? `about-fault-${piece}` : undefined);
      }
      setAttribute(labelInput!, "aria-label", `label of remark ${i + 1}`);
      setAttribute(valueInput!, "aria-label", label === "" ? `remark ${i + 1}` : label);
      const fault = row.querySelector("p")!;
      fault.hidden = faults.length === 0;
      fault.textContent = faults.map(({ text }) => text).join(" ");
      if (/^(instrument|temperature|part|who|by)\b/i.test(label) && value !== "") said.push(value);
      if (faults.length > 0) (this.root as HTMLDetailsElement).open = true;
    }
    this.#summary.textContent = said.length === 0 ? "instrument, temperature, who, when" : said.join(" · ");
  }

  /** Opens the lines and puts the focus into one. */
  focus(piece: number): void {
    (this.root as HTMLDetailsElement).open = true;
    this.#lines.querySelector<HTMLInputElement>(`[data-piece="${piece}"] input:last-of-type`)?.focus();
  }

  #line(piece: number): HTMLElement {
    const { editor } = this.#session;
    const field = (part: "label" | "value", list?: string): HTMLInputElement =>
      element("input", {
        type: "text",
        class: part,
        list,
        autocomplete: "off",
        input: (event: InputEvent) =>
          editor.typeRemark(piece, { [part]: (event.target as HTMLInputElement).value }),
      });
    return element(
      "div",
      { class: "about-line", "data-piece": piece },
      field("label", "about-labels"),
      field("value"),
      button("Delete", () => editor.deleteRemark(piece), {
        class: "quiet",
        "aria-label": "Delete this remark",
      }),
      element("p", { class: "fault-text", id: `about-fault-${piece}`, hidden: true }),
    );
  }

  #add(): void {
    const used = new Set(
      [...this.#lines.querySelectorAll<HTMLInputElement>("input.label")].map(({ value }) =>
        value.toLowerCase(),
      ),
    );
    const isUsed = (label: string): boolean =>
      [...used].some((one) => one === label || one.startsWith(`${label} `));
    this.#session.editor.addRemark(suggested.find((label) => !isUsed(label)) ?? "note");
    const inputs = this.#lines.lastElementChild?.querySelectorAll("input");
    inputs?.[0]?.focus();
    inputs?.[0]?.select();
  }

  #key(event: KeyboardEvent): void {
    const inputs = [...this.#lines.querySelectorAll("input")];
    const at = inputs.indexOf(event.target as HTMLInputElement);
    if (at < 0 || event.isComposing) return;
    if (event.key === "Enter") inputs[at + (event.shiftKey ? -1 : 1)]?.focus();
    else if (event.key === "Escape") this.#session.editor.cancel();
    else return;
    event.preventDefault();
  }
}
