import type { StandardThread } from "./standard-thread.js";
import { metricThreads } from "./threads-metric.js";
import { constantPitchThreads, unifiedThreads } from "./threads-unified.js";
import { whitworthThreads } from "./threads-whitworth.js";

/** Every standard thread of this handbook, each with its source. */
export const standardThreads: readonly StandardThread[] = Object.freeze([
  ...unifiedThreads,
  ...constantPitchThreads,
  ...whitworthThreads,
  ...metricThreads,
]);

/**
 * A standard thread by its name.
 *
 * @param name  as the trade writes it: "1 1/2-6 UNC", "1-1/2 in BSW", "M36 × 3" or "M36x3"; capitals do not count
 * @returns the thread; diameters [m], stress area [m²]
 * @throws RangeError  the handbook has no thread of that name; the message shows how names are written
 * @example threadNamed("3/4-16 UNF").pitchDiameter.in("inch") // 0.7094
 * @example threadNamed("M20x2.5").stressArea.in("mm2") // 244.8
 * @source see `StandardThread.source`
 */
export function threadNamed(name: string): StandardThread {
  const wanted = plain(name);
  const found = standardThreads.find((thread) => plain(thread.name) === wanted);
  if (found === undefined)
    throw new RangeError(
      `threadNamed: the handbook has no thread "${name}"; names are written "1 1/2-6 UNC", "1 1/8-8 UN", "1 1/2 in BSW", "1 in BSF", "M36 × 3"`,
    );
  return found;
}

/** One way of writing: "1-1/2 in bsw" and "1 1/2 BSW" become one, and so do "M36x3" and "M36 × 3". */
function plain(name: string): string {
  return name
    .toLowerCase()
    .replace(/(\d)-(\d+\/)/g, "$1 $2")
    .replace(/\bin\b/g, "")
    .replace(/(\d)\s*[x×]\s*(?=\d)/g, "$1×")
    .replace(/\s+/g, " ")
    .trim();
}
