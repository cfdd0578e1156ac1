import { describe, expect, it } from "vitest";
import { movedPlace, nextPlace, type Place } from "../../../../kernel-helpers/live/grid/model/index.js";

// Lines: row, remark, row, and the new row behind them.
const shape = { lines: 3, columns: 2, isRemark: (line: number) => line === 1 };
const walk = (from: Place, direction: "across" | "down", step: 1 | -1): string[] => {
  const seen: string[] = [];
  for (let at: Place | undefined = from; at !== undefined; at = nextPlace(at, direction, step, shape))
    seen.push(`${at.line}/${at.column}`);
  return seen;
};

describe("nextPlace(place, direction, step, shape)", () => {
  it("reads along the rows, past remarks, to the end of the new row", () => {
    expect(walk({ line: 0, column: 0 }, "across", 1)).toEqual(["0/0", "0/1", "2/0", "2/1", "3/0", "3/1"]);
  });

  it("reads down the columns", () => {
    expect(walk({ line: 0, column: 0 }, "down", 1)).toEqual(["0/0", "2/0", "3/0", "0/1", "2/1", "3/1"]);
  });

  it("goes back the way it came", () => {
    expect(walk({ line: 3, column: 1 }, "across", -1).slice(0, 6)).toEqual(
      walk({ line: 0, column: 0 }, "across", 1).reverse(),
    );
    expect(walk({ line: 3, column: 1 }, "down", -1)).toEqual(
      walk({ line: 0, column: 0 }, "down", 1).reverse(),
    );
  });

  it("goes on from a remark with the row below it", () => {
    expect(nextPlace({ line: 1, column: 1 }, "across", 1, shape)).toEqual({ line: 2, column: 0 });
    expect(nextPlace({ line: 1, column: 1 }, "across", -1, shape)).toEqual({ line: 0, column: 1 });
  });

  it("begins in the new row of an empty table", () => {
    expect(nextPlace({ line: -1, column: 1 }, "across", 1, { ...shape, lines: 0 })).toEqual({
      line: 0,
      column: 0,
    });
  });
});

describe("movedPlace(place, move, shape)", () => {
  it("stays at the edges", () => {
    expect(movedPlace({ line: -1, column: 0 }, "up", shape)).toEqual({ line: -1, column: 0 });
    expect(movedPlace({ line: 3, column: 1 }, "down", shape)).toEqual({ line: 3, column: 1 });
    expect(movedPlace({ line: 0, column: 1 }, "right", shape)).toEqual({ line: 0, column: 1 });
  });

  it("keeps its column past a remark", () => {
    const onRemark = movedPlace({ line: 0, column: 1 }, "down", shape);
    expect(movedPlace(onRemark, "right", shape)).toEqual({ line: 1, column: 1 });
    expect(movedPlace(onRemark, "down", shape)).toEqual({ line: 2, column: 1 });
  });
});
