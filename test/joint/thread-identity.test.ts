import { describe, expect, it } from "vitest";
import { standardThreads, threadNamed } from "../../kernel-helpers/handbook/index.js";
import {
  identifyThread,
  type ThreadIdentity,
  type ThreadReadings,
  threadOf,
  threadReadings,
} from "../../kernel-helpers/joint/index.js";
import { degree, inch, measured, mm, thou } from "../../kernel-helpers/quantity/index.js";
import { instrumentFrom, readTable, type Table } from "../../kernel-helpers/survey/index.js";
import { expectClose } from "../support/expect-close.js";

const instruments = {
  calliper: instrumentFrom("calliper", {
    title: "vernier calliper",
    resolution: "1 thou",
    repeatability: "1 thou",
    calibration: "0.5 thou",
  }),
};

function table(body: string, remarks = "# instrument: calliper\n"): Table {
  const bytes = new TextEncoder().encode(remarks + body);
  return readTable(bytes, { name: "nut-thread", file: "tables/nut-thread.csv", instruments });
}

const header = "major diameter [in],length over threads [in],threads [-],flank angle [deg],remark\n";

/** Readings put together from numbers, for tests of the identity alone. */
function readings(major: number, pitch: number, angle?: number): ThreadReadings {
  return {
    kind: "thread readings",
    title: "t",
    file: "t.csv",
    majorDiameter: measured(inch(major), inch(0.0015)),
    pitch: measured(inch(pitch), inch(0.0002)),
    overThreads: 8,
    lengthUncertainty: inch(0.0016),
    flankAngle: angle === undefined ? undefined : measured(degree(angle), degree(1)),
    unitSystem: "inch",
    warnings: [],
  };
}

const names = (identity: ThreadIdentity): string[] =>
  identity.matches.filter(({ agrees }) => agrees).map(({ thread }) => thread.name);

describe("threadReadings(table)", () => {
  it("takes the largest diameter, the pitch from all lengths, and the mean angle", () => {
    const found = threadReadings(
      table(`${header}1.485,1.000,6,55,\n1.487,1.335,8,56,stoned\n1.481,-,-,-,rust\n`),
    );
    expect(found.majorDiameter.value.in("inch")).toBe(1.487);
    // By hand: (6·1 + 8·1.335)/(36 + 64) = 0.1668.
    expectClose(found.pitch.value.in("inch"), 0.1668, { rel: 1e-12, because: "a sum by hand" });
    expect(found.overThreads).toBe(8);
    expectClose(found.flankAngle!.value.in("degree"), 55.5, { rel: 1e-12, because: "a mean by hand" });
    // u of one length: √(1² + 1²/12 + 0.5²) = 1.1547 thou; the rows lie 0.8 and 0.6 thou off, scatter 1.0 thou.
    expectClose(found.lengthUncertainty.in("thou"), 1.1547, { rel: 1e-4, because: "a root by hand" });
    expectClose(found.pitch.standardUncertainty.in("thou"), 0.11547, { rel: 1e-4, because: "over √100" });
    expectClose(found.flankAngle!.standardUncertainty.in("degree"), Math.SQRT1_2, {
      rel: 1e-12,
      because: "1° over √2",
    });
    expect(found.warnings).toEqual([]);
  });
  it("knows the pitch better over more threads: u(p) = u(L)/N", () => {
    const over = (n: number): number =>
      threadReadings(table(`${header}1.487,${(n / 6).toFixed(4)},${n},-,\n`)).pitch.standardUncertainty.si;
    expectClose(over(2) / over(10), 5, { rel: 1e-12, because: "10/2" });
  });
  it("warns where the lengths scatter beyond their instrument: a stretched thread", () => {
    const found = threadReadings(table(`${header}1.487,1.000,6,-,\n1.487,1.010,6,-,\n`));
    expect(found.warnings.join()).toMatch(/stretched/);
  });
  it("may do without the flank angle", () => {
    const found = threadReadings(
      table("major diameter [in],length over threads [in],threads [-]\n1.487,1,6\n"),
    );
    expect(found.flankAngle).toBeUndefined();
  });
  it("names what is missing: an instrument, a reading, a whole count, a size above nothing", () => {
    expect(() => threadReadings(table(`${header}1.487,1,6,-,\n`, ""))).toThrow(
      /tables\/nut-thread.csv must say what "major diameter" was read with/,
    );
    expect(() => threadReadings(table(`${header}-,1,6,-,\n`))).toThrow(
      /"major diameter" of nut-thread must hold at least 1 reading, got 0/,
    );
    expect(() => threadReadings(table(`${header}1.487,1,6.5,-,\n`))).toThrow(
      /"threads" of nut-thread must be a whole number of 1 or more beside each length, got 6\.5/,
    );
    expect(() => threadReadings(table(`${header}1.487,1,-,-,\n`))).toThrow(/got NaN/);
    expect(() => threadReadings(table(`${header}1.487,-1,6,-,\n`))).toThrow(
      /must be more than 0, got -0\.02/,
    );
  });
});

