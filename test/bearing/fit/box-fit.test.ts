import { describe, expect, it } from "vitest";
import {
  type BoxAlignment,
  type BoxFitOptions,
  boxAlignment,
  boxFit,
  contactSpots,
  stretchedWire,
} from "../../../kernel-helpers/bearing/index.js";
import { inch, measured, newton, quantityFromSi, thou } from "../../../kernel-helpers/quantity/index.js";
import { finishedJournals } from "../../../kernel-helpers/shaft/index.js";
import { readTable, type Table } from "../../../kernel-helpers/survey/index.js";
import { expectClose } from "../../support/expect-close.js";

const tableOf = (...lines: readonly string[]): Table =>
  readTable(new TextEncoder().encode(lines.join("\n")), { name: "readings", file: "readings.csv" });
const limits: BoxFitOptions = {
  wanted: thou(4),
  tolerance: thou(1),
  taperLimit: thou(0.8),
  readingUncertainty: thou(0.2),
  shimStep: thou(1),
};
const gaps = (...gap: readonly number[]): Table =>
  tableOf("box [text],station [in],gap [thou]", ...gap.map((value, i) => `far box,${i * 2 + 1},${value}`));

describe("boxFit(table, options)", () => {
  it("finds clearance and taper of a known line, with the uncertainties of the line's own formula", () => {
    const [box] = boxFit(gaps(3.9, 4.0, 4.1, 4.2), limits).boxes;
    expectClose(box!.clearance.value.in("thou"), 4.05, { rel: 1e-9, because: "half-way" });
    expectClose(box!.taper.value.in("thou"), 0.3, { rel: 1e-9, because: "0.1 a step of 2 in" });
    // u/√n, and u·L/√Σ(x − x̄)² with L = 6 in and Σ = 20 in².
    expectClose(box!.clearance.standardUncertainty.in("thou"), 0.1, { rel: 1e-9, because: "0.2/√4" });
    expectClose(box!.taper.standardUncertainty.in("thou"), (0.2 * 6) / Math.sqrt(20), {
      rel: 1e-9,
      because: "by hand",
    });
    expect(box!).toMatchObject({
      verdict: "fits",
      scrape: undefined,
      next: "mark with blue and count the spots",
    });
  });
  it("changes the shims by what is wanting, in whole steps, and says which way", () => {
    const [slack] = boxFit(gaps(7.1, 6.9, 7.0, 7.0), limits).boxes;
    expect(slack!.verdict).toBe("does not fit");
    expectClose(slack!.shim.in("thou"), -3, { rel: 1e-9, because: "4 less 7" });
    expectClose(slack!.afterShim.in("thou"), 4, { rel: 1e-9, because: "7 less 3" });
    expect(slack!.next).toMatch(/^take the shims out, on both sides alike/);
    expect(boxFit(gaps(1.1, 0.9, 1, 1), limits).boxes[0]!.next).toMatch(/^add the shims/);
  });
  it("has the tight end scraped before any shim is changed", () => {
    const [box] = boxFit(gaps(3, 3.7, 4.4, 5), limits).boxes;
    expect(box!.verdict).toBe("does not fit");
    expect(box!.scrape!.at.in("inch")).toBe(1);
    expectClose(box!.scrape!.depth.in("thou"), Math.abs(box!.taper.value.in("thou")), {
      rel: 1e-9,
      because: "all of it",
    });
  });
  it("asks for an odd reading again, and for more where it cannot tell", () => {
    expect(boxFit(gaps(4, 4, 6, 4, 4), limits).boxes[0]!.next).toMatch(/^take the gap at 5 in again/);
    const [edge] = boxFit(gaps(4.9, 5.0, 5.0, 4.9), limits).boxes;
    expect(edge!.verdict).toBe("cannot tell yet");
    expect(edge!.next).toMatch(/^\d+ more gaps along the box would tell$/);
  });
  describe("with the line of the boxes", () => {
    const rows = (name: string, from: number, rise: number): string[] =>
      [0, 2, 4, 6].map((x) => `${name},${from + x},${(500 - (rise * x) / 6).toFixed(6)}`);
    const lineOf = (rise: number): BoxAlignment =>
      boxAlignment(
        tableOf(
          "box [text],station [in],depth [thou]",
          ...rows("pulley box", 10, 0),
          // Far away, so that its tilt hardly turns the line through all.
          ...rows("far box", 1000, rise),
        ),
        { limit: thou(1), readingUncertainty: thou(0.1) },
      );
    it("takes the tilt out of the gaps, and has a straight bore set in line, not scraped", () => {
      // A bore without taper, 4 thou of clearance, tilted by 3 thou: full gap at the high end, 3 thou less at the low one.
      const [box] = boxFit(gaps(1, 2, 3, 4), { ...limits, line: lineOf(3) }).boxes;
      expect(box!.askew).toBe(true);
      expect(box!.scrape).toBeUndefined();
      expectClose(box!.tilt!.onceInLine.value.in("thou"), 4, {
        rel: 2e-3,
        because: "by construction; the line through all turns by 4.6 µin half-way: 1.1e-3",
      });
      expect(Math.abs(box!.tilt!.own.value.in("thou"))).toBeLessThan(0.01);
      expect(box!.next).toMatch(/^set the box in line, then take the gaps again; nothing is scraped/);
      expect(box!.verdict).toBe("does not fit");
      expect(box!.shim.si).toBe(0);
    });
    it("without the line would have had it scraped: the same gaps", () => {
      expect(boxFit(gaps(1, 2, 3, 4), limits).boxes[0]!.scrape!.at.in("inch")).toBe(1);
    });
    it("leaves to the scraper what is the bore's own", () => {
      const [box] = boxFit(gaps(1, 3, 5, 7), { ...limits, line: lineOf(3) }).boxes;
      expectClose(box!.tilt!.own.value.in("thou"), 3, { rel: 1e-2, because: "6 of taper less 3 of tilt" });
      expectClose(box!.scrape!.depth.in("thou"), 3, { rel: 1e-2, because: "its own part alone" });
      expect(box!.next).toMatch(/^set the box in line.*then scraped off at 1 in$/);
    });
    it("in line, scrapes what the gaps say; and does not call a box fit whose line cannot be told", () => {
      const [box] = boxFit(gaps(3, 3.7, 4.4, 5), { ...limits, line: lineOf(0) }).boxes;
      expect(box!.scrape!.at.in("inch")).toBe(1);
      const unsure = { ...lineOf(0) };
      const line: BoxAlignment = {
        ...unsure,
        boxes: unsure.boxes.map((one) => ({ ...one, verdict: "cannot tell yet" })),
      };
      const [told] = boxFit(gaps(4, 4, 4, 4), { ...limits, line }).boxes;
      expect(told).toMatchObject({
        verdict: "cannot tell yet",
        next: expect.stringMatching(/^take more heights along the box/),
      });
    });
    it("refuses a box that the line does not know", () => {
      const other = tableOf("box [text],station [in],gap [thou]", "third,1,4", "third,3,4", "third,5,4");
      expect(() => boxFit(other, { ...limits, line: lineOf(0) })).toThrow(
        'boxFit: readings: a box must be one of those with a place in the line, "pulley box", "far box", got "third"',
      );
    });
  });
  describe("with journals and clearances by name", () => {
    const journal = (name: string, from: number) => ({
      name,
      from: inch(from),
      to: inch(from + 8),
      diameter: measured(inch(2.431), thou(0.2)),
    });
    const journals = finishedJournals({ journals: [journal("far box", 60), journal("pulley box", 5)] });
    it("tells each bore as journal and clearance, and which box is not read yet", () => {
      const fit = boxFit(gaps(4, 4, 4, 4), { ...limits, journals, wanted: { "far box": thou(4) } });
      expectClose(fit.boxes[0]!.bore!.value.in("inch"), 2.435, { rel: 1e-12, because: "2.431 and 0.004" });
      expectClose(fit.boxes[0]!.bore!.standardUncertainty.in("thou"), Math.hypot(0.2, 0.1), {
        rel: 1e-9,
        because: "independent; 0.2/√4 of the gaps",
      });
      expect(fit.unread).toEqual(["pulley box"]);
    });
    it("judges each box by its own clearance", () => {
      const wanted = { "far box": thou(8) };
      expect(boxFit(gaps(4, 4, 4, 4), { ...limits, wanted }).boxes[0]).toMatchObject({
        verdict: "does not fit",
        next: expect.stringMatching(/^add the shims/),
      });
    });
    it("refuses a box without a journal or a clearance of its name", () => {
      const other = tableOf(
        "box [text],station [in],gap [thou]",
        "Far box,1,4",
        "Far box,3,4",
        "Far box,5,4",
      );
      expect(() => boxFit(other, { ...limits, journals })).toThrow(
        'a box must be one of those with a journal, "pulley box", "far box", got "Far box"',
      );
      expect(() => boxFit(gaps(4, 4, 4), { ...limits, wanted: { near: thou(4) } })).toThrow(
        'with a clearance wanted, "near", got "far box"',
      );
      expect(() => boxFit(gaps(4, 4, 4), { ...limits, wanted: { "far box": thou(0) } })).toThrow(
        "far box must be above 0, got 0 thou",
      );
    });
  });
  it("refuses what it cannot judge", () => {
    expect(() => boxFit(gaps(4, 4), limits)).toThrow(
      "boxFit: far box must have at least 3 gaps along it, got 2",
    );
    expect(() => boxFit(gaps(4, -1, 4), limits)).toThrow("a gap of far box must be 0 or more");
    expect(() => boxFit(gaps(4, 4, 4), { ...limits, wanted: thou(0) })).toThrow(
      "wanted must be above 0, got 0 thou",
    );
  });
});

