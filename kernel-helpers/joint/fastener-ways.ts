import type { Length, Temperature, Torque } from "../quantity/index.js";
import type { NutRemoval } from "./fastener-types.js";
import type { HeatNut } from "./heat-nut.js";
import { rounded, roundedDown } from "./rounded.js";
import { wholeDegreesBelow } from "./whole-degrees.js";

/** One way to get a nut off: its figures, and the limits it violates. */
export interface NutWay {
  readonly name: "pull cold" | "warm it, then pull" | "split the nut";
  readonly figures: Readonly<Record<string, Torque | Temperature | Length | string>>;
  readonly breaks: readonly string[];
}

/**
 * The ways to get a nut off, to decide between: pull it cold, warm it and pull, or split it. All pulling ends at the
 * stud's stop limit.
 *
 * @param removal  as `nutRemoval` gives it
 * @param heat  as `heatNut` gives it
 * @returns the three ways, with their figures and what each violates
 * @example
 * const thread = threadNamed("1 in BSW");
 * const removal = nutRemoval({ thread, yield: psi(30000), state: "rusted" });
 * const heat = heatNut({ thread, acrossFlats: inch(1.67), height: inch(1), shop: degF(65), neighbours: [] });
 * nutWays(removal, heat).map(({ name }) => name) // ["pull cold", "warm it, then pull", "split the nut"]
 * @source common practice, no source
 */
export function nutWays(removal: NutRemoval, heat: HeatNut): readonly NutWay[] {
  const { first, thread } = removal;
  const stopLimit = roundedDown(removal.stopLimit, 2);
  const breakLoose = { low: rounded(removal.breakLoose.low, 2), high: rounded(removal.breakLoose.high, 2) };
  const stops = first === "stop limit of the stud";
  return Object.freeze([
    way(
      "pull cold",
      { "stop at": stopLimit, "breaks loose from": breakLoose.low, "breaks loose by": breakLoose.high },
      stops ? ["the nut breaks loose only beyond the stud's stop limit"] : [],
    ),
    way(
      "warm it, then pull",
      {
        "stop at": stopLimit,
        "nut at": wholeDegreesBelow(heat.nut),
        "bore grows": rounded(heat.growth, 2),
        "first to suffer": heat.limits[0]!.name,
      },
      [],
    ),
    way(
      "split the nut",
      { lost: `the nut; a new one is cut to ${thread.name}`, stud: "must not be scored" },
      [],
    ),
  ]);
}

function way(name: NutWay["name"], figures: NutWay["figures"], breaks: readonly string[]): NutWay {
  return Object.freeze({ name, figures: Object.freeze(figures), breaks: Object.freeze([...breaks]) });
}
