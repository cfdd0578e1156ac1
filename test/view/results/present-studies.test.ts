import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { degree, inch, mm, setUnitSystem, thou } from "../../../kernel-helpers/quantity/index.js";
import { readRebuildFile } from "../../../kernel-helpers/record/rebuild-file.js";
import { restoreValue, storeValue } from "../../../kernel-helpers/record/stored-value.js";
import {
  calibrationLine,
  canSettle,
  compareInstruments,
  correctedReading,
  fitTaper,
  instrumentFrom,
  nextReadings,
  ovalityOf,
  profileOf,
  readTableFile,
  repeatabilityStudy,
  roundnessOf,
  runOut,
  wearBands,
  wornSide,
} from "../../../kernel-helpers/survey/index.js";
import type { Presentation, TableBlock } from "../../../kernel-helpers/view/blocks.js";
import { finishFigure } from "../../../kernel-helpers/view/finish-figure.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderHtml } from "../../../kernel-helpers/view/render-html.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";
import { chanceText } from "../../../kernel-helpers/view/results/chance-text.js";
import { runOutFigure } from "../../../kernel-helpers/view/results/run-out-figure.js";
import { expectClose } from "../../support/expect-close.js";
import { lengthTable } from "../../support/length-table.js";

afterEach(() => setUnitSystem(undefined));

const folder = join(__dirname, "..", "..", "..", "worksheets", "demo");
const { instruments, parts } = readRebuildFile(join(folder, "rebuild.json"));
const read = (name: string): ReturnType<typeof readTableFile> =>
  readTableFile(join(folder, "tables", `${name}.csv`), { instruments, parts });
const survey = profileOf(read("shaft-survey"));
const wear = wearBands(survey, { nominal: inch(2.4375), limit: inch(2.4325), wornBeyond: thou(1) });
const found = runOut(read("run-out"), { wear });
const mic = instrumentFrom("mic", {
  title: "micrometer",
  resolution: "0.1 thou",
  repeatability: "0.15 thou",
  calibration: "0.1 thou",
});
const gauges = lengthTable("reading [in], reference [in]", [
  [0.0001, 0],
  [1.0003, 1],
  [2.0004, 2],
  [3.0009, 3],
]);

const results: Readonly<Record<string, unknown>> = {
  ovality: ovalityOf(survey, inch(6), inch(13)),
  roundness: roundnessOf(read("run-out"), { setUp: { held: "between centres" }, station: inch(9) }),
  "roundness in a vee": roundnessOf(read("run-out"), {
    setUp: { held: "in a vee block", included: degree(90) },
    station: inch(9),
  }),
  "run-out": found,
  "worn side": wornSide(found, { loadDirection: degree(90) }),
  "worn side by diameters": wornSide(wear),
  "next for an edge": nextReadings(wear, { about: "edge" }),
  "next for a depth": nextReadings(wear, { about: "depth" }),
  "next for a limit": nextReadings(wear, { about: "limit", limit: inch(2.4322) }),
  "next for a taper": nextReadings(fitTaper(profileOf(read("taper-survey"))), { about: "taper" }),
  repeatability: repeatabilityStudy(
    lengthTable(
      "reading [in]",
      [2.4331, 2.4333, 2.4332, 2.433, 2.4333].map((v) => [v]),
    ),
  ),
  comparison: compareInstruments(
    lengthTable("old [thou], new [thou]", [
      [1, 1.2],
      [2, 2.1],
      [3, 3.4],
    ]),
    { first: "old", second: "new" },
  ),
  calibration: calibrationLine(gauges),
  corrected: correctedReading(calibrationLine(gauges), inch(1.5)),
  settle: canSettle(mic, { margin: thou(0.5) }),
};

const shown = (value: unknown): Presentation => {
  const presentation = present(value);
  if (presentation === undefined) throw new Error("nothing was presented");
  return presentation;
};
const text = (value: unknown): string => renderText(shown(value)).replace(/\s+/g, " ");

