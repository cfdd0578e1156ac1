import { describe, expect, it } from "vitest";
import { expansionOf, materialExpansions } from "../../kernel-helpers/handbook/index.js";
import { expectClose } from "../support/expect-close.js";

describe("expansionOf(material)", () => {
  // Source: W. D. Callister, Materials Science and Engineering, table B.6: both columns are printed there.
  it.each([
    ["steel", 11.7, 6.5],
    ["grey cast iron", 11.4, 6.3],
    ["bronze", 18.0, 10.0],
    ["tin", 23.8, 13.2],
  ])("of %s is the printed value per °C and per °F", (material, perC, perF) => {
    expectClose(expansionOf(material).in("perC") * 1e6, perC, { rel: 1e-12, because: "the printed value" });
    expectClose(expansionOf(material).in("perF") * 1e6, perF, { abs: 0.051, because: "one printed decimal" });
  });
  it("tells tin Babbitt from lead Babbitt", () => {
    expect(expansionOf("Babbitt 2").in("perC")).toBe(21e-6);
    expect(expansionOf("lead Babbitt").in("perC")).toBe(26e-6);
  });
  it("does not mind capitals and spaces", () => {
    expect(expansionOf("  Grey  Cast Iron ").si).toBe(expansionOf("grey cast iron").si);
  });
  it("lists what it knows where it does not know", () => {
    expect(() => expansionOf("unobtainium")).toThrow(
      /expansionOf: material must be one of steel, .*Babbitt 7, got "unobtainium"/,
    );
    // "Babbitt" alone may be tin or lead: not guessed.
    expect(() => expansionOf("Babbitt")).toThrow(/got "Babbitt"/);
  });
});

describe("materialExpansions", () => {
  it("have every name once and a source each", () => {
    const names = materialExpansions.flatMap(({ material, also }) => [material, ...also]);
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
    for (const { source } of materialExpansions) expect(source).toMatch(/table B\.6|UNS/);
  });
});
