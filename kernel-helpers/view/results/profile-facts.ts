import type { Profile } from "../../survey/profile-types.js";
import type { Fact } from "../blocks.js";
import { coverFactor } from "./cover-factor.js";
import { type ShownUnits, sizeUncertainty, smallUncertainty } from "./shown-units.js";

/** What was done to bring the readings to 20 °C. */
export function correctionFact({ correction }: Profile): Fact {
  return { label: "temperature", value: correction };
}

/** How well a reading is known: against its neighbours, all together, and where it was taken. */
export function uncertaintyFacts(profile: Profile, units: ShownUnits): Fact[] {
  return [
    {
      label: "a single reading",
      value: `± ${spread(profile, units)} (95 %)`,
      note: "against its neighbours: repeatability and resolution",
    },
    {
      label: "common to all readings",
      value: `± ${smallUncertainty(profile.commonUncertainty.times(coverFactor), units)} (95 %)`,
      note: "setting of the instrument and temperature: moves all or none, and no number of readings lessens it",
    },
    {
      label: "place of a station",
      value: `± ${sizeUncertainty(profile.stationUncertainty.times(coverFactor), units)} (95 %)`,
    },
  ];
}

/** U of the readings: one figure where all are alike, else from the least to the most. */
function spread({ readings }: Profile, units: ShownUnits): string {
  const sorted = readings.map(({ standardUncertainty }) => standardUncertainty.times(coverFactor));
  const least = sorted.reduce((a, b) => (b.si < a.si ? b : a), sorted[0]!);
  const most = sorted.reduce((a, b) => (b.si > a.si ? b : a), sorted[0]!);
  const [low, high] = [smallUncertainty(least, units), smallUncertainty(most, units)];
  return low === high ? low : `${low} to ± ${high}`;
}
