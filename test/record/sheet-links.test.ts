import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readNotebook } from "../../kernel-helpers/notebook/index.js";
import { orderOfRun } from "../../kernel-helpers/record/order-of-run.js";
import { packageRoot } from "../../kernel-helpers/record/package-root.js";
import { codeSources } from "../../kernel-helpers/record/sheet-code.js";
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
  it("finds what an object spread or handed over whole names, where a cell before made it", () => {
    const links = sheetLinks([
      'const fixed = { name: "hub removal", options };\nconst $made: Made = { taper, ...more };',
      'const chosen = { ...fixed, choice: "press" };',
      'rebuild.decide({ ...chosen, reason: "it holds" })',
      "rebuild.publish({ ...$made, wear: f({ ...chosen }) })",
      "const whole = { fit }; rebuild.publish(whole)",
    ]);
    expect(links.decides).toEqual(["hub removal"]);
    expect(links.publishes).toEqual(["taper", "wear", "fit"]);
  });
  it("takes of two objects by one name the one that stands before, and none that is computed", () => {
    const links = sheetLinks([
      'const chosen = { name: "first" };\nrebuild.decide({ ...chosen });',
      'let chosen = { name: "second" }; rebuild.decide(chosen)',
      "const chosen = weigh({ name: 'third' }); rebuild.decide({ ...chosen })",
      'rebuild.decide({ ...later }); const later = { name: "fourth" };',
      "const round = { ...round }; rebuild.publish({ ...round })",
    ]);
    expect(links.decides).toEqual(["first", "second"]);
    expect(links.publishes).toEqual([]);
  });
  it("finds the decision of the worksheet on hub removal, which spreads what it settled before", () => {
    const { cells } = readNotebook(join(packageRoot(), "worksheets", "03-hub-removal.ipynb"));
    expect(sheetLinks(codeSources(cells)).decides).toEqual(["hub removal"]);
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
