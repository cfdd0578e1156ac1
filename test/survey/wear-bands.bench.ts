import { bench, describe } from "vitest";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { type Profile, profileOf, wearBands } from "../../kernel-helpers/survey/index.js";
import { shaftTable } from "../support/shaft-table.js";
import { syntheticShaft } from "../support/synthetic-shaft.js";

// Bound: 1 000 readings under 20 ms, 10 000 under 0.5 s, exact results. Two angles, a band worn every so often.
function profile(readings: number): Profile {
  const stations = readings / 2;
  const bands = Array.from({ length: 20 }, (_, k) => ({
    to: ((k + 1) * stations) / 20,
    diameter: 2.4375 - (k % 2) * 0.003,
    slope: k % 5 === 3 ? 0.01 / stations : 0,
    offsets: k % 4 === 1 ? [0.001, -0.001] : [0, 0],
  }));
  const rows = syntheticShaft({ bands, noise: 0.00015, seed: 8 });
  rows[17] = { ...rows[17]!, diameter: rows[17]!.diameter + 0.025 };
  return profileOf(shaftTable(rows), { readingUncertainty: thou(0.15), stationUncertainty: inch(0.02) });
}

describe("wearBands(profile)", () => {
  for (const readings of [1000, 10_000]) {
    const of = profile(readings);
    bench(`${readings} readings`, () => {
      wearBands(of, { nominal: inch(2.4375) });
    });
  }
});
