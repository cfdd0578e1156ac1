import { bench, describe } from "vitest";
import { partition } from "../../kernel-helpers/statistics/index.js";
import { runPython, runR, say, timed } from "../support/peers.js";
import { seededNoise } from "../support/seeded-noise.js";

/** Five bands of two levels, in standard uncertainties. */
function levels(n: number): readonly number[] {
  const noise = seededNoise(7);
  return Array.from({ length: n }, (_, i) => (Math.floor((5 * i) / n) % 2) * 6 + noise.normal());
}
const flat = (y: readonly number[]): unknown =>
  partition(
    y.map((_, i) => i),
    y,
    { u: 1, shapes: ["flat"], minimumPoints: 2, grossErrorLimit: Number.POSITIVE_INFINITY },
  );
const edgesOf = (found: unknown): string =>
  (found as ReturnType<typeof partition>).edges.map(({ before }) => before).join(",");

// Peer 1: R strucchange::breakpoints, the exact division by least squares of flat segments (Bai and Perron, 2003),
// of at least 2 readings, with up to 8 breaks, its number by the BIC.
const thousand = levels(1000);
const inR = runR(
  "strucchange",
  `y <- c(${thousand.join(",")}); t <- system.time(b <- breakpoints(y ~ 1, h = 2, breaks = 8)); cat(1000 * t[["elapsed"]], paste(b$breakpoints, collapse = ","))`,
);

// Peer 2: the same criterion, Σ r² + ln n × 2 for each segment, by a dynamic programme over all divisions, each
// step one vector operation of numpy.
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
times = []
for k in range(3):
    start = time.perf_counter()
    edges = run()
    times.append(1000 * (time.perf_counter() - start))
print(min(times), ",".join(map(str, edges)))
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

function compare(y: readonly number[], peers: typeof inR): void {
  const own = timed(10, () => flat(y));
  for (const { name, words } of peers) {
    const ratio = Number(words[0]) / own.best;
    say(
      `partition of ${y.length}: best ${own.best.toFixed(2)} ms, edges before ${edgesOf(flat(y))}; ${name}: ${Number(words[0]).toFixed(0)} ms, ${words[1]}; ${ratio.toFixed(0)} times as fast`,
    );
  }
}
compare(thousand, inR);
compare(fiveThousand, inNumpy);
