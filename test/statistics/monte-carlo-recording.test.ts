import { describe, expect, test } from "vitest";
import {
  inch,
  isQuantity,
  type Length,
  lbf,
  measured,
  mm,
  thou,
} from "../../kernel-helpers/quantity/index.js";
import { monteCarlo } from "../../kernel-helpers/statistics/index.js";
import { recordingOf } from "../../kernel-helpers/statistics/monte-carlo-recording.js";

// A model that looks at a value is evaluated draw by draw: the reference for the same model done in columns.
const options = { seed: 3, draws: 10_000 };
const inputs = {
  a: measured(inch(10), inch(0.1)),
  b: measured(inch(3), inch(0.03)),
  c: measured(mm(50), mm(0.2)),
};
type Model = { readonly a: Length; readonly b: Length; readonly c: Length };

/** How often the model was called beside what it gives. */
function counted<R>(model: (x: Model) => R): { readonly f: (x: Model) => R; readonly calls: () => number } {
  let calls = 0;
  return {
    f: (x) => {
      calls += 1;
      return model(x);
    },
    calls: () => calls,
  };
}

describe("monteCarlo of quantities, their arithmetic done in columns", () => {
  const models = {
    "product and quotient": (x: Model) => x.a.times(x.b).over(x.c),
    "sum, difference, a constant quantity": (x: Model) => x.a.plus(x.b).minus(x.c).minus(thou(12)),
    "a constant factor and divisor": (x: Model) => x.a.times(3).over(7).plus(x.b),
    "a plain ratio": (x: Model) => x.a.minus(x.b).over(x.c),
    "root, absolute value, unit": (x: Model) =>
      x.a.times(x.a).plus(x.b.times(x.b)).squareRoot().minus(x.c.times(5)).absolute().as("thou"),
    "an input as it is": (x: Model) => x.b,
    "a torque, an input used twice": (x: Model) =>
      lbf(50).over(x.b.times(x.b)).times(x.a.times(x.b)).times(x.c),
  };
  test.each(Object.entries(models))("%s: the same to the last bit as draw by draw", (_, model) => {
    const drawByDraw = counted((x: Model) => {
      expect(x.a.si).toBeGreaterThan(0);
      return model(x);
    });
    const inColumns = monteCarlo(model as (x: Model) => Length, inputs, options);
    expect(inColumns).toEqual(monteCarlo(drawByDraw.f as (x: Model) => Length, inputs, options));
    expect(drawByDraw.calls()).toBeGreaterThan(options.draws);
  });

  const plain = {
    a: measured(inputs.a.value.si, inputs.a.standardUncertainty.si),
    b: measured(inputs.b.value.si, inputs.b.standardUncertainty.si),
    c: measured(inputs.c.value.si, inputs.c.standardUncertainty.si),
  };
  test("the same as the model in plain numbers of metres", () => {
    const numbers = monteCarlo((x) => (x.a * x.b) / x.c, plain, options);
    const lengths = monteCarlo((x) => x.a.times(x.b).over(x.c), inputs, options);
    expect(lengths.estimate.si).toBe(numbers.estimate);
    expect(lengths.standardUncertainty.si).toBe(numbers.standardUncertainty);
    expect(lengths.shortest.low.si).toBe(numbers.shortest.low);
  });

  test("a model of arithmetic alone is called for the first block of draws and no more", () => {
    const model = counted((x) => x.a.times(x.b).over(x.c));
    monteCarlo(model.f, inputs, options);
    expect(model.calls()).toBeLessThan(4200);
  });

  type Numbers = { readonly a: number; readonly b: number; readonly c: number };
  const deciding: Record<string, readonly [(x: Model) => Length, (x: Numbers) => number]> = {
    "by comparing": [(x) => (x.a > inch(10.35) ? x.b : x.a), (x) => (x.a > inch(10.35).si ? x.b : x.a)],
    "by the SI value, if it is a quantity": [
      (x) => (isQuantity(x.a) && x.a.si > 0.263 ? x.b : x.a),
      (x) => (x.a > 0.263 ? x.b : x.a),
    ],
    "by a ratio": [(x) => (x.a.over(x.b) > 3.5 ? x.b : x.a), (x) => (x.a / x.b > 3.5 ? x.b : x.a)],
    "and hides what went wrong": [
      (x) => {
        try {
          return x.a.in("inch") > 10.3 ? x.b : x.a;
        } catch {
          return x.a;
        }
      },
      (x) => (x.a / inch(1).si > 10.3 ? x.b : x.a),
    ],
  };
  test.each(Object.entries(deciding))(
    "a model that decides %s gives what it gives in plain numbers",
    (_, [model, numbers]) => {
      const counting = counted(model);
      const found = monteCarlo(counting.f, inputs, options);
      expect(counting.calls()).toBeGreaterThan(options.draws);
      const reference = monteCarlo(numbers, plain, options);
      expect(found.estimate.si).toBe(reference.estimate);
      expect(reference.estimate).toBeLessThan(inputs.a.value.si - 1e-5); // the other branch was met
    },
  );

  test("a draw that the arithmetic refuses is refused with the draw's own message", () => {
    const wide = { a: measured(inch(1), inch(0.27)), b: measured(inch(1), inch(0.01)) };
    expect(() => monteCarlo((x) => x.a.times(x.b).squareRoot(), wide, { seed: 3, draws: 100_000 })).toThrow(
      /squareRoot: value must not be negative, got −0\.\d+ in²/,
    );
  });
});

describe("recordingOf(f, names, centres)", () => {
  const centres = { a: inch(10), b: inch(3) };
  test("gives what the model measures, and null where a value is looked at or a plain number goes in", () => {
    expect(recordingOf((x: Model) => x.a.times(x.b), ["a", "b"], centres)?.dimension).toBe("area");
    expect(recordingOf((x: Model) => x.a.over(x.b), ["a", "b"], centres)?.dimension).toBe("number");
    expect(recordingOf((x: Model) => inch(x.a.in("inch")), ["a", "b"], centres)).toBeNull();
    expect(recordingOf((x: Model) => `${x.a}`, ["a", "b"], centres)).toBeNull();
    expect(recordingOf((x: Model) => x.a, ["a", "b"], { a: inch(10), b: 3 })).toBeNull();
  });

  test("says false where a divisor is 0 or a result is not finite", () => {
    const target = new Float64Array(2);
    const ratio = recordingOf((x: Model) => x.a.over(x.b), ["a", "b"], centres)!;
    expect(ratio.evaluate([Float64Array.of(1, 2), Float64Array.of(4, 5)], target)).toBe(true);
    expect([...target]).toEqual([1 / 4, 2 / 5]);
    expect(ratio.evaluate([Float64Array.of(1, 2), Float64Array.of(4, 0)], target)).toBe(false);
    expect(ratio.evaluate([Float64Array.of(0, 2), Float64Array.of(0, 1)], target)).toBe(false);
  });
});
