import { describe, expect, it } from "vitest";
import { thou } from "../../kernel-helpers/quantity/index.js";
import {
  canSettle,
  type Instrument,
  instrumentFrom,
  type RepeatabilityStudy,
  readTable,
  repeatabilityStudy,
  type SettleQuestion,
} from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";
import { lengthTable } from "../support/length-table.js";
import { seededNoise } from "../support/seeded-noise.js";

const rounding = { rel: 1e-9, because: "rounding only" };
const instrument = (calibration: string | undefined, repeatability = "0.1 thou"): Instrument =>
  instrumentFrom("mic", {
    title: "micrometer",
    resolution: "0.001 thou",
    repeatability,
    ...(calibration === undefined ? {} : { calibration }),
  });

describe("canSettle(instrument, question)", () => {
  const mic = instrument("0.1 thou");
  it("has its guard band from reading and calibration, k = 2, and averages the reading alone", () => {
    const one = canSettle(mic, { margin: thou(1) });
    expectClose(one.guardBand.in("thou"), 2 * Math.hypot(0.1, 0.1), {
      rel: 1e-4,
      because: "a resolution of 0.001 thou",
    });
    const four = canSettle(mic, { margin: thou(1), readings: 4 });
    expectClose(four.guardBand.in("thou"), 2 * Math.hypot(0.05, 0.1), {
      rel: 1e-4,
      because: "a resolution of 0.001 thou",
    });
  });
  it("turns from no to cannot tell at the guard band, and to yes where 95 of 100 readings clear it", () => {
    const u = canSettle(mic, { margin: thou(1) }).standardUncertainty.in("thou");
    const at = (inU: number): string => canSettle(mic, { margin: thou(inU * u) }).outcome;
    expect([1.99, 2.01, 3.64, 3.65].map(at)).toEqual(["no", "cannot tell yet", "cannot tell yet", "yes"]);
  });
  it("states the chance of a clear reading, as a simulation of 4 000 shows", () => {
    const { normal } = seededNoise(91);
    const verdict = canSettle(mic, { margin: thou(0.35) });
    const u = verdict.standardUncertainty.in("thou");
    let clear = 0;
    for (let i = 0; i < 4000; i++) if (0.35 + u * normal() > verdict.guardBand.in("thou")) clear += 1;
    expectClose(verdict.clear!, clear / 4000, {
      abs: 0.025,
      because: "3 standard deviations of 4 000 draws",
    });
  });
  it("judges a tolerance by the test uncertainty ratio: 4 is enough, below 1 nothing is left", () => {
    const U = canSettle(mic, { margin: thou(1) }).guardBand.in("thou");
    const at = (ratio: number): ReturnType<typeof canSettle> =>
      canSettle(mic, { tolerance: thou(2 * ratio * U) });
    expect([0.99, 1.01, 3.99, 4.01].map((r) => at(r).outcome)).toEqual([
      "no",
      "cannot tell yet",
      "cannot tell yet",
      "yes",
    ]);
    expectClose(at(2.5).ratio, 2.5, rounding);
    expect(at(2.5).because).toMatch(/test uncertainty ratio 2\.5, where 4 is taken as enough/);
  });
  it("tells how many readings would be enough: that many are, one less is not", () => {
    const margin = thou(0.45);
    const one = canSettle(mic, { margin });
    const n = one.readingsNeeded!;
    expect(one.outcome).not.toBe("yes");
    expect(one.because).toContain(`The mean of ${n} independent readings would be enough.`);
    expect(canSettle(mic, { margin, readings: n }).outcome).toBe("yes");
    expect(canSettle(mic, { margin, readings: n - 1 }).outcome).not.toBe("yes");
  });
  it("says that readings do not help where the setting counts most", () => {
    const verdict = canSettle(instrument("1 thou"), { margin: thou(2) });
    expect(verdict.readingsNeeded).toBeUndefined();
    expect(verdict.because).toMatch(/More readings do not help: the setting counts most/);
  });
  it("leaves the calibration out of a difference, and counts two readings for it", () => {
    const verdict = canSettle(instrument("1 thou"), { margin: thou(1), difference: true });
    expectClose(verdict.standardUncertainty.in("thou"), 0.1 * Math.SQRT2, {
      rel: 1e-4,
      because: "a resolution of 0.001 thou",
    });
    expect(verdict.outcome).toBe("yes");
  });
  it("does not say yes of a size with an instrument of unknown calibration", () => {
    const verdict = canSettle(instrument(undefined), { margin: thou(5) });
    expect(verdict.outcome).toBe("cannot tell yet");
    expect(verdict.because).toMatch(/State its calibration first/);
    expect(canSettle(instrument(undefined), { margin: thou(5), difference: true }).outcome).toBe("yes");
  });
  describe("{ study }", () => {
    const studied = (values: readonly number[], step = "0.001 thou", id = "mic"): RepeatabilityStudy => {
      const bytes = new TextEncoder().encode(
        `# instrument reading: ${id}\nreading [thou]\n${values.join("\n")}`,
      );
      const of = instrumentFrom(id, { title: `the ${id}`, resolution: step, repeatability: "0.5 thou" });
      return repeatabilityStudy(
        readTable(bytes, { name: "repeat", file: "tables/repeat.csv", instruments: { [id]: of } }),
      );
    };
    const five = [0.1, 0.3, 0.2, 0.4, 0.2];
    it("has the k of GUM table G.2 (95.45 %) for its degrees of freedom, where the calibration adds nothing", () => {
      // JCGM 100:2008, table G.2, column 95.45 %: ν = 4, 9
      for (const [n, k] of [
        [5, 2.87],
        [10, 2.32],
      ] as const) {
        const values = Array.from({ length: n }, (_, i) => (i % 2) / 10);
        const verdict = canSettle(instrument("0 thou"), { margin: thou(1), study: studied(values) });
        expect(verdict.from).toBe("study");
        expectClose(verdict.coverageFactor, k, { abs: 0.005, because: "printed to two decimals" });
        expectClose(verdict.degreesOfFreedom, n - 1, rounding);
      }
    });
    it("reckons with the scatter studied in place of that stated, and says which", () => {
      const verdict = canSettle(mic, { margin: thou(1), study: studied(five) });
      expectClose(verdict.readingUncertainty.in("thou"), 0.1140175, {
        rel: 1e-4,
        because: "s by hand; a resolution of 0.001 thou",
      });
      expectClose(verdict.standardUncertainty.in("thou"), Math.hypot(0.1140175, 0.1), {
        rel: 1e-4,
        because: "the same",
      });
      expect(verdict.because).toMatch(
        /repeatability found by 5 readings of one place in tables\/repeat\.csv\./,
      );
      expect(canSettle(mic, { margin: thou(1) }).because).toMatch(
        /repeatability stated in rebuild\.json, which no study has tried/,
      );
    });
    it("lets a size at its very limit clear the guard band once in 44, however few readings the study had", () => {
      const { normal } = seededNoise(17);
      let clear = 0;
      for (let i = 0; i < 3000; i++) {
        const study = studied(
          Array.from({ length: 4 }, () => 0.1 * normal()),
          "0.0001 thou",
        );
        const { guardBand } = canSettle(instrument("0 thou"), { margin: thou(1), study });
        if (0.1 * normal() > guardBand.in("thou")) clear += 1;
      }
      expectClose(clear / 3000, 0.02275, { abs: 0.0082, because: "3 standard deviations of 3 000 draws" });
    });
    it("leaves a study of another instrument, or one hidden by the step, aside and says so", () => {
      const other = canSettle(mic, { margin: thou(1), study: studied(five, "0.001 thou", "gauge") });
      expect(other.from).toBe("statement");
      expect(other.because).toMatch(
        /stated in rebuild\.json: the study in tables\/repeat\.csv is of the gauge\./,
      );
      expectClose(other.guardBand.si, canSettle(mic, { margin: thou(1) }).guardBand.si, rounding);
      const hidden = canSettle(mic, { margin: thou(1), study: studied([1, 1, 1, 1], "1 thou") });
      expect(hidden.from).toBe("statement");
      expect(hidden.because).toMatch(/the step read off hides how well the instrument repeats/);
    });
    it("says so where the study names no instrument", () => {
      const unnamed = repeatabilityStudy(
        lengthTable(
          "reading [thou]",
          five.map((v) => [v]),
        ),
      );
      expect(canSettle(mic, { margin: thou(1), study: unnamed }).because).toMatch(
        /names no instrument and is taken to be of this one/,
      );
    });
  });
  it("rejects a question without a size, with two, or with half a reading", () => {
    expect(() => canSettle(mic, {} as unknown as SettleQuestion)).toThrow(
      /must name a margin or a tolerance/,
    );
    const both = { margin: thou(1), tolerance: thou(1) } as SettleQuestion;
    expect(() => canSettle(mic, both)).toThrow(/and not both/);
    expect(() => canSettle(mic, { margin: thou(0) })).toThrow(
      /margin must be a length greater than 0, got 0 thou/,
    );
    expect(() => canSettle(mic, { margin: thou(1), readings: 1.5 })).toThrow(
      /readings must be a whole number of at least 1, got 1\.5/,
    );
  });
});
