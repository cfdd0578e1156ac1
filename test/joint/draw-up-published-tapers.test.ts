import { describe, expect, it } from "vitest";
import { material } from "../../kernel-helpers/handbook/index.js";
import { type DrawUp, drawUp } from "../../kernel-helpers/joint/index.js";
import { inch, thou } from "../../kernel-helpers/quantity/index.js";
import { fitTaper, profileOf, readTable, type TaperFit } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { readReference } from "../support/read-reference.js";

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
  ...seriesOf("Morse", "tapers-morse", ["A_large_in", "D_small_in", "length_in", "tpf_handbook"]),
  ...seriesOf("Brown & Sharpe", "tapers-brown-sharpe", ["large_in", "small_in", "length_in", "tpf"]),
];

function seriesOf(series: string, file: string, columns: readonly string[]) {
  const { numbers } = readReference(file);
  const [large, small, length, perFoot] = columns.map((name) => numbers(name));
  return numbers("no").map((no, i) => ({
    name: `${series} ${no}`,
    large: large![i]!,
    small: small![i]!,
    length: length![i]!,
    perFoot: perFoot![i]!,
  }));
}

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
