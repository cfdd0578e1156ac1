import { describe, expect, it } from "vitest";
import { degree, inch, measured, mm, thou } from "../../../kernel-helpers/quantity/index.js";
import { indicatorSchedule } from "../../../kernel-helpers/shaft/index.js";
import { taperSetting } from "../../../kernel-helpers/survey/index.js";
import type { Block } from "../../../kernel-helpers/view/blocks.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { expectClose } from "../../support/expect-close.js";

const rounding = { rel: 1e-9, because: "rounding only" };
const job = { seat: inch(5), allowed: thou(1), travel: inch(4), lean: degree(0) };
const taper = measured(1 / 12, 1e-5);

describe("indicatorSchedule({ taper, seat, allowed, travel, lean, against, steps })", () => {
  // Compensation values for a lever indicator, printed to two digits by its makers: true = shown × value (read).
  it.each([
    [10, 0.98],
    [20, 0.94],
    [30, 0.87],
    [40, 0.77],
    [50, 0.64],
    [60, 0.5],
  ])("shows too much by the printed compensation at %s°", (angle, value) => {
    const { tooMuch } = indicatorSchedule({ taper, ...job, lean: degree(angle) });
    expectClose(1 / (1 + tooMuch), value, { abs: 0.0051, because: "two digits printed" });
  });
  it("rises on radius as the survey's setting says, part by part, and standing square shows the same", () => {
    const { rows } = indicatorSchedule({ taper, ...job });
    const { indicator } = taperSetting({ taper }, { travels: [1, 2, 3, 4].map(inch) });
    rows.forEach(({ travel, alongAxis, leaning }, i) => {
      expectClose(travel.si, indicator[i]!.travel.si, rounding);
      expectClose(alongAxis.value.si, indicator[i]!.rise.value.si, rounding);
      expectClose(alongAxis.standardUncertainty.si, indicator[i]!.rise.standardUncertainty.si, rounding);
      expectClose(leaning.si, alongAxis.value.si, rounding);
    });
  });
  it("counts the slide's own travel by the sine: Pythagoras over the flank", () => {
    for (const { travel, alongAxis, alongSlide } of indicatorSchedule({ taper, ...job }).rows) {
      const flank = Math.hypot(travel.si, alongAxis.value.si);
      expectClose(alongSlide!.value.si / travel.si, alongAxis.value.si / flank, rounding);
    }
    const more = indicatorSchedule({ taper: measured(1 / 12 + 1e-6, 0), ...job }).rows[3]!;
    const less = indicatorSchedule({ taper: measured(1 / 12 - 1e-6, 0), ...job }).rows[3]!;
    expectClose(
      indicatorSchedule({ taper, ...job }).rows[3]!.alongSlide!.standardUncertainty.si,
      ((more.alongSlide!.value.si - less.alongSlide!.value.si) / 2e-6) * 1e-5,
      { rel: 1e-6, because: "a difference quotient" },
    );
  });
  it("meets a flank where the leaning stem cuts it", () => {
    const lean = 0.2;
    const found = indicatorSchedule({
      taper: measured(0.25, 0),
      ...job,
      lean: degree(11.459155902616464),
      against: "flank",
    });
    // From (t, 0) down the stem (sin φ, cos φ) to the line y = x·tan θ, by bisection.
    const length = (t: number): number => {
      let [low, high] = [0, 10];
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2;
        if (middle * Math.cos(lean) < (t + middle * Math.sin(lean)) * 0.125) low = middle;
        else high = middle;
      }
      return low;
    };
    expectClose(found.rows[3]!.leaning.in("inch"), length(4), { rel: 1e-9, because: "bisected to 2⁻⁶⁰" });
    expect(found.rows[3]!.alongSlide).toBeUndefined();
  });
  it("spoils at the most lean just what is allowed, against either", () => {
    for (const against of ["parallel bar", "flank"] as const) {
      const { mostLean } = indicatorSchedule({ taper, ...job, against });
      const { overSeat } = indicatorSchedule({ taper, ...job, lean: mostLean!, against });
      expectClose(overSeat.si, job.allowed.si, rounding);
    }
    // A taper of 0.4 in over the seat, of which all may be wrong: no lean is too much.
    expect(indicatorSchedule({ taper, ...job, allowed: inch(0.5) }).mostLean).toBeUndefined();
  });
  it("leaves the taper too small by what a slide set by the leaning indicator has", () => {
    const { tooMuch, overSeat } = indicatorSchedule({ taper, ...job, lean: degree(10) });
    const setTo = taper.value / (1 + tooMuch);
    expectClose(overSeat.in("inch"), (taper.value - setTo) * 5, rounding);
  });
  it("is the same in millimetres", () => {
    const metric = { seat: mm(127), allowed: mm(0.0254), travel: mm(101.6), lean: degree(5) };
    const [a, b] = [
      indicatorSchedule({ taper, ...job, lean: degree(5) }),
      indicatorSchedule({ taper, ...metric }),
    ];
    expectClose(b.rows[1]!.leaning.si, a.rows[1]!.leaning.si, rounding);
    expect(b.rows[1]!.leaning.writtenIn).toBe("mm");
  });
  it("names what is wrong", () => {
    const of = (change: object) => () => indicatorSchedule({ taper, ...job, ...change });
    expect(of({ taper: measured(-0.1, 0) })).toThrow("taper must be above 0, without its sign, got -0.1");
    expect(of({ travel: inch(0) })).toThrow("travel must be a length above 0, got 0 in");
    expect(of({ lean: degree(61) })).toThrow("lean must be an angle from 0 to 60° off square, got 61");
    expect(of({ against: "air" })).toThrow('against must be "parallel bar" or "flank", got "air"');
    expect(of({ steps: 0.5 })).toThrow("steps must be a whole number from 1 to 20, got 0.5");
  });
});

describe("present(indicator schedule)", () => {
  const blocksOf = (change: object = {}): readonly Block[] =>
    present(indicatorSchedule({ taper, ...job, lean: degree(3), ...change }))!.blocks;
  const table = (blocks: readonly Block[]) => blocks.find((block) => block.type === "table")!;
  it("says whether the indicator stands square enough, and by how much", () => {
    const verdict = (blocks: readonly Block[]) => blocks.find((block) => block.type === "verdict")!;
    expect(verdict(blocksOf())).toMatchObject({ outcome: "yes" });
    // 0.41667 in × (1 − cos 3°) = 0.571 thou.
    expect(JSON.stringify(blocksOf())).toContain("leaves the taper 0.57 thou too small on diameter");
    const spoilt = blocksOf({ lean: degree(6) });
    expect(verdict(spoilt)).toMatchObject({ outcome: "no" });
  });
  it("tells both travels, with units, and the one against a flank", () => {
    const heads = (blocks: readonly Block[]) => table(blocks).columns.map(({ title }) => title);
    expect(heads(blocksOf())).toEqual([
      "travel",
      "along the axis, by the carriage",
      "along the flank, by the slide's dial",
      "along the axis, leaning by 3°",
    ]);
    expect(heads(blocksOf({ against: "flank" }))).toHaveLength(3);
    expect(table(blocksOf()).rows[3]!.cells).toEqual([
      "4",
      "0.166667 ± 0.000039",
      "0.166522 ± 0.000039",
      "0.16690",
    ]);
  });
});
