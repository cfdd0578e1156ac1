import { describe, expect, it } from "vitest";
import { inch, measured, thou } from "../../kernel-helpers/quantity/index.js";
import { judgeLimit, profileOf, wearBands } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { lengthTable } from "../support/length-table.js";
import { oneBand } from "../support/one-band.js";
import { sampleWear } from "../support/sample-results.js";

describe("judgeLimit(wear)", () => {
  // Source: JCGM 100:2008 (GUM), table G.2: t₉₅(10) = 2.23 (2.228 in fuller tables).
  const justU = 0.2228138852;

  it.each([
    { above: 1.001, outcome: "yes" },
    { above: 0.999, outcome: "cannot tell yet" },
    { above: -0.999, outcome: "cannot tell yet" },
    { above: -1.001, outcome: "no" },
  ])("says $outcome where the margin is $above of its 95 % uncertainty", ({ above, outcome }) => {
    const [judged] = judgeLimit(oneBand(inch(2.43).minus(thou(above * justU))));
    expect(judged!.outcome).toBe(outcome);
  });

  it("gives one half where the diameter is the limit, and 2.5 % at the edge of the interval", () => {
    const [atLimit] = judgeLimit(oneBand(inch(2.43)));
    expectClose(atLimit!.probabilityBelow, 0.5, { abs: 1e-9, because: "symmetry" });
    const [atEdge] = judgeLimit(oneBand(inch(2.43).minus(thou(justU))));
    expectClose(atEdge!.probabilityBelow, 0.025, { rel: 1e-7, because: "t is known to 10 digits" });
  });

  it("judges a sloping band by its smaller end, with the uncertainty of its slope", () => {
    const sloping = oneBand(inch(2.42), {
      shape: "sloping",
      from: inch(0),
      to: inch(10),
      diameterAtTo: inch(2.425),
      slope: measured(-0.0005, 0.00002, 10),
    });
    const [judged] = judgeLimit(sloping);
    expectClose(judged!.diameter.in("inch"), 2.425, { rel: 1e-12, because: "exact" });
    // √(0.1² + (5 × 0.02)²) thou
    expectClose(judged!.standardUncertainty.in("thou"), 0.1 * Math.SQRT2, { rel: 1e-9, because: "exact" });
  });

  it("judges a band that is worn out of round at its smallest angle, not by its mean", () => {
    const wear = sampleWear("inch", { withLimit: true });
    const mean = wear.bands[1]!.diameter.value;
    const { diameter } = judgeLimit(wear)[1]!;
    // The sample is 4.0 thou down at 0° and 5.6 thou at 90°, with a scatter of 0.1 thou on 9 readings.
    expectClose(mean.minus(diameter).in("thou"), 0.8, {
      abs: 0.15,
      because: "4 standard errors of 0.033 thou",
    });
  });

  it("does not say yes over a reading that is itself plainly below the limit, and names it", () => {
    // Twelve stations at two angles; stretches worn so short that most hold one station, taken for one rough band.
    const rows = [
      [1, 2.4373, 2.4371],
      [7, 2.4357, 2.432],
      [10, 2.436, 2.4328],
      [14, 2.4373, 2.4373],
      [21, 2.4374, 2.4373],
      [33, 2.4373, 2.4372],
      [42, 2.4371, 2.4374],
      [54, 2.4373, 2.4371],
      [59, 2.4361, 2.4355],
      [63, 2.4359, 2.4354],
      [66, 2.4361, 2.4353],
      [72, 2.4372, 2.4372],
    ];
    const profile = profileOf(
      lengthTable("station [in], diameter @ 0 deg [in], diameter @ 90 deg [in]", rows),
      { readingUncertainty: thou(0.15), stationUncertainty: thou(20) },
    );
    const coarse = { ...wearBands(profile, { nominal: inch(2.4375) }), limit: inch(2.4325) };
    const below = profile.readings.findIndex(({ diameter }) => diameter < inch(2.4321));
    for (const judged of judgeLimit(coarse).filter(({ margin, expanded }) => margin > expanded)) {
      const inIt = judged.band.from <= inch(7) && judged.band.to >= inch(7);
      expect([judged.outcome, judged.contradictedBy]).toEqual(
        inIt ? ["cannot tell yet", below] : ["yes", undefined],
      );
    }
    const outcomes = judgeLimit(coarse).map(({ outcome }) => outcome);
    expect(outcomes).not.toEqual(outcomes.map(() => "yes"));
    // A limit that no reading is below of by more than its own uncertainty is kept as the fit says.
    expect(
      judgeLimit({ ...coarse, limit: inch(2.432) }).every(
        ({ contradictedBy }) => contradictedBy === undefined,
      ),
    ).toBe(true);
  });

  it("gives nothing to judge without a limit", () => {
    expect(judgeLimit(sampleWear())).toEqual([]);
  });

  it("names what would decide it: so many more readings, or a better setting", () => {
    const open = (above: number) => judgeLimit(oneBand(inch(2.43).minus(thou(above))))[0]!.toDecide;
    // k = 2.228, u = 0.1, common 0.05: (0.1² − 0.05²)/((0.18/2.228)² − 0.05²) = 1.862 times 24 readings, 21 more.
    expect(open(0.18)).toEqual({ by: "readings", more: 21 });
    const setting = open(0.05);
    if (setting?.by !== "setting") throw new Error("0.05 thou is less than the common part leaves open");
    expectClose(setting.leftOpen.in("thou"), 0.05 * 2.228138852, {
      rel: 1e-9,
      because: "k times the common part",
    });
    expect(open(1)).toBeUndefined();
  });
});
