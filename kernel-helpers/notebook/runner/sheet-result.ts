import type { Notebook } from "../file/notebook-format.js";

/** A worksheet to be run: its name, and the file it is in. */
export interface Sheet {
  readonly name: string;
  readonly path: string;
}

/** How one worksheet went. */
export interface SheetResult {
  readonly kind: "sheet-result";
  readonly sheet: string;
  /** "ok": every code cell was run, none failed, and none wrote to its error output. */
  readonly status: "ok" | "failed";
  /** The cell that made the sheet fail; not given where the file itself could not be read. */
  readonly failedCell?: FailedCell;
  readonly error?: SheetError;
  /** All the sheet wrote to its error output. */
  readonly stderr: string;
  /** The code cells after the one that failed: they were not run. */
  readonly notRun: readonly string[];
  /** Why a new kernel had to be started for this sheet; not given where the one before went on. */
  readonly newKernel?: string;
  /** The executed notebook, and where it was written; not given where the file could not be read. */
  readonly notebook?: Notebook;
  readonly path?: string;
  /** How long it took [ms]. */
  readonly duration: number;
}

export interface FailedCell {
  readonly id: string;
  /** Counted from 0 over all cells of the notebook [-]. */
  readonly index: number;
  readonly source: string;
}

export interface SheetError {
  readonly name: string;
  readonly message: string;
  /** Lines ready to print, with terminal colours. */
  readonly traceback: readonly string[];
}
