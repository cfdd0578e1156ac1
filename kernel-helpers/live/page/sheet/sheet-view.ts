import type { INotebookContent } from "@jupyterlab/nbformat";
import type { Notebook } from "@jupyterlab/notebook";
import { makeModel } from "./make-notebook.js";
import type { SheetRunner } from "./sheet-runner.js";
import { withResultsOf } from "./sheet-text.js";

/** What the page shows, as a whole. */
export class SheetView {
  readonly #notebook: Notebook;
  readonly #runner: SheetRunner;

  constructor(notebook: Notebook, runner: SheetRunner) {
    this.#notebook = notebook;
    this.#runner = runner;
  }

  get content(): INotebookContent {
    return this.#notebook.model!.toJSON() as INotebookContent;
  }

  /** Shows another text, with the results of those cells that are the same. */
  replace(content: INotebookContent): void {
    const { activeCellIndex } = this.#notebook;
    const old = this.#notebook.model;
    const model = makeModel(withResultsOf(content, this.content));
    this.#runner.forgetWaiting();
    this.#notebook.model = model;
    old?.dispose();
    this.#notebook.activeCellIndex = Math.min(activeCellIndex, model.cells.length - 1);
    this.#runner.refresh();
  }
}
