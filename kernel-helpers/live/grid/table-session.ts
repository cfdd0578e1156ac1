import { DraftStore, type KeptDraft } from "./link/draft-store.js";
import { type LiveEvent, listenToServer } from "./link/live-events.js";
import { checkTable, loadTable, Refused, ServerAway, saveTable, type TableFile } from "./link/server.js";
import { type CsvDocument, type PlacedFault, placeFaults } from "./model/index.js";
import { SheetWatch } from "./sheet-watch.js";
import type { TableEditor } from "./table-editor.js";

/** The last check of the text. */
export interface CheckState {
  readonly document: CsvDocument;
  readonly faults: readonly PlacedFault[];
  readonly warnings: readonly string[];
}

/** How the table stands towards the file on disk. */
export type SaveState = "saved" | "unsaved" | "saving" | "waiting";

/** Typing has paused so long that the text is checked [ms], and kept in the browser. */
const checkAfter = 250;
const keepAfter = 150;
const retryAfter = 2000;
const notChecked = "The table could not be checked";

/**
 * What goes on between the editor and the server: checks while typing, saving without writing over what somebody
 * else saved, drafts kept in the browser, and a server that comes and goes.
 */
export class TableSession {
  readonly name: string;
  readonly editor: TableEditor;
  readonly sheets: SheetWatch;
  isAway = false;
  /** The server answers, but does not know this browser any more. */
  isLockedOut = false;
  check: CheckState | undefined;
  isCheckDue = true;
  saveState: SaveState = "saved";
  /** What stands on disk in place of the file that was loaded. */
  conflict: TableFile | undefined;
  /** Drafts that were found and are not yet decided about. */
  drafts: readonly KeptDraft[] = [];
  /** The draft that was put back when the page opened. */
  restored: KeptDraft | undefined;
  isKept = true;
  trouble = "";
  savedOnce = false;
  isLoaded = false;

  #base: string | null = null;
  #savedText = "";
  #store: DraftStore | undefined;
  #checkTimer: ReturnType<typeof setTimeout> | undefined;
  #keepTimer: ReturnType<typeof setTimeout> | undefined;
  #retryTimer: ReturnType<typeof setTimeout> | undefined;
  #checks = 0;
  readonly #changed: () => void;

