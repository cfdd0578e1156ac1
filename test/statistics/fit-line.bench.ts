import { linearRegression } from "simple-statistics";
import { bench, describe } from "vitest";
import { fitLine } from "../../kernel-helpers/statistics/index.js";
import { runPython, say, timed } from "../support/peers.js";
import { seededNoise } from "../support/seeded-noise.js";

// Peer: numpy.linalg.lstsq of the same 10⁶ points; ours gives covariance and residuals besides, and loses no digits to
// a large offset (compensated sums about the middle).
const program = `
import time
import numpy as np
x = np.arange(10**6, dtype=float)
y = 2 + 3e-6 * x + np.random.default_rng(1).normal(0, 0.1, x.size)
times = []
for k in range(10):
    start = time.perf_counter()
    np.linalg.lstsq(np.column_stack((np.ones_like(x), x)), y, rcond=None)
    times.append(1000 * (time.perf_counter() - start))
print(min(times))
`;
const noise = seededNoise(1);
const x = Array.from({ length: 1_000_000 }, (_, i) => i);
const y = x.map((at) => 2 + 3e-6 * at + 0.1 * noise.normal());

// In its own form: pairs, made beforehand. It gives slope and intercept, no uncertainty.
const pairs = x.map((at, i) => [at, y[i]!]);

describe("straight line through 10⁶ points", () => {
  bench("fitLine", () => {
    fitLine(x, y);
  });
  bench("simple-statistics linearRegression", () => {
    linearRegression(pairs);
  });
});

const own = timed(10, () => fitLine(x, y));
for (const { name, words } of runPython(["numpy"], program))
  say(
    `fitLine: best ${own.best.toFixed(0)} ms; ${name} lstsq: best ${Number(words[0]).toFixed(0)} ms; ratio ${(own.best / Number(words[0])).toFixed(2)}`,
  );
