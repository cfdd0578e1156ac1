import { describe, expect, it } from "vitest";
import {
  degree,
  inch,
  type Length,
  measured,
  mm,
  quantity,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import {
  correctTaper,
  gaugeBlockStack,
  metalByGauge,
  type TaperWaysInput,
  taperWays,
  trialCutOf,
} from "../../../kernel-helpers/shaft/index.js";
import { readTable } from "../../../kernel-helpers/survey/index.js";
import { expectClose } from "../../support/expect-close.js";

const rounding = { rel: 1e-9, because: "rounding only" };

describe("gaugeBlockStack(height, set)", () => {
  const heights = (set: "inch 81" | "metric 88", height: Length) => gaugeBlockStack(height, set);
  it("makes every height of a range to the set's step, each block once", () => {
    for (let i = 0; i < 60; i++) {
      const stack = heights("inch 81", inch(0.21 + 0.0377 * i));
      const sum = stack.blocks.reduce((total, block) => total + block.si, 0);
      expectClose(sum, stack.height.si, rounding);
      expect(Math.abs(stack.rest.in("inch"))).toBeLessThanOrEqual(0.00005 + 1e-9);
      expect(new Set(stack.blocks.map(({ si }) => si.toFixed(9))).size).toBe(stack.blocks.length);
      expect(stack.blocks.length).toBeLessThanOrEqual(5);
      const metric = heights("metric 88", mm(4 + 0.7135 * i));
      expectClose(
        metric.blocks.reduce((total, block) => total + block.si, 0),
        metric.height.si,
        rounding,
      );
      expect(Math.abs(metric.rest.in("micrometre"))).toBeLessThanOrEqual(0.25 + 1e-6);
    }
  });
  it("has as many blocks to choose from as the set is named for", () => {
    // 9 + 49 + 19 + 4 and 1 + 9 + 49 + 19 + 10: every size of the set is a stack of one.
    const inches = [
      ...Array.from({ length: 9 }, (_, i) => 1001 + i),
      ...Array.from({ length: 49 }, (_, i) => 1010 + 10 * i),
      ...Array.from({ length: 19 }, (_, i) => 500 + 500 * i),
      ...[1, 2, 3, 4].map((i) => 10000 * i),
    ];
    expect(inches.length).toBe(81);
    for (const tenths of inches) expect(heights("inch 81", inch(tenths / 1e4)).blocks.length).toBe(1);
    const metric = [
      1.0005,
      ...Array.from({ length: 9 }, (_, i) => 1.001 + i / 1000),
      ...Array.from({ length: 49 }, (_, i) => 1.01 + i / 100),
      ...Array.from({ length: 19 }, (_, i) => 0.5 + i / 2),
      ...Array.from({ length: 10 }, (_, i) => 10 + 10 * i),
    ];
    expect(metric.length).toBe(88);
    for (const size of metric) expect(heights("metric 88", mm(size)).blocks.length).toBe(1);
  });
  it("refuses what no stack makes", () => {
    expect(() => heights("inch 81", inch(0.0301))).toThrow('no stack of the set "inch 81" makes 0.0301 in');
    expect(() => heights("inch 99" as never, inch(1))).toThrow('got "inch 99"');
  });
});

const lathe: Omit<TaperWaysInput, "taper"> = {
  seat: inch(6),
  allowed: thou(1),
  indicatorDivision: thou(0.5),
  indicatorTravel: inch(4),
  attachmentReach: inch(10),
  compoundTravel: inch(4),
  compoundDivision: degree(1),
  workLength: inch(9),
  sineBar: inch(5),
  gaugeBlocks: "inch 81",
};
const way = (input: TaperWaysInput, name: string) =>
  taperWays(input).ways.find((each) => each.name === name)!;

describe("taperWays(input)", () => {
  const input: TaperWaysInput = { ...lathe, taper: measured(1 / 12, 0) };
  // F. D. Jones, Turning and Boring, 1914, worked example (read): 1 in per foot, 9 in long: 3/8 in.
  it("sets the tailstock over by Jones's 3/8 in", () => {
    expectClose((way(input, "tailstock set over").setting.value as Length).in("inch"), 3 / 8, {
      rel: 1e-3,
      because: "he takes the tangent for the sine: 1 − cos 2.39° = 0.0009",
    });
  });
  it("sets it over by what turns the work's axis through the half angle: geometry of the two points", () => {
    const deep = { ...input, centreDepth: inch(0.25) };
    const over = (way(deep, "tailstock set over").setting.value as Length).in("inch");
    const lengthAlong = Math.sqrt(8.5 ** 2 - over ** 2);
    expectClose(over / lengthAlong, 1 / 24, { rel: 1e-9, because: "tangent of the half angle" });
    expect(taperWays(deep).warnings.join()).toMatch(/the centres reach 0\.25 in into the work/);
  });
  it("swings the compound by the half angle and stacks for it, not for the included one", () => {
    expectClose(
      (way(input, "compound slide, by its scale").setting.value as never as { in(u: string): number }).in(
        "degree",
      ),
      2.38594,
      {
        abs: 6e-6,
        because: "published table of tapers, 5 decimals",
      },
    );
    const { stack } = way(input, "compound slide, by sine bar");
    expectClose(stack!.height.in("inch"), 5 * Math.sin((2.38594 * Math.PI) / 180), {
      abs: 0.00006,
      because: "half a step of the blocks",
    });
  });
  it("tells which way reaches and which is too coarse, truest first", () => {
    const { ways } = taperWays(input);
    expect(way(input, "compound slide, by its scale").verdict).toBe("cannot reach");
    expect(way({ ...input, compoundTravel: inch(8) }, "compound slide, by its scale").verdict).toBe(
      "too coarse",
    );
    expect(way({ ...input, mostSetOver: inch(0.25) }, "tailstock set over").reason).toBe(
      "it goes over by 0.25 in at most",
    );
    const good = ways.filter(({ verdict }) => verdict === "good enough").map(({ error }) => error.si);
    expect(good).toEqual([...good].sort((a, b) => a - b));
    expect(ways[0]!.verdict).toBe("good enough");
  });
  // F. D. Jones, Turning and Boring, 1914 (read): ends of 2 1/2 and 2 in over 6 in, work 9 in long: 1/12 in per inch, 3/8 in.
  it("sets the tailstock over by Jones's 3/8 in for a taper told by its ends, 6 in apart on work of 9 in", () => {
    const ends = { ...lathe, taper: measured((2.5 - 2) / 6, 0) };
    expectClose(ends.taper.value, 1 / 12, rounding);
    expectClose((way(ends, "tailstock set over").setting.value as Length).in("inch"), 3 / 8, {
      rel: 1e-3,
      because: "he takes the tangent for the sine: 1 − cos 2.39° = 0.0009",
    });
  });
  it("sets an attachment's scale by taper per foot or by the half angle, whatever the length of the work", () => {
    const perFoot = { ...input, attachmentDivision: inch(1 / 8) };
    const { setting, error } = way(perFoot, "taper attachment, by its scale");
    expectClose((setting.value as Length).in("inch"), 1, rounding);
    // Rectangular over a division of 1/8 in in 12, over 6 in of seat.
    expectClose(error.in("inch"), (1.959964 * (1 / 8) * 6) / 12 / Math.sqrt(12), {
      rel: 1e-6,
      because: "95 % to 7 digits",
    });
    const angle = way({ ...input, attachmentDivision: degree(1) }, "taper attachment, by its scale");
    const compound = way(input, "compound slide, by its scale");
    expect(angle.setting.value).toEqual(compound.setting.value);
    expect(angle.error).toEqual(compound.error);
    const long = way({ ...perFoot, workLength: inch(90) }, "taper attachment, by its scale");
    expect(long.setting).toEqual(setting);
    expect(() => taperWays({ ...input, attachmentDivision: inch(0) })).toThrow(
      "attachmentDivision must be above 0, a length per foot on diameter or an angle, got 0 in",
    );
  });
  it("gives the error that settings scattered within their divisions have", () => {
    // Two indicator readings, each rectangular over a division: by a grid of all pairs.
    const n = 200;
    let squares = 0;
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        const rise = (((i - j) / n) * 0.0005) / 1;
        squares += ((2 * rise) / 4) ** 2;
      }
    const deviation = Math.sqrt(squares / n ** 2) * 6 * 1.959964;
    expectClose(way(input, "taper attachment, by indicator").error.in("inch"), deviation, {
      rel: 1e-4,
      because: "a grid of 200 × 200",
    });
  });
  it("warns of a large set-over and of a taper known too badly", () => {
    expect(taperWays(input).warnings.join()).toMatch(/more than 1\/50 of the length/);
    const rough = { ...input, taper: measured(1 / 12, 1e-3) };
    expect(taperWays(rough).warnings.join()).toMatch(/no setting mends that/);
  });
  it("names what is wrong", () => {
    expect(() => taperWays({ ...input, taper: measured(-0.08, 0) })).toThrow(
      /taper must be above 0.*got -0\.08/,
    );
    expect(() => taperWays({ ...input, seat: inch(0) })).toThrow("seat must be a length above 0, got 0 in");
    expect(() => taperWays({ ...input, centreDepth: inch(5) })).toThrow(
      "centreDepth must be 0 or more and leave some",
    );
    const { seat, allowed, indicatorDivision, indicatorTravel } = lathe;
    expect(() =>
      taperWays({ taper: input.taper, seat, allowed, indicatorDivision, indicatorTravel }),
    ).toThrow("the lathe offers no way");
  });
});

