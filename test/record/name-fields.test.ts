import { describe, expect, it } from "vitest";
import { nameFields } from "../../kernel-helpers/record/name-fields.js";

const facts = {
  dimensions: { "shell bore": 1 },
  angles: {},
  quantities: {},
  numbers: {},
  words: { oil: "x" },
} as never;
const stop = (error: Error) => (): never => {
  throw error;
};

describe("nameFields(facts, fields, work)", () => {
  const fields = { shell: "shell bore", oil: "oil" };

  it("gives what the work gives", () => {
    expect(nameFields(facts, fields, () => 3)).toBe(3);
  });
  it("names the fields whose part stands in the message, and no others", () => {
    expect(() => nameFields(facts, fields, stop(new RangeError("no room in a shell of 2 in")))).toThrow(
      'no room in a shell of 2 in (in rebuild.json: "shell bore" under "dimensions")',
    );
  });
  it("leaves a message alone that speaks of none, and an error of another kind", () => {
    const boiled = new RangeError("it boiled and shelled");
    expect(() => nameFields(facts, fields, stop(boiled))).toThrow(boiled);
    const other = new TypeError("oil is no number");
    expect(() => nameFields(facts, fields, stop(other))).toThrow(other);
  });
  it("refuses a field that is not there before it works", () => {
    expect(() => nameFields(facts, { shell: "shel bore" }, () => 3)).toThrow(
      'naming: rebuild.json gives no "shel bore"',
    );
  });
});
