import { describe, expect, it } from "vitest";
import { threadNamed } from "../../kernel-helpers/handbook/index.js";
import { heatNut, nutRemoval, nutWays } from "../../kernel-helpers/joint/index.js";
import { degF, inch, lbf, psi } from "../../kernel-helpers/quantity/index.js";

const thread = threadNamed("1 1/2 in BSW");
const heat = heatNut({
  thread,
  acrossFlats: inch(2.41),
  height: inch(1.5),
  shop: degF(65),
  neighbours: [{ name: "oil", share: 1 }],
});

describe("nutWays(removal, heat)", () => {
  it("lets every way of pulling end at the stop limit, and says what stops the heat", () => {
    const removal = nutRemoval({ thread, yield: psi(30000), state: "rusted" });
    const [cold, warm, split] = nutWays(removal, heat);
    const stop = cold!.figures["stop at"] as typeof removal.stopLimit;
    // Two digits, cut down, as the sheet shows the stop limit: a limit is never rounded up.
    expect(stop.si).toBeLessThanOrEqual(removal.stopLimit.si);
    expect(1 - stop.si / removal.stopLimit.si).toBeLessThan(0.1);
    expect(stop.in("lbfFoot") % 10).toBeLessThan(1e-9);
    expect(warm!.figures["stop at"]).toEqual(stop);
    expect(warm!.figures["first to suffer"]).toBe("oil");
    expect(split!.figures.lost).toMatch(/cut to 1 1\/2 in BSW/);
    expect([cold!.breaks, warm!.breaks, split!.breaks]).toEqual([[], [], []]);
  });
  it("says that pulling cold breaks the limit where the stud gives first for sure", () => {
    const removal = nutRemoval({
      thread,
      yield: psi(30000),
      state: "seized",
      preload: { low: lbf(20000), high: lbf(34000) },
    });
    expect(nutWays(removal, heat)[0]!.breaks).toEqual([
      "the nut breaks loose only beyond the stud's stop limit",
    ]);
  });
});