describe("correctTaper(trial)", () => {
  const ends = { smallEnd: measured(inch(2.14), thou(0.1)), largeEnd: measured(inch(2.388), thou(0.1)) };
  it("moves the tailstock so that the same set-over rule gives the wanted taper", () => {
    const found = correctTaper({ wanted: 0.0625, ...ends, apart: inch(4), betweenCentres: inch(32) });
    const set = (found.cut.value * 32) / 2 + found.tailstock!.value.in("inch");
    expectClose((2 * set) / 32, 0.0625, rounding);
    expectClose(Math.tan(Math.atan(found.cut.value / 2) + found.compound.value.si), 0.0625 / 2, rounding);
    expectClose(found.cut.value + found.attachmentPerFoot.value.in("inch") / 12, 0.0625, rounding);
    expect(found.text).toMatch(/^Too little taper/);
    expect(found.real).toBe(true);
  });
  it("leaves the setting where the measuring cannot tell", () => {
    const near = { ...ends, largeEnd: measured(inch(2.3901), thou(0.1)) };
    const found = correctTaper({ wanted: 0.0625, ...near, apart: inch(4) });
    expect(found.real).toBe(false);
    expect(found.tailstock).toBeUndefined();
    expect(found.text).toMatch(/leave the setting/);
  });
  it("refuses a taper that runs the wrong way", () => {
    const swapped = { smallEnd: ends.largeEnd, largeEnd: ends.smallEnd };
    expect(() => correctTaper({ wanted: 0.0625, ...swapped, apart: inch(4) })).toThrow(
      /runs the wrong way: the end that is to be large measures 2\.14 in, the small one 2\.388 in/,
    );
    expect(() => correctTaper({ wanted: -0.06, ...ends, apart: inch(4) })).toThrow("wanted must be above 0");
    expect(() => correctTaper({ wanted: 0.06, ...ends, apart: quantity(0, "inch") })).toThrow(
      "apart must be a length above 0",
    );
  });
});

