import { describe, expect, it } from "vitest";
import { orderOfRun } from "../../kernel-helpers/record/order-of-run.js";
import { sheetLinks } from "../../kernel-helpers/record/sheet-links.js";

describe("sheetLinks(sources)", () => {
  it("finds what a sheet publishes, recalls, decides and takes over, in whatever spelling", () => {
    const links = sheetLinks([
      'const wear = rebuild.recall("wear", "wear bands");',
      "const t = rebuild\n  .recall( 'taper', 'taper' )",
      'rebuild.publish({ wear: wear, identity, "hub fit": { a: 1, b: [2, { c: 3 }] }, last: f("}", 2) });',
      'rebuild.decide({ question: "a, name: \\"no\\"", name: "shaft", options })',
      'rebuild.decision("bearing").choice',
    ]);
    expect(links).toEqual({
      publishes: ["wear", "identity", "hub fit", "last"],
      decides: ["shaft"],
      recalls: ["wear", "taper"],
      takesDecisions: ["bearing"],
      takesAll: false,
    });
  });
  it("looks for nothing in comments, nor for names that are only computed", () => {
    const links = sheetLinks([
      '// rebuild.recall("old", "taper")\n/* publish({ gone: 1 }) */ rebuild.recall(name, "taper")',
      "rebuild.publish(results)",
      'const address = "https://example.org"; rebuild.publish({ kept: address })',
    ]);
    expect(links.recalls).toEqual([]);
    expect(links.publishes).toEqual(["kept"]);
  });
  it("finds a handover", () => {
    expect(sheetLinks(["rebuild.handover()"]).takesAll).toBe(true);
  });
});

describe("orderOfRun(sheets)", () => {
  const sheet = (name: string, ...code: string[]) => ({ name, links: sheetLinks(code) });
  it("is that of the names where nothing is taken over", () => {
    expect(orderOfRun([sheet("02"), sheet("01"), sheet("10")]).order).toEqual(["01", "02", "10"]);
  });
  it("sets a sheet behind those it takes results and decisions from, whatever the names", () => {
    const sheets = [
      sheet("01", 'rebuild.recall("wear", "wear bands")'),
      sheet("02", 'rebuild.decision("shaft")'),
      sheet("03", 'rebuild.decide({ name: "shaft" })', 'rebuild.recall("wear", "wear bands")'),
      sheet("04", "rebuild.publish({ wear })"),
    ];
    expect(orderOfRun(sheets)).toEqual({ order: ["04", "01", "03", "02"], missing: [] });
  });
  it("sets the handover last", () => {
    expect(orderOfRun([sheet("00", "rebuild.handover()"), sheet("12")]).order).toEqual(["12", "00"]);
  });
  it("names what no sheet hands on", () => {
    expect(orderOfRun([sheet("05", 'rebuild.recall("wear", "wear bands")')]).missing).toEqual([
      "05 takes over the result “wear”, which no sheet here hands on.",
    ]);
  });
  it("explains a ring", () => {
    const sheets = [
      sheet("04", "rebuild.publish({ wear })", 'rebuild.recall("taper", "taper")'),
      sheet("05", "rebuild.publish({ taper })", 'rebuild.recall("wear", "wear bands")'),
    ];
    expect(() => orderOfRun(sheets)).toThrow(
      /in a ring.*04 takes over the result “taper” from 05, and 05 takes over the result “wear” from 04/,
    );
  });
});
