import type { RotationalSpeed } from "../../quantity/index.js";
import type { FinishedJournals } from "../../shaft/index.js";
import type { ForetoldBox } from "../film/index.js";
import { partingLines } from "./parting-lines.js";

/**
 * The boxes for a set of finished journals: name, diameter, load and where the parting lines lie to it from each journal,
 * the rest alike for all. A journal whose load has no direction has it midway between the parting lines.
 *
 * Valid when: boxes parted level.
 *
 * @param journals  as `finishedJournals` returns them
 * @param common  length of the box, clearance, oil, surface, cooling, roughness; speed where the journals carry none
 * @param common.turning  "clockwise" or "counter-clockwise", seen from where the loads' directions are seen; needed where they
 * have one
 * @returns a box each, as `runningPrediction` takes them
 * @throws RangeError  a journal without a load or with none to speak of, one whose load turns with the shaft, a load with a
 * direction and no turning, or no speed
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
  common: Omit<ForetoldBox, "name" | "diameter" | "load" | "speed"> & {
    readonly speed?: RotationalSpeed;
    readonly turning?: string;
  },
): readonly ForetoldBox[] {
  const { turning, ...alike } = common;
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
      if (load.turnsWithShaft)
        throw new RangeError(
          `boxesOnJournals: the load of "${name}" must stand still, got one that turns with the shaft: its film is no steady one; give the part of belts and weight`,
        );
      const box = { ...alike, name, diameter: diameter.value, load: load.force, speed };
      if (load.direction === undefined) return Object.freeze(box);
      if (turning === undefined)
        throw new RangeError(
          `boxesOnJournals: the load of "${name}" has a direction: turning must be given, to tell where the parting lines lie to it`,
        );
      return Object.freeze({ ...box, grooves: partingLines(load.direction, turning) });
    }),
  );
}
