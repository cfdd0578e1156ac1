import { prepareQuickStart } from "../notebook/kernel/quick-start/prepare-quick-start.js";
import { isSwitchedOff, readyQuickStart } from "../notebook/kernel/quick-start/quick-start-file.js";

/** So long after the page was opened its first kernel is at work, or nobody is in a hurry [ms]. */
const notInTheWay = 20_000;

/**
 * Prepares the start of kernels when nobody waits: the next ones start in half the time. Where this cannot be done
 * they start as before. A program that ends earlier is not kept.
 */
export function prepareLater(prepare: () => Promise<unknown> = prepareQuickStart): void {
  if (isSwitchedOff() || readyQuickStart() !== undefined) return;
  setTimeout(() => void prepare().catch(() => undefined), notInTheWay).unref();
}
