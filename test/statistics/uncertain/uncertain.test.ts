import { inspect } from "node:util";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  degree,
  inch,
  lbf,
  measured,
  metre,
  mm,
  mm2,
  radian,
  thou,
} from "../../../kernel-helpers/quantity/index.js";
import {
  derivative,
  exactly,
  isUncertain,
  type Uncertain,
  uncertain,
} from "../../../kernel-helpers/statistics/index.js";
import { expectClose } from "../../support/expect-close.js";

const length = (value: number, u: number, name = "x"): Uncertain<"length"> =>
  uncertain(measured(metre(value), metre(u)), name);
const plain = (value: number, u = 0.01, name = "x"): Uncertain<"number"> =>
  uncertain(measured(value, u), name);

const sizes = fc.double({ min: 1e-3, max: 1e3, noNaN: true });
const signed = fc.tuple(sizes, fc.boolean()).map(([size, negative]) => (negative ? -size : size));
const rounding = { rel: 1e-14, because: "a few roundings" };
const few = { seed: 3, numRuns: 60 } as const;

describe("uncertain values that share a source", () => {
  it("x.minus(x) and x.over(x) have no uncertainty and no source left", () => {
    fc.assert(
      fc.property(signed, sizes, (value, u) => {
        const x = length(value, u);
        expect(x.minus(x).standardUncertainty.si).toBe(0);
        expect(x.minus(x).sources).toEqual([]);
        expect(x.over(x).value).toBe(1);
        expect(x.over(x).standardUncertainty).toBe(0);
      }),
      few,
    );
  });

  it("a.plus(b).minus(a) has exactly the uncertainty of b", () => {
    fc.assert(
      fc.property(signed, sizes, signed, sizes, (a, ua, b, ub) => {
        const [x, y] = [length(a, ua, "a"), length(b, ub, "b")];
        const left = x.plus(y).minus(x);
        expect(left.standardUncertainty.si).toBe(ub);
        expect(left.sources.map(({ source }) => source.name)).toEqual(["b"]);
      }),
      few,
    );
  });

  it("x.plus(x) is twice as uncertain, two independent ones √2 times", () => {
    const x = length(1, 0.5);
    expect(x.plus(x).standardUncertainty.si).toBe(1);
    expectClose(x.plus(length(1, 0.5)).standardUncertainty.si, Math.SQRT1_2, {
      rel: 4e-16,
      because: "rounding of a square root",
    });
  });

  it("sin² + cos² and log(exp) keep no trace, or the whole of it", () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), (value) => {
        const x = plain(value, 0.01);
        const one = x.sin().power(2).plus(x.cos().power(2));
        expectClose(one.standardUncertainty, 0, { abs: 1e-17, because: "0.01 times a rounding of 1e-15" });
        expectClose(x.exp().log().standardUncertainty, 0.01, { rel: 1e-14, because: "roundings" });
        expectClose(x.tan().atan().standardUncertainty.si, 0.01, { rel: 1e-13, because: "roundings" });
      }),
      { ...few, examples: [[0.5]] },
    );
  });

  it("one name twice is still two sources", () => {
    expect(length(1, 1, "gauge").minus(length(1, 1, "gauge")).sources).toHaveLength(2);
  });
});

