import { describe, expect, it } from "vitest";
import { heatNeighbours } from "../../kernel-helpers/joint/index.js";

describe("heatNeighbours(text)", () => {
  it("reads names, figures within a name too, and shares", () => {
    expect(heatNeighbours("paint 50 %; Babbitt 2 15%;oil 7.5 %")).toEqual([
      { name: "paint", share: 0.5 },
      { name: "Babbitt 2", share: 0.15 },
      { name: "oil", share: 0.075 },
    ]);
    expect(heatNeighbours(" Nothing ")).toEqual([]);
  });
  it.each(["paint", "paint 0 %", "paint 120 %", "paint 50 %;", "50 %", ""])(
    "rejects %j: a share is never guessed",
    (text) => {
      expect(() => heatNeighbours(text)).toThrow(/heatNeighbours: .*share of the nut's rise.*paint 50 %/);
    },
  );
  it("rejects what has no ceiling, and a name given twice", () => {
    expect(() => heatNeighbours("cheese 20 %")).toThrow(/heatCeiling: name must be one of paint, oil/);
    expect(() => heatNeighbours("paint 20 %; Paint 50 %")).toThrow(/got "paint" twice/);
  });
});
