import { describe, expect, it } from "vitest";
import { degree, measured, pound, quantity, rpm } from "../../../kernel-helpers/quantity/index.js";
import { judgeUnbalance, permissibleUnbalance } from "../../../kernel-helpers/shaft/index.js";
import { expectClose } from "../../support/expect-close.js";

const permissible = permissibleUnbalance({ mass: pound(180), speed: rpm(110), grade: 16 });
const allowed = permissible.amount.in("ounceInch");
const found = (share: number, uShare: number) => ({
  amount: measured(quantity(share * allowed, "ounceInch"), quantity(uShare * allowed, "ounceInch")),
  angle: measured(degree(30), degree(5)),
});

describe("judgeUnbalance(found, permissible)", () => {
  it("is certain well inside and well outside, and cannot tell at the border", () => {
    expect(judgeUnbalance(found(0.3, 0.1), permissible).state).toBe("within");
    expect(judgeUnbalance(found(1.5, 0.1), permissible).state).toBe("beyond");
    expect(judgeUnbalance(found(1, 0.1), permissible).state).toBe("cannot tell yet");
  });
  it("gives the chance of the Rayleigh distribution where nothing was found", () => {
    expectClose(judgeUnbalance(found(0, 0.5), permissible).chanceWithin, 1 - Math.exp(-2), {
      rel: 1e-8,
      because: "closed form 1 − exp(−R²/2σ²), R = 2σ",
    });
  });
  it("gives the margin, below 0 where it is beyond", () => {
    expectClose(judgeUnbalance(found(1.25, 0.1), permissible).margin.in("ounceInch"), -allowed / 4, {
      rel: 1e-9,
      because: "a few roundings",
    });
  });
  it("refuses an unbalance without uncertainty", () => {
    expect(() => judgeUnbalance(found(0.5, 0), permissible)).toThrow(/standard uncertainty above 0/);
  });
});
