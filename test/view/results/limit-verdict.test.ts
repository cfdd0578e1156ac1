import { describe, expect, it } from "vitest";
import { inch, thou } from "../../../kernel-helpers/quantity/index.js";
import { limitVerdict } from "../../../kernel-helpers/view/results/limit-verdict.js";
import { shownUnits } from "../../../kernel-helpers/view/results/shown-units.js";
import { oneBand } from "../../support/one-band.js";
import { sampleWear } from "../../support/sample-results.js";

const units = shownUnits("inch");

describe("limitVerdict(wear)", () => {
  it("is no where one band is below, whatever the others are, and names it", () => {
    const wear = { ...sampleWear(), limit: inch(2.434) };
    const [verdict] = limitVerdict(wear, units);
    expect(verdict!.outcome).toBe("no");
    expect(verdict!.text).toContain("band 2");
    expect(verdict!.text).not.toContain("band 1");
    expect(verdict!.because).toMatch(
      /\d ± 0\.\d+ thou \(95 %\) below the limit\. Probability .* more than 99\.9 %/,
    );
  });

  it("asks for more readings where they can decide", () => {
    const [verdict] = limitVerdict(oneBand(inch(2.43).minus(thou(0.18))), units);
    expect(verdict!.outcome).toBe("cannot tell yet");
    // k = 2.228, u = 0.1, common 0.05: (0.1² − 0.05²)/((0.18/2.228)² − 0.05²) = 1.862 times 24 readings, 21 more.
    expect(verdict!.because).toMatch(/about 21 more in band 1/);
  });

  it("asks for a better setting where more readings cannot decide", () => {
    const [verdict] = limitVerdict(oneBand(inch(2.43).minus(thou(0.05))), units);
    expect(verdict!.because).toMatch(/More readings cannot decide it/);
    expect(verdict!.because).toMatch(/Set the instrument on a standard/);
  });
});
