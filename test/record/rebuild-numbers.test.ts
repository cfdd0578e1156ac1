import { describe, expect, it } from "vitest";
import { openRebuild } from "../../kernel-helpers/record/index.js";
import { temporaryFolder } from "../support/temporary-folder.js";

const rebuildWith = (numbers: string): ReturnType<typeof openRebuild> => {
  const json = `{ "schema": 1, "title": "Shaft", "units": "inch", "numbers": ${numbers} }`;
  const folder = temporaryFolder({ "rebuild.json": json });
  return openRebuild({ folder, sheet: "06-shaft-salvage" });
};

describe("rebuild.number(name)", () => {
  it("gives a number without unit with the reason somebody gave for it", () => {
    const rebuild = rebuildWith(`{ "demanded": { "value": 1.3, "because": "loads nobody thought of" } }`);
    expect(rebuild.number("demanded")).toEqual({ value: 1.3, because: "loads nobody thought of" });
  });
  it.each([
    [`{ "demanded": 1.3 }`, /numbers\.demanded: found 1\.3, expected an object/],
    [`{ "demanded": { "value": 1.3 } }`, /numbers\.demanded: "because" is missing/],
    [
      `{ "demanded": { "value": "1.3", "because": "x" } }`,
      /numbers\.demanded\.value: found "1\.3", expected a number/,
    ],
    [
      `{ "demanded": { "value": 1e999, "because": "x" } }`,
      /numbers\.demanded: value: found Infinity, expected a finite/,
    ],
  ])("refuses %s", (numbers, message) => {
    expect(() => rebuildWith(numbers)).toThrow(message);
  });
  it("names what is given where a number is missing", () => {
    const rebuild = rebuildWith(`{ "other": { "value": 2, "because": "x" } }`);
    expect(() => rebuild.number("demanded")).toThrow(
      /gives no "demanded"; add it under "numbers" with value and because; given are other/,
    );
  });
});
