import { describe, expect, it } from "vitest";
import { inch, type Length, micrometre, mm, thou } from "../../../kernel-helpers/quantity/index.js";
import { fitsToMake } from "../../../kernel-helpers/shaft/index.js";
import { profileOf, readTable, type WearBands, wearBands } from "../../../kernel-helpers/survey/index.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";
import { presentResult } from "../../../kernel-helpers/view/results/present-result.js";
import { expectClose } from "../../support/expect-close.js";

const wearOf = (unit: string, diameter: number, readingUncertainty: Length): WearBands => {
  const rows = [0, 1, 2, 3, 4, 5].map((station) => `${station},${diameter}`);
  const bytes = new TextEncoder().encode([`station [${unit}],diameter [${unit}]`, ...rows].join("\n"));
  const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
  return wearBands(profileOf(survey, { readingUncertainty, stationUncertainty: thou(10) }));
};
const inchShaft = { nominal: inch(2), wear: wearOf("in", 1.998, thou(0.1)), station: inch(2) };
const metricShaft = { nominal: mm(60), wear: wearOf("mm", 59.98, micrometre(2)), station: mm(2) };
const textOf = (result: unknown): string => renderText(presentResult(result)!).replace(/\s+/g, " ");

describe("fitsToMake({ nominal, parts, wear, station })", () => {
  it("gives the limits of ANSI B4.1 as printed: LC2, LT3, FN2, RC5 on 2 in", () => {
    const { fits } = fitsToMake({ ...inchShaft, parts: { a: "LC2", b: "LT3", c: "FN2", d: "RC5" } });
    // Machinery's Handbook, 27th edition, tables of B4.1, over 1.97 to 2.56 or 3.15 in [thou]: hole, shaft, clearance.
    const printed = [
      [0, 1.2, -0.7, 0, 0, 1.9],
      [0, 1.2, 0.1, 0.8, -0.8, 1.1],
      [0, 1.2, 2.0, 2.7, -2.7, -0.8],
      [0, 1.8, -3.7, -2.5, 2.5, 5.5],
    ];
    for (const [i, { hole, shaft, least, most }] of fits.entries()) {
      const found = [hole.smallest, hole.largest, shaft.smallest, shaft.largest].map(
        (size) => 1000 * (size.in("inch") - 2),
      );
      for (const [j, value] of [...found, least.in("thou"), most.in("thou")].entries())
        expectClose(value, printed[i]![j]!, { rel: 1e-9, abs: 1e-9, because: "as printed; 2 in taken off" });
    }
    expect(fits.map(({ type }) => type)).toEqual(["clearance", "transition", "interference", "clearance"]);
  });
  it("gives the limits of ISO 286: H7/k6 on 60 mm is 30/0 and 21/2 micrometres", () => {
    const [fit] = fitsToMake({ ...metricShaft, parts: { pulley: "H7/k6" } }).fits;
    expectClose(fit!.least.in("micrometre"), -21, { rel: 1e-9, because: "ISO 286-2, H7 30/0, k6 21/2" });
    expectClose(fit!.most.in("micrometre"), 28, { rel: 1e-9, because: "ISO 286-2, H7 30/0, k6 21/2" });
  });
  it("bores for the shaft as it is so that the clearance holds at both ends of its 95 %", () => {
    const { fits, asMeasured } = fitsToMake({ ...inchShaft, parts: { collar: "LC2", sleeve: "FN2" } });
    const guard = 1.959964 * asMeasured.standardUncertainty.si;
    for (const { boreForTheShaft, least, most } of fits) {
      const loose = boreForTheShaft!.largest.si - (asMeasured.value.si - guard);
      const tight = boreForTheShaft!.smallest.si - (asMeasured.value.si + guard);
      expectClose(loose, most.si, { rel: 1e-4, because: "1.959964 is the normal's, and sizes cancel" });
      expectClose(tight, least.si, { rel: 1e-4, abs: 1e-10, because: "1.959964 is the normal's" });
    }
  });
  it("says that a shaft measured too coarsely has no sure bore, and shows it", () => {
    const coarse = { ...inchShaft, wear: wearOf("in", 1.998, thou(3)) };
    const result = fitsToMake({ ...coarse, parts: { collar: "LC2" } });
    expect(result.fits[0]!.boreForTheShaft).toBeUndefined();
    expect(result.warnings.join()).toMatch(/"collar".*Measure the seat again/);
    expect(textOf(result)).toMatch(/measure closer/);
  });
  it("looks as the shop reads it: which is clearance, which interference, both bores, in its unit", () => {
    const text = textOf(fitsToMake({ ...inchShaft, parts: { collar: "LC2", sleeve: "FN2", pulley: "LT3" } }));
    expect(text).toMatch(/clearance 0\.0 thou to 1\.9 thou/);
    expect(text).toMatch(/interference 0\.8 thou to 2\.7 thou/);
    expect(text).toMatch(/interference 0\.8 thou to clearance 1\.1 thou/);
    expect(text).toMatch(/2\.0000 to 2\.0012 in/);
    expect(text).toMatch(/ANSI\/ASME B4\.1/);
    const metric = textOf(fitsToMake({ ...metricShaft, parts: { collar: "H7/h6" } }));
    expect(metric).toMatch(/clearance 0 µm to 49 µm/);
    expect(metric).not.toMatch(/thou|\bin\b(?! )/);
  });
  it("names what it cannot use: a fit of no standard, a station beyond the bands, no part", () => {
    expect(() => fitsToMake({ ...inchShaft, parts: { collar: "snug" } })).toThrow(
      /fit of "collar".*got "snug"/,
    );
    expect(() => fitsToMake({ ...inchShaft, parts: { collar: "LC11" } })).toThrow(
      /LC10 and LC11 are not held/,
    );
    expect(() => fitsToMake({ ...inchShaft, parts: { collar: "LC2" }, station: inch(9) })).toThrow(
      /within a band of the survey \(0 in to 5 in\), got 9 in/,
    );
    expect(() => fitsToMake({ ...inchShaft, parts: {} })).toThrow(/at least one part/);
  });
});
