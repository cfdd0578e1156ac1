import type { Step } from "../../record/in-steps.js";
import { type CellContext, currentCell } from "./cell-context.js";
import type { Publish } from "./output.js";
import { Interrupted, type StopFlag } from "./stop-flag.js";

/** A reckoning shorter than this shows nothing, and what is shown changes no oftener than that [ms]. */
const [patience, apart] = [300, 100];
const barLength = 30;

/**
 * Shows under a cell how far its long reckoning is, and takes it away in the end, so that what a cell leaves behind does
 * not depend on how fast the machine was. A cell that has shown something already keeps it, and shows no progress.
 */
export class CellProgress {
  readonly #publish: Publish;
  readonly #stopFlag: StopFlag;
  #of: { readonly cell: CellContext; readonly begun: number; last: number | undefined } | undefined;
  #count = 0;

  constructor(publish: Publish, stopFlag: StopFlag) {
    this.#publish = publish;
    this.#stopFlag = stopFlag;
  }

  /**
   * Is told each step, and undefined at the end.
   *
   * @throws Interrupted  the cell is to stop, or has ended: nobody waits for the rest
   */
  tell(step: Step | undefined): void {
    const cell = currentCell();
    if (cell === undefined) return;
    if (step === undefined) {
      this.#takeAway(cell);
      return;
    }
    if (!cell.running || this.#stopFlag.isAsked) throw new Interrupted();
    if (cell.shown) return;
    const now = Date.now();
    if (this.#of?.cell !== cell) this.#of = { cell, begun: now, last: undefined };
    const { begun, last } = this.#of;
    if (now - (last ?? begun + patience - apart) < apart) return;
    if (last === undefined) this.#count += 1;
    this.#of.last = now;
    this.#publish(cell, last === undefined ? "display_data" : "update_display_data", {
      data: { "text/plain": progressText(step) },
      metadata: {},
      transient: { display_id: `journalbox-progress-${this.#count}` },
    });
  }

  #takeAway(cell: CellContext): void {
    if (this.#of?.cell !== cell) return;
    if (this.#of.last !== undefined && !cell.shown) this.#publish(cell, "clear_output", { wait: false });
    this.#of = undefined;
  }
}

/** @example progressText({ what: "shafts drawn", done: 5000, of: 10_000 }) // "━━━━━━━━━━━━━━━───────────────  5000 of 10000 shafts drawn" */
export function progressText({ what, done, of }: Step): string {
  const full = Math.round((barLength * done) / of);
  return `${"━".repeat(full)}${"─".repeat(barLength - full)}  ${done} of ${of} ${what}`;
}
