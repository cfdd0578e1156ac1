import type { TableEditor } from "../table-editor.js";
import { button, element } from "./element.js";

const directionKey = "journalbox/entry-direction";

const keys: readonly (readonly [string, string])[] = [
  ["Enter, Tab", "on to the next cell; with Shift back"],
  ["arrows, Home, End, Page Up, Page Down", "move; Ctrl Home and Ctrl End to the corners"],
  ["typing", "replaces what stands in the cell; F2, or a second tap, edits it"],
  ["Escape", "takes back what was typed; pressed again, Tab leaves the table"],
  ["Ctrl Z, Ctrl Shift Z", "undo, redo"],
  ["Ctrl S", "save"],
  ["Alt Shift ↑, Alt Shift ↓", "a row above, a row below"],
  ["Alt Shift Delete", "delete the row"],
  ["-", "in a cell: no reading was taken"],
];

/** Between remarks and table: the way Enter goes, a new column, the form to print, the keys. */
export class ToolsView {
  readonly root: HTMLElement;
  readonly #editor: TableEditor;
  readonly #ways: readonly HTMLInputElement[];

  constructor(editor: TableEditor, addColumn: () => void, printForm: () => void) {
    this.#editor = editor;
    editor.direction = storedDirection();
    const way = (direction: "across" | "down", text: string): HTMLLabelElement =>
      element(
        "label",
        {},
        element("input", {
          type: "radio",
          name: "way",
          value: direction,
          change: () => this.#turn(direction),
        }),
        element("span", {}, text),
      );
    const ways = [way("across", "across →"), way("down", "down ↓")];
    this.#ways = ways.map((label) => label.querySelector("input")!);
    const list = element(
      "dl",
      {},
      ...keys.map(([key, does]) => element("div", {}, element("dt", {}, key), element("dd", {}, does))),
    );
    this.root = element(
      "div",
      { class: "tools" },
      element("fieldset", { class: "way" }, element("legend", {}, "Enter goes"), ...ways),
      button("Add a column", addColumn),
      button("Print an empty form", printForm),
      element("details", { class: "help" }, element("summary", {}, "Keys"), list),
      element(
        "p",
        { id: "grid-keys", class: "unseen" },
        "Enter or Tab goes on to the next cell. Escape, then Tab, leaves the table.",
      ),
    );
  }

  draw(): void {
    this.root.hidden = this.#editor.columns.length === 0;
    for (const input of this.#ways) input.checked = input.value === this.#editor.direction;
  }

  #turn(direction: "across" | "down"): void {
    this.#editor.direction = direction;
    try {
      localStorage.setItem(directionKey, direction);
    } catch {
      // It is asked again next time.
    }
  }
}

function storedDirection(): "across" | "down" {
  try {
    return localStorage.getItem(directionKey) === "down" ? "down" : "across";
  } catch {
    return "across";
  }
}
