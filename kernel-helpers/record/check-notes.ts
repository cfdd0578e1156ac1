import { isQuantity } from "../quantity/index.js";
import type { KeptNotes, NeededPart, Notes, OpenItem, WantedReading } from "./note-types.js";

const fields = {
  open: ["what", "waitsFor"],
  parts: ["what", "count", "size", "for"],
  measure: ["what", "where", "with", "why"],
} as const;

/**
 * Notes in their full form: a plain text becomes the `what` of an entry.
 *
 * @throws TypeError  a list or a part of an entry is not known, an entry says nothing, or a figure is none
 */
export function fullNotes(notes: Notes): KeptNotes {
  for (const list of Object.keys(notes))
    if (!Object.hasOwn(fields, list))
      throw new TypeError(`note: the lists are ${Object.keys(fields).join(", ")}, got "${list}"`);
  return Object.freeze({
    open: entries<OpenItem>("open", notes.open),
    parts: entries<NeededPart>("parts", notes.parts),
    measure: entries<WantedReading>("measure", notes.measure),
  });
}

function entries<T extends { readonly what: string }>(
  list: keyof typeof fields,
  given: readonly (string | T)[] | undefined,
): readonly T[] {
  if (given !== undefined && !Array.isArray(given))
    throw new TypeError(`note: ${list} must be a list, got ${String(given)}`);
  return Object.freeze(
    (given ?? []).map((entry) => {
      const full = (typeof entry === "string" ? { what: entry } : { ...entry }) as T;
      if (typeof full.what !== "string" || full.what.trim() === "")
        throw new TypeError(`note: each entry of ${list} must say what, got ${JSON.stringify(entry)}`);
      for (const [part, value] of Object.entries(full)) checkPart(list, part, value);
      return Object.freeze(full);
    }),
  );
}

function checkPart(list: keyof typeof fields, part: string, value: unknown): void {
  const known: readonly string[] = fields[list];
  if (!known.includes(part))
    throw new TypeError(`note: an entry of ${list} has ${known.join(", ")}, got "${part}"`);
  const figure =
    value === undefined ||
    typeof value === "string" ||
    Number.isFinite(value) ||
    isQuantity(value) ||
    (value as { kind?: unknown } | null)?.kind === "measured";
  if (!figure)
    throw new TypeError(
      `note: ${part} in ${list} must be words, a number, a quantity or a measured value, got ${String(value)}`,
    );
}
