import { spawnSync } from "node:child_process";
import { bench, describe } from "vitest";
import { measured } from "../../kernel-helpers/quantity/index.js";
import { monteCarlo } from "../../kernel-helpers/statistics/index.js";

// Peer: numpy, where python3 has it. Both draw three normal inputs 10⁶ times, evaluate a·b/c, and give mean,
// standard deviation and shortest 95 % interval; ours compares with linear propagation and counts a histogram besides.
const program = `
import sys, time
import numpy as np
n = 10**6
def run(seed):
    r = np.random.default_rng(seed)
    a, b, c = r.normal(10, 0.1, n), r.normal(3, 0.03, n), r.normal(2, 0.01, n)
    y = a * b / c
    mean, sd = y.mean(), y.std(ddof=1)
    y.sort()
    q = int(0.95 * n)
    i = (y[q:] - y[:n - q]).argmin()
    return mean, sd, y[i], y[i + q]
times = []
for k in range(10):
    start = time.perf_counter()
    run(k)
    times.append(1000 * (time.perf_counter() - start))
print(np.__version__, min(times), sorted(times)[len(times) // 2])
`;

const inputs = { a: measured(10, 0.1), b: measured(3, 0.03), c: measured(2, 0.01) };
const run = (): unknown => monteCarlo((x) => (x.a * x.b) / x.c, inputs, { seed: 1, draws: 1_000_000 });

describe("10⁶ draws of a·b/c", () => {
  bench("monteCarlo", () => {
    run();
  });
});

const numpy = spawnSync("python3", ["-c", program], { encoding: "utf8" });
if (numpy.status === 0) {
  const [version, best, median] = numpy.stdout.trim().split(" ");
  const own = Array.from({ length: 10 }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const text = (value: number): string => value.toFixed(0);
  process.stdout.write(
    `monteCarlo: best ${text(own[0]!)} ms, median ${text(own[5]!)} ms; numpy ${version}: best ${text(Number(best))} ms, median ${text(Number(median))} ms; ratio of the best ${(own[0]! / Number(best)).toFixed(2)}\n`,
  );
} else process.stdout.write("monteCarlo: not compared with numpy, which python3 does not have here\n");
