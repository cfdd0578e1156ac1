import { describe, expect, it } from "vitest";
import { terminalText } from "../../../kernel-helpers/notebook/report/terminal-text.js";

describe("terminalText(text)", () => {
  it("escapes HTML", () => {
    expect(terminalText('<b a="1">&</b>')).toBe("&lt;b a=&quot;1&quot;&gt;&amp;&lt;/b&gt;");
  });

  it("turns colours into classes", () => {
    expect(terminalText("\u001b[31mred\u001b[39m plain \u001b[1mbold\u001b[0m")).toBe(
      '<span class="ansi-red-fg">red</span> plain <span class="ansi-bold">bold</span>',
    );
  });

  it("shows of a rewritten line its last state", () => {
    expect(terminalText("10 %\r50 %\r100 %\nnext\r\n")).toBe("100 %\nnext\n");
  });

  it("drops what moves the cursor, links, sets titles or rings", () => {
    expect(
      terminalText("a\u001b[2Kb\u001b]8;;https://example.org\u0007c\u001b]8;;\u001b\\d\u0007\u001b(Be"),
    ).toBe("abcde");
  });
});
