import { describe, expect, it } from "vitest";
import { orderOfParts, type PartsLedger, partsLedger } from "../../kernel-helpers/intake/index.js";
import { randomGenerator } from "../../kernel-helpers/statistics/index.js";
import { readTable } from "../../kernel-helpers/survey/index.js";

const header = "part [text],state [text],comes off after [text],waits for [text],marks [text],remark";

function ledger(...rows: string[]): PartsLedger {
  const bytes = new TextEncoder().encode([header, ...rows].join("\n"));
  return partsLedger(readTable(bytes, { name: "parts", file: "tables/parts.csv" }));
}

/** All orders of a list. */
function orders(names: readonly string[]): string[][] {
  if (names.length === 0) return [[]];
  return names.flatMap((first) =>
    orders(names.filter((name) => name !== first)).map((rest) => [first, ...rest]),
  );
}

describe("orderOfParts", () => {
  it("on 300 random small graphs gives an order exactly where one of all orders will do, and a true ring elsewhere", () => {
    const random = randomGenerator(20260526);
    const names = ["a", "b", "c", "d", "e"];
    let rings = 0;
    for (let round = 0; round < 300; round++) {
      const after = new Map(
        names.map((name) => [name, names.filter((other) => other !== name && random.uniform() < 0.22)]),
      );
      const keeps = (order: readonly string[]): boolean =>
        names.every((name) =>
          after.get(name)!.every((before) => order.indexOf(before) < order.indexOf(name)),
        );
      const { order, ring } = orderOfParts(names, (name) => after.get(name)!);
      const possible = orders(names).some(keeps);
      expect(ring.length === 0).toBe(possible);
      if (possible) {
        expect([...order].sort()).toEqual(names);
        expect(keeps(order)).toBe(true);
      } else {
        rings++;
        ring.forEach((name, i) => {
          expect(after.get(name)).toContain(ring[(i + 1) % ring.length]);
        });
      }
    }
    expect(rings).toBeGreaterThan(20);
    expect(rings).toBeLessThan(280);
  });
});

const pulley = [
  "belt,removed,-,-,hair side out,",
  "nut,in place,belt,-,-,left-hand",
  "pulley,in place,nut,-,-,",
  "key,in place,pulley,-,-,",
  "cap,removed,-,-,2 punch marks,",
  "shaft,in place,pulley;cap,-,-,",
  "box,in place,shaft,-,-,",
];

describe("partsLedger", () => {
  it("tells what comes off next, and what blocks the rest", () => {
    const found = ledger(...pulley);
    expect(found.removal).toEqual(["belt", "nut", "pulley", "key", "cap", "shaft", "box"]);
    expect(found.removeNext).toEqual(["nut"]);
    expect(found.blockedOff).toEqual([
      { part: "pulley", by: ["nut"] },
      { part: "key", by: ["pulley"] },
      { part: "shaft", by: ["pulley"] },
      { part: "box", by: ["shaft"] },
    ]);
    expect(found.counts).toEqual({
      "in place": 5,
      removed: 2,
      "out for work": 0,
      back: 0,
      ready: 0,
      refitted: 0,
    });
  });
  it("refits backwards: no part goes on before one that came off after it", () => {
    const found = ledger(...pulley);
    const at = (name: string): number => found.refitting.indexOf(name);
    for (const { part, comesOffAfter } of found.parts) {
      for (const before of comesOffAfter) expect(at(part)).toBeLessThan(at(before));
    }
  });
  it("offers for refitting what is ready and has all below it on", () => {
    const found = ledger(
      "nut,ready,-,-,m,",
      "pulley,ready,nut,-,m,",
      "shaft,ready,pulley,box,m,",
      "box,out for work,shaft,-,m,",
    );
    expect(found.refitNext).toEqual([]);
    expect(found.blockedOn.find(({ part }) => part === "shaft")!.by).toEqual(["box"]);
    const poured = ledger(
      "nut,ready,-,-,m,",
      "pulley,ready,nut,-,m,",
      "shaft,ready,pulley,box,m,",
      "box,refitted,shaft,-,m,",
    );
    expect(poured.refitNext).toEqual(["shaft"]);
    expect(poured.blockedOn).toEqual([
      { part: "nut", by: ["pulley"] },
      { part: "pulley", by: ["shaft"] },
    ]);
  });
  it("doubts a part off out of order, one refitted too early, and one off without marks", () => {
    expect(ledger("nut,in place,-,-,-,", "pulley,removed,nut,-,m,").warnings.join()).toMatch(
      /line 3: pulley is removed while nut, which comes off before it, is still in place/,
    );
    expect(ledger("nut,refitted,-,-,m,", "pulley,ready,nut,-,m,").warnings.join()).toMatch(
      /line 2: nut is refitted before pulley, which goes on first and is ready/,
    );
    expect(ledger("nut,removed,-,-,-,").warnings.join()).toMatch(/line 2: nut is off without match marks/);
  });
  it("lets two parts wait until the other is ready: that is no ring", () => {
    const found = ledger("a,ready,-,b,m,", "b,back,-,a,m,");
    expect(found.blockedOn).toEqual([{ part: "a", by: ["b"] }]);
    expect(ledger("a,ready,-,b,m,", "b,ready,-,a,m,").refitNext).toEqual(["a", "b"]);
  });
  it("names file, row and column of what cannot be", () => {
    expect(() => ledger("nut,lost,-,-,-,")).toThrow(
      /parts.csv line 2, column "state \[text\]": found "lost"/,
    );
    expect(() => ledger("nut,in place,washer,-,-,")).toThrow(
      /line 2, column "comes off after \[text\]": found "washer"/,
    );
    expect(() => ledger("nut,in place,-,nut,-,")).toThrow(
      /line 2, column "waits for \[text\]": found the part itself/,
    );
    expect(() => ledger("nut,in place,-,-,-,", "nut,in place,-,-,-,")).toThrow(
      /line 3, column "part \[text\]".*second time/,
    );
    expect(() => ledger("a,in place,b,-,-,", "b,in place,c,-,-,", "c,in place,a,-,-,")).toThrow(
      /column "comes off after \[text\]": found a ring: a after b after c after a/,
    );
  });
});
