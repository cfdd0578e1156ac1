import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { runRebuild } from "../kernel-helpers/notebook/run-rebuild.js";
import { type KeptKernel, keptKernel } from "./support/kept-kernel.js";
import { copyOfDemoRun } from "./support/run-demo.js";

type Facts = Record<"dimensions" | "quantities" | "words", Record<string, string>>;
type Change = readonly [what: string, group: keyof Facts, name: string, value: string, message: RegExp];

// What a tired hand writes into rebuild.json: the sheet must stop there, and name the field.
const atTheNut: readonly Change[] = [
  [
    "a hand not yet observed",
    "words",
    "nut thread hand",
    "not seen yet",
    /threadHand: seen must be "right" or "left"/,
  ],
  [
    "a nut narrower than its thread",
    "dimensions",
    "nut across flats",
    "1.4 in",
    /heatNut: the nut must be wider across flats than its thread, 1\.5 in, got 1\.4 in/,
  ],
  [
    "a nut hotter than the paint beside it may become",
    "quantities",
    "nut warmed to",
    "900 °F",
    /heatNut: the nut must stay below 435 °F, or paint passes its ceiling of 250 °F .*got 900 °F/,
  ],
  [
    "a neighbour without its share of the heat",
    "words",
    "near the nut",
    "paint",
    /heatNeighbours: .*share of the nut's rise/,
  ],
  ["a surface nobody knows", "words", "nut state", "painted", /surface must be one of .*got painted/],
  [
    "a stud of a metal that only breaks",
    "words",
    "shaft material",
    "cast iron",
    /nutRemoval: .*got none: a brittle metal has no yield point/,
  ],
  [
    "a driver that is neither",
    "words",
    "driving member at the taper",
    "belt",
    /predictHand: driver must be "shaft" or "wheel", got "belt"/,
  ],
];
const atTheHub: readonly Change[] = [
  [
    "a bore larger than the hub",
    "dimensions",
    "hub outside diameter",
    "2 in",
    /hubFit: diameter must be smaller than hub\.outside \(2 in\)/,
  ],
  [
    "a keyway through its wall",
    "dimensions",
    "hub keyway depth",
    "2 in",
    /hubFit: hub\.keywayDepth must be smaller than the wall/,
  ],
  [
    "a seat that ends before it begins",
    "dimensions",
    "hub seat large end",
    "-1 in",
    /seatOnTaper: from must be smaller than to \(−1 in\), got 0 in/,
  ],
  [
    "pounds of a jack taken for tons",
    "quantities",
    "jack capacity",
    "100000 short tonf",
    /pressRig: jack\.capacity is more than any jack/,
  ],
  ["a capacity without its unit of force", "quantities", "jack capacity", "50 lb", /jack capacity.*force/],
  [
    "a jack beside the rods",
    "dimensions",
    "jack off centre",
    "6 in",
    /pressRig: offCentre must be smaller than half of rods\.span/,
  ],
  [
    "rods through the hub",
    "dimensions",
    "press rods apart",
    "5 in",
    /pressRig: hub\.face plus a rod must be smaller than rods\.span \(5 in\)/,
  ],
  [
    "a hub hotter than iron stands",
    "quantities",
    "hub no hotter than",
    "900 °F",
    /heatingPlan: hottest must not be above .* for grey iron class 20 \(iron cracks.*got 900 °F/,
  ],
  ["a surface nobody knows", "words", "hub surface", "greasy", /fitFriction: surface must be one of/],
  [
    "a way that was not reckoned",
    "words",
    "hub comes off by",
    "hammer",
    /choice must be one of .*got "hammer"/,
  ],
];

const atThePour: readonly Change[] = [
  [
    "a clearance of nothing",
    "dimensions",
    "running clearance",
    "0 in",
    /diametralClearance must be above 0, got 0 in; .*rule of thumb.*rebuild\.json: "running clearance" under "dimensions"/,
  ],
  [
    "a clearance below nothing",
    "dimensions",
    "running clearance",
    "-0.004 in",
    /diametralClearance must be above 0, got −0\.004 in; .*"running clearance" under "dimensions"/,
  ],
  [
    "a journal larger than its shell",
    "dimensions",
    "shell bore",
    "2.4 in",
    /no room for a lining in a shell of 2\.4 in: .* is needed.*"shell bore" under "dimensions"/,
  ],
  [
    "a shell at which the alloy does not freeze",
    "quantities",
    "shell preheat",
    "500 °F",
    /shellPreheat must lie below the solidus of .*got 500 °F .*"shell preheat" under "quantities"/,
  ],
  ["an oil nobody knows", "words", "oil", "goose fat", /oil: must be one of .*"oil" under "words"/],
];

describe.each([
  { sheet: "02-fastener-removal", changes: atTheNut },
  { sheet: "03-hub-removal", changes: atTheHub },
  { sheet: "08-bearing-pour", changes: atThePour },
])("$sheet stops at", ({ sheet, changes }) => {
  let folder: string;
  let good: string;
  let kernel: KeptKernel;
  beforeAll(async () => {
    // What the others handed on is on record; only the sheet itself is run again.
    folder = await copyOfDemoRun("demo", [sheet]);
    good = readFileSync(join(folder, "rebuild.json"), "utf8");
    kernel = keptKernel(folder);
  }, 240_000);
  afterAll(() => kernel.close());

  it.each(changes)(
    "%s",
    async (_, group, name, value, message) => {
      const facts = JSON.parse(good) as Facts;
      facts[group][name] = value;
      writeFileSync(join(folder, "rebuild.json"), JSON.stringify(facts));
      const { results } = await runRebuild({ directory: folder, startKernel: kernel.startKernel });
      expect(results.map(({ status }) => status)).toEqual(["failed"]);
      expect(results[0]!.error!.message).toMatch(message);
    },
    120_000,
  );
});
