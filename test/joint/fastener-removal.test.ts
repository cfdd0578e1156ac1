import { describe, expect, it } from "vitest";
import { boltGrade, standardThreads, threadNamed } from "../../kernel-helpers/handbook/index.js";
import {
  type NutRemovalInput,
  nutRemoval,
  screwTorque,
  studYieldTorque,
} from "../../kernel-helpers/joint/index.js";
import { inch, lbf, mm, psi } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

const stud = {
  thread: threadNamed("1 1/2 in BSW"),
  yield: psi(30000),
  state: "rusted",
} satisfies NutRemovalInput;

describe("nutRemoval(input)", () => {
  it("reckons the ends of every range from the helpers of screw and stud", () => {
    const found = nutRemoval(stud);
    const area = stud.thread.stressArea.in("inch2");
    expectClose(found.preload.low.in("lbf"), 0.2 * 30000 * area, {
      rel: 1e-12,
      because: "a fifth of yield",
    });
    expectClose(found.preload.high.in("lbf"), 0.6 * 30000 * area, { rel: 1e-12, because: "three fifths" });
    const loosen = (preload: typeof found.preload.low, friction: number): number =>
      screwTorque({ thread: stud.thread, preload, friction }, "loosen").whole.si;
    expect(found.breakLoose.low.si).toBe(loosen(found.preload.low, 0.2));
    expect(found.breakLoose.high.si).toBe(loosen(found.preload.high, 0.5));
    const yields = studYieldTorque({
      rootDiameter: stud.thread.rootDiameter,
      yield: stud.yield,
      tension: found.preload.high,
    });
    expect(found.rootYields.si).toBe(yields.si);
    expectClose(found.stopLimit.si, 0.75 * yields.si, { rel: 1e-15, because: "the stop share" });
    expect(found.stopLimitIfSlack > found.stopLimit).toBe(true);
  });
  // Source: Shigley & Nisbett, 9th ed., example 8-3: grade 5, 3/4-16, 25 kip, K 0.2 asks for 3750 lbf·in.
  it("spans the tightening torque of the worked example when told its preload", () => {
    const thread = threadNamed("3/4-16 UNF");
    const found = nutRemoval({
      thread,
      yield: boltGrade("SAE 5", thread.majorDiameter).yield,
      state: "oiled",
      preload: { low: lbf(25000), high: lbf(25000) },
    });
    expect(found.tightening.low.in("lbfInch")).toBeLessThan(3750);
    expect(found.tightening.high.in("lbfInch")).toBeGreaterThan(3750);
    // Loosening the same nut at the friction of the example takes less than 3551 lbf·in, the figure for tightening.
    expect(found.breakLoose.low.in("lbfInch")).toBeLessThan(3551);
  });
  it("tells which comes first: loose, the stop limit, or not known", () => {
    const at = (state: string, low: number, high: number): string =>
      nutRemoval({ ...stud, state, preload: { low: lbf(low), high: lbf(high) } }).first;
    expect(at("anti-seize", 1000, 5000)).toBe("nut breaks loose");
    expect(at("seized", 20000, 34000)).toBe("stop limit of the stud");
    expect(nutRemoval(stud).first).toBe("not known which");
    expect(nutRemoval(stud).text).toMatch(/^Which comes first cannot be told: .* no further/);
  });
  it("takes more for seized than for rusted, for rusted than for oiled", () => {
    const high = (state: string): number => nutRemoval({ ...stud, state }).breakLoose.high.si;
    expect(high("seized")).toBe(2 * high("rusted"));
    expect(high("rusted")).toBeGreaterThan(high("oiled"));
    expect(high("oiled")).toBeGreaterThan(high("anti-seize"));
  });
  it("gives each wrench its pulls, and marks those on which one person passes the stop limit", () => {
    const found = nutRemoval({ ...stud, wrenches: [inch(48), inch(12)] });
    expect(found.wrenches.map(({ length }) => Math.round(length.in("inch")))).toEqual([12, 48]);
    for (const row of found.wrenches) {
      expectClose(row.pullAtStop.si * row.length.si, found.stopLimit.si, {
        rel: 1e-12,
        because: "the lever",
      });
      expectClose(row.pullHigh.si * row.length.si, found.breakLoose.high.si, {
        rel: 1e-12,
        because: "the lever",
      });
      expect(row.onePersonCanPassTheLimit).toBe(row.length > found.longestSafeWrench);
    }
    expectClose(found.longestSafeWrench.si * found.onePerson.strong.si, found.stopLimit.si, {
      rel: 1e-12,
      because: "one person's strong pull just reaches the limit there",
    });
  });
  it("keeps the preload it assumes below the yield of every thread's root", () => {
    for (const thread of standardThreads)
      expect(nutRemoval({ thread, yield: psi(30000), state: "rusted" }).stopLimit.si).toBeGreaterThan(0);
  });
  it("offers metric wrenches for a metric thread", () => {
    const found = nutRemoval({ ...stud, thread: threadNamed("M36x3") });
    expect(found.wrenches.map(({ length }) => Math.round(length.in("mm")))).toEqual([
      300, 450, 600, 900, 1200,
    ]);
    expect(nutRemoval({ ...stud, wrenches: [mm(500)] }).wrenches.length).toBe(1);
  });
  it("is frozen", () => {
    const found = nutRemoval(stud);
    expect(
      [found, found.preload, found.wrenches, found.wrenches[0], found.onePerson].every(Object.isFrozen),
    ).toBe(true);
  });
  it("names the field that is wrong", () => {
    expect(() => nutRemoval({ ...stud, state: "painted" })).toThrow(/surface must be one of .*got painted/);
    expect(() => nutRemoval({ ...stud, stopShare: 0 })).toThrow(/nutRemoval: stop share .* got 0/);
    expect(() => nutRemoval({ ...stud, stopShare: 1.1 })).toThrow(/got 1\.1/);
    expect(() => nutRemoval({ ...stud, yield: psi(0) })).toThrow(/yield strength must be more than 0/);
    expect(() => nutRemoval({ ...stud, yield: undefined })).toThrow(
      /got none: a brittle metal has no yield point/,
    );
    expect(() => nutRemoval({ ...stud, preload: { low: lbf(2), high: lbf(1) } })).toThrow(
      /preload must run from 0 or more upwards, got 2 lbf to 1 lbf/,
    );
    expect(() => nutRemoval({ ...stud, preload: { low: lbf(1), high: lbf(1e6) } })).toThrow(
      /below its yield strength/,
    );
    expect(() => nutRemoval({ ...stud, wrenches: [inch(0)] })).toThrow(/length must be more than 0/);
  });
});
