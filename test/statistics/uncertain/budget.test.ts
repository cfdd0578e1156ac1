import { describe, expect, it } from "vitest";
import { deltaC, inch, measured, mm, perC, thou } from "../../../kernel-helpers/quantity/index.js";
import { budget, correlated, exactly, uncertain } from "../../../kernel-helpers/statistics/index.js";
import { expectClose } from "../../support/expect-close.js";

const rounding = { rel: 1e-13, because: "a few roundings" };
const bore = uncertain(measured(inch(2.4405), thou(0.3), 9), "bore gauge");
const shaft = uncertain(measured(inch(2.4375), thou(0.4)), "micrometer");

describe("budget(value)", () => {
  it("lists the sources from the largest contribution down, with shares that add up to 1", () => {
    const { rows, standardUncertainty, isCorrelated } = budget(bore.minus(shaft));
    expect(rows.map(({ source }) => source)).toEqual(["micrometer", "bore gauge"]);
    expectClose(rows[0]!.share, 0.64, rounding);
    expectClose(rows[1]!.share, 0.36, rounding);
    expect(rows[0]!.sensitivity).toBe(-1);
    expectClose(Number(standardUncertainty), thou(0.5).si, rounding);
    expect(isCorrelated).toBe(false);
  });

  it("has Welch–Satterthwaite degrees of freedom and the factor that goes with them", () => {
    const shown = budget(bore.minus(shaft), { coverage: 0.95 });
    // 0.5⁴ / (0.3⁴/9) = 69.4; t(0.975, 69.4) = 1.995 (tables print 1.994 for 70).
    expectClose(shown.degreesOfFreedom, 0.0625 / (0.0081 / 9), rounding);
    expectClose(shown.coverageFactor, 1.995, { abs: 5e-4, because: "between the table's rows 60 and 70" });
    expectClose(Number(shown.expanded), shown.coverageFactor * thou(0.5).si, rounding);
  });

  it("gives each sensitivity as a quantity of its own kind", () => {
    const length = uncertain(measured(mm(50), mm(0.001)), "length");
    const expansion = uncertain(measured(perC(11.5e-6), perC(1e-6)), "expansion");
    const warmer = uncertain(measured(deltaC(5), deltaC(0.5)), "temperature");
    const { rows } = budget(length.times(expansion).times(warmer));
    const byName = new Map(rows.map((row) => [row.source, row.sensitivity]));
    expectClose(Number(byName.get("length")), 57.5e-6, rounding);
    expectClose(Number(byName.get("temperature")), 0.05 * 11.5e-6, rounding);
    expect(byName.get("length")).toBeTypeOf("number");
    expect(byName.get("expansion")).toMatchObject({ dimension: expect.stringContaining("temperature 1") });
    for (const { sensitivity, standardUncertainty, contribution } of rows)
      expectClose(Number(contribution), Number(sensitivity) * Number(standardUncertainty), rounding);
  });

  it("says when sources are correlated; a share may then be negative, and all still add up to 1", () => {
    const { a, b } = correlated({ a: measured(1, 1), b: measured(1, 4) }, [["a", "b", 0.9]]);
    const { rows, isCorrelated } = budget(b.minus(a));
    expect(isCorrelated).toBe(true);
    // u² = 16 + 1 − 7.2 = 9.8; a: 1 − 3.6, b: 16 − 3.6.
    expectClose(rows[0]!.share, 12.4 / 9.8, rounding);
    expectClose(rows[1]!.share, -2.6 / 9.8, rounding);
  });

  it("is frozen", () => {
    const shown = budget(bore);
    expect([shown, shown.rows, shown.rows[0]].every(Object.isFrozen)).toBe(true);
  });

  it("rejects an exact value, what is not uncertain, and a coverage of 1", () => {
    expect(() => budget(exactly(inch(1)))).toThrow(/budget: .* uncertain source, got the exact 1 in/);
    expect(() => budget(measured(1, 1) as never)).toThrow(/budget: an uncertain value was expected/);
    expect(() => budget(bore, { coverage: 1 })).toThrow(/coverage must lie between 0 and 1, got 1/);
  });
});
