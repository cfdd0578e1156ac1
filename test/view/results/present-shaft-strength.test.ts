import { afterEach, describe, expect, it } from "vitest";
import { babbitt, material, standardKey } from "../../../kernel-helpers/handbook/index.js";
import {
  inch,
  ksi,
  lbf,
  lbfInch,
  measured,
  mm,
  newtonMetre,
  setUnitSystem,
} from "../../../kernel-helpers/quantity/index.js";
import {
  assumedSteel,
  bearingPressure,
  deepestCut,
  enduranceLimit,
  keyStrength,
  keyseatAfterCut,
  type ShaftDuty,
  type ShaftPlace,
  shaftSafety,
  steelOfHardness,
  stressConcentration,
  weakestPlace,
} from "../../../kernel-helpers/shaft/index.js";
import type { Block, Presentation, TableBlock } from "../../../kernel-helpers/view/blocks.js";
import { drawingSize } from "../../../kernel-helpers/view/drawing/drawing-svg.js";
import { finishFigure } from "../../../kernel-helpers/view/finish-figure.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";
import { expectClose } from "../../support/expect-close.js";

const duty: ShaftDuty = {
  steel: assumedSteel("mild steel of the period"),
  surface: "machined",
  demanded: 2,
};
const load = {
  moment: measured(lbfInch(6000), lbfInch(600)),
  torque: measured(lbfInch(6875), lbfInch(300)),
};
const places: readonly ShaftPlace[] = [
  { name: "journal", diameter: measured(inch(2.425), inch(0.0003)), ...load, feature: { shape: "plain" } },
  {
    name: "keyseat <second pulley>",
    diameter: inch(2.4375),
    ...load,
    feature: { shape: "keyseat", ends: "end-milled", corner: inch(1 / 32) },
  },
  { name: "taper end", diameter: inch(2.25), ...load, feature: { shape: "keyed hub" } },
];
const strength = weakestPlace(places, duty);
const shown = (value: unknown): Presentation => present(value)!;
const one = <T extends Block["type"]>(value: unknown, type: T): Extract<Block, { type: T }> =>
  shown(value).blocks.find((block) => block.type === type) as Extract<Block, { type: T }>;
const loads = (value: unknown): TableBlock =>
  shown(value).blocks.filter((block): block is TableBlock => block.type === "table")[1]!;

afterEach(() => setUnitSystem(undefined));

describe("present(shaft strength)", () => {
  it("gives a verdict that names the weakest place, its factor with 95 %, the chance, and what the doubt is of", () => {
    const { outcome, text, because } = one(strength, "verdict");
    expect(outcome).toBe("cannot tell yet");
    expect(text).toBe("Whether the shaft bears its load with the factor 2 cannot be told yet.");
    expect(because).toMatch(
      /^Weakest: taper end\. Factor \d\.\d\d against fatigue \(Goodman\), 95 % from \d\.\d\d to \d\.\d\d; chance that it is below 2: \d+(\.\d)? %\. Most of the doubt is of the /,
    );
  });
  it("has a row and two marks for every place, in the units of the shaft, and escapes names in the figure", () => {
    const table = one(strength, "table");
    expect(table.rows.map(({ cells }) => cells[0])).toEqual([
      "journal",
      "keyseat <second pulley>",
      "taper end (weakest)",
    ]);
    expect(loads(strength).rows[0]!.cells.slice(1, 5)).toEqual([
      "2.4250 in",
      "6000 ± 1200 lbf·in",
      "6880 ± 590 lbf·in",
      "plain",
    ]);
    const { figure } = one(strength, "figure");
    const finished = finishFigure(figure);
    expect(finished.data).toHaveLength(2);
    expect(JSON.stringify(finished.layout)).toContain("&lt;second");
    for (const trace of finished.data)
      for (const key of ["array", "arrayminus"])
        for (const size of (trace.error_x as Record<string, number[]>)[key]!)
          expect(size).toBeGreaterThanOrEqual(0);
  });
  it("speaks metric in a metric rebuild", () => {
    setUnitSystem("metric");
    expect(loads(strength).rows[0]!.cells.slice(1, 3)).toEqual(["61.595 mm", "680 ± 130 N·m"]);
    expect(renderText(shown(strength))).toMatch(/tensile 379\.2 MPa, yield 189\.6 MPa/);
  });
  it("says that the steel is assumed, and holds and fails in words", () => {
    expect(renderText(shown(strength))).toMatch(/steel, assumed.*mild steel of the period/);
    const strong = weakestPlace(places, { ...duty, demanded: 0.5 });
    expect(one(strong, "verdict")).toMatchObject({
      outcome: "yes",
      text: "Every place bears its load with the factor 0.5 that is demanded.",
    });
    const weak = weakestPlace(places, { ...duty, demanded: 9 });
    expect(one(weak, "verdict").outcome).toBe("no");
    expect(one(weak, "table").rows.map(({ mark }) => mark)).toContain("bad");
  });
});

