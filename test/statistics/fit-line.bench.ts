import { createRequire } from "node:module";
import { linearRegression } from "simple-statistics";
import { bench, describe } from "vitest";
import type * as Journalbox from "../../kernel-helpers/index.js";
import { runPython, say, timed } from "../support/peers.js";
import { seededNoise } from "../support/seeded-noise.js";

// Peer: numpy.linalg.lstsq of the same 10⁶ points; ours gives covariance and residuals besides, and loses no digits to
// a large offset (compensated sums about the middle). As built, which is what a worksheet runs.
const { fitLine }: typeof Journalbox = createRequire(__filename)("../../dist/index.js");

const program = `
import time
import numpy as np
x = np.arange(10**6, dtype=float)
y = 2 + 3e-6 * x + np.random.default_rng(1).normal(0, 0.1, x.size)
times, used = [], []
for k in range(16):
    start, spent = time.perf_counter(), time.process_time()
    np.linalg.lstsq(np.column_stack((np.ones_like(x), x)), y, rcond=None)
    times.append(1000 * (time.perf_counter() - start))
    used.append(1000 * (time.process_time() - spent))
print(min(times[1:]), sorted(times[1:])[7], sorted(used[1:])[7])
`;
const noise = seededNoise(1);
const x = Array.from({ length: 1_000_000 }, (_, i) => i);
const y = x.map((at) => 2 + 3e-6 * at + 0.1 * noise.normal());

describe("straight line through 10⁶ points", () => {
  bench("fitLine", () => {
    fitLine(x, y);
  });
  // In its own form: pairs, made beforehand, and after all else was timed: a million lists keep the memory's sweeper
  // busy. It gives slope and intercept, no uncertainty.
  let pairs: number[][] = [];
  bench(
    "simple-statistics linearRegression",
    () => {
      linearRegression(pairs);
    },
    {
      setup: () => {
        pairs = x.map((at, i) => [at, y[i]!]);
      },
    },
  );
});

const own = timed(15, () => fitLine(x, y));
for (const { name, words } of runPython(["numpy"], program)) {
  const [best, median, processor] = words.map(Number) as [number, number, number];
  say(
    `fitLine: best ${own.best.toFixed(0)} ms, median ${own.median.toFixed(0)} ms; ${name} lstsq: best ${best.toFixed(0)} ms, median ${median.toFixed(0)} ms; ratio of the best ${(own.best / best).toFixed(2)}, of the medians ${(own.median / median).toFixed(2)}, of processor time ${(own.processor / processor).toFixed(2)}`,
  );
}
