import type { ISessionContext } from "@jupyterlab/apputils";
import { type Cell, CodeCell, MarkdownCell } from "@jupyterlab/cells";
import type { Notebook } from "@jupyterlab/notebook";
import { Signal } from "@lumino/signaling";
import { CellMargin, type CellStanding } from "./cell-margin.js";
import type { KernelDesk } from "./kernel-desk.js";

/** How far a run is. */
export interface RunProgress {
  /** The number of the cell at work, as its margin shows it; undefined when none is. */
  readonly running: number | undefined;
  /** All cells of the sheet. */
  readonly cells: number;
  /** Cells that wait for their turn. */
  readonly waiting: number;
}

export interface RunEnd {
  /** The number of the cell at which the run stopped; undefined where it did not. */
  readonly stoppedAt: number | undefined;
  /** Cells that therefore were not run. */
  readonly leftOut: number;
}

interface Run {
  readonly standing: CellStanding;
  /** The code that was run. */
  readonly code: string;
}

/** Runs the cells of a sheet one after the other, and says in their margins what has become of each. */
export class SheetRunner {
  readonly progressed: Signal<this, RunProgress> = new Signal(this);
  readonly ended: Signal<this, RunEnd> = new Signal(this);
  readonly #notebook: Notebook;
  readonly #desk: KernelDesk;
  readonly #runs = new Map<string, Run>();
  #queue: CodeCell[] = [];
  #running: CodeCell | undefined;

  constructor(notebook: Notebook, desk: KernelDesk) {
    this.#notebook = notebook;
    this.#desk = desk;
  }

  get isRunning(): boolean {
    return this.#running !== undefined;
  }

  /** Sets texts, and runs code cells after those that wait already; a cell that waits keeps its place. */
  run(cells: readonly Cell[]): void {
    for (const cell of cells) {
      if (cell instanceof MarkdownCell) cell.rendered = true;
      else if (cell instanceof CodeCell && !this.#queue.includes(cell)) this.#queue.push(cell);
    }
    this.refresh();
    if (this.#running === undefined) void this.#work();
  }

  runAll(): void {
    this.run(this.#notebook.widgets);
  }

  /** Lets those that wait go; the one at work is for the kernel to stop. */
  forgetWaiting(): void {
    this.#queue = [];
    this.refresh();
  }

  /** The kernel is a new one: what the cells show is from before. */
  forgetRuns(): void {
    for (const [id, run] of this.#runs)
      if (run.standing !== "running") this.#runs.set(id, { ...run, standing: "from before" });
    this.refresh();
  }

  /** Sets numbers and words of all margins. */
  refresh(): void {
    for (const [index, cell] of this.#notebook.widgets.entries())
      marginOf(cell)?.say(index + 1, cell instanceof CodeCell ? this.#standingOf(cell) : undefined);
    this.progressed.emit(this.progress);
  }

  get progress(): RunProgress {
    const cells = this.#notebook.widgets.length;
    return { running: this.#numberOf(this.#running), cells, waiting: this.#queue.length };
  }

  #numberOf(cell: CodeCell | undefined): number | undefined {
    return cell === undefined ? undefined : this.#notebook.widgets.indexOf(cell) + 1;
  }

  async #work(): Promise<void> {
    let stopped: CodeCell | undefined;
    while (stopped === undefined) {
      const cell = this.#next();
      if (cell === undefined) break;
      this.#running = cell;
      if ((await this.#runOne(cell)) !== "done") stopped = cell;
      this.#running = undefined;
    }
    const leftOut = this.#queue.length;
    this.#queue = [];
    this.refresh();
    this.ended.emit({ stoppedAt: this.#numberOf(stopped), leftOut });
  }

  #next(): CodeCell | undefined {
    const next = this.#queue.shift();
    return next?.isDisposed === true ? this.#next() : next;
  }

  async #runOne(cell: CodeCell): Promise<CellStanding> {
    const { id } = cell.model;
    const code = cell.model.sharedModel.getSource();
    const note = (standing: CellStanding): CellStanding => {
      this.#runs.set(id, { standing, code });
      this.refresh();
      return standing;
    };
    const { kernel } = this.#desk;
    if (kernel === undefined) return note("cut off");
    note("running");
    try {
      // All that running a cell needs of a session is its kernel.
      const session = { session: { kernel } } as unknown as ISessionContext;
      const reply = await CodeCell.execute(cell, session);
      return note(reply === undefined || reply.content.status === "ok" ? "done" : "stopped");
    } catch {
      return note("cut off"); // the kernel went away under it
    }
  }

  #standingOf(cell: CodeCell): CellStanding {
    if (this.#queue.includes(cell)) return "waiting";
    const run = this.#runs.get(cell.model.id);
    if (run === undefined) return cell.model.outputs.length > 0 ? "from before" : "not run";
    if (run.standing === "running") return "running";
    return run.code === cell.model.sharedModel.getSource() ? run.standing : "changed";
  }
}

function marginOf(cell: Cell): CellMargin | undefined {
  const prompt = (cell.inputArea?.layout as { widgets?: readonly unknown[] } | undefined)?.widgets?.[0];
  return prompt instanceof CellMargin ? prompt : undefined;
}
