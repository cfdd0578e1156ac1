import { describe, expect, it } from "vitest";
import { jointsToLoad } from "../../../kernel-helpers/bearing/index.js";
import { degree } from "../../../kernel-helpers/quantity/index.js";
import { expectClose } from "../../support/expect-close.js";

describe("jointsToLoad(load)", () => {
  it("may groove both joints under a load straight down or up to 30° aside", () => {
    for (const load of [0, 30, -30, 180, 330])
      expect(jointsToLoad(degree(load)).map(({ grooved }) => grooved)).toEqual([true, true]);
  });
  it("leaves the joint that the load presses near to whole, and always one to groove", () => {
    expect(jointsToLoad(degree(31)).map(({ grooved }) => grooved)).toEqual([false, true]);
    expect(jointsToLoad(degree(299)).map(({ grooved }) => grooved)).toEqual([true, false]);
    for (let load = 0; load < 360; load++)
      expect(jointsToLoad(degree(load)).some(({ grooved }) => grooved)).toBe(true);
  });
  it("has its two angles add up to half a turn", () => {
    for (const load of [10, 121, 256, 299]) {
      const [right, left] = jointsToLoad(degree(load));
      expectClose(right.fromLoad.in("degree") + left.fromLoad.in("degree"), 180, {
        rel: 1e-9,
        because: "the joints lie opposite each other",
      });
    }
    expectClose(jointsToLoad(degree(299))[1].fromLoad.in("degree"), 29, {
      rel: 1e-9,
      because: "270 less 299",
    });
  });
});
