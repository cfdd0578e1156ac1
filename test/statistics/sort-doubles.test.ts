import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sortDoubles } from "../../kernel-helpers/statistics/sort-doubles.js";
import { seededNoise } from "../support/seeded-noise.js";

describe("sortDoubles(values)", () => {
  it("orders as the language's own sort does, zeros of both signs, tiny and huge numbers included", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), { maxLength: 300 }),
        (list) => {
          const values = Float64Array.from([
            ...list,
            0,
            -0,
            Number.MIN_VALUE,
            -Number.MIN_VALUE,
            -Number.MAX_VALUE,
          ]);
          const before = values.slice();
          const sorted = sortDoubles(values);
          expect(
            Object.is(
              sorted.findLast((v) => v === 0),
              0,
            ),
          ).toBe(true);
          expect(sorted).toEqual(values.slice().sort());
          expect(values).toEqual(before);
        },
      ),
      { seed: 3, numRuns: 300 },
    );
  });

  it("orders a hundred thousand normal numbers, part of a longer list", () => {
    const noise = seededNoise(2);
    const all = Float64Array.from({ length: 100_010 }, () => noise.normal());
    const part = all.subarray(7, 100_007);
    expect(sortDoubles(part)).toEqual(part.slice().sort());
    expect(sortDoubles(new Float64Array(0))).toEqual(new Float64Array(0));
  });
});
