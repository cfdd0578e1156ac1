import { createRequire } from "node:module";
import { bench, describe } from "vitest";
import type * as Journalbox from "../../kernel-helpers/index.js";
import { runPython, say, timed } from "../support/peers.js";

// Peer: numpy, in each Python that has it. Both draw three normal inputs 10⁶ times, evaluate a·b/c, and give mean,
// standard deviation and shortest 95 % interval; ours compares with linear propagation and counts a histogram
// besides. numpy 2 sorts by vector instructions where the processor has them, which Debian 12's 1.24 does not.
// As built, which is what a worksheet runs: vitest's own transform looks every imported name up anew, within the loops.
const { inch, measured, monteCarlo }: typeof Journalbox = createRequire(__filename)("../../dist/index.js");

const program = `
import time
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
for k in range(20):
    start = time.perf_counter()
    run(k)
    times.append(1000 * (time.perf_counter() - start))
print(min(times), sorted(times)[len(times) // 2])
`;

const inputs = { a: measured(10, 0.1), b: measured(3, 0.03), c: measured(2, 0.01) };
const run = (): unknown => monteCarlo((x) => (x.a * x.b) / x.c, inputs, { seed: 1, draws: 1_000_000 });
const lengths = {
  a: measured(inch(10), inch(0.1)),
  b: measured(inch(3), inch(0.03)),
  c: measured(inch(2), inch(0.01)),
};
const runLengths = (): unknown =>
  monteCarlo((x) => x.a.times(x.b).over(x.c), lengths, { seed: 1, draws: 1_000_000 });

describe("10⁶ draws of a·b/c", () => {
  bench("monteCarlo of plain numbers", () => {
    run();
  });
  bench("monteCarlo of lengths: five quantities made in each draw", () => {
    runLengths();
  });
});

const own = timed(20, run);
for (const { name, words } of runPython(["numpy"], program)) {
  const [best, median] = words.map(Number) as [number, number];
  say(
    `monteCarlo: best ${own.best.toFixed(0)} ms, median ${own.median.toFixed(0)} ms; ${name}: best ${best.toFixed(0)} ms, median ${median.toFixed(0)} ms; ratio of the best ${(own.best / best).toFixed(2)}`,
  );
}
