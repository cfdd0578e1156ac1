import { describe, expect, it } from "vitest";
import { coastDown } from "../../../kernel-helpers/bearing/index.js";
import { measured, quantity, rpm } from "../../../kernel-helpers/quantity/index.js";
import { readTable, type Table } from "../../../kernel-helpers/survey/index.js";
import { expectClose } from "../../support/expect-close.js";

const tableOf = (...rows: readonly string[]): Table =>
  readTable(new TextEncoder().encode(["time [s],speed [rpm]", ...rows].join("\n")), {
    name: "coast-down",
    file: "coast-down.csv",
  });
const options = { inertia: quantity(10, "kilogramSquareMetre"), speedUncertainty: rpm(0.5) };
const seconds = Array.from({ length: 13 }, (_, i) => 10 * i);
const perRpm = Math.PI / 30;

describe("coastDown(table, options)", () => {
  it("finds a steady drag: J times the deceleration, alike at all speeds", () => {
    const found = coastDown(tableOf(...seconds.map((t) => `${t},${110 - 0.5 * t}`)), options);
    expect(found.drag).toBe("steady");
    const torque = 10 * 0.5 * perRpm;
    const exact = { rel: 1e-9, because: "a straight line" };
    expectClose(found.atFirst.torque.value.in("newtonMetre"), torque, exact);
    expectClose(found.atLast.torque.value.in("newtonMetre"), torque, exact);
    expectClose(found.atLast.speed.in("rpm"), 50, exact);
  });
  it("finds a drag that falls with the speed: T = a + bω, by the closed form of its coast-down", () => {
    // J dω/dt = −(a + bω): ω = (ω₀ + a/b)·e^(−bt/J) − a/b.
    const [a, b, w0] = [0.4, 0.12, 110 * perRpm];
    const w = (t: number): number => (w0 + a / b) * Math.exp((-b * t) / 10) - a / b;
    const found = coastDown(tableOf(...seconds.map((t) => `${t},${w(t) / perRpm}`)), options);
    expect(found.drag).toBe("falls with speed");
    const fitted = { rel: 1e-5, because: "fitted minimum and central differences" };
    expectClose(found.atFirst.torque.value.in("newtonMetre"), a + b * w0, fitted);
    expectClose(found.atLast.torque.value.in("newtonMetre"), a + b * w(120), fitted);
    expect(found.atFirst.torque.standardUncertainty.si).toBeGreaterThan(0);
    // The curve drawn is that of the closed form, from the first reading to the last.
    const { curve } = found;
    expect([curve[0]!.time, curve.at(-1)!.time]).toEqual([0, 120]);
    for (const { time, speed } of curve) expectClose(speed, w(time), fitted);
  });
  it("keeps the energy: what the rotor had is what friction took", () => {
    const found = coastDown(tableOf(...seconds.map((t) => `${t},${110 - 0.5 * t}`)), options);
    const [w1, w2] = [110 * perRpm, 50 * perRpm];
    const turned = ((w1 + w2) / 2) * 120;
    expectClose(found.atFirst.torque.value.si * turned, 0.5 * 10 * (w1 ** 2 - w2 ** 2), {
      rel: 1e-9,
      because: "work = loss of kinetic energy",
    });
  });
  it("counts the inertia's own uncertainty: a share of J is the same share of the torque", () => {
    const table = tableOf(...seconds.map((t) => `${t},${110 - 0.5 * t}`));
    const inertia = measured(options.inertia, quantity(0.5, "kilogramSquareMetre"));
    const [plain, found] = [options, { ...options, inertia }].map(
      (of) => coastDown(table, of).atFirst.torque,
    );
    const share = Math.sqrt(found!.standardUncertainty.si ** 2 - plain!.standardUncertainty.si ** 2);
    expectClose(share / found!.value.si, 0.05, { rel: 1e-9, because: "squares added" });
  });
  it("refuses too few readings, times out of order, a speed that grows, and no inertia", () => {
    expect(() => coastDown(tableOf("0,110", "10,100", "20,90"), options)).toThrow(/at least 4 readings/);
    expect(() => coastDown(tableOf("0,110", "10,100", "5,90", "20,80"), options)).toThrow(
      /line 4: times must grow/,
    );
    expect(() => coastDown(tableOf("0,110", "10,100", "15,120", "20,80"), options)).toThrow(
      /line 4: the speed grew/,
    );
    expect(() =>
      coastDown(tableOf("0,110", "10,100", "15,95", "20,90"), {
        ...options,
        inertia: quantity(0, "kilogramSquareMetre"),
      }),
    ).toThrow(/inertia/);
    expect(() =>
      coastDown(tableOf("0,110", "10,100", "15,95", "20,90"), { ...options, speedUncertainty: rpm(0) }),
    ).toThrow(/speedUncertainty/);
  });
});
