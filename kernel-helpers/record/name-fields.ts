import { rebuildFileName } from "./find-rebuild.js";
import type { RebuildFacts } from "./rebuild-file.js";

const groups = ["dimensions", "angles", "quantities", "numbers", "words"] as const;

/**
 * Runs work, and where it stops over a value it was given, adds which field of rebuild.json that value stands in.
 *
 * Fields are told for the parts whose names stand in the message as words of their own; of others nothing is guessed.
 *
 * @param fields  part of the work's options, as its messages call it, and the name of the field
 * @throws RangeError  as the work does, with the fields named; rebuild.json does not give one of the fields
 */
export function nameFields<T>(
  facts: Pick<RebuildFacts, (typeof groups)[number]>,
  fields: Readonly<Record<string, string>>,
  work: () => T,
): T {
  const places = Object.entries(fields).map(([part, name]) => {
    const group = groups.find((one) => Object.hasOwn(facts[one], name));
    if (group === undefined) throw new RangeError(`naming: ${rebuildFileName} gives no "${name}"`);
    return { part, place: `"${name}" under "${group}"` };
  });
  try {
    return work();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    const words = error.message.split(/[^A-Za-z]+/);
    const told = places.filter(({ part }) => words.includes(part)).map(({ place }) => place);
    if (told.length === 0) throw error;
    throw new RangeError(`${error.message} (in ${rebuildFileName}: ${told.join(", ")})`, { cause: error });
  }
}