describe("the derivative of every operation is that of its values", () => {
  const other = plain(1.7, 0.02, "y");
  const operations: Readonly<
    Record<
      string,
      { of: (x: Uncertain<"number">) => Uncertain<"number"> | Uncertain<"angle">; from: number; to: number }
    >
  > = {
    plus: { of: (x) => x.plus(other).plus(2), from: -10, to: 10 },
    minus: { of: (x) => exactly(1).minus(x), from: -10, to: 10 },
    times: { of: (x) => x.times(x).times(other), from: -10, to: 10 },
    "over, below": { of: (x) => other.over(x), from: 0.1, to: 10 },
    "over, above": { of: (x) => x.over(other), from: -10, to: 10 },
    "over, both": { of: (x) => x.plus(1).over(x), from: 0.1, to: 10 },
    squareRoot: { of: (x) => x.squareRoot(), from: 0.1, to: 10 },
    absolute: { of: (x) => x.absolute(), from: -10, to: -0.1 },
    sin: { of: (x) => x.sin(), from: -4, to: 4 },
    cos: { of: (x) => x.cos(), from: -4, to: 4 },
    tan: { of: (x) => x.tan(), from: -1.4, to: 1.4 },
    asin: { of: (x) => x.asin(), from: -0.95, to: 0.95 },
    atan: { of: (x) => x.atan(), from: -10, to: 10 },
    exp: { of: (x) => x.exp(), from: -4, to: 4 },
    log: { of: (x) => x.log(), from: 0.1, to: 10 },
    "power, whole": { of: (x) => x.power(3), from: -5, to: -0.1 },
    "power, negative": { of: (x) => x.power(-2), from: 0.2, to: 5 },
    "power, broken": { of: (x) => x.power(0.37), from: 0.2, to: 5 },
    "power, uncertain": { of: (x) => other.power(x), from: -3, to: 3 },
    "power, both": { of: (x) => x.power(x), from: 0.2, to: 3 },
    "a chain": { of: (x) => x.times(x).plus(1).squareRoot().over(x.exp()).times(x.sin()), from: -2, to: 2 },
  };

  it.each(Object.entries(operations))("%s", (_, { of, from, to }) => {
    fc.assert(
      fc.property(fc.double({ min: from, max: to, noNaN: true }), (at) => {
        const x = plain(at, 1e-3);
        const analytic = of(x).sources.find(({ source }) => source.name === "x")?.derivative ?? 0;
        const numerical = derivative((v) => Number(of(plain(v)).value), at, {
          where: "test",
          input: "x",
          width: 1e-3,
        });
        expectClose(analytic, numerical, {
          rel: 1e-9,
          abs: 1e-10 * (1 + Math.abs(Number(of(x).value))),
          because: "numerical differentiation of values with 16 digits over steps of 1e-3",
        });
      }),
      few,
    );
  });

  it("also of lengths, areas and forces in SI", () => {
    const side = uncertain(measured(inch(2), thou(1)), "side");
    const force = uncertain(measured(lbf(100), lbf(1)), "force");
    const pressure = force.over(side.times(side));
    // p = F/s²: relative uncertainty √(0.01² + (2·0.0005)²).
    expectClose(pressure.standardUncertainty.in("psi") / 25, Math.hypot(0.01, 0.001), {
      rel: 1e-14,
      because: "roundings",
    });
    expect(pressure.dimension).toBe("pressure");
    expect(side.times(side).squareRoot().dimension).toBe("length");
    expectClose(side.times(side).squareRoot().standardUncertainty.in("thou"), 1, rounding);
  });
});

describe("mixing with exact values", () => {
  it("quantities and numbers add nothing to the uncertainty", () => {
    const x = uncertain(measured(mm(50), mm(0.01)), "rule");
    expect(x.plus(mm(5)).value.in("mm")).toBe(55);
    expectClose(x.times(3).standardUncertainty.in("mm"), 0.03, rounding);
    expect(x.over(mm(25)).value).toBe(2);
    expect(exactly(mm2(100)).over(x).dimension).toBe("length");
    expect(exactly(1).over(x).dimension).toBe("inverse length");
    expect(exactly(2).times(x).dimension).toBe("length");
    expect(exactly(mm(1)).standardUncertainty.si).toBe(0);
    expect(exactly(mm(1)).degreesOfFreedom).toBe(Number.POSITIVE_INFINITY);
  });

  it("shows itself in the unit its parts were written in", () => {
    expect(String(uncertain(measured(inch(2), thou(1)), "gauge").plus(mm(25.4)))).toBe(
      "3 in, standard uncertainty 0.001 in",
    );
    expect(inspect(uncertain(measured(mm(2), mm(1)), "rule").as("inch"))).toMatch(/ in, .* in$/);
  });

  it("takes an angle in degrees for a sine, and gives one for an arc tangent", () => {
    const angle = uncertain(measured(degree(30), degree(0.1)), "protractor");
    expectClose(angle.sin().value, 0.5, { rel: 1e-15, because: "roundings" });
    expect(angle.tan().atan().dimension).toBe("angle");
    expectClose(angle.tan().atan().standardUncertainty.in("degree"), 0.1, {
      rel: 1e-14,
      because: "roundings",
    });
  });
});

