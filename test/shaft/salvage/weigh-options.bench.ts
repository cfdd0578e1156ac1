import { bench, describe } from "vitest";
import { measured } from "../../../kernel-helpers/quantity/index.js";
import { weighOptions } from "../../../kernel-helpers/shaft/index.js";
import { runPython, say, timed } from "../../support/peers.js";

// Peer: numpy, which draws three inputs 10 000 times and holds four options against two limits, with their chances.
const program = `
import time
import numpy as np
n = 10**4
def run(seed):
    r = np.random.default_rng(seed)
    strength, load, size = r.normal(3, 0.3, n), r.normal(2, 0.4, n), r.normal(2.4257, 0.00035, n)
    return [((strength + k - load >= 0) & (size + 0.01 * k - 2.425 >= 0)).mean() for k in range(4)]
times = []
for k in range(20):
    start = time.perf_counter()
    run(k)
    times.append(1000 * (time.perf_counter() - start))
print(min(times), sorted(times)[len(times) // 2])
`;

const run = (): unknown =>
  weighOptions({
    inputs: { strength: measured(3, 0.3), load: measured(2, 0.4), size: measured(2.4257, 0.00035) },
    options: ["0", "1", "2", "3"],
    limits: [
      { name: "strength", kind: "number", margin: ({ strength, load }, k) => strength! + Number(k) - load! },
      { name: "size", kind: "number", margin: ({ size }, k) => size! + 0.01 * Number(k) - 2.425 },
    ],
    seed: 1,
  });

describe("four options, two limits, 10 000 draws", () => {
  bench("weighOptions, with margins, flips and what to measure", () => {
    run();
  });
});

const own = timed(10, run);
for (const { name, words } of runPython(["numpy"], program)) {
  const best = Number(words[0]);
  say(
    `weighOptions: best ${own.best.toFixed(1)} ms; ${name}, chances alone: best ${best.toFixed(1)} ms; ratio ${(own.best / best).toFixed(1)}`,
  );
}
