import { describe, expect, it } from "vitest";
import { unitNamed } from "../../kernel-helpers/quantity/index.js";
import * as make from "../../kernel-helpers/quantity/make.js";

describe("every maker", () => {
  const makers = Object.entries(make);

  it("makes a quantity in the unit it is named for", () => {
    expect(makers.length).toBeGreaterThan(40);
    for (const [name, maker] of makers) {
      const made = maker(3);
      expect([name, made.writtenIn]).toEqual([name, name]);
      expect(made.dimension).toBe(unitNamed(made.writtenIn!).kind);
      expect(made.si).toBe(3 * unitNamed(made.writtenIn!).si);
    }
  });
  it("rejects what is no finite number, by its own name", () => {
    for (const [name, maker] of makers)
      expect(() => maker(Number.NaN)).toThrow(`${name}: value must be a finite number, got NaN`);
  });
});
