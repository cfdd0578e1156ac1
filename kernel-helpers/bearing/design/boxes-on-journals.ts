import type { RotationalSpeed } from "../../quantity/index.js";
import type { FinishedJournals } from "../../shaft/index.js";
import type { ForetoldBox } from "../film/index.js";

/**
 * The boxes for a set of finished journals: name, diameter and load from each journal, the rest alike for all.
 *
 * @param journals  as `finishedJournals` returns them
 * @param common  length of the box, clearance, oil, surface, cooling, roughness; speed where the journals carry none
 * @returns a box each, as `runningPrediction` takes them
 * @throws RangeError  a journal without a load or with none to speak of, or no speed
 * @example
 * const load = { force: measured(lbf(900), lbf(90)), turnsWithShaft: false };
 * const near = { name: "pulley box", from: inch(5), to: inch(13), diameter: measured(inch(2.425), thou(0.2)), load: load };
 * const air = { boxSurface: quantity(230, "inch2"), cooling: boxCooling("still air"), roughness: thou(0.06) };
 * const common = { length: inch(8), diametralClearance: measured(thou(4), thou(0.4)), oil: oil("ISO VG 100"), ...air };
 * boxesOnJournals(finishedJournals({ journals: [near], speed: rpm(110) }), common)[0].load.value.in("lbf") // 900
 * @source none: a way to write them down once
 */
export function boxesOnJournals(
  journals: FinishedJournals,
  common: Omit<ForetoldBox, "name" | "diameter" | "load" | "speed"> & { readonly speed?: RotationalSpeed },
): readonly ForetoldBox[] {
  const speed = journals.speed ?? common.speed;
  if (speed === undefined)
    throw new RangeError(
      "boxesOnJournals: the journals carry no speed: give it where they are published, or as speed",
    );
  return Object.freeze(
    journals.journals.map(({ name, diameter, load }) => {
      if (load === undefined || !(load.force.value.si > 0))
        throw new RangeError(
          `boxesOnJournals: "${name}" must carry a load above 0, got ${load?.force.value ?? "none"}; give it where the journals are published`,
        );
      return Object.freeze({ ...common, name, diameter: diameter.value, load: load.force, speed });
    }),
  );
}
