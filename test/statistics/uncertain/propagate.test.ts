import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inch, type Length, lbf, measured, mm, thou } from "../../../kernel-helpers/quantity/index.js";
import {
  coverageFactor,
  derivative,
  normalCdf,
  propagate,
  rectangularAbout,
  type Uncertain,
  uncertain,
} from "../../../kernel-helpers/statistics/index.js";
import { expectClose } from "../../support/expect-close.js";

const numerical = { rel: 1e-9, because: "numerical differentiation" };
const at = (x: number, width: number) => ({ where: "test", input: `x = ${x}`, width });

describe("derivative(f, x)", () => {
  it.each([
    ["exp", Math.exp, Math.exp],
    ["sin", Math.sin, Math.cos],
    ["a cube", (x: number) => x ** 3, (x: number) => 3 * x * x],
    ["a large constant and a small slope", (x: number) => 1e4 + x / 7, () => 1 / 7],
  ] as const)("of %s, whatever the width", (_, f, slope) => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        fc.constantFrom(0, 1e-6, 1e-3, 0.1),
        (x, width) => {
          expectClose(derivative(f, x, at(x, width)), slope(x), {
            rel: 1e-8,
            abs: 1e-8,
            because: "16 digits of f over steps of a thousandth; 1e4 + x/7 keeps 12 of them",
          });
        },
      ),
      { seed: 4, numRuns: 60 },
    );
  });

  it("of the normal distribution is its density, of Student's factor agrees with a fine difference", () => {
    expectClose(derivative(normalCdf, 1, at(1, 0.1)), Math.exp(-0.5) / Math.sqrt(2 * Math.PI), numerical);
    const h = 1e-5;
    const slope = (coverageFactor(0.95, 10 + h) - coverageFactor(0.95, 10 - h)) / (2 * h);
    expectClose(
      derivative((dof) => coverageFactor(0.95, dof), 10, at(10, 1)),
      slope,
      {
        rel: 1e-7,
        because: "a plain central difference",
      },
    );
  });

  it("comes nearer where the function is not defined so far out", () => {
    const f = (x: number): number => {
      if (x >= 1) throw new RangeError(`f: x must be below 1, got ${x}`);
      return Math.sqrt(1 - x);
    };
    expectClose(derivative(f, 0.99, at(0.99, 0.1)), -0.5 / Math.sqrt(0.01), {
      rel: 1e-6,
      because: "near the edge",
    });
    expect(() => derivative(f, 1, at(1, 0.1))).toThrow(
      /test: .* smooth about the estimate of x = 1, got: f: x must be/,
    );
  });

  it.each([
    ["a kink", (x: number) => Math.abs(x - 2)],
    ["a bend between two slopes", (x: number) => (x < 2 ? 3 * x : 5 * x - 4)],
    ["a jump", (x: number) => (x < 2 ? 0 : 1)],
  ])("refuses %s", (_, f) => {
    expect(() => derivative(f, 2, at(2, 0.01))).toThrow(/a kink or a jump there; simulate it instead/);
  });

  it("is 0 of a constant and of an even function at 0", () => {
    expect(derivative(() => 3, 5, at(5, 1))).toBe(0);
    expect(derivative((x) => x * x, 0, at(0, 1))).toBe(0);
  });
});

describe("propagate(f, inputs)", () => {
  const diameter = measured(mm(60), mm(0.01), 9);
  const length = measured(inch(10), thou(2));
  const load = measured(lbf(500), lbf(5));

  it("agrees with exact arithmetic on quantities, in value, uncertainty, degrees of freedom and sources", () => {
    const numericalOne = propagate((x) => x.load.over(x.diameter.times(x.length)), {
      diameter,
      length,
      load,
    });
    const exact = uncertain(load, "load").over(
      uncertain(diameter, "diameter").times(uncertain(length, "length")),
    );
    expect(numericalOne.dimension).toBe("pressure");
    expect(numericalOne.value.si).toBe(exact.value.si);
    expectClose(numericalOne.standardUncertainty.si, exact.standardUncertainty.si, numerical);
    expectClose(numericalOne.degreesOfFreedom, exact.degreesOfFreedom, numerical);
    expect(numericalOne.sources.map(({ source }) => source.name).sort()).toEqual([
      "diameter",
      "length",
      "load",
    ]);
  });

  it("counts correlation through the function: the same twice cancels exactly", () => {
    const d = uncertain(diameter, "d");
    const area = (x: { readonly d: Length }) => x.d.times(x.d).times(Math.PI / 4);
    expect(propagate(area, { d }).minus(propagate(area, { d })).standardUncertainty.si).toBe(0);
    expectClose(propagate(area, { d }).over(d.times(d)).standardUncertainty, 0, {
      abs: 1e-12,
      because: "π/4 does not depend on d; numerical differentiation leaves a trace",
    });
  });

  it("keeps exact derivatives of uncertain values that the function uses of its surroundings", () => {
    const modulus = uncertain(measured(200, 10), "modulus");
    const y = propagate((x) => modulus.times(x.strain ** 2), { strain: measured(3, 0.1) });
    expectClose(Number(y.standardUncertainty), Math.hypot(9 * 10, 200 * 6 * 0.1), numerical);
    expect(y.sources.find(({ source }) => source.name === "modulus")?.derivative).toBe(9);
  });

  it("takes distributions and exact values", () => {
    const y: Uncertain<"number"> = propagate((x) => x.a * x.b, {
      a: rectangularAbout(2, Math.sqrt(3)),
      b: 5,
    });
    expectClose(y.standardUncertainty, 5, numerical);
    expect(y.sources).toHaveLength(1);
  });

  it("an input of which the result does not depend leaves no trace", () => {
    expect(propagate((x) => x.a, { a: measured(1, 1), b: measured(1, 1) }).sources).toHaveLength(1);
  });

  it.each([
    ["a text", () => propagate((x) => x.a, { a: "2" as never }), /propagate: a must be .* got 2/],
    ["NaN", () => propagate((x) => x.a, { a: Number.NaN }), /propagate: a must be .* got NaN/],
    [
      "a result that is none",
      () => propagate(() => "x" as never, { a: measured(1, 1) }),
      /propagate: .* got x/,
    ],
    [
      "a result that is not finite",
      () => propagate((x) => Math.log(x.a - 1), { a: measured(1, 1) }),
      /got -Infinity/,
    ],
    [
      "a kink",
      () => propagate((x) => Math.max(x.a, 1), { a: measured(1, 0.1) }),
      /propagate: .* estimate of a, .*kink/,
    ],
  ])("rejects %s", (_, act, message) => {
    expect(act).toThrow(message);
  });
});
