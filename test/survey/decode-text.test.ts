import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decodeText } from "../../kernel-helpers/survey/decode-text.js";

const none = (): void => expect.fail("nothing was expected to be reported");
/** The lines reported, with the text read all the same. */
function reading(bytes: Uint8Array): { readonly lines: number[]; readonly text: string | undefined } {
  const lines: number[] = [];
  const text = decodeText(bytes, (line) => lines.push(line));
  return { lines, text };
}

describe("decodeText(bytes, report)", () => {
  it("gives back any text, from UTF-8 and UTF-16 in both byte orders", () => {
    const text = fc.string({ unit: "grapheme" }).map((t) => t.replace(/\p{Cc}|\ufeff/gu, "\n"));
    fc.assert(
      fc.property(text, (text) => {
        expect(decodeText(Buffer.from(text), none)).toBe(text);
        expect(decodeText(Buffer.from(`\ufeff${text}`), none)).toBe(text);
        const utf16 = Buffer.from(`\ufeff${text}`, "utf16le");
        expect(decodeText(utf16, none)).toBe(text);
        expect(decodeText(Buffer.from(utf16).swap16(), none)).toBe(text);
      }),
    );
  });
  it("ends every line in \\n", () => {
    expect(decodeText(Buffer.from("a\r\nb\rc\nd\r\r\ne"), none)).toBe("a\nb\nc\nd\n\ne");
  });
  it("reports each line that is no UTF-8 once, whatever ends the lines, and reads on as Windows-1252", () => {
    for (const end of ["\n", "\r\n", "\r"])
      expect(reading(Buffer.from(["a", "\xb0\xb0", "c", "d\xfc"].join(end), "latin1"))).toEqual({
        lines: [2, 4],
        text: "a\n°°\nc\ndü",
      });
  });
  it("reports each line with control characters once, and reads on without them", () => {
    expect(reading(Buffer.from("a\tb\n\u0001c\u0001\nd\u007f"))).toEqual({
      lines: [2, 3],
      text: "a\tb\nc\nd",
    });
  });
  it("gives no text for zero bytes between the letters", () => {
    expect(reading(Buffer.from("a b", "utf16le"))).toEqual({ lines: [0], text: undefined });
  });
});
