import { describe, expect, it } from "vitest";
import { nearestWord } from "../../kernel-helpers/survey/nearest-word.js";

describe("nearestWord(word, known)", () => {
  const known = ["instrument", "temperature", "part"];

  it("finds a word with a letter left out, put in, changed or in another case", () => {
    for (const slip of ["temprature", "temperatture", "tenperature", "Temperature"])
      expect(nearestWord(slip, known)).toBe("temperature");
  });
  it("finds the nearest of several", () => {
    expect(nearestWord("mic-2-4", ["mic-1-2", "mic-2-3", "mic-3-4"])).toBe("mic-2-3");
  });
  it("finds none that would be guessing", () => {
    for (const other of ["", "by", "date", "weather", "carp"])
      expect(nearestWord(other, ["temperature", "wear"])).toBeUndefined();
    expect(nearestWord("by", ["be"])).toBeUndefined();
    expect(nearestWord("part", [])).toBeUndefined();
  });
  // Source: the textbook case of the Levenshtein distance: kitten to sitting takes three changes, which is too many here.
  it("counts changes as Levenshtein does: three are too many, two of seven letters are not", () => {
    expect(nearestWord("kitten", ["sitting"])).toBeUndefined();
    expect(nearestWord("sitten", ["sitting"])).toBe("sitting");
  });
});
