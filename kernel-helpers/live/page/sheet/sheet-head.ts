import type { SheetSummary } from "../api/rebuild.js";
import { button, element } from "../dom/element.js";
import { stateMark } from "../overview/state-words.js";
import type { Saving } from "./sheet-file.js";

const savingWords: Readonly<Record<Saving, string>> = {
  saved: "All saved",
  unsaved: "Not saved yet; kept in this browser",
  saving: "Saving…",
  conflict: "Not saved: the file on disk has changed",
};

/** The head of a sheet: where it belongs, how it stands, and whether it is saved. */
export class SheetHead {
  readonly node: HTMLElement;
  readonly #title = element("h1");
  readonly #standing = element("div", { class: "standing", role: "status" });
  readonly #saving = element("p", { class: "saving", role: "status" });
  readonly #save: HTMLButtonElement;
  readonly #runAll: HTMLButtonElement;

  constructor(act: { save(): void; runAll(): void }) {
    this.#save = button({ label: "Save", hint: "Save the sheet (Ctrl + S)", kind: "main", act: act.save });
    this.#runAll = button({
      label: "Run all",
      hint: "Start the kernel over and run all cells, so that the sheet is fresh again",
      act: act.runAll,
    });
    this.node = element(
      "header",
      { class: "sheet-head" },
      element("a", { class: "back", href: "/" }, "‹ All worksheets"),
      element("div", { class: "head-words" }, this.#title, this.#standing),
      element("div", { class: "head-save" }, this.#saving, this.#save),
    );
  }

  showState({ title, state, why }: SheetSummary): void {
    this.#title.textContent = title;
    document.title = title;
    const wantsRun = state === "stale" || state === "failed";
    this.#standing.replaceChildren(
      stateMark(state),
      wantsRun ? this.#runAll : "",
      why === "" ? "" : element("p", {}, why),
    );
  }

  showSaving(saving: Saving): void {
    this.#saving.textContent = savingWords[saving];
    this.#saving.dataset.saving = saving;
    this.#save.disabled = saving === "saved" || saving === "saving";
  }
}
