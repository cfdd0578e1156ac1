import { describe, expect, it } from "vitest";
import { seatOnTaper } from "../../kernel-helpers/joint/index.js";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { chiSquareSurvival, fitLine, predictLine } from "../../kernel-helpers/statistics/index.js";
import { fitTaper, profileOf, readTable } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";

const rows = [
  [0.25, 2.1407],
  [1.1, 2.1938],
  [2, 2.2505],
  [3, 2.3126],
  [4.9, 2.4314],
] as const;
const bytes = new TextEncoder().encode(
  ["station [in],diameter [in]", ...rows.map(([x, d]) => `${x},${d}`)].join("\n"),
);
const table = readTable(bytes, { name: "taper-survey", file: "taper-survey.csv" });
const taper = fitTaper(profileOf(table, { readingUncertainty: thou(0.2), stationUncertainty: inch(0) }), {
  method: "least squares",
});

describe("seatOnTaper(taper, from, to)", () => {
  const seat = seatOnTaper(taper, inch(0.5), inch(4.5));
  it("reads the fitted line half-way along the hub, with the line's own uncertainty there", () => {
    const line = fitLine(
      rows.map(([x]) => x),
      rows.map(([, d]) => d),
      { u: 0.0002 },
    );
    const there = predictLine(line, 2.5);
    expectClose(seat.diameter.value.in("inch"), there.value, { rel: 1e-9, because: "rounding" });
    // The stations scatter a little more than stated, as honest noise does in more than one survey of four.
    const chance = chiSquareSurvival(line.chiSquare!, line.degreesOfFreedom);
    expect(chance).toBeGreaterThan(0.25);
    expectClose(seat.diameter.standardUncertainty.in("inch"), there.standardUncertainty, {
      rel: 1e-6,
      because: "the same line; the variance from its two ends",
    });
    expect(seat.length.in("inch")).toBe(4);
    expect(seat.taper.value).toBe(taper.taper.value);
  });
  it("is least uncertain where the readings are, and more beyond their ends", () => {
    const beyond = seatOnTaper(taper, inch(5), inch(9));
    expect(beyond.diameter.standardUncertainty.si).toBeGreaterThan(seat.diameter.standardUncertainty.si);
  });
  it("stops at faces in the wrong order and a hub beside the taper", () => {
    expect(() => seatOnTaper(taper, inch(4), inch(1))).toThrow(
      /^seatOnTaper: from must be smaller than to \(1 in\), got 4 in$/,
    );
    expect(() => seatOnTaper(taper, inch(40), inch(44))).toThrow(
      /the hub must sit on the stretch that was read, from 0\.25 in to 4\.9 in/,
    );
    expect(() => seatOnTaper(taper, 4 as never, inch(8))).toThrow(/must be stations with their unit, got 4/);
  });
});
