import { describe, expect, it } from "vitest";
import { cellNames } from "../../../kernel-helpers/notebook/audit/cell-names.js";
import { cellsBehind, leadingUp } from "../../../kernel-helpers/notebook/audit/cells-behind.js";

const cells = (...sources: string[]): { id: string; source: string }[] =>
  sources.map((source, i) => ({ id: `c${i}`, source }));
const ids = (kept: readonly { readonly id: string }[]): string => kept.map(({ id }) => id).join(" ");
const asks = (what: string) => (source: string) => source.includes(what);

describe("cellNames(source)", () => {
  it.each([
    ["const a = b;", "a"],
    ["const { a, b: c, ...d } = e, [f] = g;", "a c d f"],
    ['import x, { a as b } from "m"; import * as n from "k";', "b n x"],
    [
      "function f(a: number) { return a; } class K {} enum E { one } interface I { part: number } type T = I;",
      "E I K T f",
    ],
    ["a = 1; b.c = 2; d[0] += 3; e++; --f.g; delete h.i; [j, k.l] = m;", "a b d e f h j k"],
    ["a.push(b); Object.assign(c, d); e.list.sort();", "Object a b c d e"],
    ["a!.b = 1; (c as any).d = 2;", "a any c"],
  ])("of %s finds what it makes", (source, made) => {
    const { makes, reachesFurther } = cellNames(source);
    for (const name of made.split(" ").filter((one) => one !== "any")) expect(makes).toContain(name);
    expect(reachesFurther).toBe(false);
  });

  it("counts no part of another thing among the names it mentions", () => {
    const { mentions } = cellNames("const { b: c } = a.d; const e = { f: 1, g }; a.h(c);");
    expect([...mentions].sort()).toEqual(["a", "c", "e", "g"]);
  });

  it.each([
    "globalThis.a = 1",
    "process.chdir('x')",
    'import "./side"',
    'const m = await import("./side")',
    "require('x')",
    "/** @module half */\nexport const a = 1;",
  ])("knows that %s reaches further than names tell", (source) => {
    expect(cellNames(source).reachesFurther).toBe(true);
  });
});

describe("leadingUp(cells, isWanted)", () => {
  it("keeps the cells that make what is used, through all steps, and leaves out those that only look", () => {
    const sheet = cells(
      "const a = 1;",
      "const b = a + 1;\nb",
      "const look = b * 2;\nlook",
      "const c = b;",
      "decide(c)",
      "const after = c;",
    );
    expect(ids(leadingUp(sheet, asks("decide")))).toBe("c0 c1 c3 c4");
  });

  it("keeps a cell that alters a part of what is used", () => {
    const sheet = cells(
      "const limits = { low: 1 };",
      "limits.low = 2;",
      "const x = limits;",
      "decide(limits)",
    );
    expect(ids(leadingUp(sheet, asks("decide")))).toBe("c0 c1 c3");
  });

  it("keeps a name declared anew as often as it is declared", () => {
    expect(ids(leadingUp(cells("const a = 1;", "const a = 2;", "decide(a)"), asks("decide")))).toBe(
      "c0 c1 c2",
    );
  });
});

describe("cellsBehind(sheet, code)", () => {
  const survey = cells(
    "const t = table();",
    "const wear = t;",
    "const seen = t;\nseen",
    "r.publish({ wear: wear })",
  );
  const taper = cells(
    'const wear = r.recall("wear", "x");\nwear',
    "const taper = table2();",
    "r.publish({ taper })",
  );
  const hub = cells('const taper = r.recall("taper", "x");', "r.note({})", "r.decide({ ...made, taper })");
  const code = new Map([
    ["04", survey],
    ["05", taper],
    ["06", hub],
    ["07", cells('r.decide({ name: "b", shape: r.recall("wear", "x") })')],
    ["08", cells('const d = r.decision("b");', "r.decide({ d })")],
    ["09", cells('const made = { name: "spread" };', "const other = 1;", "r.decide({ ...made, other: 2 })")],
    ["10", cells('const d = r.decision("spread");', "r.decide({ d })")],
    ["12", cells("const all = r.handover();", "r.decide({ all })")],
  ]);
  const kept = (sheet: string): string =>
    [...(cellsBehind(sheet, code) ?? [])].map(([name, some]) => `${name}: ${ids(some)}`).join(", ");

  it("leaves out a sheet whose results only a cell that looks takes over", () => {
    expect(kept("06")).toBe("05: c1 c2, 06: c0 c2");
  });
  it("takes the sheets behind results and decisions, and nothing of the others", () => {
    expect(kept("07")).toBe("04: c0 c1 c3, 07: c0");
    expect(kept("08")).toBe("04: c0 c1 c3, 07: c0, 08: c0 c1");
  });
  it("finds a decision whose name an earlier cell wrote into an object", () => {
    expect(kept("10")).toBe("09: c0 c2, 10: c0 c1");
  });
  it("gives up where a sheet takes over whatever all others hand on", () => {
    expect(cellsBehind("12", code)).toBeUndefined();
  });
});
