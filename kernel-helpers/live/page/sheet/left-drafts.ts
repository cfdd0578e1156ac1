import type { INotebookContent } from "@jupyterlab/nbformat";
import { wordsOf } from "../api/request.js";
import type { Notices } from "../dom/notices.js";
import { askWhichStands, type TwoVersions } from "./conflict.js";
import { copyWords } from "./copy-words.js";
import type { FoundDraft } from "./drafts.js";
import { keepCopy } from "./keep-copy.js";
import type { SheetFile } from "./sheet-file.js";
import { textOf } from "./sheet-text.js";
import type { SheetView } from "./sheet-view.js";

/** Puts text back that was typed and not saved when its page was closed. */
export class LeftDrafts {
  readonly #file: SheetFile;
  readonly #view: SheetView;
  readonly #notices: Notices;

  constructor(file: SheetFile, view: SheetView, notices: Notices) {
    this.#file = file;
    this.#view = view;
    this.#notices = notices;
  }

  /**
   * The newest draft of this version of the sheet is shown at once, and said to be. One of another version, and
   * each further one, waits until the user has looked at it.
   */
  bringBack(drafts: readonly FoundDraft[]): void {
    const saved = this.#view.content;
    const waiting = drafts.filter((draft) => textOf(draft.notebook) !== textOf(saved));
    for (const draft of drafts) if (!waiting.includes(draft)) draft.letGo();
    const [newest] = waiting;
    if (newest?.base === this.#file.base) {
      waiting.shift();
      this.#view.replace(newest.notebook);
      this.#file.keepDraft();
      newest.letGo();
      this.#sayBack(newest, saved);
    }
    for (const [index, draft] of waiting.entries()) this.#offer(draft, `draft-${index}`);
  }

  #sayBack(draft: FoundDraft, saved: INotebookContent): void {
    this.#notices.show("drafts", {
      kind: "word",
      text: `Text that you typed and had not saved is back (${timeOf(draft)}).`,
      actions: [{ label: "Show the saved sheet instead", act: () => this.#swap(saved, draft) }],
      canClose: true,
    });
  }

  #swap(saved: INotebookContent, draft: FoundDraft): void {
    this.#view.replace(saved);
    const back = (): void => {
      this.#view.replace(draft.notebook);
      this.#sayBack(draft, saved);
    };
    this.#notices.show("drafts", {
      kind: "word",
      text: "This is the saved sheet.",
      actions: [{ label: "Bring my text back", act: back }],
      canClose: true,
    });
  }

  #offer(draft: FoundDraft, about: string): void {
    const version = draft.base === this.#file.base ? "this version" : "an older version";
    this.#notices.show(about, {
      kind: "trouble",
      text: `There is text that was not saved, typed ${timeOf(draft)} over ${version} of the sheet.`,
      actions: [{ label: "Choose what stands", act: () => void this.#settle(draft, about) }],
    });
  }

  async #settle(draft: FoundDraft, about: string): Promise<void> {
    try {
      const answer = await askWhichStands({ ...versions, mine: draft.notebook, theirs: this.#view.content });
      if (answer === undefined) return;
      if (answer === "copy") {
        const words = copyWords(await keepCopy(this.#file.name, draft.notebook));
        this.#notices.show("drafts", { kind: "word", canClose: true, ...words });
      }
      if (answer === "keep mine") {
        this.#view.replace(draft.notebook);
        this.#file.keepDraft();
      }
      draft.letGo();
      this.#notices.clear(about);
    } catch (error) {
      this.#notices.show("drafts", { kind: "trouble", text: wordsOf(error), canClose: true });
    }
  }
}

const versions: Omit<TwoVersions, "mine" | "theirs"> = {
  title: "Text that was not saved",
  theirsIs: "On this page",
  labels: {
    copy: "Keep it as a copy",
    "take theirs": "Drop it",
    "keep mine": "Put it in place of the page's",
  },
};

function timeOf({ typedAt }: FoundDraft): string {
  return new Date(typedAt).toLocaleString([], { dateStyle: "medium", timeStyle: "short" });
}
