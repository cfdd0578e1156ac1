import { describe, expect, it } from "vitest";
import { numberFault, readNumber } from "../../kernel-helpers/quantity/index.js";
import { letterFault, plainText } from "../../kernel-helpers/quantity/read-number.js";

describe("readNumber(text)", () => {
  it.each([
    ["2.4375", 2.4375],
    [" 2.4375 ", 2.4375],
    [".5", 0.5],
    ["5.", 5],
    ["+3", 3],
    ["-3", -3],
    ["−3", -3],
    ["–3", -3],
    ["1.2e-3", 0.0012],
    ["1.2E3", 1200],
    ["1.17×10⁻⁵", 1.17e-5],
    ["7/16", 0.4375],
    ["7 / 16", 0.4375],
    ["7⁄16", 0.4375],
    ["2 7/16", 2.4375],
    ["2-7/16", 2.4375],
    ["2½", 2.5],
    ["2 ½", 2.5],
    ["½", 0.5],
    ["-½", -0.5],
    ["-2 7/16", -2.4375],
    ["−2⅝", -2.625],
    ["17/16", 1.0625],
    ["2\u00a07/16", 2.4375],
  ])("reads %j as %d", (text, value) => {
    expect(readNumber(text)).toBe(value);
  });
  it.each([
    ["", "nothing stands here, a number was expected"],
    ["  ", "nothing stands here, a number was expected"],
    ["abc", '"abc" is not a number'],
    ["2.5.3", '"2.5.3" is not a number'],
    ["NaN", '"NaN" is not a number'],
    ["Infinity", '"Infinity" is not a number'],
    ["0x10", '"0x10" is not a number'],
    ["1e999", '"1e999" is too large a number'],
    ["7/0", '"7/0" divides by zero'],
    ["2 17/16", '"2 17/16" has a fraction of 1 or more behind the whole number: check its digits'],
    ["2,4375", '"2,4375" holds a comma: write 2.4375 with a decimal point'],
    [",5", '",5" holds a comma: write .5 with a decimal point'],
    ["1.234,5", '"1.234,5" holds a comma: write 1234.5 with a decimal point'],
    [
      "2,437",
      '"2,437" holds a comma, which may mean thousands or decimals: write 2437 or 2.437, whichever is meant',
    ],
    ["1,234.5", '"1,234.5" holds a comma: write 1234.5'],
    ["1,234,567", '"1,234,567" holds a comma: write 1234567'],
    ["10 000", '"10 000" holds a space: write 10000'],
    ["2.5O3", '"2.5O3" holds the letter O for a zero: write 2.503'],
    ["-o.5", '"-o.5" holds the letter O for a zero: write -0.5'],
    ["l2.5", '"l2.5" holds a letter for a one: write 12.5'],
    ["2.I", '"2.I" holds a letter for a one: write 2.1'],
  ])("refuses %j, with the mend", (text, message) => {
    expect(() => readNumber(text)).toThrow(SyntaxError);
    expect(numberFault(text)).toBe(message);
  });
  it("never throws anything but a SyntaxError, and gives a finite number else", () => {
    for (const text of ["1/", "/2", "1//2", "- 1", "--1", "1-", "e5", "½½", "1 2", ",", ".", "+", "×10⁵"])
      expect(() => readNumber(text)).toThrow(SyntaxError);
  });
});

describe("letterFault(text)", () => {
  it("is silent where no letter stands for a digit", () => {
    for (const text of ["2.5", "Oil", "2.5x", ""]) expect(letterFault(text)).toBeUndefined();
  });
});

describe("plainText(text)", () => {
  it("spells signs, slashes, spaces and fractions in one way", () => {
    expect(plainText(" −2 ½ ")).toBe("-2 1/2");
    expect(plainText("3\t 1 ⁄ 8")).toBe("3 1/8");
  });
});
