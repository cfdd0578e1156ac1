import type { Presentation } from "./blocks.js";

/**
 * What stands in a worksheet in the place of a result that nobody has taken the readings for: what is missing, and what
 * that leaves open.
 *
 * @param missing  what is missing, a few words
 * @param leaves  what that leaves open or takes on trust, or what would tell: a sentence or two
 * @returns what to show
 * @throws TypeError  one of them is no text, or empty
 * @example notYet("Read at one angle", "A second, 90° on, shows whether a band is round.").title // "Read at one angle"
 */
export function notYet(missing: string, leaves: string): Presentation {
  for (const [name, text] of [
    ["missing", missing],
    ["leaves", leaves],
  ] as const)
    if (typeof text !== "string" || text.trim() === "")
      throw new TypeError(`notYet: ${name} must be a text, got ${JSON.stringify(text)}`);
  return Object.freeze<Presentation>({ title: missing, blocks: [{ type: "text", text: leaves }] });
}