describe("contactSpots(table, wanted)", () => {
  const spots = (...counts: readonly number[]): Table =>
    tableOf("box [text],spots [-]", ...counts.map((count) => `far box,${count}`));
  it("gives mean and its uncertainty by hand, and lets an even, dense marking bear", () => {
    const [box] = contactSpots(spots(9, 8, 10, 9, 8, 10), 6).boxes;
    expectClose(box!.mean, 9, { rel: 1e-12, because: "54 in 6 squares" });
    expectClose(box!.standardUncertainty, Math.sqrt(9 / 6), { rel: 1e-12, because: "never below Poisson's" });
    expect(box!.verdict).toBe("bears");
  });
  it("sends the scraper on where spots are few, or crowd", () => {
    expect(contactSpots(spots(1, 2, 1, 2, 1), 6).boxes[0]!.because).toBe(
      "too few spots: scrape all that mark",
    );
    const crowd = contactSpots(spots(20, 1, 22, 0, 18, 2), 6).boxes[0]!;
    expect(crowd.because).toBe("the spots crowd: scrape where they are thick");
    // Σ(k − 10.5)²/10.5 = 551.5/10.5 = 52.5 on 5 degrees of freedom: far beyond the 0.1 % point, 20.5.
    expect(crowd.evenChance).toBeLessThan(0.001);
  });
  it("refuses half a spot and too few squares", () => {
    expect(() => contactSpots(spots(1.5, 2, 2, 2), 6)).toThrow("whole numbers from 0 on, got 1.5");
    expect(() => contactSpots(spots(1, 2), 6)).toThrow("at least 4 squares counted, got 2");
  });
});

