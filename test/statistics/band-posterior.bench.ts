import { bench, describe } from "vitest";
import { bandPosterior } from "../../kernel-helpers/statistics/index.js";
import { seededNoise } from "../support/seeded-noise.js";

// Bound: 500 readings under 1 s. The shaft without a band is the slow case: no division can be left out.
for (const n of [30, 500]) {
  const noise = seededNoise(7);
  const x = Array.from({ length: n }, (_, i) => i);
  const level = x.map(() => noise.normal());
  const banded = level.map((v, i) => v + (Math.floor((5 * i) / n) % 2) * 10);
  describe(`bandPosterior of ${n} readings`, () => {
    bench("5 bands", () => {
      bandPosterior(x, banded, { u: 1 });
    });
    bench("1 band", () => {
      bandPosterior(x, level, { u: 1 });
    });
  });
}
