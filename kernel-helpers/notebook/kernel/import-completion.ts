import type { CompletionInfo } from "tslab/dist/converter.js";
import { helperNames, namesBetweenTypes } from "./helper-names.js";

/**
 * What may stand between the braces of an import of the helpers, in the order a worksheet wants it: what it calls, then
 * the types it may name. Those that only other types name are left out. All else is given back as it is.
 *
 * @param code      the cell
 * @param position  of the cursor, in UTF-16 units
 */
export function importCompletion(code: string, position: number, found: CompletionInfo): CompletionInfo {
  if (!isInImportOfHelpers(code.slice(0, position), code.slice(position))) return found;
  const [values, inner] = [helperNames(), namesBetweenTypes()];
  if (values.size === 0) return found; // not built
  const usable = found.candidates.filter((name) => values.has(name) || !inner.has(name));
  const candidates = [
    ...usable.filter((name) => values.has(name)),
    ...usable.filter((name) => !values.has(name)),
  ];
  return { ...found, candidates };
}

function isInImportOfHelpers(before: string, after: string): boolean {
  return (
    /\bimport\s+(?:type\s+)?\{[^{}]*$/.test(before) && /^[^{}]*\}\s*from\s*(["'])journalbox\1/.test(after)
  );
}
