import { describe, expect, it } from "vitest";
import { degF, inch, lbf } from "../../kernel-helpers/quantity/index.js";
import { agrees, docExamples, faultOfExample } from "./doc-examples.js";

const comment = (...lines: string[]): string =>
  ["const before = 1;", "/**", ...lines.map((line) => ` * ${line}`), " */", "after();"].join("\n");

describe("docExamples(source)", () => {
  it("finds each example with its line and the value shown", () => {
    const found = docExamples(comment("What it does.", "@example half(2) // 1", "@example half(4) // 2"));
    expect(found).toEqual([
      { line: 4, setup: "", expression: "half(2)", shown: "1" },
      { line: 5, setup: "", expression: "half(4)", shown: "2" },
    ]);
  });
  it("reads one on a single line, several under one tag, and stops at the next tag", () => {
    expect(docExamples("/** Half. @example half(2) // 1 */")).toEqual([
      { line: 1, setup: "", expression: "half(2)", shown: "1" },
    ]);
    const found = docExamples(comment("@example half(2) // 1", "         half(4) // 2", "@source a // b"));
    expect(found.map((e) => [e.line, e.expression, e.shown])).toEqual([
      [3, "half(2)", "1"],
      [4, "half(4)", "2"],
    ]);
  });
  it("takes a value below its example, and lines without a value as preparation", () => {
    const found = docExamples(comment("@example const a = 2;", "half(a)", "// 1"));
    expect(found).toEqual([{ line: 5, setup: "const a = 2;", expression: "half(a)", shown: "1" }]);
  });
  it("is not misled by slashes inside a text", () => {
    expect(docExamples(comment('@example at("http://x") // "x"'))[0]).toMatchObject({
      expression: 'at("http://x")',
      shown: '"x"',
    });
  });
});

describe("faultOfExample(example, scope)", () => {
  const half = (x: number): number => {
    if (x < 0) throw new RangeError("half: x must not be negative");
    return x / 2;
  };
  const faultOf = (code: string): Promise<string | undefined> =>
    faultOfExample(docExamples(comment(`@example ${code}`))[0]!, { half, inch });

  it("is content with a true example", async () => {
    expect(await faultOf("half(5) // 2.5")).toBeUndefined();
    expect(await faultOf("half(-1) // throws RangeError: half")).toBeUndefined();
    expect(await faultOf("await Promise.resolve(half(4)) // 2")).toBeUndefined();
  });
  it("tells a wrong value, a missing one, an unknown name and a fault that does not come", async () => {
    expect(await faultOf("half(5) // 2.6")).toMatch(/half\(5\): it gives 2\.5, but 2\.6 is shown/);
    expect(await faultOf("half(5)")).toMatch(/no value is shown/);
    expect(await faultOf("third(5) // 2")).toMatch(/third is not defined/);
    expect(await faultOf("half(5) // throws RangeError")).toMatch(/said to throw, but gives 2\.5/);
    expect(await faultOf("half(-5) // -2.5")).toMatch(/it throws RangeError: half/);
  });
});

describe("agrees(actual, shown)", () => {
  it("takes numbers to the digits shown, whole ones exactly", () => {
    expect(agrees(2.4375, "2.44")).toBe(true);
    expect(agrees(2.4375, "2.43")).toBe(false);
    expect(agrees(11.7e-6, "1.17e-5")).toBe(true);
    expect(agrees(1.18e-5, "1.17e-5")).toBe(false);
    expect(agrees(-2.5, "-2.5")).toBe(true);
    expect(agrees(2.4, "2")).toBe(false);
    expect(agrees(0, "0.1")).toBe(false);
    expect(agrees(Number.NaN, "1.0")).toBe(false);
  });
  it("allows a remark behind the value, but no other value", () => {
    for (const shown of ["2.5, a plain number", "2.5 (half of 5)", "2.5; half", "2.5 = 5 / 2", "2.5: half"])
      expect([shown, agrees(2.5, shown)]).toEqual([shown, true]);
    expect(agrees(2.5, "2.5 mm")).toBe(false);
    expect(agrees(true, "true: compare two of a kind")).toBe(true);
    expect(agrees(false, "true: compare two of a kind")).toBe(false);
    expect(agrees("a", '"a", the first letter')).toBe(true);
  });
  it("takes quantities as they print, their number to the digits shown", () => {
    expect(agrees(inch(2.503), "2.503 in")).toBe(true);
    expect(agrees(inch(2.503), "2.50 in")).toBe(true);
    expect(agrees(inch(2.503), "2.503 mm")).toBe(false);
    expect(agrees(inch(2.503), "2.504 in")).toBe(false);
    expect(agrees(inch(2.503), "2.503 in²")).toBe(false);
    expect(agrees(inch(2.503), "2.503")).toBe(false);
    expect(agrees(lbf(50).times(inch(30)), '125 lbf·ft, a Quantity<"torque or energy">')).toBe(true);
    expect(agrees(degF(68), "68 °F")).toBe(true);
  });
  it("takes texts, lists and objects as written, an object by the fields it shows", () => {
    expect(agrees("2 7/16 in", '"2 7/16 in"')).toBe(true);
    expect(agrees("2 7/16 in", '"2 7/16"')).toBe(false);
    expect(agrees([1, 2.4375], "[1, 2.44]")).toBe(true);
    expect(agrees([1, 2, 3], "[1, 2]")).toBe(false);
    expect(agrees({ a: 1, b: { c: "x" } }, '{ b: { c: "x" } }')).toBe(true);
    expect(agrees({ a: 1 }, "{ a: 2 }")).toBe(false);
    expect(agrees(undefined, "undefined")).toBe(true);
    expect(agrees(0, "undefined")).toBe(false);
  });
});