describe("identifyThread(readings)", () => {
  it("finds every thread of the handbook again, unworn and worn, with those of its angle, pitch and size", () => {
    for (const thread of standardThreads) {
      for (const worn of [0, 0.1]) {
        const major = thread.majorDiameter.in("inch") - worn * thread.pitch.in("inch");
        const exact = {
          ...readings(major, thread.pitch.in("inch"), thread.flankAngle),
          pitch: measured(thread.pitch, thread.pitch.times(1e-5)),
        };
        const found = identifyThread(exact);
        expect(names(found)).toContain(thread.name);
        // The nearest needs no more wear than the true one.
        expect(found.matches[0]!.below.si).toBeLessThanOrEqual(
          thread.majorDiameter.si - inch(major).si + 1e-9,
        );
      }
    }
  });
  it("leaves 55 and 60 degrees open until the flank angle is read, and asks for it", () => {
    const open = identifyThread(readings(1.487, 1 / 6));
    expect(names(open).sort()).toEqual(["1 1/2 in BSW", "1 1/2-6 UNC"]);
    expect(open.next.map(({ reading }) => reading)).toEqual(["flank angle"]);
    expect(open.next[0]!.between).toEqual(["1 1/2 in BSW", "1 1/2-6 UNC"]);
    expect(open.text).toMatch(/cannot tell them apart. Read next: flank angle/);
    expect(names(identifyThread(readings(1.487, 1 / 6, 55.5)))).toEqual(["1 1/2 in BSW"]);
    expect(names(identifyThread(readings(1.487, 1 / 6, 59.5)))).toEqual(["1 1/2-6 UNC"]);
    const doubtful = { ...readings(1.487, 1 / 6), flankAngle: measured(degree(57.5), degree(2)) };
    expect(identifyThread(doubtful).next[0]!.text).toMatch(/is not known well enough/);
  });
  it("asks for a longer length where pitches are too close, long enough to tell them apart", () => {
    // 12 and 13 threads to the inch at 1/2 in: BSW and UNC; 0.0064 in apart.
    const coarse: ThreadReadings = {
      ...readings(0.498, 1 / 12.5),
      pitch: measured(inch(1 / 12.5), inch(0.004)),
      overThreads: 2,
      lengthUncertainty: inch(0.008),
    };
    const open = identifyThread(coarse);
    const question = open.next.find(({ reading }) => reading === "pitch over a longer length")!;
    const threads = Number(/over (\d+) threads/.exec(question.text)![1]);
    expect(threads).toBeGreaterThan(2);
    const gaps = open.matches
      .filter(({ agrees }) => agrees)
      .map(({ thread }) => thread.pitch.si)
      .sort((a, b) => a - b)
      .flatMap((p, i, all) => (i > 0 && p - all[i - 1]! > 1e-9 ? [p - all[i - 1]!] : []));
    expect(threads * Math.min(...gaps)).toBeGreaterThanOrEqual(2 * 1.95 * coarse.lengthUncertainty.si);
  });
  it("asks for an unworn crest where threads differ in size alone", () => {
    const found = identifyThread(readings(1.55, 1 / 12, 60), { wearAllowed: inch(0.25) });
    const question = found.next.find(({ reading }) => reading === "major diameter of an unworn crest")!;
    expect(question.between.length).toBeGreaterThan(1);
    expect(question.text).toMatch(/differ only in size/);
  });
  it("never takes a worn thread for a smaller one than its crests allow", () => {
    const found = identifyThread(readings(1.51, 1 / 6));
    expect(names(found)).toEqual([]);
    expect(found.text).toMatch(/^The readings allow none of the \d+ standard threads/);
    expect(found.text).toMatch(/off in diameter/);
  });
  it("says how far below its size the crests lie", () => {
    const found = identifyThread(readings(1.487, 1 / 6, 55));
    expect(found.text).toMatch(/crests lie 13\.0 thou below its size, of 33\.3 thou allowed/);
  });
  it("reads metric threads in micrometres", () => {
    const found = identifyThread({
      ...readings(1, 1, 60),
      majorDiameter: measured(mm(35.72), mm(0.03)),
      pitch: measured(mm(3.002), mm(0.004)),
      unitSystem: "metric",
    });
    expect(names(found)).toEqual(["M36 × 3"]);
    expect(found.text).toMatch(/280 µm below its size, of 600 µm allowed/);
  });
  it("is frozen, and does not depend on the order of the candidates", () => {
    const one = identifyThread(readings(1.487, 1 / 6));
    const other = identifyThread(readings(1.487, 1 / 6), { candidates: [...standardThreads].reverse() });
    expect(Object.isFrozen(one)).toBe(true);
    expect(names(one).sort()).toEqual(names(other).sort());
  });
  it("rejects no candidates and a negative allowance", () => {
    expect(() => identifyThread(readings(1, 0.1), { candidates: [] })).toThrow(/at least 1 candidate/);
    expect(() => identifyThread(readings(1, 0.1), { wearAllowed: thou(-1) })).toThrow(
      /allowance for wear must be 0 or more, got -?−?1 thou/,
    );
  });
});

describe("threadOf(identity)", () => {
  const open = identifyThread(readings(1.487, 1 / 6));
  it("gives the one that agrees", () => {
    expect(threadOf(identifyThread(readings(1.487, 1 / 6, 55)))).toBe(threadNamed("1 1/2 in BSW"));
  });
  it("stops where several agree, saying what to read, unless one is named", () => {
    expect(() => threadOf(open)).toThrow(
      /threadOf: the readings allow .* and .*; The flank angle has not been read/,
    );
    expect(threadOf(open, { as: "1 1/2-6 UNC" }).name).toBe("1 1/2-6 UNC");
    expect(() => threadOf(open, { as: "1 in BSW" })).toThrow(/as must be one of .*, got "1 in BSW"/);
  });
  it("stops where none agrees", () => {
    expect(() => threadOf(identifyThread(readings(1.51, 1 / 6)))).toThrow(/no standard thread agrees/);
  });
});
