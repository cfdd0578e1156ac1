import { describe, expect, it } from "vitest";
import { flattenPath } from "../../../kernel-helpers/view/picture/path-points.js";
import { measurePath, pointAlong, totalLength } from "../../../kernel-helpers/view/picture/point-along.js";
import { expectClose } from "../../support/expect-close.js";

const lengthOf = (path: string): number => totalLength(measurePath(flattenPath(path)));
const corners = (path: string): string =>
  flattenPath(path)
    .map(({ x, y }) => `${x},${y}`)
    .join(" ");

describe("flattenPath(path)", () => {
  it("reads lines, absolute and relative", () => {
    expect(corners("M1,2L3,4H10V0Z")).toBe("1,2 3,4 10,4 10,0 1,2");
    expect(corners("m1,2l2,2h7v-4z")).toBe("1,2 3,4 10,4 10,0 1,2");
  });
  it("takes further pairs after a move for lines", () => {
    expect(flattenPath("M0,0 1,1M5,5").map((point) => point.jump)).toEqual([true, false, true]);
  });
  it("reads numbers run together and with exponents", () => {
    expect(corners("M.5.5L1e1-2")).toBe("0.5,0.5 10,-2");
  });
  it("reads several groups after one command", () => {
    expect(corners("M0,0L1,0,1,1")).toBe("0,0 1,0 1,1");
  });
  it("gives nothing for an empty path", () => {
    expect(flattenPath("")).toEqual([]);
  });
});

describe("totalLength(path)", () => {
  it("of a circle of two arcs is 2πr", () => {
    // 48 chords: short by (π/48)²/6 = 0.07 %.
    const circle = "M50,0A50,50 0 1,1 -50,0A50,50 0 0,1 50,0Z";
    expectClose(lengthOf(circle), 100 * Math.PI, { rel: 8e-4, because: "arcs are cut into 24 chords" });
  });
  it("of a quarter circle drawn either way is πr/2, the long way 3πr/2", () => {
    for (const sweep of [0, 1]) {
      const because = "arcs are cut into 24 chords";
      expectClose(lengthOf(`M10,0A10,10 0 0 ${sweep} 0,10`), 5 * Math.PI, { rel: 2e-3, because });
      expectClose(lengthOf(`M10,0a10,10 0 1 ${sweep} -10,10`), 15 * Math.PI, { rel: 2e-3, because });
    }
  });
  it("of an arc whose radius cannot span its chord is the half circle on it", () => {
    const because = "arcs are cut into 24 chords";
    expectClose(lengthOf("M0,0A1,1 0 0 1 20,0"), 10 * Math.PI, { rel: 2e-3, because });
  });
  it("of a curve with its controls on the chord is the chord", () => {
    const because = "rounding";
    expectClose(lengthOf("M0,0C1,1 2,2 3,3"), 3 * Math.SQRT2, { rel: 1e-12, because });
    expectClose(lengthOf("M0,0Q1.5,1.5 3,3"), 3 * Math.SQRT2, { rel: 1e-12, because });
    expectClose(lengthOf("M0,0C1,1 2,2 3,3S5,5 6,6"), 6 * Math.SQRT2, { rel: 1e-12, because });
  });
  it("of a quadratic is that of its parabola", () => {
    // y = x²/2 from -1 to 1: length √2 + ln(1 + √2).
    const exact = Math.SQRT2 + Math.asinh(1);
    expectClose(lengthOf("M-1,0.5Q0,-0.5 1,0.5"), exact, { rel: 1e-3, because: "16 chords a curve" });
  });
  it("does not count the jumps of the pen", () => {
    expect(lengthOf("M0,0H3M100,0H104")).toBe(7);
  });
});

describe("pointAlong(path, distance)", () => {
  const path = measurePath(flattenPath("M0,0H10V5"));
  it("finds the point on the way", () => {
    expect(pointAlong(path, 4)).toEqual({ x: 4, y: 0 });
    expect(pointAlong(path, 12)).toEqual({ x: 10, y: 2 });
  });
  it("stays at the ends beyond them", () => {
    expect(pointAlong(path, -1)).toEqual({ x: 0, y: 0 });
    expect(pointAlong(path, 99)).toEqual({ x: 10, y: 5 });
  });
  it("is the origin for an empty path", () => {
    expect(pointAlong(measurePath([]), 1)).toEqual({ x: 0, y: 0 });
  });
});
