import type { Roundness } from "./roundness-types.js";
import { angleWords, plainSmall, smallText } from "./run-out-text.js";

/** What a section's readings say, in the words of the trade. */
export function roundnessSentence(
  {
    setUp,
    eccentricity,
    direction,
    deviation,
    lobes,
  }: Pick<Roundness, "setUp" | "eccentricity" | "direction" | "deviation" | "lobes">,
  system: Roundness["unitSystem"],
): string {
  const real = lobes
    .filter((lobe) => lobe.real)
    .sort((a, b) => b.height!.value.si - a.height!.value.si)
    .map(({ count, height }) => `${count === 2 ? "oval" : `${count} lobes`} ${smallText(height!, system)}`);
  const shape =
    real.length === 0
      ? "No lobes stand out of the noise."
      : `Out of the noise stand, valley to crest on radius: ${real.join(", ")}.`;
  if (setUp.held === "in a vee block")
    return `Out of round by at least ${smallText(deviation, system)} on radius (95 %), from the lobes that a vee of ${setUp.included} shows; each reading corrected for the vee. ${shape}`;
  const run = plainSmall(eccentricity!.value.times(2), system);
  return `Off centre by ${smallText(eccentricity!, system)} on radius (95 %), highest at ${angleWords(direction!)}; that alone gives ${run} of total indicator reading. Out of round by ${smallText(deviation, system)} on radius, peak to valley about the least-squares circle. ${shape}`;
}