describe.each(Object.entries(results))("present(%s)", (_, result) => {
  it("has a look in text and HTML in both unit systems, with no NaN and nothing undefined", () => {
    for (const system of ["inch", "metric"] as const) {
      setUnitSystem(system);
      for (const look of [
        renderText(shown(result)),
        renderHtml(shown(result), { withStyle: false, picture: () => "<svg></svg>" }),
      ]) {
        expect(look.length).toBeGreaterThan(80);
        expect(look).not.toMatch(/NaN|undefined|\[object|Infinity/);
      }
    }
  });
  it("gives every table row a cell for each column", () => {
    const tables = shown(result).blocks.filter((block): block is TableBlock => block.type === "table");
    for (const { columns, rows } of tables) {
      expect(rows.length).toBeGreaterThan(0);
      for (const { cells } of rows) expect(cells.length).toBe(columns.length);
    }
  });
});

describe("a result read back from a record", () => {
  it.each(Object.entries(results))("looks as before: %s", (_, result) => {
    const back = restoreValue(JSON.parse(JSON.stringify(storeValue(result))));
    expect(renderText(shown(back))).toBe(renderText(shown(result)));
  });
});

describe("what the looks say", () => {
  it("names what is on radius and what is on diameter", () => {
    expect(text(results.ovality)).toMatch(/ovality, at least .* on diameter/);
    expect(text(results.roundness)).toMatch(/eccentricity .*on radius; by itself it gives twice that/);
    expect(text(found)).toMatch(/bend .* on radius/);
  });
  it("corrects lobes for the vee and says which do not show", () => {
    expect(text(results["roundness in a vee"])).toMatch(
      /held in a vee block of 90° .*corrected for the vee .*factor of the vee/,
    );
  });
  it("gives the verdict on the worn side only where a load is known", () => {
    const verdicts = (value: unknown): number =>
      shown(value).blocks.filter(({ type }) => type === "verdict").length;
    expect(verdicts(results["worn side"])).toBe(1);
    expect(verdicts(results["worn side by diameters"])).toBe(0);
  });
  it("is a list for the bench: mark on the drawing, station, angles, what it brings, why, and room to write", () => {
    const [table] = shown(results["next for a limit"]).blocks.filter(
      (b): b is TableBlock => b.type === "table",
    );
    expect(table!.columns.map(({ title }) => title)).toEqual([
      "mark",
      "station",
      "angles",
      "after one",
      "after three",
      "one takes away",
      "clear after one",
      "clear after three",
      "why here",
      "read",
    ]);
    expect(table!.rows[0]!.cells[2]).toBe("0°, 90°");
    expect(text(results["next for a taper"])).toMatch(/standard uncertainty now .* in per foot/);
  });
  it("draws the centres with their axis, within the house's check, as the split says", () => {
    const { figure } = runOutFigure(found);
    expect(finishFigure(figure).layout.width).toBeLessThanOrEqual(720);
    const named = (name: string): readonly number[] =>
      (figure.data as readonly { name: string; y: readonly number[] }[]).find((t) => t.name === name)!.y;
    const first = found.stations[0]!.centre;
    const [across, up] = [
      named("surface's centre towards 0°")[0]!,
      named("surface's centre towards 90°")[0]!,
    ];
    expectClose(Math.hypot(across, up), first.distance.value.in("thou"), {
      rel: 1e-9,
      because: "rounding only",
    });
    expectClose(
      Math.atan2(up, across),
      Math.atan2(Math.sin(first.direction.value.si), Math.cos(first.direction.value.si)),
      {
        rel: 1e-9,
        because: "rounding only",
      },
    );
  });
  it("speaks micrometres where the rebuild is metric", () => {
    setUnitSystem("metric");
    expect(text(correctedReading(calibrationLine(gauges), mm(40)))).toMatch(/error taken off .* µm/);
  });
});

describe("chanceText(probability)", () => {
  it("is no finer than a probability is known", () => {
    expect([0, 0.034, 0.34, 0.951, 0.9999, 1].map(chanceText)).toEqual([
      "less than 0.1 %",
      "3.4 %",
      "34 %",
      "95.1 %",
      "more than 99.9 %",
      "more than 99.9 %",
    ]);
  });
});
