import { type CellContext, currentCell, latestCell } from "./cell-context.js";

/** Tells of an error that came after its cell had ended. */
export type TellLate = (cell: CellContext, reason: unknown) => void;

/**
 * Catches what no cell catches: rejected promises nobody awaits, and errors thrown outside any promise.
 * While their cell runs they are kept with it, and make it fail; later ones are told at once.
 */
export function watchStrays(tellLate: TellLate): void {
  const keptWith = new WeakMap<Promise<unknown>, CellContext>();
  const keep = (key: unknown, reason: unknown): void => {
    const cell = currentCell() ?? latestCell(); // Node does not say what set a microtask going
    if (cell === undefined) process.stderr.write(`${String(reason)}\n`);
    else if (cell.running) cell.strays.set(key, reason);
    else tellLate(cell, reason);
  };
  process.on("unhandledRejection", (reason, promise) => {
    const cell = currentCell();
    if (cell !== undefined) keptWith.set(promise, cell);
    keep(promise, reason);
  });
  process.on("uncaughtException", (error) => keep(error, error));
  // Somebody awaited it after all, a moment later.
  process.on("rejectionHandled", (promise) => {
    keptWith.get(promise)?.strays.delete(promise);
  });
}
