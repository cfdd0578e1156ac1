import { createRequire } from "node:module";
import { bench, describe } from "vitest";
import type * as Journalbox from "../../kernel-helpers/index.js";
import { firstCall, runPython, runR, say, timed } from "../support/peers.js";
import { seededNoise } from "../support/seeded-noise.js";

// As built, which is what a worksheet runs: vitest's own transform looks every imported name up anew, within the loops.
const { partition }: typeof Journalbox = createRequire(__filename)("../../dist/index.js");

/** Five bands of two levels, in standard uncertainties. */
function levels(n: number): readonly number[] {
  const noise = seededNoise(7);
  return Array.from({ length: n }, (_, i) => (Math.floor((5 * i) / n) % 2) * 6 + noise.normal());
}
const rules = {
  u: 1,
  shapes: ["flat"],
  minimumPoints: 2,
  grossErrorLimit: Number.POSITIVE_INFINITY,
} as const;
const flat = (y: readonly number[]): unknown =>
  partition(
    y.map((_, i) => i),
    y,
    rules,
  );
const edgesOf = (found: unknown): string =>
  (found as ReturnType<typeof partition>).edges.map(({ before }) => before).join(",");

// Peer 1: R strucchange::breakpoints, the exact division by least squares of flat segments (Bai and Perron, 2003),
// of at least 2 readings, with up to 8 breaks, its number by the BIC. Called once: it takes half a minute.
const thousand = levels(1000);
const inR = runR(
  "strucchange",
  `y <- c(${thousand.join(",")}); t <- system.time(b <- breakpoints(y ~ 1, h = 2, breaks = 8)); ms <- 1000 * t[["elapsed"]]; cat(ms, ms, 1000 * (t[["user.self"]] + t[["sys.self"]]), paste(b$breakpoints, collapse = ","))`,
);

// Peer 2: the same criterion, Σ r² + ln n × 2 for each segment, by a dynamic programme over all divisions, each
// step one vector operation of numpy. The first call is not counted on either side, and told apart.
const fiveThousand = levels(5000);
const program = `
import math, time
import numpy as np
y = np.array([${fiveThousand.join(",")}])
n = len(y)
def run():
    s, q = np.concatenate(([0], y.cumsum())), np.concatenate(([0], (y * y).cumsum()))
    penalty = 2 * math.log(n)
    best, last = np.full(n + 1, np.inf), np.zeros(n + 1, int)
    best[0] = 0
    count = np.arange(n, -1, -1.0)
    for j in range(2, n + 1):
        i = j - 1
        d = s[j] - s[:i]
        cost = best[:i] + (q[j] - q[:i]) - d * d / count[n - j:n - j + i]
        k = cost.argmin()
        best[j], last[j] = cost[k] + penalty, k
    edges, j = [], n
    while j > 0:
        j = last[j]
        if j > 0: edges.append(int(j))
    return edges[::-1]
times, used = [], []
for k in range(16):
    start, spent = time.perf_counter(), time.process_time()
    edges = run()
    times.append(1000 * (time.perf_counter() - start))
    used.append(1000 * (time.process_time() - spent))
print(times[0], sorted(times[1:])[7], sorted(used[1:])[7], ",".join(map(str, edges)))
`;
const inNumpy = runPython(["numpy"], program);

describe("partition in flat segments", () => {
  bench("1 000 readings", () => {
    flat(thousand);
  });
  bench("5 000 readings", () => {
    flat(fiveThousand);
  });
  const many = levels(100_000);
  bench("100 000 readings (wanted: under 300 ms)", () => {
    flat(many);
  });
});

/** Peers print the time of the first call, the medians of the others by the clock and of the processor, the edges [ms]. */
function compare(y: readonly number[], peers: typeof inR): void {
  const own = timed(50, () => flat(y));
  const first = firstCall("partition", [y.map((_, i) => i), y, rules]);
  for (const { name, words } of peers) {
    const [peerFirst, median, processor] = words.map(Number) as [number, number, number];
    say(
      `partition of ${y.length}: median ${own.median.toFixed(2)} ms, edges before ${edgesOf(flat(y))}; ${name}: ${median.toFixed(0)} ms, ${words[3]}; ${(median / own.median).toFixed(1)} times as fast, of processor time ${(processor / own.processor).toFixed(1)} times`,
    );
    say(`  first call in a fresh process: ${first.toFixed(0)} ms; ${name}: ${peerFirst.toFixed(0)} ms`);
  }
}
compare(thousand, inR);
compare(fiveThousand, inNumpy);

const hundredThousand = levels(100_000);
const large = timed(5, () => flat(hundredThousand));
say(
  `partition of 100 000 (wanted: under 300 ms): median ${large.median.toFixed(0)} ms, of processor ${large.processor.toFixed(0)} ms; first call in a fresh process ${firstCall("partition", [hundredThousand.map((_, i) => i), hundredThousand, rules]).toFixed(0)} ms`,
);
