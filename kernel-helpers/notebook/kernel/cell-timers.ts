import { createHook } from "node:async_hooks";
import { type CellContext, currentCell } from "./cell-context.js";

type Timer = NodeJS.Timeout | NodeJS.Immediate;

/** Timers the cells set going; dead ones are collected as garbage. */
const timersOf = new WeakMap<CellContext, Set<WeakRef<Timer>>>();
const contexts = new Set<CellContext>();

/** From here on, remembers which cell set each timer, whatever way it was set. */
export function watchTimers(): void {
  createHook({
    init(_id, type, _trigger, resource) {
      if (type === "Timeout" || type === "Immediate") remember(resource as Timer);
    },
  }).enable();
}

/** Cancels the timers that one cell set, or all cells set: an interrupted cell, an ended sheet come to rest. */
export function cancelTimers(only?: CellContext): void {
  for (const context of only === undefined ? [...contexts] : [only]) {
    for (const reference of timersOf.get(context) ?? []) cancel(reference.deref());
    contexts.delete(context);
    timersOf.delete(context);
  }
}

function remember(timer: Timer): void {
  const context = currentCell();
  if (context === undefined) return;
  contexts.add(context);
  const timers = timersOf.get(context) ?? new Set();
  timersOf.set(context, timers);
  timers.add(new WeakRef(timer));
  if (timers.size % 1000 === 0)
    for (const reference of timers) if (reference.deref() === undefined) timers.delete(reference);
}

function cancel(timer: Timer | undefined): void {
  if (timer === undefined) return;
  if ("refresh" in timer) clearTimeout(timer);
  else clearImmediate(timer);
}
