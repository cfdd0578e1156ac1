import { createRequire } from "node:module";
import { bench, describe } from "vitest";
import type * as Journalbox from "../../../kernel-helpers/index.js";
import { runPython, say, timed } from "../../support/peers.js";

// Peer: scipy's dense generalized eigenvalues, three of them, for a beam of as many nodes. Ours finds the whirls with
// gyroscopic moment, both senses, bounds and uncertainties besides. Wanted: under 50 ms.
// As built, which is what a worksheet runs.
const { criticalSpeeds, gigapascal, kilogram, kilogramPerCubicMetre, mm }: typeof Journalbox =
  createRequire(__filename)("../../../dist/index.js");

const program = `
import time
import numpy as np
from scipy.linalg import eigh
n = 200
L, E, rho = 2.0 / n, 205e9, 7850.0
K, M = np.zeros((2 * n + 2,) * 2), np.zeros((2 * n + 2,) * 2)
for i in range(n):
    d = 0.06 + 0.002 * (i % 5)
    EI, m = E * np.pi * d**4 / 64, rho * np.pi * d**2 / 4
    k = EI / L**3 * np.array([[12, 6*L, -12, 6*L], [6*L, 4*L*L, -6*L, 2*L*L], [-12, -6*L, 12, -6*L], [6*L, 2*L*L, -6*L, 4*L*L]])
    c = m * L / 420 * np.array([[156, 22*L, 54, -13*L], [22*L, 4*L*L, 13*L, -3*L*L], [54, 13*L, 156, -22*L], [-13*L, -3*L*L, -22*L, 4*L*L]])
    s = slice(2 * i, 2 * i + 4)
    K[s, s] += k
    M[s, s] += c
free = [j for j in range(2 * n + 2) if j not in (2 * 20, 2 * 180)]
K, M = K[np.ix_(free, free)], M[np.ix_(free, free)]
times = []
for r in range(8):
    start = time.perf_counter()
    eigh(K, M, subset_by_index=[0, 2])
    times.append(1000 * (time.perf_counter() - start))
print(min(times))
`;

const stretches = Array.from({ length: 200 }, (_, i) => ({
  from: mm(10 * i),
  to: mm(10 * (i + 1)),
  diameter: mm(60 + 2 * (i % 5)),
}));
const supports = [
  { name: "near", at: mm(200) },
  { name: "far", at: mm(1800) },
];
const wheels = [{ name: "pulley", at: mm(1000), mass: kilogram(80) }];
const steel = { modulus: gigapascal(205), density: kilogramPerCubicMetre(7850) };
const run = (): unknown => criticalSpeeds({ stretches, material: steel, supports, wheels }, { modes: 3 });

describe("a shaft of 200 stretches, three modes", () => {
  bench("criticalSpeeds", () => {
    run();
  });
});

const own = timed(10, run);
for (const { name, words } of runPython(["scipy"], program))
  say(
    `criticalSpeeds: best ${own.best.toFixed(1)} ms; ${name} eigh, shaft at rest: best ${Number(words[0]).toFixed(1)} ms; ratio ${(own.best / Number(words[0])).toFixed(2)}`,
  );
