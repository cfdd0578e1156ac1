import type { WarningBlock } from "../blocks.js";

/** The doubts of a computation, each once. */
export function warningBlocks(warnings: readonly string[]): WarningBlock[] {
  return [...new Set(warnings)].map((text) => ({ type: "warning", text }));
}
