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
times, used = [], []
for k in range(16):
    start, spent = time.perf_counter(), time.process_time()
    run(k)
    times.append(1000 * (time.perf_counter() - start))
    used.append(1000 * (time.process_time() - spent))
print(sorted(times[1:])[7], sorted(used[1:])[7])
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
// A model that looks at a value is evaluated draw by draw, a quantity made for each input and for the result.
const runLooking = (): unknown =>
  monteCarlo((x) => inch((x.a.in("inch") * x.b.in("inch")) / x.c.in("inch")), lengths, {
    seed: 1,
    draws: 1_000_000,
  });
const models = {
  "of plain numbers": run,
  "of lengths by their arithmetic": runLengths,
  "of lengths read in inches": runLooking,
};

describe("10⁶ draws of a·b/c", () => {
  for (const [name, model] of Object.entries(models))
    bench(`monteCarlo ${name}`, () => {
      model();
    });
});

const peers = runPython(["numpy"], program);
for (const [model, of] of Object.entries(models)) {
  const own = timed(15, of);
  for (const { name, words } of peers) {
    const [median, processor] = words.map(Number) as [number, number];
    say(
      `monteCarlo ${model}: median ${own.median.toFixed(0)} ms; ${name}: median ${median.toFixed(0)} ms; ratio ${(own.median / median).toFixed(2)}, of processor time ${(own.processor / processor).toFixed(2)}`,
    );
  }
}
