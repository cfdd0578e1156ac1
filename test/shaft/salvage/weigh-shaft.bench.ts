import { createRequire } from "node:module";
import { bench, describe } from "vitest";
import type * as Journalbox from "../../../kernel-helpers/index.js";
import { runPython, say, timed } from "../../support/peers.js";

// Wanted: 10 000 shafts for the decision figure in under 5 s. Peer: numpy, which draws the same inputs for as many
// shafts, all at once, and holds three ways against statics, clean-up, the distortion-energy and Goodman factor at four
// places, pressure and slope; without flips, what to measure, whirls, and what else might be true. As built, which is what a worksheet runs.
const j: typeof Journalbox = createRequire(__filename)("../../../dist/index.js");
const { inch, hp, rpm, pound, degree, thou, measured } = j;

const program = `
import time
import numpy as np
n = 10**4
def run(seed):
    r = np.random.default_rng(seed)
    power, tight, mass = r.normal(1, 0.1, n), r.normal(1, 0.1, (2, n)), r.normal(1, 0.08, (2, n))
    tensile, size, left = r.normal(380e6, 20e6, n), r.normal(0.0616, 5e-6, (2, n)), r.normal(0.0617, 8e-6, (2, n))
    notch, endurance, E = r.normal(1, 0.1, (4, n)), r.normal(1, 0.14, n), r.normal(2.05e11, 2e9, n)
    at, boxes, held = np.array([-0.07, 0.91]), np.array([0.24, 1.59]), []
    angle, pull, weight = np.radians([200, 180]), np.array([1900.0, 3100.0]), np.array([800.0, 270.0])
    F = pull[:, None] * power * tight
    x, y = F * np.cos(angle)[:, None], F * np.sin(angle)[:, None] - weight[:, None] * mass
    share = (at - boxes[0]) / (boxes[1] - boxes[0])
    for under in (0.0, 0.006, 0.012):
        d = size - under
        ok = np.ones(n, bool)
        second = np.array([(share[:, None] * f).sum(0) for f in (x, y)])
        first = np.array([x.sum(0), y.sum(0)]) - second
        for k, place in enumerate((0.14, 1.67, 0.0, 0.91)):
            M = [sum((place > a) * f[i] * (place - a) for i, a in enumerate(at)) - (place > boxes[0]) * first[c] * (place - boxes[0]) - (place > boxes[1]) * second[c] * (place - boxes[1]) for c, f in enumerate((x, y))]
            M, T = np.hypot(*M), 320 * power
            dd = d[k] if k < 2 else 0.0619
            se = 0.5 * tensile * 2.7 * (tensile / 6894757) ** -0.265 * 1.51 * (1000 * dd) ** -0.157 * endurance
            a, m = 32 * 1.6 * notch[k] * M / (np.pi * dd**3), np.sqrt(3) * 16 * 1.2 * T / (np.pi * dd**3)
            ok &= (1 / (a / se + m / tensile) >= 1.3) & (0.5 * tensile / np.hypot(a / 1.6, m / 1.2) >= 1.3)
        ok &= (left >= d).all(0) & (np.hypot(*first) / (d[0] * 0.18) <= 1.03e6) & (np.hypot(*second) / (d[1] * 0.18) <= 1.03e6)
        for c in ((0.9e-6, 1.4e-6), (0.6e-6, 1.2e-6)):
            ok &= np.hypot(sum(c[i] * x[i] for i in range(2)), sum(c[i] * y[i] for i in range(2))) * 2.05e11 / E <= 0.01
        held.append(ok.mean())
    return held
times = []
for k in range(8):
    start = time.perf_counter()
    run(k)
    times.append(1000 * (time.perf_counter() - start))
print(min(times))
`;

const read = (name: string, ...lines: readonly string[]) =>
  j.readTable(new TextEncoder().encode(lines.join("\n")), { name, file: `${name}.csv` });
const rows = Array.from({ length: 72 }, (_, z) => {
  const worn = z >= 6 && z <= 13 ? 4 : z >= 59 && z <= 66 ? 3 : 0;
  return `${z},${(2.4375 - worn / 1000).toFixed(4)}`;
});
const profile = j.profileOf(read("shaft", "station [in],diameter [in]", ...rows), {
  readingUncertainty: thou(0.1),
  stationUncertainty: thou(10),
});
const wear = j.wearBands(profile, { nominal: inch(2.4375), wornBeyond: thou(1) });
const worn = j.wornJournals(wear, ["pulley box", "far box"]);
const left = j.cleanUpJournals(wear, worn);
const belt = (diameter: Journalbox.Length, towards: number) =>
  j.beltPulls({
    power: measured(hp(4.5), hp(0.45)),
    speed: rpm(110),
    diameter,
    wrap: degree(170),
    friction: { low: 0.25, high: 0.4 },
    towards: degree(towards),
  });
const asMade = measured(inch(2.4375), inch(0.0001));
const seat = (name: string, station: number) => ({
  name,
  station: inch(station),
  diameter: asMade,
  feature: { shape: "press-fitted hub" as const },
});
const ways = j.salvageWays(
  read(
    "options",
    "option [text],undercut [in],needs [text],least [hr],most [hr],reversible [text]",
    "turn undersize,0,a steady,3,5,no",
    "spray build-up,0.08,a gun,8,12,yes",
    "weld build-up,0.12,a welder,8,12,no",
    "sleeve,0.25,a tube,8,12,yes",
    "new stub,-,a stub,14,22,no",
    "new shaft,-,a bar,24,40,yes",
  ),
);
const made = [{ from: inch(-5), to: inch(71), diameter: inch(2.4375) }];
const input: Journalbox.WeighShaftInput = {
  shaft: {
    loadCase: "4.5 hp through both pulleys",
    boxes: worn,
    wheels: [
      {
        name: "driven pulley",
        station: inch(-2.75),
        mass: measured(pound(180), pound(15)),
        belt: belt(inch(30), 200),
        aim: degree(5),
      },
      {
        name: "second pulley",
        station: inch(36),
        mass: measured(pound(60), pound(5)),
        belt: belt(inch(18), 180),
        aim: degree(5),
      },
    ],
    seats: [seat("second seat", 36), seat("large end of the taper", 0)],
    duty: { steel: j.assumedSteel("mild steel of the period"), surface: "machined", demanded: 1.3 },
  },
  ways,
  journals: worn.map(({ name }, i) => ({
    name,
    found: left.journals[i]!,
    finished: measured(inch(i === 0 ? 2.428 : 2.43), inch(0.0002)),
  })),
  asMade,
  fillet: inch(1 / 16),
  metal: j.babbitt(2),
  service: "heavy line shafting",
  bending: {
    found: made,
    made,
    material: j.material("steel"),
    speed: rpm(110),
    softest: j.quantityFromSi("stiffness or line load", 1.75e7, "lbfPerInch"),
  },
  assumptions: [
    { name: "four times the power", inputs: { power: 4 } },
    { name: "the belts are twice as tight", inputs: { "belt tension, driven pulley": 2 } },
  ],
  seed: 3,
};
const run = (): unknown => j.weighShaft(input);

describe("six ways, eleven limits, 10 000 shafts", () => {
  bench("weighShaft, with flips, what to measure, and two assumptions", () => {
    run();
  });
});

const own = timed(3, run);
for (const { name, words } of runPython(["numpy"], program)) {
  const best = Number(words[0]);
  say(
    `weighShaft: best ${own.best.toFixed(0)} ms; ${name}, chances of three ways alone: best ${best.toFixed(0)} ms; ratio ${(own.best / best).toFixed(1)}`,
  );
}