describe("present(shaft safety), present(stress concentration), present(shaft steel), present(endurance limit)", () => {
  it("shows one place with its stresses and where the limit comes from", () => {
    const text = renderText(shown(shaftSafety(places[1]!, { ...duty, reliability: 0.99 }))).replace(
      /\s+/g,
      " ",
    );
    expect(text).toMatch(/end-milled keyseat: Peterson's/);
    expect(text).toMatch(/endurance limit that 99 % of shafts exceed/);
    expect(text).toMatch(/surface 0\.\d+ \(machined\), size 0\.\d+, temperature 1\.000, reliability 0\.814/);
  });
  it("shows a place where nothing swings, without a number that is none", () => {
    const still = shaftSafety(
      {
        name: "stub",
        diameter: mm(60),
        moment: newtonMetre(0),
        torque: newtonMetre(9),
        feature: { shape: "plain" },
      },
      duty,
    );
    expect(renderText(shown(still))).toMatch(/half of the swing\s+0 MPa/);
    expect(renderText(shown(still))).not.toMatch(/NaN|Infinity/);
  });
  it("shows a feature's peaks, a steel and a limit", () => {
    const seat = stressConcentration({ shape: "keyseat", ends: "end-milled", corner: mm(0.8) }, mm(60));
    expect(one(seat, "table").rows).toHaveLength(2);
    expect(renderText(shown(stressConcentration({ shape: "keyed hub" }, mm(60))))).toMatch(/fatigue tests/);
    expect(renderText(shown(steelOfHardness(121, "as rolled")))).toMatch(/60\.5 ± 5\.9 ksi/);
    const limit = enduranceLimit(ksi(105), { diameter: inch(1.1), surface: "machined", reliability: 0.99 });
    expect(renderText(shown(limit))).toMatch(/29\.2 ksi/);
  });
});

describe("present(deepest cut), present(key strength), present(keyseat after cut), present(bearing pressure), present(standard key)", () => {
  const place: ShaftPlace = {
    name: "journal",
    diameter: measured(mm(60), mm(0.01)),
    moment: newtonMetre(250),
    torque: newtonMetre(600),
    feature: { shape: "plain" },
  };
  it("says to what a place may be turned, how sure, and what decides", () => {
    const { outcome, text, because } = one(deepestCut(place, duty), "verdict");
    expect(outcome).toBe("yes");
    expect(text).toMatch(/^journal may be turned down to \d\d\.\d mm\.$/);
    // Taken up, and by less than a twentieth of the cut; what may be turned off is what that leaves of 60 mm.
    const { sure, cut } = deepestCut(place, duty);
    const down = Number(/\d\d\.\d/.exec(text)![0]);
    expect(down).toBeGreaterThanOrEqual(sure!.in("mm"));
    expect(down - sure!.in("mm")).toBeLessThan(cut.in("mm") / 20);
    const { facts } = one(deepestCut(place, duty), "facts");
    const off = facts.find(({ label }) => label === "may be turned off")!.value;
    expectClose(Number.parseFloat(off), 60 - down, { rel: 1e-9, because: "of the same two figures" });
    expect(because).toMatch(/chance that its factor is below 2 is 5\.0 %.*(Fatigue|Yielding) decides/);
  });
  it("says why nothing may be turned off", () => {
    const heavy = deepestCut({ ...place, moment: newtonMetre(6000) }, duty);
    expect(one(heavy, "verdict")).toMatchObject({ outcome: "no" });
    const near = deepestCut({ ...place, moment: newtonMetre(1200) }, duty);
    expect(one(near, "verdict")).toMatchObject({ outcome: "cannot tell yet" });
    const idle = deepestCut({ ...place, moment: newtonMetre(1), torque: newtonMetre(1) }, duty);
    expect(one(idle, "verdict").text).toMatch(/no limit/);
    for (const found of [heavy, near, idle]) expect(renderText(shown(found))).not.toMatch(/NaN|undefined/);
  });
  it("shows the ways a key may give, the weakest marked", () => {
    const steel = assumedSteel("mild steel of the period");
    const key = {
      form: "square",
      width: inch(0.625),
      height: inch(0.625),
      length: inch(3),
      steel: steel,
    } as const;
    const found = keyStrength(key, {
      torque: measured(lbfInch(6875), lbfInch(300)),
      diameter: inch(2.4375),
      shaftSteel: steel,
      hub: material("grey iron class 20"),
      demanded: 2.5,
    });
    const { rows } = one(found, "table");
    expect(rows).toHaveLength(4);
    expect(rows.filter(({ cells }) => cells[0]!.endsWith("(weakest)"))).toHaveLength(1);
    expect(renderText(shown(found))).toMatch(/square, 0\.625 in × 0\.625 in × 3 in/);
  });
  it("draws what a cut leaves of a keyseat: the seat's corners lie on the turned circle", () => {
    const found = keyseatAfterCut({ before: mm(60), after: mm(57), width: mm(18), depth: mm(6) });
    const { drawing } = one(found, "drawing");
    const body = drawing.shapes.find((shape) => shape.type === "polygon")!;
    expect(body.type).toBe("polygon");
    const points = body.type === "polygon" ? body.points : [];
    // 240 px stand for 60 mm.
    for (const [x, y] of points.slice(0, -2))
      expectClose(Math.hypot(x - 150, y - 168) / 4, 28.5, { rel: 1e-9, because: "rounding only" });
    expectClose((points.at(-1)![0] - points.at(-2)![0]) / 4, 18, { rel: 1e-9, because: "rounding only" });
    expectClose((points[0]![1] - 168) / -4, Math.sqrt(28.5 ** 2 - 81), { rel: 1e-9, because: "corner" });
    const size = drawingSize(drawing);
    expect(size.width).toBeLessThanOrEqual(drawing.width);
    const gone = keyseatAfterCut({ before: mm(60), after: mm(50), width: mm(18), depth: mm(4) });
    expect(renderText(shown(gone))).toMatch(/takes the whole seat away/);
  });
  it("shows the pressure of a bearing with its chance, and a standard key", () => {
    const found = bearingPressure({
      diameter: inch(2.425),
      length: inch(8),
      force: measured(lbf(900), lbf(90)),
      metal: babbitt(2),
      service: "heavy line shafting",
    });
    expect(one(found, "verdict").because).toMatch(/^46\.4 ± 9\.1 psi .* usually loaded to 150 psi/);
    expect(renderText(shown(standardKey(mm(60), "ISO 773")))).toMatch(/Key 18 mm × 11 mm/);
    expect(renderText(shown(standardKey(inch(2.4375), "ASME B17.1")))).toMatch(
      /deep at the side of the seat/,
    );
  });
});
