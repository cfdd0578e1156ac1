import { describe, expect, it } from "vitest";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import {
  depthBudget,
  fitTaper,
  profileOf,
  readTable,
  taperBudget,
  type WearBands,
  wearBands,
} from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { seededNoise } from "../support/seeded-noise.js";
import { shaftTable } from "../support/shaft-table.js";

const rounding = { rel: 1e-9, because: "rounding only" };
const known = {
  parts: { shaft: { title: "shaft", expansion: "6.5e-6 1/°F" } },
  instruments: {
    mic: {
      title: "micrometer",
      resolution: "0.0001 in",
      repeatability: "0.0002 in",
      calibration: "0.0001 in",
      expansion: "6.4e-6 1/°F",
    },
  },
};

/** Three bands, two angles; the middle one worn by 4 thou. */
function wornShaft(head: readonly string[] = []): WearBands {
  const rows = [1, 2, 3, 4, 6, 7, 8, 9, 11, 12, 13, 14].map((z) => {
    const d = z > 5 && z < 10 ? 2.4335 : 2.4375;
    return `${z},${d},${d}`;
  });
  const text = [...head, "station [in],diameter @ 0 deg [in],diameter @ 90 deg [in]", ...rows].join("\n");
  const table = readTable(new TextEncoder().encode(text), { name: "s", file: "s.csv", ...known } as never);
  return wearBands(profileOf(table, { readingUncertainty: thou(0.2), stationUncertainty: thou(20) }), {
    nominal: inch(2.4375),
  });
}

describe("depthBudget(wear)", () => {
  it("has the readings' part by the root of their number where nothing is common", () => {
    const found = depthBudget(wornShaft());
    expect(found.rows.map(({ source }) => source)).toEqual(["8 readings of the band at 4 stations"]);
    expectClose(Number(found.standardUncertainty), thou(0.2).si / Math.sqrt(8), rounding);
    expect(found.title).toBe("Uncertainty of the depth, on diameter, of band 2");
  });

  it("adds up to the uncertainty stated with the band, part by part", () => {
    const plain = wornShaft();
    const common = Math.hypot(0.1, 0.05);
    const wear: WearBands = wearBands(
      {
        ...plain.profile,
        commonUncertainty: thou(common),
        commonSources: [
          { name: "setting", standardUncertainty: thou(0.1) },
          { name: "temperature", standardUncertainty: thou(0.05) },
        ],
      },
      { nominal: inch(2.4375) },
    );
    const found = depthBudget(wear);
    const depth = wear.bands[1]!.depth!;
    expectClose(Number(found.value), depth.value.si, rounding);
    expectClose(Number(found.standardUncertainty), depth.standardUncertainty.si, rounding);
    const contributions = Object.fromEntries(
      found.rows.map(({ source, contribution }) => [source, Number(contribution)]),
    );
    expectClose(contributions.setting!, thou(0.1).si, rounding);
    expectClose(contributions.temperature!, thou(0.05).si, rounding);
    expectClose(
      contributions["8 readings of the band at 4 stations"]!,
      thou(0.2).si / Math.sqrt(8),
      rounding,
    );
  });

  it("keeps the degrees of freedom of the band where the scatter was taken as seen", () => {
    const noise = seededNoise(3);
    const rows = Array.from({ length: 24 }, (_, i) => ({
      station: i,
      diameter: (i > 8 && i < 16 ? 2.4335 : 2.4375) + 0.0006 * noise.normal(),
    }));
    const wear = wearBands(profileOf(shaftTable(rows), { readingUncertainty: thou(0.2) }), {
      nominal: inch(2.4375),
    });
    expect(wear.noiseRatio).toBeGreaterThan(2);
    const found = depthBudget(wear, 2);
    expectClose(found.degreesOfFreedom, wear.bands[1]!.depth!.degreesOfFreedom, rounding);
    expect(Number.isFinite(found.degreesOfFreedom)).toBe(true);
  });

  it("refuses a band that is not there", () => {
    expect(() => depthBudget(wornShaft(), 4)).toThrow(
      /depthBudget: number must be that of a band, 1 to 3, got 4/,
    );
  });
});

describe("taperBudget(taper)", () => {
  const cone = (stationUncertainty: number, noise = 0): ReturnType<typeof fitTaper> => {
    const random = seededNoise(5);
    const rows = [0, 1, 2, 3, 4, 5].map((station) => ({
      station,
      diameter: 2 + station / 16 + noise * random.normal(),
    }));
    return fitTaper(
      profileOf(shaftTable(rows), {
        readingUncertainty: thou(0.2),
        stationUncertainty: inch(stationUncertainty),
      }),
    );
  };

  it("splits the variance as u_d² to C² u_z² where all stations are alike", () => {
    const taper = cone(0.005);
    const found = taperBudget(taper);
    expectClose(Number(found.value), 1 / 16, { rel: 1e-9, because: "the cone is exact" });
    expectClose(Number(found.standardUncertainty), taper.taper.standardUncertainty, rounding);
    const share = Object.fromEntries(found.rows.map((row) => [row.source, row.share]));
    const [d, z] = [0.2e-3 ** 2, (0.005 / 16) ** 2];
    expectClose(share["6 diameters read"]!, d / (d + z), {
      rel: 1e-6,
      because: "steepness found, not given",
    });
    expectClose(share["positions of 6 stations"]!, z / (d + z), { rel: 1e-6, because: "as above" });
  });

  it("has the diameters alone where stations are exact, with u = u_d/√Σδ²", () => {
    const found = taperBudget(cone(0));
    expect(found.rows).toHaveLength(1);
    expectClose(Number(found.standardUncertainty), 0.2e-3 / Math.sqrt(17.5), rounding);
  });

  it("has one source, with its degrees of freedom, where the scatter was taken as seen", () => {
    const taper = cone(0.005, 0.003);
    expect(taper.noiseRatio).toBeGreaterThan(2.5);
    const found = taperBudget(taper);
    expect(found.rows.map(({ source }) => source)).toEqual([
      "scatter seen about the line: diameters, stations and form together",
    ]);
    // Six stations less the two numbers of a line: the scatter alone tells the noise.
    expect(found.degreesOfFreedom).toBe(4);
  });
});