  /** @param changed  called whenever something of the above is not what it was */
  constructor(name: string, editor: TableEditor, changed: () => void) {
    this.name = name;
    this.editor = editor;
    this.#changed = changed;
    this.sheets = new SheetWatch(changed, (error, what) => this.#failed(error, what));
  }

  get savedText(): string {
    return this.#savedText;
  }

  /** The table has no file yet. */
  get isNew(): boolean {
    return this.#base === null;
  }

  get isDirty(): boolean {
    return this.editor.text !== this.#savedText;
  }

  /** Loads the table, puts back what was typed and not saved, and begins to listen. */
  async start(): Promise<void> {
    this.#store = await DraftStore.open(document.body.dataset.rebuild ?? "", this.name);
    await this.#firstLoad();
    await this.#findDrafts();
    this.editor.listen(({ document }) => {
      if (document) this.#documentChanged();
    });
    this.#documentChanged();
    addEventListener("pagehide", () => this.#keep());
    document.addEventListener("visibilitychange", () => this.#keep());
    listenToServer(
      (event) => this.#heard(event),
      // Events may fail alone; only a request without answer says that the server is away.
      () => void this.#lookAtServer(),
    );
    await this.sheets.look([]);
  }

  /** Saves the text. Where another file stands on disk by now, nothing is written and `conflict` says what it is. */
  async save(): Promise<void> {
    this.editor.commit();
    if (this.saveState === "saving" || this.conflict !== undefined) return this.#changed();
    const { text } = this.editor;
    if (text === this.#savedText && this.#base !== null) return this.#changed();
    const staleBefore = this.sheets.stale.map(({ name }) => name);
    this.#set({ saveState: "saving", trouble: "" });
    try {
      const answer = await saveTable(this.name, text, this.#base);
      if ("conflict" in answer) return this.#set({ conflict: answer.conflict, saveState: "unsaved" });
      this.#accept(text, answer.saved);
      this.savedOnce = true;
      await this.sheets.look(staleBefore);
    } catch (error) {
      this.#failed(error, "The table was not saved");
      this.#set({ saveState: this.isAway || this.isLockedOut ? "waiting" : "unsaved" });
    }
  }

  /** Of two texts, mine: it is written over the file on disk. */
  async keepMine(): Promise<void> {
    if (this.conflict === undefined) return;
    this.#base = this.conflict.sha256;
    this.conflict = undefined;
    await this.save();
  }

  /** Of two texts, the one on disk; mine can be had back by undoing. */
  takeTheirs(): void {
    const { conflict } = this;
    if (conflict === undefined) return;
    this.conflict = undefined;
    this.#base = conflict.sha256;
    this.#savedText = conflict.text;
    this.editor.replaceText(conflict.text, "the file's text taken over");
    this.#documentChanged();
  }

  /** Puts a draft of another tab in place of the text; undoing brings the text back. */
  takeDraft(draft: KeptDraft): void {
    this.editor.replaceText(draft.text, "unsaved text put back");
    this.#store?.drop(draft.key);
    this.#set({ drafts: this.drafts.filter(({ key }) => key !== draft.key) });
    this.#keep();
  }

  dropDraft(draft: KeptDraft): void {
    this.#store?.drop(draft.key);
    this.#set({ drafts: this.drafts.filter(({ key }) => key !== draft.key) });
  }

  /** Throws the text away that was put back when the page opened. */
  dropRestored(): void {
    this.editor.replaceText(this.#savedText, "unsaved text thrown away");
    this.#set({ restored: undefined });
  }

  async #firstLoad(): Promise<void> {
    for (;;) {
      try {
        const file = await loadTable(this.name);
        this.#base = file.sha256;
        this.#savedText = file.text;
        this.editor.open(file.text);
        return this.#set({ isLoaded: true, isAway: false, isLockedOut: false, trouble: "" });
      } catch (error) {
        this.#failed(error, "The table could not be loaded");
        await new Promise((resolve) => setTimeout(resolve, retryAfter));
      }
    }
  }

  async #findDrafts(): Promise<void> {
    const found = (await this.#store!.found()).filter((draft) => {
      if (draft.text !== this.#savedText) return true;
      this.#store!.drop(draft.key);
      return false;
    });
    const [latest, ...others] = found;
    if (latest === undefined) return;
    // A draft of another file than the one on disk is a conflict: both are shown, one is chosen.
    if (latest.base !== (this.#base ?? "")) this.conflict = { text: this.#savedText, sha256: this.#base };
    this.editor.replaceText(latest.text, "unsaved text put back");
    this.#keep();
    this.#store!.drop(latest.key);
    this.#keep();
    this.#set({ restored: latest, drafts: others });
  }

  #documentChanged(): void {
    clearTimeout(this.#keepTimer);
    this.#keepTimer = setTimeout(() => this.#keep(), keepAfter);
    if (this.saveState !== "saving")
      this.saveState = !this.isDirty ? "saved" : this.saveState === "waiting" ? "waiting" : "unsaved";
    this.isCheckDue = true;
    clearTimeout(this.#checkTimer);
    this.#checkTimer = setTimeout(() => void this.#check(), this.check === undefined ? 0 : checkAfter);
    this.#changed();
  }

  async #check(): Promise<void> {
    const { document, text } = this.editor;
    const number = ++this.#checks;
    try {
      const { faults, warnings } = await checkTable(this.name, text);
      if (number !== this.#checks) return;
      const trouble = this.trouble.startsWith(notChecked) ? "" : this.trouble;
      const check = { document, faults: placeFaults(document, faults), warnings };
      this.#set({ check, isCheckDue: false, trouble });
    } catch (error) {
      if (number === this.#checks) this.#failed(error, notChecked);
    }
  }

  /** Keeps the text in this browser while it is not on disk. */
  #keep(): void {
    clearTimeout(this.#keepTimer);
    if (this.#store === undefined) return;
    const { text } = this.editor;
    if (text === this.#savedText) this.#store.drop();
    else {
      const isKept = this.#store.keep(text, this.#base);
      if (isKept !== this.isKept) this.#set({ isKept });
    }
  }

  #accept(text: string, sha256: string | null): void {
    this.#base = sha256;
    this.#savedText = text;
    this.restored = undefined;
    this.saveState = this.isDirty ? "unsaved" : "saved";
    this.#keep();
    this.#set({ isAway: false, isLockedOut: false });
  }

  #heard(event: LiveEvent): void {
    if (event.type !== "file-changed") this.sheets.heard(event);
    else if (event.kind === "rebuild") this.#documentChanged();
    else if (event.kind === "table" && event.name === this.name && event.sha256 !== this.#base)
      void this.#lookAtServer();
  }

  /** Somebody else may have written the file. */
  async #lookAtFile(): Promise<void> {
    // What this page is saving just now is known by its hash when the answer is there.
    while (this.saveState === "saving") await new Promise((resolve) => setTimeout(resolve, 50));
    const file = await loadTable(this.name);
    if (file.sha256 === this.#base) {
      // The file is again what was loaded. A draft of an older file is still to be decided about.
      if (this.conflict !== undefined && this.conflict.sha256 !== this.#base)
        this.#set({ conflict: undefined });
    } else if (file.text === this.editor.text) this.#accept(file.text, file.sha256);
    else this.#set({ conflict: file });
  }

  #failed(error: unknown, what: string): void {
    if (error instanceof ServerAway) {
      this.#wentAway();
      return;
    }
    const isLockedOut = error instanceof Refused && (error.status === 401 || error.status === 403);
    this.#set({
      isLockedOut,
      trouble: isLockedOut ? "" : `${what}: ${error instanceof Error ? error.message : String(error)}`,
    });
    if (isLockedOut) this.#tryLater();
  }

  #wentAway(): void {
    if (!this.isAway) this.#set({ isAway: true });
    this.#tryLater();
  }

  #tryLater(): void {
    clearTimeout(this.#retryTimer);
    this.#retryTimer = setTimeout(() => void this.#lookAtServer(), retryAfter);
  }

  /** Asks whether the server is there; where it had been away, does what had to wait. */
  async #lookAtServer(): Promise<void> {
    try {
      await this.#lookAtFile();
      clearTimeout(this.#retryTimer);
      if (!this.isAway && !this.isLockedOut) return;
      this.#set({ isAway: false, isLockedOut: false, trouble: "" });
      this.#documentChanged();
      if (this.saveState === "waiting") await this.save();
    } catch (error) {
      this.#failed(error, "The server is not what it was");
    }
  }

  #set(change: Partial<TableSession>): void {
    Object.assign(this, change);
    this.#changed();
  }
}