describe("toMeasured()", () => {
  it("gives back what went in", () => {
    const before = measured(inch(2.4375), inch(0.0002), 7);
    expect(uncertain(before, "micrometer").toMeasured()).toEqual(before);
  });

  it("carries effective degrees of freedom", () => {
    const [a, b] = [uncertain(measured(1, 3, 4), "a"), uncertain(measured(1, 4, 8), "b")];
    // 5⁴ / (3⁴/4 + 4⁴/8) = 625 / 52.25
    expectClose(a.plus(b).toMeasured().degreesOfFreedom, 625 / 52.25, { rel: 1e-14, because: "roundings" });
  });
});

describe("what an uncertain value rejects", () => {
  const x = uncertain(measured(mm(1), mm(0.1)), "x");
  const wrong = x as unknown as Uncertain<"number">;
  const zero = plain(0);
  it.each([
    ["another kind in a sum", () => wrong.plus(1), /plus: a length and a number do not go together/],
    [
      "a sine of a length",
      () => wrong.sin(),
      /sin: an angle or a number of radians was expected, got a length/,
    ],
    ["an exponent of a length", () => wrong.exp(), /exp: a plain number was expected, got a length/],
    ["division by 0", () => x.over(zero), /over: the divisor must not be 0, got 0/],
    ["a root of 0", () => zero.squareRoot(), /squareRoot: value must be more than 0, got 0/],
    ["the size of 0", () => zero.absolute(), /absolute: value must not be 0/],
    ["a logarithm of 0", () => zero.log(), /log: value must be more than 0, got 0/],
    ["an arc sine of 1", () => plain(1).asin(), /asin: value must lie between −1 and 1, got 1/],
    ["a broken power of less than 0", () => plain(-1).power(0.5), /power: value must be more than 0/],
    [
      "an uncertain power of less than 0",
      () => plain(-1).power(plain(2)),
      /power: value must be more than 0/,
    ],
    ["overflow", () => plain(1e3).exp(), /uncertain: the value must be a finite number, got Infinity/],
    ["NaN", () => plain(1).plus(Number.NaN), /plus: value must be a finite number, got NaN/],
    ["text", () => plain(1).plus("2" as unknown as number), /plus: an uncertain value, .* got 2/],
    [
      "a source without a name",
      () => uncertain(measured(1, 1), " "),
      /uncertain: the source must have a name/,
    ],
    [
      "what is not measured",
      () => uncertain(3 as never, "x"),
      /uncertain: a measured value was expected, got 3/,
    ],
    ["a unit for a number", () => plain(1).as("mm" as never), /as: a plain number has no unit/],
    ["use as a plain number", () => Math.sin(plain(1) as unknown as number), /uncertain: .* no plain number/],
    ["comparison", () => (x as unknown as number) < 2, /uncertain: .* no plain number/],
  ])("%s", (_, act, message) => {
    expect(act).toThrow(message);
  });

  it("knows itself from others", () => {
    expect([x, measured(1, 1), mm(1), 1, null].map(isUncertain)).toEqual([true, false, false, false, false]);
    expect(isUncertain(exactly(radian(1)))).toBe(true);
    expect(Object.isFrozen(x)).toBe(true);
  });
});
