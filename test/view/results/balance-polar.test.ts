import { describe, expect, it } from "vitest";
import type { Drawing } from "../../../kernel-helpers/view/drawing/drawing.js";
import { balancePolar } from "../../../kernel-helpers/view/results/balance-polar.js";

type Run = readonly [amplitude: number, phase: number];
const figure = (runs: readonly Run[]): Drawing =>
  balancePolar({
    name: "box",
    before: 0,
    last: 0,
    dimension: "length",
    unit: "micrometre",
    runs: runs.map(([amplitude, phase], i) => ({
      line: i + 2,
      amplitude: amplitude * 1e-6,
      phase: (phase * Math.PI) / 180,
      u: 1e-6,
    })),
  } as never);
const numbersOf = ({ shapes }: Drawing): (readonly [number, number])[] =>
  shapes.flatMap((shape) =>
    shape.type === "text" && /^\d$/.test(shape.text) ? [[shape.at[0], shape.at[1] - 4] as const] : [],
  );
/** From a number's middle to the nearest point of an arrow, by walking along it. */
const nearest = ([x, y]: readonly [number, number], { shapes }: Drawing): number =>
  Math.min(
    ...shapes.flatMap((shape) =>
      shape.type === "arrow"
        ? Array.from({ length: 101 }, (_, i) => {
            const [a, b] = [shape.from, shape.to];
            const t = i / 100;
            return Math.hypot(x - a[0] - t * (b[0] - a[0]), y - a[1] - t * (b[1] - a[1]));
          })
        : [],
    ),
  );

describe("balancePolar(pickup)", () => {
  it.each([
    // Readings that lie nearly in one direction, as a trial mass at the heavy side gives.
    [
      "in one direction",
      [
        [13.9, 95],
        [31.91, 92],
        [22.64, 108],
        [0.87, 72],
      ],
    ],
    [
      "near each other",
      [
        [20, 10],
        [21, 12],
        [19, 8],
        [20, 14],
      ],
    ],
    [
      "all round",
      [
        [5, 0],
        [10, 90],
        [15, 180],
        [20, 270],
      ],
    ],
    [
      "at rest",
      [
        [0, 0],
        [10, 0],
        [10, 0],
      ],
    ],
  ] as const)("numbers each run clear of arrows, heads and other numbers: %s", (_, runs) => {
    const drawing = figure(runs as readonly Run[]);
    const numbers = numbersOf(drawing);
    expect(numbers).toHaveLength(runs.length);
    numbers.forEach((at, i) => {
      expect(nearest(at, drawing)).toBeGreaterThan(6);
      for (const other of numbers.slice(0, i))
        expect(Math.hypot(at[0] - other[0], at[1] - other[1])).toBeGreaterThan(10);
    });
  });
});
