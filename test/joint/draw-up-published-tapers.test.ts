import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { material } from "../../kernel-helpers/handbook/index.js";
import { type DrawUp, drawUp } from "../../kernel-helpers/joint/index.js";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { fitTaper, profileOf, readTable, type TaperFit } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";

/** Rows of a reference file as numbers, by the names in its header line. */
function rowsOf(file: string): readonly Readonly<Record<string, number>>[] {
  const lines = readFileSync(join(import.meta.dirname, "../reference", file), "utf8")
    .split("\n")
    .filter((line) => line !== "" && !line.startsWith("#"));
  const names = lines[0]!.split(",");
  return lines
    .slice(1)
    .map((line) => Object.fromEntries(line.split(",").map((cell, i) => [names[i]!, Number(cell)])));
}

/** A taper surveyed at its two ends and between, so well that the readings hide nothing. */
function taperBetween(small: number, large: number, length: number): TaperFit {
  const rows = [0, 1, 2, 3, 4].map(
    (i) => `${(length * i) / 4},${(small + ((large - small) * i) / 4).toFixed(7)}`,
  );
  const bytes = new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n"));
  const table = readTable(bytes, { name: "taper", file: "taper.csv" });
  return fitTaper(profileOf(table, { readingUncertainty: thou(0.001), stationUncertainty: thou(0.001) }));
}

// Source: test/reference/tapers-morse.csv and tapers-brown-sharpe.csv, headers there: ends, length, taper per foot.
const published = [
  ...rowsOf("tapers-morse.csv").map((row) => ({
    name: `Morse ${row.no}`,
    large: row.A_large_in!,
    small: row.D_small_in!,
    length: row.length_in!,
    perFoot: row.tpf_handbook!,
  })),
  ...rowsOf("tapers-brown-sharpe.csv").map((row) => ({
    name: `Brown & Sharpe ${row.no}`,
    large: row.large_in!,
    small: row.small_in!,
    length: row.length_in!,
    perFoot: row.tpf!,
  })),
];

describe("drawUp(input) on published tapers", () => {
  it.each(published)("$name: seats where the diameters meet, and goes up by 12/(taper per foot)", (row) => {
    const { large, small, length, perFoot } = row;
    // A hub half as long as the plug, bored from the plug's own diameter half-way along up to its large end.
    const half = (small + large) / 2;
    const found: DrawUp = drawUp({
      shaft: taperBetween(small, large, length),
      bore: taperBetween(half, large, length / 2),
      hub: { material: material("steel"), outside: inch(2 * large), length: inch(length / 2) },
      shaftMaterial: material("steel"),
      friction: { low: 0.1, high: 0.15 },
      wanted: { low: thou(0.4), high: thou(0.6) },
      gauge: thou(0.1),
    });
    const printed = {
      rel: 2.5e-3,
      because: "lengths of Brown & Sharpe are printed to 0.01 in, 0.2 % of the shortest pairs of ends",
    };
    expectClose(found.firstContact.middle.in("inch"), length / 2, printed);
    // 0.5 thou of interference, on diameter.
    expectClose(found.drawUp.middle.in("inch"), (0.0005 * 12) / perFoot, {
      rel: 2e-2,
      because:
        "ends printed to 0.1 thou of a difference of 40 and more; half a gap of a thousandth of a thou",
    });
    expect(found.bearsFirst).toBe("all along");
  });
});
