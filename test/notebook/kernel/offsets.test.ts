import { describe, expect, it } from "vitest";
import { charactersFromUnits, unitsFromCharacters } from "../../../kernel-helpers/notebook/kernel/offsets.js";

describe("unitsFromCharacters(text, n) and charactersFromUnits(text, n)", () => {
  it("agree where every character is one unit", () => {
    expect(unitsFromCharacters("Ø 60 mm", 3)).toBe(3);
    expect(charactersFromUnits("Ø 60 mm", 3)).toBe(3);
  });
  it("count a character outside the basic plane as one and as two", () => {
    expect(unitsFromCharacters("𝜋 = 3", 2)).toBe(3);
    expect(charactersFromUnits("𝜋 = 3", 3)).toBe(2);
  });
});
