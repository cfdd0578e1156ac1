import { AsyncLocalStorage } from "node:async_hooks";
import type { Message } from "../wire/message.js";

/** One run of one cell, known to everything the cell sets going, however late. */
export interface CellContext {
  /** The request that runs the cell: what the cell shows is addressed to it. */
  readonly request: Message;
  readonly number: number;
  /** False once the reply has been given. */
  running: boolean;
  /** Whether anything of its own has been shown under it. */
  shown: boolean;
  /** Rejected promises nobody awaited, and errors thrown outside any promise, while the cell ran. */
  readonly strays: Map<unknown, unknown>;
}

const storage = new AsyncLocalStorage<CellContext>();

let latest: CellContext | undefined;

/** Runs something as part of a cell. */
export function insideCell<T>(context: CellContext, run: () => T): T {
  latest = context;
  return storage.run(context, run);
}

/** The cell whose code is running now, or set going what is running now. */
export function currentCell(): CellContext | undefined {
  return storage.getStore();
}

/** The cell that ran last, or still runs: whatever comes from nowhere is most likely its doing. */
export function latestCell(): CellContext | undefined {
  return latest;
}

/** Runs something that serves all cells, and must outlive the one that happens to be running. */
export function outsideCells<T>(run: () => T): T {
  return storage.exit(run);
}
