import { type Move, pastedBlock } from "../model/index.js";
import type { TableEditor } from "../table-editor.js";
import type { TableView } from "./table-view.js";

/**
 * How a cell takes keys: moving (all is selected, so that typing replaces it), writing (arrows lead on), or
 * editing (F2, a second tap: arrows move inside the text).
 */
type Mode = "moving" | "writing" | "editing";

const arrows: Readonly<Record<string, Move>> = {
  ArrowLeft: "left",
  ArrowRight: "right",
  ArrowUp: "up",
  ArrowDown: "down",
  Home: "line start",
  End: "line end",
};

const linesOfPage = 10;

/** What the keys ask for beyond the cells. */
export interface KeyCommands {
  readonly save: () => void;
  readonly say: (text: string) => void;
}

/** Lets keys, taps and the clipboard work on the cells of a table. */
export class CellInput {
  readonly #editor: TableEditor;
  readonly #view: TableView;
  readonly #commands: KeyCommands;
  #mode: Mode = "moving";
  /** Escape was pressed: the next Tab leaves the table. */
  #leaves = false;
  /** Whether the press now going on brought the focus into the cell. */
  #pressEntered = false;

  constructor(editor: TableEditor, view: TableView, commands: KeyCommands) {
    this.#editor = editor;
    this.#view = view;
    this.#commands = commands;
    const { table } = view;
    table.addEventListener("focusin", (event) => this.#entered(event));
    table.addEventListener("focusout", () => this.#left());
    table.addEventListener("pointerdown", (event) => this.#pressed(event));
    table.addEventListener("click", (event) => this.#clicked(event));
    table.addEventListener("input", (event) => this.#typed(event));
    table.addEventListener("keydown", (event) => this.#key(event));
    table.addEventListener("paste", (event) => this.#pasted(event));
  }

  /** On to the next cell, or back, from a button. */
  step(step: 1 | -1): void {
    if (!this.#editor.step(step))
      this.#commands.say(step > 0 ? "This is the last cell." : "This is the first cell.");
    this.#view.focus();
  }

  /** Writes a value into the cell one is in, from a button. */
  write(value: string): void {
    this.#editor.type(value);
    this.#editor.commit();
    this.#view.focus();
  }

  /** Shows letters on a tablet's keyboard where the column wants numbers, or the other way round. */
  switchKeyboard(): boolean {
    const input = this.#input();
    if (input === undefined) return false;
    const letters = input.inputMode !== "text";
    input.inputMode = letters ? "text" : "decimal";
    // Keyboards look at the kind of a field only when it is entered.
    input.blur();
    input.focus();
    this.#mode = "editing";
    input.setSelectionRange(input.value.length, input.value.length);
    return letters;
  }

  #input(): HTMLInputElement | undefined {
    const { line, column } = this.#editor.place;
    return this.#view.inputAt(line, column);
  }

  #entered({ target }: FocusEvent): void {
    if (!(target instanceof HTMLInputElement)) return;
    const place = this.#view.placeOf(target);
    if (place === undefined) return;
    this.#mode = "moving";
    this.#leaves = false;
    this.#editor.moveTo(place);
    target.select();
  }

  #left(): void {
    this.#editor.commit();
    this.#mode = "moving";
  }

  #pressed({ target }: PointerEvent): void {
    this.#pressEntered = target !== document.activeElement;
  }

  #clicked({ target }: MouseEvent): void {
    if (!(target instanceof HTMLInputElement)) return;
    if (this.#pressEntered) {
      target.select();
      this.#view.reveal();
    } else this.#mode = "editing";
    this.#pressEntered = false;
  }

  #typed({ target }: Event): void {
    if (!(target instanceof HTMLInputElement)) return;
    if (this.#mode === "moving") this.#mode = "writing";
    this.#editor.type(target.value.replace(/\s*⏎\s*/g, "\n"));
  }

  #pasted(event: ClipboardEvent): void {
    const text = event.clipboardData?.getData("text/plain") ?? "";
    const holds = this.#editor.columns[this.#editor.place.column]?.holds ?? "words";
    const block = this.#mode === "editing" && !/[\t\r\n]/.test(text) ? undefined : pastedBlock(text, holds);
    if (block === undefined) return;
    event.preventDefault();
    this.#editor.cancel();
    this.#editor.paste(block);
    this.#mode = "moving";
    this.#view.focus();
  }

  #key(event: KeyboardEvent): void {
    if (event.isComposing) return;
    const did =
      event.ctrlKey || event.metaKey
        ? this.#command(event)
        : event.altKey
          ? this.#rows(event)
          : this.#plain(event);
    if (did) event.preventDefault();
  }

  #command(event: KeyboardEvent): boolean {
    const key = event.key.toLowerCase();
    if (key === "z" || key === "y") {
      if (key === "y" || event.shiftKey) this.#editor.redo();
      else this.#editor.undo();
    } else if (key === "s") this.#commands.save();
    else if (key === "home") this.#editor.move("first");
    else if (key === "end") this.#editor.move("last");
    else return false;
    if (key !== "s") this.#view.focus();
    return true;
  }

  #rows({ key, shiftKey }: KeyboardEvent): boolean {
    if (!shiftKey) return false;
    if (key === "ArrowUp") this.#editor.insertRow("above");
    else if (key === "ArrowDown") this.#editor.insertRow("below");
    else if (key === "Delete" || key === "Backspace") this.#editor.deleteLine();
    else return false;
    this.#view.focus();
    return true;
  }

  #plain(event: KeyboardEvent): boolean {
    const { key, shiftKey } = event;
    if (key === "Tab" && this.#leaves) return false;
    this.#leaves = false;
    if (key === "Enter" || key === "Tab") {
      if (!this.#editor.step(shiftKey ? -1 : 1)) return key === "Enter";
    } else if (key === "Escape") return this.#escape();
    else if (key === "F2") return this.#edit();
    else if (key === "PageUp" || key === "PageDown")
      for (let i = 0; i < linesOfPage; i++) this.#editor.move(key === "PageUp" ? "up" : "down");
    else if (arrows[key] === undefined || shiftKey) return false;
    else if (this.#mode === "editing" && key !== "ArrowUp" && key !== "ArrowDown") return false;
    else this.#editor.move(arrows[key]!);
    this.#view.focus();
    return true;
  }

  #escape(): boolean {
    if (this.#editor.isTyping || this.#mode === "editing") {
      this.#editor.cancel();
      this.#mode = "moving";
      this.#view.focus();
    } else {
      this.#leaves = true;
      this.#commands.say("Tab now leaves the table.");
    }
    return true;
  }

  #edit(): boolean {
    const input = this.#input();
    if (input === undefined) return false;
    this.#mode = "editing";
    input.setSelectionRange(input.value.length, input.value.length);
    return true;
  }
}
