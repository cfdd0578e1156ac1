import { describe, expect, it } from "vitest";
import { inch } from "../../../kernel-helpers/quantity/index.js";
import type { WearBands } from "../../../kernel-helpers/survey/index.js";
import { bandTable } from "../../../kernel-helpers/view/results/band-table.js";
import { percentText } from "../../../kernel-helpers/view/results/percent-text.js";
import { presentWearBands } from "../../../kernel-helpers/view/results/present-wear-bands.js";
import { shownUnits } from "../../../kernel-helpers/view/results/shown-units.js";
import { wearSummary } from "../../../kernel-helpers/view/results/wear-summary.js";
import { sampleWear } from "../../support/sample-results.js";

const units = shownUnits("inch");
const wear = sampleWear("inch");
const plain = (text: string): string => text.replaceAll("\u00a0", " ");

/** The sample with its first edge sure, its second in doubt by one station each way. */
const judged: WearBands = {
  ...wear,
  edges: wear.edges.map((edge, i) => {
    const { after, before } = edge;
    const interval =
      i === 0
        ? { after, before, probability: 0.98 }
        : { after: after.minus(inch(1)), before: before.plus(inch(1)), probability: 0.97 };
    const reach =
      i === 0 ? { low: after, high: before } : { low: after.minus(inch(0.93)), high: before.plus(inch(0.9)) };
    return { ...edge, probability: i === 0 ? 0.98 : 0.61, interval, reach };
  }),
  bandCountProbability: { found: 0.912, runnerUp: { bands: 9, probability: 0.066 }, all: [] },
  probabilityNote: "",
};
const ends = (of: WearBands): string[] =>
  bandTable(of, units).rows.map(({ cells }) => plain(String(cells[2])));

describe("percentText(probability)", () => {
  it("never says 0 or 100 %", () => {
    expect([0, 0.0099, 0.014, 0.5, 0.9899, 0.995, 1].map(percentText).map(plain)).toEqual([
      "under 1 %",
      "under 1 %",
      "1 %",
      "50 %",
      "99 %",
      "over 99 %",
      "over 99 %",
    ]);
  });
});

describe("bandTable(wear, units)", () => {
  it("says how probable each edge is, and where else it may lie only where it may", () => {
    const bare = ends(wear);
    const said = ends(judged);
    expect(said[0]).toBe(`${bare[0]} (98 %)`);
    expect(said[1]).toMatch(/^\S+ – \S+ \(61 %\), \S+ – \S+ \(95 %\)$/);
    expect(said[1]!.startsWith(bare[1]!)).toBe(true);
    expect(said.at(-1)).toBe("end of survey");
    expect(bandTable(judged, units).caption).toMatch(/where each ends, with the probability/);
    expect(bandTable(wear, units).caption).not.toMatch(/probability/);
  });
});

describe("wearSummary(wear, units)", () => {
  it("gives the probability of the number of bands, and the runner-up unless it is under 1 %", () => {
    const count = wear.bands.length;
    expect(plain(wearSummary(judged, units))).toContain(
      `the shaft has ${count} bands (probability 91 %, 9 bands 7 %).`,
    );
    const sure = { ...judged, bandCountProbability: { found: 0.999, runnerUp: undefined, all: [] } };
    expect(plain(wearSummary(sure, units))).toContain(`${count} bands (probability over 99 %).`);
    expect(wearSummary(wear, units)).toContain(`the shaft has ${count} bands.`);
  });
});

describe("presentWearBands(wear)", () => {
  it("says why no probabilities are shown, and is silent where they are", () => {
    const text = (of: WearBands): string => JSON.stringify(presentWearBands(of));
    expect(text({ ...wear, probabilityNote: "Too many stations." })).toContain("Too many stations.");
    expect(text(judged)).not.toContain("not worked out");
  });
});
