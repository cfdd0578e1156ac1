import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import {
  ascent,
  boldWidths,
  descent,
  regularWidths,
  unitsPerEm,
} from "../../../kernel-helpers/view/picture/arial-widths.js";
import { textWidth } from "../../../kernel-helpers/view/picture/text-width.js";
import { expectClose } from "../../support/expect-close.js";
import { readAdvances } from "./read-advances.js";

const fonts = join(__dirname, "../../../kernel-helpers/view/picture/fonts");

describe("the table of widths", () => {
  for (const [face, widths] of [
    ["Regular", regularWidths],
    ["Bold", boldWidths],
  ] as const) {
    it(`is what LiberationSans-${face}.ttf says, character by character`, () => {
      const font = readAdvances(readFileSync(join(fonts, `LiberationSans-${face}.ttf`)));
      expect([unitsPerEm, ascent, descent]).toEqual([font.unitsPerEm, font.ascent, font.descent]);
      const differing = [...widths].filter(([code, width]) => font.advanceOf(code) !== width);
      expect(differing).toEqual([]);
      expect(widths.size).toBeGreaterThan(400);
    });
  }

  it("has the signs of the trade", () => {
    const signs = [..."0123456789 ±−×·°′″µμØ½¼¾⅛⅜⅝⅞²³→≤≥≈≠Δσαβθπ∞–…"];
    expect(signs.filter((sign) => !regularWidths.has(sign.codePointAt(0)!))).toEqual([]);
  });
});

describe("textWidth(text, size, bold)", () => {
  // Source: Adobe Core 14 font metrics, Helvetica.afm (from memory): T 611, a 556, p 556, e 556, r 333 of 1000.
  it("adds up the published widths of Helvetica", () => {
    expectClose(textWidth("Taper", 12, false), (12 * (611 + 556 + 556 + 556 + 333)) / 1000, {
      rel: 5e-4,
      because: "the published widths are rounded to 1/1000 em",
    });
  });
  it("grows in proportion to the size", () => {
    expect(textWidth("2.4375 in", 24, false)).toBe(2 * textWidth("2.4375 in", 12, false));
  });
  it("is larger for bold words", () => {
    expect(textWidth("Caution", 12, true)).toBeGreaterThan(textWidth("Caution", 12, false));
  });
  it("gives no room to a zero-width space and to an accent that combines", () => {
    expect(textWidth("a\u200b\u0301", 10, false)).toBe(textWidth("a", 10, false));
  });
  it("gives a full em to an East Asian character", () => {
    expect(textWidth("軸", 10, false)).toBe(10);
  });
});
