import type { StandardThread } from "../handbook/index.js";
import type { ThreadIdentity } from "./thread-types.js";

/**
 * The thread to reckon with: the one the readings allow, or one of several by name.
 *
 * @param identity  as `identifyThread` gives it
 * @param options.as  the name to take where the readings allow several
 * @returns the standard thread
 * @throws RangeError  the readings allow none or several and no name is given, or not the one named; the message says
 * which reading would tell them apart
 * @example
 * const bytes = new TextEncoder().encode("# instrument: calliper\nmajor diameter [in],length over threads [in],threads [-],flank angle [deg]\n0.99,1.25,10,59.5");
 * const instruments = { calliper: instrumentFrom("calliper", { title: "calliper", resolution: "1 thou", repeatability: "2 thou" }) };
 * threadOf(identifyThread(threadReadings(readTable(bytes, { name: "nut-thread", file: "nut-thread.csv", instruments })))).name // "1-8 UNC"
 */
export function threadOf(identity: ThreadIdentity, options: { readonly as?: string } = {}): StandardThread {
  const agreeing = identity.matches.filter(({ agrees }) => agrees).map(({ thread }) => thread);
  const names = agreeing.map(({ name }) => name);
  if (agreeing.length === 0) throw new RangeError(`threadOf: no standard thread agrees. ${identity.text}`);
  if (options.as !== undefined) {
    const named = agreeing.find(({ name }) => name === options.as);
    if (named === undefined)
      throw new RangeError(`threadOf: as must be one of ${names.join(", ")}, got "${options.as}"`);
    return named;
  }
  if (agreeing.length > 1)
    throw new RangeError(
      `threadOf: the readings allow ${names.join(" and ")}; ${identity.next.map(({ text }) => text).join(" ")} Or name one: threadOf(identity, { as: "${names[0]}" })`,
    );
  return agreeing[0]!;
}
