import { describe, expect, it } from "vitest";
import { comparePublished } from "../../../kernel-helpers/notebook/audit/compare-published.js";
import { inch, type Length, quantityFromSi } from "../../../kernel-helpers/quantity/index.js";
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
      expect.stringMatching(/^wear: bands\.0\.depth\.value: .+ on record, .+ now, and 1 more place$/),
    ]);
    expect(told({ a: 1 }, { a: 1 + 1e-6 })).toEqual(["a: the result: 1 on record, 1.000001 now"]);
  });
  it("tells what is not published any more", () => {
    expect(told({ a: 1 }, {})).toEqual(["a: the sheet does not publish it any more"]);
  });
});
