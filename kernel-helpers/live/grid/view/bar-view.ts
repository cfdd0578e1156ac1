import type { SaveState, TableSession } from "../table-session.js";
import { button, element } from "./element.js";

const saveTexts: Readonly<Record<SaveState, string>> = {
  saved: "saved",
  unsaved: "not saved yet",
  saving: "saving …",
  waiting: "will be saved when the server is back",
};

/** The bar at the upper edge: where one is, whether it is saved, and undo, redo, save. */
export class BarView {
  readonly root: HTMLElement;
  readonly #session: TableSession;
  readonly #state = element("span", { class: "save-state" });
  readonly #undo: HTMLButtonElement;
  readonly #redo: HTMLButtonElement;
  readonly #save: HTMLButtonElement;

  constructor(session: TableSession, save: () => void, focus: () => void) {
    this.#session = session;
    const { editor } = session;
    const acting = (act: () => void) => (): void => {
      act();
      focus();
    };
    this.#undo = button(
      "Undo",
      acting(() => editor.undo()),
      { title: "Ctrl Z" },
    );
    this.#redo = button(
      "Redo",
      acting(() => editor.redo()),
      { title: "Ctrl Shift Z" },
    );
    this.#save = button("Save", save, { class: "main", title: "Ctrl S" });
    this.root = element(
      "header",
      { class: "bar" },
      element("a", { href: "/", class: "back" }, "All sheets and tables"),
      element("div", { class: "title" }, element("h1", {}, session.name), this.#state),
      element("div", { class: "keys" }, this.#undo, this.#redo, this.#save),
    );
  }

  draw(): void {
    const { editor, saveState, conflict, isNew, isLoaded } = this.#session;
    const isBlank = saveState === "saved" && (isNew || !isLoaded);
    const settled = isBlank ? (isLoaded ? "no file yet" : "being loaded …") : saveTexts[saveState];
    const text = conflict === undefined ? settled : "not saved: another text stands on disk";
    this.#state.textContent = text;
    this.#state.dataset.state = conflict === undefined ? saveState : "conflict";
    this.#undo.disabled = !editor.canUndo;
    this.#redo.disabled = !editor.canRedo;
    this.#save.disabled = saveState === "saving" || (saveState === "saved" && conflict === undefined);
    document.title = `${saveState === "saved" ? "" : "• "}${this.#session.name}`;
  }
}
