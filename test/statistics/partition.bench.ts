import { bench, describe } from "vitest";
import { partition } from "../../kernel-helpers/statistics/index.js";
import { plainPartition } from "../support/plain-partition.js";
import { seededNoise } from "../support/seeded-noise.js";

// Peer: the plain quadratic search of test/support/plain-partition.ts, which gives the same answer.
for (const n of [1000, 10_000]) {
  const noise = seededNoise(7);
  const x = Array.from({ length: n }, (_, i) => i * 0.5e-3);
  const y = x.map((_, i) => 61.9e-3 - (Math.floor((5 * i) / n) % 2) * 12e-6 + 2e-6 * noise.normal());
  const u = x.map(() => 2e-6);
  const rules = {
    penalty: Math.log(n),
    flat: true,
    sloping: true,
    minimumPoints: 2,
    minimumSlopingPoints: 4,
  };
  describe(`partition of ${n} readings in 5 bands`, () => {
    bench("partition, gross errors looked for", () => {
      partition(x, y, { u });
    });
    bench("plain quadratic search, no gross errors", () => {
      plainPartition(x, y, u, rules);
    });
  });
  const level = x.map(() => 61.9e-3 + 2e-6 * noise.normal());
  describe(`partition of ${n} readings without a band`, () => {
    bench("partition, gross errors looked for", () => {
      partition(x, level, { u });
    });
    bench("plain quadratic search, no gross errors", () => {
      plainPartition(x, level, u, rules);
    });
  });
}
