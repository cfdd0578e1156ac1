import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonicalJson } from "../../kernel-helpers/record/canonical-json.js";

describe("canonicalJson(value)", () => {
  it("sorts keys at every depth, so that their order changes no byte", () => {
    const a = canonicalJson({ b: { d: 1, c: 2 }, a: [3, { f: 4, e: 5 }] });
    const b = canonicalJson({ a: [3, { e: 5, f: 4 }], b: { c: 2, d: 1 } });
    expect(a).toBe(b);
    expect(a).toBe('{\n  "a": [3, { "e": 5, "f": 4 }],\n  "b": { "c": 2, "d": 1 }\n}\n');
  });
  it("leaves out what is undefined and keeps null", () => {
    expect(canonicalJson({ a: undefined, b: null })).toBe('{\n  "b": null\n}\n');
  });
  it("breaks what is longer than a line, one entry a line", () => {
    const text = canonicalJson({ readings: Array.from({ length: 40 }, (_, i) => i / 7) });
    expect(text.split("\n").length).toBeGreaterThan(40);
  });
  it("gives JSON that reads back as the same value", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(JSON.parse(canonicalJson(value))).toEqual(JSON.parse(JSON.stringify(value)));
      }),
      { seed: 1, numRuns: 300 },
    );
  });
  it("refuses what JSON would turn into something else, naming its place", () => {
    expect(() => canonicalJson({ a: [1, Number.NaN] })).toThrow(/\.a\[1\] is NaN/);
    expect(() => canonicalJson({ f: () => 1 })).toThrow(/\.f is a function/);
  });
});
