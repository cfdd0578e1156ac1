import { describe, expect, it } from "vitest";
import { inch, measured } from "../../../kernel-helpers/quantity/index.js";
import { type Comparison, compareMeasured } from "../../../kernel-helpers/survey/index.js";
import type { Presentation, VerdictBlock } from "../../../kernel-helpers/view/blocks.js";
import { present } from "../../../kernel-helpers/view/present.js";

const thousandth = inch(0.001);
/** 2.4332 in against 2.4332 in less so many standard uncertainties of the difference. */
const compared = (apart: number): Comparison =>
  compareMeasured(
    ["the fit", measured(inch(2.4332), thousandth)],
    ["the mean", measured(inch(2.4332).minus(thousandth.times(apart * Math.SQRT2)), thousandth)],
  );
const shown = (comparison: Comparison): Presentation => present(comparison)!;
const verdict = (comparison: Comparison): VerdictBlock =>
  shown(comparison).blocks.find((block) => block.type === "verdict")!;

describe("present(comparison)", () => {
  it("names both ways in the title, and shows both values and their difference", () => {
    const { title, blocks } = shown(compared(1));
    expect(title).toBe("The fit against the mean");
    expect(blocks[0]).toEqual({
      type: "facts",
      facts: [
        { label: "the fit", value: "2.4332 ± 0.0020 in (95 %, k = 2.0)" },
        { label: "the mean", value: "2.4318 ± 0.0020 in (95 %, k = 2.0)" },
        { label: "difference", value: "0.0014 ± 0.0028 in (95 %, k = 2.0)" },
      ],
    });
  });

  // Two-sided quantiles of the normal distribution: P(|z| > 0.674490) = 0.5, P(|z| > 2.170090) = 0.03,
  // P(|z| > 3.890592) = 0.0001 (tables of the normal distribution).
  it.each([
    { apart: 0.67449, outcome: "yes", text: "they agree", chance: "50 %" },
    { apart: 2.17009, outcome: "no", text: "they do not agree", chance: "3.0 %" },
    { apart: 3.890592, outcome: "no", text: "they do not agree", chance: "less than 0.1 %" },
    { apart: 0, outcome: "yes", text: "they agree", chance: "more than 99 %" },
  ])(
    "answers $outcome for a difference that chance gives in $chance of cases",
    ({ apart, outcome, text, chance }) => {
      expect(verdict(compared(apart))).toEqual({
        type: "verdict",
        outcome,
        text,
        because: `If both measure the same thing, a difference at least so large comes by chance in ${chance} of cases.`,
      });
    },
  );

  it("never rounds a chance up to another number of digits", () => {
    const withChance = (chance: number): string => verdict({ ...compared(1), chance }).because;
    expect(withChance(0.0994)).toContain(" 9.9 % ");
    expect(withChance(0.0996)).toContain(" 10 % ");
    expect(withChance(0.001)).toContain(" 0.1 % ");
  });

  it("compares plain numbers too, without a unit", () => {
    const ratio = compareMeasured(["wear", measured(1.04, 0.02)], ["paint", measured(1, 0.02)]);
    expect(shown(ratio).blocks[0]).toMatchObject({
      facts: [{ value: "1.040 ± 0.039 (95 %, k = 2.0)" }, { label: "paint" }, { label: "difference" }],
    });
  });
});