describe("boxAlignment(table, options)", () => {
  const wire = {
    weight: quantityFromSi("stiffness or line load", 0.01),
    tension: newton(100),
    length: inch(80),
  };
  const sag = (x: number): number => ((0.01 * x * 0.0254 * (80 - x) * 0.0254) / 200 / 0.0254) * 1000;
  const stations = [6, 9, 12, 60, 63, 66];
  const depths = (rise: (x: number) => number): Table =>
    tableOf(
      "box [text],station [in],depth [thou]",
      ...stations.map(
        (x) => `${x < 40 ? "pulley box" : "far box"},${x},${(500 - rise(x) - sag(x)).toFixed(5)}`,
      ),
    );
  const at = { limit: thou(2), readingUncertainty: thou(0.3), wire };
  it("takes out the sag of the wire: boxes on one sloping line are in line, whatever its slope", () => {
    const found = boxAlignment(
      depths((x) => 0.5 * x),
      at,
    );
    for (const box of found.boxes) {
      expect(Math.abs(box.tilt.value.in("thou"))).toBeLessThan(1e-3);
      expect(box.verdict).toBe("in line");
    }
    // w·L²/(8T): 0.01 × 2.032²/800 m.
    expectClose(found.sag!.si, (0.01 * 2.032 ** 2) / 800, {
      rel: 1e-9,
      because: "middle of a flat catenary",
    });
  });
  it("finds a tilted box, and what to put under its low end", () => {
    const found = boxAlignment(
      depths((x) => (x > 40 ? 2 * (x - 63) : 0)),
      at,
    );
    const far = found.boxes[1]!;
    expect(far.verdict).toBe("out of line");
    expect(far.shim!.under.in("inch")).toBe(60);
    expectClose(far.tilt.value.in("thou"), 12, {
      rel: 0.02,
      because: "2 thou an inch over 6 in; the line turns a little",
    });
    expect(found.boxes[0]!.verdict).toBe("in line");
  });
  it("keeps each reading's height over the line: the line through them is the box's own", () => {
    const found = boxAlignment(
      depths((x) => (x > 40 ? 2 * (x - 63) : 0)),
      at,
    );
    const [first, , last] = found.boxes[1]!.readings;
    expectClose(last!.height.si - first!.height.si, found.boxes[1]!.tilt.value.si, {
      rel: 1e-9,
      because: "readings without scatter lie on their line",
    });
  });
  it("tells how sure a middle off the line is: as boxes drawn at random scatter", () => {
    // Three boxes, the middle one read more often; 4000 draws of a plain generator of Lehmer's.
    let seed = 7;
    const even = (): number => {
      seed = (seed * 48_271) % 2_147_483_647;
      return seed / 2_147_483_647;
    };
    const places = [6, 9, 12, 30, 32, 34, 36, 38, 60, 63, 66];
    const named = (x: number): string => (x < 20 ? "near" : x < 50 ? "middle" : "far");
    const { limit, readingUncertainty } = at;
    const drawn = Array.from({ length: 4000 }, () => {
      const noise = (): number => 0.3 * Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
      const table = tableOf(
        "box [text],station [in],depth [thou]",
        ...places.map((x) => `${named(x)},${x},${(500 + noise()).toFixed(6)}`),
      );
      return boxAlignment(table, { limit, readingUncertainty }).boxes;
    });
    const smooth = boxAlignment(
      tableOf("box [text],station [in],depth [thou]", ...places.map((x) => `${named(x)},${x},500`)),
      { limit, readingUncertainty },
    ).boxes;
    smooth.forEach((box, i) => {
      const offsets = drawn.map((boxes) => boxes[i]!.offset.value.si);
      const scatter = Math.sqrt(offsets.reduce((sum, one) => sum + one ** 2, 0) / offsets.length);
      expectClose(box.offset.standardUncertainty.si, scatter, {
        rel: 0.04,
        because: "4000 draws tell a scatter to 1.1 %",
      });
    });
  });
  it("takes the heights of an indicator as it takes depths, upside down, and never both, nor with a wire", () => {
    const { limit, readingUncertainty } = at;
    const read = (column: string, sign: 1 | -1) =>
      tableOf(
        `box [text],station [in],${column} [thou]`,
        ...stations.map(
          (x) => `${x < 40 ? "pulley box" : "far box"},${x},${sign * (x > 40 ? 2 * (x - 63) : 1)}`,
        ),
      );
    const given = { limit, readingUncertainty };
    const [heights, depthsRead] = [
      boxAlignment(read("height", 1), given),
      boxAlignment(read("depth", -1), given),
    ];
    expect(heights.boxes).toEqual(depthsRead.boxes);
    expect(heights.boxes[1]!.shim!.under.in("inch")).toBe(60);
    expect(() => boxAlignment(read("height", 1), at)).toThrow("an indicator has no sag; leave the wire out");
    const both = tableOf("box [text],station [in],depth [thou],height [thou]", "a,1,5,5");
    expect(() => boxAlignment(both, given)).toThrow(
      "depth (below a wire or straightedge) or height (indicator), got both",
    );
  });
  it("refuses one box, and a station beyond the wire", () => {
    const one = tableOf("box [text],station [in],depth [thou]", "a,1,5", "a,2,5", "a,3,5");
    expect(() => boxAlignment(one, at)).toThrow("at least two boxes are needed, got 1");
    const beyond = tableOf("box [text],station [in],depth [thou]", "a,90,5");
    expect(() => boxAlignment(beyond, at)).toThrow("stations must lie on the wire of 80 in, got 90 in");
  });
});

describe("stretchedWire(given)", () => {
  it("is none where nothing is given, and the wire where all is", () => {
    const none = { weight: undefined, tension: undefined, length: undefined };
    expect(stretchedWire(none)).toBeUndefined();
    const all = {
      weight: quantityFromSi("stiffness or line load", 0.01),
      tension: newton(100),
      length: inch(80),
    };
    expect(stretchedWire(all)).toEqual(all);
  });
  it("refuses a part, and names what is missing", () => {
    expect(() => stretchedWire({ weight: undefined, tension: newton(100), length: undefined })).toThrow(
      "weight and length must be given too",
    );
  });
});
