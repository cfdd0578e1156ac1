import { heatColours, material } from "../handbook/index.js";
import { degF, type Temperature } from "../quantity/index.js";

/** How hot something near a flame may become, and what happens above. */
export interface HeatCeiling {
  readonly name: string;
  readonly ceiling: Temperature;
  readonly why: string;
  readonly source: string;
}

const practice = "common practice, no source";
/** Lists of temper colours differ by about this much at one name [°F]. */
const temperSpread = 20;

const things: readonly HeatCeiling[] = Object.freeze(
  [
    {
      name: "paint",
      ceiling: degF(250),
      why: "blisters and burns; old paint gives off lead fumes: strip it well back first",
      source: practice,
    },
    {
      name: "oil",
      ceiling: degF(300),
      why: "smokes; lubricating oils flash from about 400 °F (200 °C) on, penetrating oils far sooner: wipe dry first",
      source: practice,
    },
    {
      name: "hardened part",
      ceiling: degF(heatColours[0]!.degreesFahrenheit - temperSpread),
      why: `a hardened part begins to lose its temper at the first colour, ${heatColours[0]!.colour}`,
      source: `W. H. Dooley, Applied Science for Metal Workers, less the ${temperSpread} °F by which lists differ`,
    },
    {
      name: "wood or leather",
      ceiling: degF(250),
      why: "chars; belts and wedges are taken off first",
      source: practice,
    },
  ].map((row) => Object.freeze(row)),
);

/**
 * How hot something near the flame may become: paint, oil, a hardened part, wood or leather, or any metal of the
 * handbook.
 *
 * @param name  "paint", "oil", "hardened part", "wood or leather", or a metal such as "Babbitt 2" or "grey iron" [-]
 * @returns the ceiling [K], what happens above, and the source
 * @throws RangeError  it is none of these; the message lists them
 * @example heatCeiling("hardened part").ceiling.in("degF") // 410
 * @source each row names its own
 */
export function heatCeiling(name: string): HeatCeiling {
  const wanted = name.trim().toLowerCase();
  const thing = things.find((one) => one.name === wanted);
  if (thing !== undefined) return thing;
  try {
    const { name: metal, hottest } = material(name);
    return Object.freeze({ name: metal, ceiling: hottest.value, why: hottest.why, source: hottest.source });
  } catch (error) {
    throw new RangeError(
      `heatCeiling: name must be one of ${things.map((one) => one.name).join(", ")} or a metal of the handbook, got "${name}"`,
      { cause: error },
    );
  }
}
