import { describe, expect, it } from "vitest";
import { expectClose } from "./expect-close.js";

const because = "this tests the guard itself";

describe("expectClose(actual, expected, tolerance)", () => {
  it("accepts a value inside the relative bound", () => {
    expectClose(1.0009, 1, { rel: 1e-3, because });
  });
  it("rejects a value outside the relative bound, however small the numbers are", () => {
    expect(() => expectClose(1.01e-9, 1e-9, { rel: 1e-3, because })).toThrow(/differs by/);
  });
  it("rejects zero where a small number is expected", () => {
    expect(() => expectClose(0, 3.4e-52, { rel: 1e-3, because })).toThrow(/differs by/);
  });
  it("rejects NaN", () => {
    expect(() => expectClose(Number.NaN, 1, { rel: 1, because })).toThrow(/got NaN/);
  });
  it("demands a bound, an absolute one where 0 is expected, and a reason", () => {
    expect(() => expectClose(1, 1, { because })).toThrow(/give rel or abs/);
    expect(() => expectClose(0, 0, { rel: 1, because })).toThrow(/abs must be given/);
    expect(() => expectClose(1, 1, { rel: 1, because: " " })).toThrow(/say why/);
  });
});
