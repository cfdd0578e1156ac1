import { describe, expect, it } from "vitest";
import { plotText } from "../../../kernel-helpers/view/results/plot-text.js";

describe("plotText(text)", () => {
  it("leaves no tag, entity or formula for plotly to obey", () => {
    const text = plotText('<a href="javascript:alert(1)">x</a> &lt;b&gt; $\\alpha$');
    expect(text.replaceAll("<br>", "")).not.toMatch(/[<>$]/);
    expect(text).toContain("&lt;a");
    expect(text).toContain("&amp;lt;b");
    expect(text).toContain("&#36;");
  });

  it("breaks long lines at spaces and cuts a text that never ends", () => {
    const lines = plotText("rust ".repeat(1000)).split("<br>");
    expect(lines.length).toBeLessThanOrEqual(5);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(60);
    expect(lines.at(-1)).toMatch(/…$/);
  });

  it("puts control characters and line breaks aside", () => {
    expect(plotText("a\r\nb\u0007c")).toBe("a b c");
  });
});
