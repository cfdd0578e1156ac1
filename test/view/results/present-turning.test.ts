import { describe, expect, it } from "vitest";
import { degree, inch, measured, micrometre, mm, rpm, thou } from "../../../kernel-helpers/quantity/index.js";
import {
  correctTaper,
  cutPlan,
  finishedJournals,
  latheSetting,
  taperWays,
  turningStock,
} from "../../../kernel-helpers/shaft/index.js";
import { profileOf, readTable, wearBands } from "../../../kernel-helpers/survey/index.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";
import { presentResult } from "../../../kernel-helpers/view/results/present-result.js";

const textOf = (result: unknown): string => renderText(presentResult(result)!).replace(/\s+/g, " ");

describe("the look of the ways to set a taper", () => {
  const offers = {
    indicatorDivision: thou(0.1),
    indicatorTravel: inch(5),
    compoundDivision: degree(1),
    compoundTravel: inch(8),
    workLength: inch(9),
    centreDepth: inch(0.25),
    mostSetOver: inch(0.25),
  };
  const found = taperWays({ ...offers, taper: measured(1 / 12, 0), seat: inch(4), allowed: thou(1) });
  it("names the truest way and what it may leave wrong, first", () => {
    expect(textOf(found)).toMatch(/yes: Truest by the setting alone: /i);
    expect(textOf(found)).toMatch(/on diameter from end to end \(95 %\), allowed 1 thou\./);
  });
  it("swings the compound by the half angle, in degrees and in minutes: atan(1/24) is 2° 23′ 9″", () => {
    expect(textOf(found)).toMatch(/2\.39° \(2° 23′ 9″\)/);
  });
  it("marks a way that does not reach and one that is too coarse, with the reason", () => {
    const table = presentResult(found)!.blocks.find(({ type }) => type === "table");
    if (table?.type !== "table") throw new Error("no table of ways");
    const row = (name: string) => table.rows.find(({ cells }) => cells[0] === name)!;
    expect(row("tailstock set over").cells.at(-1)).toBe("cannot reach: it goes over by 0.25 in at most");
    expect(row("tailstock set over").mark).toBe("warn");
    expect(row("compound slide, by its scale").cells.at(-1)).toMatch(/^too coarse/);
    expect(table.rows.some(({ mark }) => mark === undefined)).toBe(true);
  });
  it("says so when no way is true enough", () => {
    const none = taperWays({ ...offers, taper: measured(1 / 12, 0), seat: inch(4), allowed: thou(0.001) });
    expect(textOf(none)).toMatch(/no: No way on this lathe sets it true enough at once/i);
  });
});

describe("the look of a trial cut", () => {
  it("tells the taper as cut, what is wrong with its uncertainty, and how to move each part", () => {
    const places = { apart: inch(3), betweenCentres: inch(9) };
    const sizes = { largeEnd: measured(inch(2.25), thou(0.1)), smallEnd: measured(inch(2.002), thou(0.1)) };
    const text = textOf(correctTaper({ ...places, ...sizes, wanted: 1 / 12 }));
    // (2.25 − 2.002)/3 = 8.267 %, wanted 8.333 %: 2 thou too little over 3 in; U = 1.96·√2·0.1 = 0.28 thou.
    expect(text).toMatch(/8\.2667 ± 0\.0092 %/);
    expect(text).toMatch(/wanted 8\.333 %/);
    expect(text).toMatch(/2\.00 ± 0\.28 thou/);
    // atan(1/24) − atan(0.04133) = 0.0191°; (2/3 thou an inch)·9/2 = 3 thou.
    expect(text).toMatch(/swing the compound slide by 0\.0191 ± 0\.0026°/);
    expect(text).toMatch(/move the tailstock by 3\.00 ± 0\.42 thou/);
  });
});

describe("the look of a cut plan", () => {
  const planOf = (unit: "in" | "mm", counts: "radius" | "diameter") => {
    const length = unit === "in" ? inch : mm;
    const k = unit === "in" ? 1 : 25.4;
    const rows = [2.4375, 2.4375, 2.4341, 2.4341, 2.4341, 2.4375, 2.4375].map(
      (d, i) => `${i * k},${(d * k).toFixed(5)}`,
    );
    const bytes = new TextEncoder().encode([`station [${unit}],diameter [${unit}]`, ...rows].join("\n"));
    const survey = readTable(bytes, { name: "shaft-survey", file: "shaft-survey.csv" });
    const wear = wearBands(
      profileOf(survey, { readingUncertainty: micrometre(2.5), stationUncertainty: length(0.01 * k) }),
      { nominal: length(2.4375 * k), wornBeyond: micrometre(25) },
    );
    const [from, to] = [length(1 * k), length(5 * k)];
    const diameter = measured(length(2.428 * k), micrometre(5));
    return cutPlan({
      stock: turningStock(wear, { from, to }),
      journal: finishedJournals({ journals: [{ name: "pulley box", from, to, diameter }] }).journals[0]!,
      tolerance: { upper: length(0), lower: length(-0.001 * k) },
      leave: length(0),
      measuring: micrometre(2.5),
      material: "steel",
      lathe: latheSetting({
        tool: "high-speed steel",
        noseRadius: length(k / 32),
        feed: length(0.003 * k),
        deepestCut: length(0.003 * k),
        finishingCut: length(0.002 * k),
        dialCounts: counts,
        dialDivision: length(0.0005 * k),
        speeds: [28, 44, 70, 110, 175].map(rpm),
      }),
      betweenCentres: length(24 * k),
      zeroFromCentre: length(3 * k),
    });
  };
  it("heads with the journal, its limits, and what to accept within them, in the units of the shop", () => {
    const text = textOf(planOf("in", "radius"));
    expect(text).toContain('Cuts for the journal "pulley box"');
    expect(text).toMatch(/2\.4270 in to 2\.4280 in/);
    expect(text).toMatch(/accept what measures.*2\.4272 in to 2\.4278 in/);
    expect(text).toMatch(/ft\/min/);
    const metric = textOf(planOf("mm", "diameter"));
    expect(metric).toMatch(/61\.646 mm to 61\.671 mm/);
    expect(metric).toMatch(/m\/min/);
    expect(metric).not.toMatch(/\bthou\b|ft\/min/);
  });
  it("says of every dial whether it counts radius or diameter", () => {
    expect(textOf(planOf("in", "radius"))).toMatch(
      /counts the radius: the way of the slide; the diameter loses twice/,
    );
    expect(textOf(planOf("mm", "diameter"))).toMatch(/counts the diameter: what comes off the diameter/);
  });
});
