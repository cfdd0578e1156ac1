import type { INotebookContent } from "@jupyterlab/nbformat";
import { ServerAway, wordsOf } from "../api/request.js";
import type { Notices } from "../dom/notices.js";
import { askWhichStands, type TwoVersions } from "./conflict.js";
import { type CopyWords, copyWords } from "./copy-words.js";
import { keepCopy } from "./keep-copy.js";
import type { SheetFile } from "./sheet-file.js";
import { textOf } from "./sheet-text.js";
import type { SheetView } from "./sheet-view.js";

/** Saves the sheet, and settles with the user what shall stand where the file on disk has changed meanwhile. */
export class SheetSaving {
  readonly #file: SheetFile;
  readonly #view: SheetView;
  readonly #notices: Notices;
  #asking = false;

  constructor(file: SheetFile, view: SheetView, notices: Notices) {
    this.#file = file;
    this.#view = view;
    this.#notices = notices;
  }

  async save(): Promise<void> {
    if (!this.#file.isDirty) return this.saveResults();
    try {
      const saved = await this.#file.save();
      this.#notices.clear("saving");
      if (saved.kind === "conflict") return await this.#settle(saved.sha256, saved.notebook);
      for (const about of ["template", "drafts", "deleted"]) this.#notices.clear(about);
      await this.saveResults();
    } catch (error) {
      this.#sayNotSaved(error, "The sheet is not saved; what you typed is kept in this browser");
    }
  }

  /** Keeps what the cells show for the next time the sheet is opened. */
  async saveResults(): Promise<void> {
    try {
      await this.#file.saveResults();
    } catch (error) {
      this.#sayNotSaved(error, "What the cells show is not kept");
    }
  }

  /** Looks whether the file on disk is another by now: by another page, another program, another person. */
  async lookAtDisk(): Promise<void> {
    try {
      const disk = await this.#file.onDisk();
      if (disk.sha256 === this.#file.base || this.#file.saving === "saving") return;
      if (textOf(disk.notebook) === textOf(this.#view.content))
        return this.#file.takeAsSaved(disk.sha256, disk.notebook);
      if (this.#file.isDirty) return this.#sayTwo(disk.sha256, disk.notebook);
      this.#view.replace(disk.notebook);
      this.#file.takeAsSaved(disk.sha256, disk.notebook);
      const text = "The file of this sheet was changed elsewhere; here it is as it is now.";
      this.#notices.show("disk", { kind: "word", text, canClose: true });
    } catch (error) {
      if (error instanceof ServerAway) return; // the page says that already
      this.#notices.show("disk", { kind: "trouble", text: wordsOf(error), canClose: true });
    }
  }

  async #settle(sha256: string, theirs: INotebookContent | null): Promise<void> {
    if (this.#asking) return;
    this.#asking = true;
    try {
      const mine = this.#view.content;
      const other = theirs ?? { ...mine, cells: [] }; // what is on disk is no notebook any more
      const answer = await askWhichStands({ ...versions, mine, theirs: other });
      if (answer === undefined) return this.#sayTwo(sha256, theirs);
      this.#notices.clear("disk");
      if (answer === "keep mine") {
        this.#file.takeAsSaved(sha256, other);
        return void this.save();
      }
      const words = answer === "copy" ? copyWords(await keepCopy(this.#file.name, mine)) : this.#aside(mine);
      this.#view.replace(other);
      this.#file.takeAsSaved(sha256, other);
      this.#notices.show("disk", { kind: "word", canClose: true, ...words });
    } catch (error) {
      this.#sayNotSaved(error, "Nothing is saved; what you typed is kept in this browser");
    } finally {
      this.#asking = false;
    }
  }

  #sayTwo(sha256: string, theirs: INotebookContent | null): void {
    this.#notices.show("disk", {
      kind: "trouble",
      text: "The file of this sheet has changed on disk, and your text is not saved. It is kept in this browser.",
      actions: [{ label: "Choose what stands", act: () => void this.#settle(sha256, theirs) }],
    });
  }

  /** Text that was given up can be had back for as long as the page is open. */
  #aside(mine: INotebookContent): CopyWords {
    const act = (): void => {
      this.#notices.clear("disk");
      this.#view.replace(mine);
    };
    return {
      text: "This is the file on disk. Your text was put aside.",
      actions: [{ label: "Bring it back", act }],
    };
  }

  #sayNotSaved(error: unknown, what: string): void {
    this.#notices.show("saving", { kind: "trouble", text: `${what}: ${wordsOf(error)}`, canClose: true });
  }
}

const versions: Omit<TwoVersions, "mine" | "theirs"> = {
  title: "The file on disk has changed",
  theirsIs: "On disk now",
  labels: {
    copy: "Keep mine as a copy",
    "take theirs": "Take the one on disk",
    "keep mine": "Save mine over it",
  },
};
