import { createRequire } from "node:module";
import { bench, describe } from "vitest";
import type * as Journalbox from "../../../kernel-helpers/index.js";
import { runPython, say, timed } from "../../support/peers.js";

// Bounds: one film on 200 × 80 nodes under 12 ms; a map of 200 points under 5 s.
// As built, which is what a worksheet runs.
const { boxCooling, clearanceMap, degF, filmState, inch, lbf, oil, quantity, rpm, thou }: typeof Journalbox =
  createRequire(__filename)("../../../dist/index.js");

const mesh = { around: 200, along: 40 }; // Half the length: the middle is a line of symmetry.
const solve = (eccentricity: number) => filmState(eccentricity, 1, { at: "thickest film" }, mesh);

// Peer: the same equations on the same nodes, by scipy's sparse direct solver within the same active set; in each
// Python that has it. Its first solution is the one without cavitation.
const program = `
import math, time
import numpy as np, scipy.sparse as sp, scipy.sparse.linalg as sl
n, m, slender = 200, 40, 1.0
dt, dz = 2 * math.pi / (n + 1), 1 / m
def run(eps):
    th = (np.arange(n) + 1) * dt
    h = lambda t: 1 + eps * np.cos(t)
    share = np.ones(m); share[0] = 0.5
    before, after, here = h(th - dt / 2) ** 3 / dt ** 2, h(th + dt / 2) ** 3 / dt ** 2, slender ** 2 * h(th) ** 3 / dz ** 2
    along = sp.diags([-np.ones(m - 1), np.r_[1.0, 2 * np.ones(m - 1)], -np.ones(m - 1)], [-1, 0, 1])
    round_ = sp.diags([-after[:-1], before + after, -after[:-1]], [-1, 0, 1])
    A = (sp.kron(round_, sp.diags(share)) + sp.kron(sp.diags(here), along)).tocsr()
    f = -np.kron((h(th + dt / 2) - h(th - dt / 2)) / dt, share)
    free = np.ones(n * m, bool)
    for k in range(60):
        p = np.zeros(n * m)
        at = np.flatnonzero(free)
        p[at] = sl.spsolve(A[at][:, at].tocsc(), f[at])
        now = np.where(free, p >= 0, A @ p - f < 0)
        if (now == free).all(): break
        free = now
    line = 2 * dz * (p.reshape(n, m) * share).sum(axis=1)
    return 1 / (3 * math.pi * math.hypot((line * np.cos(th)).sum() * dt, (line * np.sin(th)).sum() * dt))
times = []
for k in range(5):
    start = time.perf_counter()
    s = run(0.6)
    times.append(1000 * (time.perf_counter() - start))
print(min(times), s)
`;

const box = {
  diameter: inch(2.4375),
  length: inch(8),
  load: lbf(700),
  speed: rpm(110),
  room: degF(65),
  boxSurface: quantity(250, "inch2"),
  cooling: boxCooling("still air"),
  roughness: thou(0.06),
};
const map = (length: number): unknown =>
  clearanceMap({
    ...box,
    length: inch(length),
    clearances: [thou(2), thou(8)],
    oils: [oil("ISO VG 46"), oil("ISO VG 100"), oil("ISO VG 220"), oil("ISO VG 460")],
    steps: 50,
  });

describe("film on 200 × 80 nodes", () => {
  for (const eccentricity of [0.3, 0.6, 0.9])
    bench(`eccentricity ${eccentricity}`, () => {
      solve(eccentricity);
    });
});

describe("map of 200 points", () => {
  // Another length each time: the films of a shape are kept.
  let length = 8;
  bench(
    "four oils, 50 clearances, a shape not met before",
    () => {
      length += 0.01;
      map(length);
    },
    { iterations: 5, time: 0 },
  );
});

const own = timed(20, () => solve(0.6));
for (const { name, words } of runPython(["numpy", "scipy"], program)) {
  const [best, sommerfeld] = words.map(Number) as [number, number];
  say(
    `film on 200 × 80 nodes: best ${own.best.toFixed(1)} ms, S ${solve(0.6).sommerfeld.toFixed(5)}; ${name}: best ${best.toFixed(1)} ms, S ${sommerfeld.toFixed(5)}; ratio of the best ${(own.best / best).toFixed(3)}`,
  );
}
