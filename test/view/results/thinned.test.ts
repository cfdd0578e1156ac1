import { describe, expect, it } from "vitest";
import { thinned } from "../../../kernel-helpers/view/results/thinned.js";

describe("thinned(x, y)", () => {
  const count = 20_000;
  const x = Object.freeze(Array.from({ length: count }, (_, i) => i));
  const y = Object.freeze(x.map((i) => Math.sin(i / 300) + (i === 7777 ? 5 : 0)));

  it("keeps a short series whole", () => {
    expect(thinned([3, 1, 2], [1, 1, 1])).toEqual([0, 1, 2]);
  });

  it("keeps at most two points a column, in order", () => {
    const kept = thinned(x, y, 500);
    expect(kept.length).toBeLessThanOrEqual(1000);
    expect(kept).toEqual([...kept].sort((a, b) => a - b));
  });

  it("never loses the highest or the lowest point", () => {
    const kept = thinned(x, y, 500);
    expect(kept).toContain(7777);
    expect(kept).toContain(y.indexOf(Math.min(...y)));
  });

  it("keeps the lowest and the highest of many readings of one place", () => {
    const here = x.map(() => 1);
    expect(thinned(here, y, 10).map((i) => y[i])).toEqual(
      expect.arrayContaining([Math.min(...y), Math.max(...y)]),
    );
  });
});
