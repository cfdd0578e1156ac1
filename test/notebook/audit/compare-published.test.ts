import { describe, expect, it } from "vitest";
import { comparePublished } from "../../../kernel-helpers/notebook/audit/compare-published.js";
import { inch, type Length, measured, quantityFromSi, thou } from "../../../kernel-helpers/quantity/index.js";
import type { SheetRecord } from "../../../kernel-helpers/record/index.js";
import { storeValue } from "../../../kernel-helpers/record/stored-value.js";

const record = (published: Readonly<Record<string, unknown>>): SheetRecord => ({
  schema: 2,
  sheet: "04",
  inputs: {},
  recalled: {},
  versions: {},
  published: storeValue(published) as SheetRecord["published"],
  decisions: {},
  refused: {},
  notes: {},
  cautions: [],
  sources: [],
});
const told = (
  recorded: Readonly<Record<string, unknown>>,
  rerun: Readonly<Record<string, unknown>>,
): string[] => comparePublished(record(recorded), record(rerun)).map(({ name, text }) => `${name}: ${text}`);

describe("comparePublished(recorded, rerun)", () => {
  it("finds nothing where only the last bits or the unit of writing differ", () => {
    const written = inch(2.4375);
    const computed: Length = quantityFromSi("length", written.si);
    expect(
      told({ a: { size: written, ratio: 1 / 3 } }, { a: { size: computed, ratio: 1 / 3 + 1e-16 } }),
    ).toEqual([]);
  });
  it("tells the first place that differs, a value before what goes with it, and how many more", () => {
    const result = (size: number, n: number) => ({ bands: [{ count: n, depth: { value: inch(size) } }] });
    expect(told({ wear: result(2.4, 1) }, { wear: result(2.5, 2) })).toEqual([
      expect.stringMatching(
        /^wear: bands 1, depth, value: .+ on record, .+ now \(\+100 thou\), and 1 more place$/,
      ),
    ]);
    expect(told({ a: 1 }, { a: 1 + 1e-6 })).toEqual(["a: the result: 1 on record, 1.000001 now"]);
  });
  it("tells of several measured values the one that moved most against its uncertainty, in shop units", () => {
    const result = (a: number, b: number, c: number) => ({
      count: c,
      cleanUp: [
        { place: 1, size: measured(inch(a), thou(1)) },
        { place: 2, size: measured(inch(b), thou(0.1)) },
      ],
    });
    // The first moves by 2 thou, twice its u; the second by 0.5 thou, five times its u.
    const [told] = comparePublished(record({ a: result(2, 3, 1) }), record({ a: result(2.002, 3.0005, 9) }));
    expect(told!.moved).toEqual({
      where: "clean up 2, size",
      before: "3.00000 ± 0.00020 in",
      after: "3.00050 ± 0.00020 in",
      by: "+0.5 thou, 5 times its standard uncertainty",
      others: 2,
    });
  });
  it("tells of an uncertainty that moved alone", () => {
    const [told] = comparePublished(
      record({ a: measured(inch(2), thou(0.1)) }),
      record({ a: measured(inch(2), thou(0.2)) }),
    );
    expect(told!.moved).toMatchObject({
      where: "the result",
      before: "2.00000 ± 0.00020 in",
      after: "2.00000 ± 0.00039 in",
      others: 0,
    });
  });
  it("tells what is not published any more", () => {
    expect(told({ a: 1 }, {})).toEqual(["a: the sheet does not publish it any more"]);
  });
});
