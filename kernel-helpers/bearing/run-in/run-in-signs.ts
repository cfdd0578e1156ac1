import type { Measured, TemperatureDifference } from "../../quantity/index.js";
import type { BoxHeading } from "./box-heading.js";
import type { BoxSigns } from "./possible-causes.js";
import type { ForetoldRise, RunInBox, RunInReading } from "./run-in-types.js";

/** What one box shows before it is compared with the others. */
export interface Seen {
  readonly name: string;
  readonly readings: readonly RunInReading[];
  readonly heading: BoxHeading;
  readonly foretold: ForetoldRise | undefined;
  readonly withForecast: RunInBox["endWithForecast"];
  readonly against: Measured<TemperatureDifference> | undefined;
  readonly agreement: RunInBox["agreement"];
}

/** A departure counts from so many standard uncertainties. */
export const departs = 2;
/** A change between two readings counts as real from so many standard uncertainties of it. */
export const realChange = 4;
/** An end is expected to show within this many hours. */
const expectedWithin = 1.5;
const hour = 3600;

/** What is seen of one box beside the others, as yes or no. */
export function signsOf(one: Seen, all: readonly Seen[], u: number): BoxSigns {
  const others = all.filter((other) => other !== one && other.foretold !== undefined);
  const current = one.readings.filter(({ stretch }) => stretch === one.readings.at(-1)!.stretch);
  const rises = current.map(({ temperature, room }) => temperature.kelvin - room.kelvin);
  const crest = Math.max(...rises);
  const spans = current.at(-1)!.time.si - current[0]!.time.si;
  const { end, rate } = one.heading;
  const rising = rate !== undefined && rate.value.si > departs * rate.standardUncertainty.si;
  return {
    hotter: one.agreement === "hotter",
    cooler: one.agreement === "cooler",
    settles: end !== undefined,
    risesOn: end === undefined && rising && spans > expectedWithin * hour,
    pastCrest:
      rises[0]! < crest - realChange * u &&
      rises.at(-1)! < crest - realChange * u &&
      rises.indexOf(crest) > 0,
    jumped: jumpsOf(one, u).length > 0,
    othersFine:
      others.length > 0 &&
      others.every(({ agreement }) => agreement === "as foretold" || agreement === "cooler"),
    othersHotToo: others.length > 0 && others.every(({ agreement }) => agreement === "hotter"),
  };
}

/** Steps up between two readings that no steady heating makes: far steeper than the step before. */
export function jumpsOf({ readings }: Seen, u: number): readonly RunInReading[] {
  return readings.filter((reading, i) => {
    const [before, earlier] = [readings[i - 1], readings[i - 2]];
    if (before === undefined || earlier === undefined || earlier.stretch !== reading.stretch) return false;
    const expected =
      ((before.temperature.kelvin - earlier.temperature.kelvin) * (reading.time.si - before.time.si)) /
      (before.time.si - earlier.time.si);
    const step = reading.temperature.kelvin - before.temperature.kelvin;
    // A straight line on from noisy readings is itself uncertain.
    const stretch = (reading.time.si - before.time.si) / (before.time.si - earlier.time.si);
    return step - Math.max(0, expected) > realChange * u * Math.hypot(1, 1 + stretch, stretch);
  });
}