describe("trialCutOf(table, { wanted, measuring })", () => {
  const tableOf = (...rows: readonly string[]) =>
    readTable(new TextEncoder().encode(["station [in],diameter [in]", ...rows].join("\n")), {
      name: "trial-cut",
      file: "trial-cut.csv",
    });
  it("is two places, without the sign of the taper", () => {
    const trial = trialCutOf(tableOf("0.5,2.14", "4.5,2.388"), { wanted: -0.0625, measuring: thou(0.2) });
    expect(trial.wanted).toBe(0.0625);
    expectClose(trial.apart.in("inch"), 4, rounding);
    expectClose(correctTaper(trial).cut.value, 0.062, rounding);
  });
  it("names the file that holds something else", () => {
    const given = { wanted: 0.06, measuring: thou(0.2) };
    expect(() => trialCutOf(tableOf("0.5,2.14"), given)).toThrow(/trial-cut\.csv must hold two rows.*got 1/);
    expect(() => tableOf("1,2.14", "1,2.2")).toThrow(/trial-cut\.csv line 3.*found station 1 in again/);
    const readAgain = readTable(
      new TextEncoder().encode("station [in],diameter [in],remark\n1,2.14,\n1,2.2,repeat"),
      { name: "trial-cut", file: "trial-cut.csv" },
    );
    expect(() => trialCutOf(readAgain, given)).toThrow(
      "trial-cut.csv must hold two stations, got 1 in twice",
    );
    expect(() => trialCutOf(tableOf("1,2.14", "1,2.2"), given)).toThrow(/trial-cut\.csv has a fault/);
  });
});

describe("metalByGauge(taper, standOff)", () => {
  it("is the published 0.001 in for 0.0200 in of a Morse 2", () => {
    expectClose(metalByGauge(0.59941 / 12, inch(0.02)).in("thou"), 1, {
      rel: 2e-3,
      because: "printed to 3 digits",
    });
    // Both of them off by a part in a hundred, of its own: √2 parts.
    const metal = metalByGauge(measured(0.05, 0.0005), measured(inch(0.02), thou(0.2)));
    expectClose(metal.value.in("thou"), 1, rounding);
    expectClose(metal.standardUncertainty.in("thou"), 0.01 * Math.SQRT2, rounding);
    expect(() => metalByGauge(-0.05, inch(1))).toThrow("taper must be above 0");
  });
});
