import type { Block, Presentation } from "./blocks.js";
import { factsOfRecord, isListOfRecords, isRecordOfSingles, tableOfRecords } from "./present-records.js";
import { presentResult } from "./results/present-result.js";

const blockTypes: readonly string[] = [
  "text",
  "facts",
  "table",
  "figure",
  "drawing",
  "verdict",
  "caution",
  "warning",
] satisfies Block["type"][];

/**
 * How a value is presented: a presentation as it is, a result by its kind, an array of flat records as a table: a
 * column of quantities, or a key such as "diameter [in]", gives the column its unit. A single record that holds values
 * with units is shown one a line.
 *
 * @returns undefined for a value that has no look of its own
 */
export function present(value: unknown): Presentation | undefined {
  if (isPresentation(value)) return value;
  const result = presentResult(value);
  if (result !== undefined) return result;
  if (isListOfRecords(value)) return tableOfRecords(value);
  if (isRecordOfSingles(value)) return factsOfRecord(value);
  return undefined;
}

function isPresentation(value: unknown): value is Presentation {
  if (typeof value !== "object" || value === null) return false;
  const { title, blocks } = value as { title?: unknown; blocks?: unknown };
  return typeof title === "string" && Array.isArray(blocks) && blocks.every(isBlock);
}

function isBlock(value: unknown): boolean {
  return typeof value === "object" && value !== null && blockTypes.includes((value as Block).type);
}
