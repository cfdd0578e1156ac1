import { angleWords, chanceText, plainSmall, smallText } from "./run-out-text.js";
import type { OffCentre, RunOut } from "./run-out-types.js";

/** What the split of a run-out says, in the words of the trade. Distances are on radius unless it says otherwise. */
export function runOutSentence({
  stations,
  offset,
  bend,
  unitSystem: system,
}: Pick<RunOut, "stations" | "offset" | "bend" | "unitSystem">): string {
  const worst = stations.reduce((most, at) => (at.tir > most.tir ? at : most));
  const place = ({ distance, direction }: OffCentre): string =>
    `${smallText(distance, system)} at ${angleWords(direction)}`;
  const parts = [
    `The largest total indicator reading is ${plainSmall(worst.tir, system)}, at station ${worst.station}.`,
  ];
  if (offset !== undefined) {
    const ends = [
      { ...offset.first, at: offset.from },
      { ...offset.last, at: offset.to },
    ].filter(({ real }) => real);
    parts.push(
      ends.length === 0
        ? "The centre holes lie true to the shaft within the noise."
        : `The centre holes put the shaft off centre by ${ends.map((end) => `${place(end)} at station ${end.at}`).join(" and ")} (on radius, 95 %).`,
    );
  }
  if (bend !== undefined)
    parts.push(
      bend.real
        ? `The shaft is bent: bowed ${place(bend)} in the middle over its ends (on radius, 95 %), which alone gives ${plainSmall(bend.distance.value.times(2), system)} of total indicator reading there.`
        : `No bend stands out of the noise: a straight shaft reads so in ${chanceText(bend.chance)} of surveys.`,
    );
  const low = stations.filter(({ lower }) => lower !== undefined);
  if (low.length > 0) {
    const deepest = low.reduce((most, at) => (at.lower!.value > most.lower!.value ? at : most));
    parts.push(
      `At ${low.length === 1 ? "one station" : `${low.length} stations`} one side is low against the axis, most at station ${deepest.station}: ${smallText(deepest.lower!, system)} lower at ${angleWords(deepest.lowSide!)} than opposite (on radius, 95 %).`,
    );
  }
  return parts.join(" ");
}
