import { leastChip, type ToolMaterial } from "../../handbook/index.js";
import { isQuantity, type RotationalSpeed } from "../../quantity/index.js";
import type { DialCounts, LatheSetting } from "./cut-plan-types.js";

/** A lathe as a rebuild's facts and tables tell of it. */
export interface LatheGiven extends Omit<LatheSetting, "tool" | "dialCounts" | "speeds"> {
  /** "high-speed steel" or "carbide". */
  readonly tool: string;
  /** "radius" or "diameter". */
  readonly dialCounts: string;
  /** As a column of a table gives them; a place left empty is an error. */
  readonly speeds: readonly (RotationalSpeed | undefined)[];
}

/**
 * A lathe and its tool as set for the cut, checked.
 *
 * @param given  lengths > 0 [m], depths ON RADIUS, the dial in what it counts; speeds > 0 [rad/s]
 * @returns the setting, its speeds from slow to fast
 * @throws RangeError  a word that is none of those known, a length or a speed that is not above 0, or no speed
 * @example
 * const depths = { deepestCut: thou(10), finishingCut: thou(2), dialDivision: thou(1) };
 * const given = { tool: "carbide", dialCounts: "radius", noseRadius: inch(1 / 32), feed: thou(3), ...depths };
 * latheSetting({ ...given, speeds: [rpm(110), rpm(70)] }).speeds[0].in("rpm") // 70
 */
export function latheSetting(given: LatheGiven): LatheSetting {
  const { tool, dialCounts, speeds } = given;
  leastChip(tool as ToolMaterial);
  if (dialCounts !== "radius" && dialCounts !== "diameter")
    throw new RangeError(
      `latheSetting: dialCounts must be "radius" (the way of the slide) or "diameter" (what comes off the work), got "${dialCounts}"`,
    );
  for (const name of ["noseRadius", "feed", "deepestCut", "finishingCut", "dialDivision"] as const)
    if (!isQuantity(given[name], "length") || !(given[name].si > 0))
      throw new RangeError(`latheSetting: ${name} must be a length above 0, got ${String(given[name])}`);
  if (speeds.length === 0) throw new RangeError("latheSetting: speeds must be one or more, got none");
  const known = speeds.map((speed, i) => {
    if (speed === undefined || !(speed.si > 0))
      throw new RangeError(`latheSetting: speeds[${i}] must be above 0, got ${speed ?? "nothing"}`);
    return speed;
  });
  return Object.freeze<LatheSetting>({
    ...given,
    tool: tool as ToolMaterial,
    dialCounts: dialCounts as DialCounts,
    speeds: Object.freeze([...known].sort((a, b) => a.si - b.si)),
  });
}
