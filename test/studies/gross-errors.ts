import type { RandomGenerator } from "../../kernel-helpers/statistics/index.js";
import type { ShaftReading } from "../support/shaft-table.js";

/** Slips of the bench [in]: wrong digits, and a turn of the thimble. */
const slips = [0.002, 0.005, 0.01, 0.025, 0.1];

/** The readings, each with the given chance spoilt by a slip, either way. */
export function spoilt(
  readings: readonly ShaftReading[],
  share: number,
  random: RandomGenerator,
): readonly ShaftReading[] {
  return readings.map((reading) => {
    if (random.uniform() >= share) return reading;
    const slip = slips[Math.floor(slips.length * random.uniform())]! * (random.uniform() < 0.5 ? -1 : 1);
    return { ...reading, diameter: reading.diameter + slip };
  });
}
