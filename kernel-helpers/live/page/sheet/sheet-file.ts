import type { INotebookContent } from "@jupyterlab/nbformat";
import { Signal } from "@lumino/signaling";
import { ServerAway } from "../api/request.js";
import { fetchSheet, type LoadedSheet, type Saved, saveOutputs, saveSheet } from "../api/sheets.js";
import type { DraftBox } from "./drafts.js";
import { hasResults, textOf, withoutResults } from "./sheet-text.js";

/** How what is on the page stands to what is on disk. */
export type Saving = "saved" | "unsaved" | "saving" | "conflict";

/** Writing pauses this long before the browser keeps what was typed [ms]. */
const keepAfter = 200;

/** The file behind the page: what was loaded, what is to be saved, and the draft the browser keeps meanwhile. */
export class SheetFile {
  readonly changed: Signal<this, Saving> = new Signal(this);
  /** The browser cannot keep a draft any more. */
  readonly noRoom: Signal<this, void> = new Signal(this);
  readonly name: string;
  readonly #drafts: DraftBox;
  readonly #current: () => INotebookContent;
  #base: string;
  #savedText: string;
  #own: boolean;
  #saving: Saving = "saved";
  #timer = 0;

  /** @param current gives the notebook as it stands on the page */
  constructor(loaded: LoadedSheet, drafts: DraftBox, current: () => INotebookContent) {
    this.name = loaded.name;
    this.#drafts = drafts;
    this.#current = current;
    this.#base = loaded.sha256;
    this.#savedText = textOf(loaded.notebook);
    this.#own = loaded.own;
  }

  get saving(): Saving {
    return this.#saving;
  }

  /** SHA-256 of the file as it was loaded or saved last. */
  get base(): string {
    return this.#base;
  }

  get isOwn(): boolean {
    return this.#own;
  }

  get isDirty(): boolean {
    return textOf(this.#current()) !== this.#savedText;
  }

  /** Something was typed, or undone. */
  typed(): void {
    window.clearTimeout(this.#timer);
    this.#timer = window.setTimeout(() => this.keepDraft(), keepAfter);
    if (this.#saving === "saved") this.#set(this.isDirty ? "unsaved" : "saved");
  }

  /** Has the browser keep what is not saved. */
  keepDraft(): void {
    window.clearTimeout(this.#timer);
    if (!this.isDirty) {
      this.#drafts.drop();
      if (this.#saving === "unsaved") this.#set("saved");
      return;
    }
    if (this.#saving === "saved") this.#set("unsaved");
    try {
      this.#drafts.keep({
        base: this.#base,
        typedAt: Date.now(),
        notebook: withoutResults(this.#current()),
      });
    } catch {
      this.noRoom.emit();
    }
  }

  /**
   * Saves what is on the page, unless the file on disk is not the one it was typed over.
   *
   * @throws ServerAway, Refused  it is not saved; the draft stays
   */
  async save(): Promise<Saved> {
    this.keepDraft();
    const notebook = this.#current();
    this.#set("saving");
    try {
      const saved = await saveSheet(this.name, withoutResults(notebook), this.#base);
      if (saved.kind === "conflict") {
        this.#set("conflict");
        return saved;
      }
      this.#own = true;
      this.takeAsSaved(saved.sha256, notebook);
      return saved;
    } catch (error) {
      this.#set("unsaved");
      throw error;
    }
  }

  /** Puts the results beside the sheet, where they are found when it is opened again; only of text that is saved. */
  async saveResults(): Promise<void> {
    const notebook = this.#current();
    if (this.isDirty || !hasResults(notebook)) return;
    try {
      await saveOutputs(this.name, notebook);
    } catch (error) {
      if (!(error instanceof ServerAway)) throw error; // they can be had again by running the sheet
    }
  }

  /** What is on disk, freshly read. */
  onDisk(): Promise<LoadedSheet> {
    return fetchSheet(this.name);
  }

  /** Takes a version for the one on disk: what differs from it is unsaved. */
  takeAsSaved(sha256: string, notebook: INotebookContent): void {
    this.#base = sha256;
    this.#savedText = textOf(notebook);
    this.#saving = "saved";
    this.keepDraft();
    this.changed.emit(this.#saving);
  }

  #set(saving: Saving): void {
    if (saving === this.#saving) return;
    this.#saving = saving;
    this.changed.emit(saving);
  }
}
