import type { Length } from "../../quantity/index.js";
import type { WearBand, WearBands } from "../../survey/index.js";

/** A worn stretch of a shaft, by the name of the box it ran in. */
export interface WornJournal {
  readonly name: string;
  readonly band: WearBand;
  /** Where it begins and ends: the band's edges, or its last station where the survey ends. */
  readonly from: Length;
  readonly to: Length;
}

/**
 * Every worn band of a shaft by the name of the box it ran in, in the order of their stations, with the edges of the
 * wear as its ends.
 *
 * Valid when: each box has worn one band; edges lie midway between the last station of one band and the first of the
 * next.
 *
 * @param wear   the bands of a shaft
 * @param names  the boxes along the shaft, one for each worn band
 * @returns the journals, their ends [m]
 * @throws RangeError  no band is worn, or there are not as many names as worn bands; the message lists the bands
 * @example
 * const rows = ["0,2.4373", "1,2.4373", "2,2.4373", "3,2.4340", "4,2.4340", "5,2.4340"];
 * const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
 * const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(10) });
 * const wear = wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
 * wornJournals(wear, ["pulley box"])[0].from.in("inch") // 2.5
 */
export function wornJournals(wear: WearBands, names: readonly string[]): readonly WornJournal[] {
  const worn = wear.bands.filter(({ state }) => state === "worn");
  if (worn.length === 0)
    throw new RangeError("wornJournals: no band is judged worn, so there is no journal to save");
  if (names.length !== worn.length)
    throw new RangeError(
      `wornJournals: a name is needed for each worn band (${worn.map(({ from, to }) => `${from} to ${to}`).join("; ")}), got ${names.length === 0 ? "none" : names.join(", ")}`,
    );
  return Object.freeze(
    worn.map((band, i): WornJournal => {
      const before = wear.edges.find(({ before: first }) => first.si === band.from.si);
      const behind = wear.edges.find(({ after }) => after.si === band.to.si);
      return Object.freeze({
        name: names[i]!,
        band,
        from: before?.position.value ?? band.from,
        to: behind?.position.value ?? band.to,
      });
    }),
  );
}
