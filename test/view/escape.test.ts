import { describe, expect, it } from "vitest";
import { escapeHtml, scriptJson } from "../../kernel-helpers/view/escape.js";

const hostile = `</script><script>alert("x")</script><!-- ' & \u2028 \u2029`;

describe("escapeHtml(text)", () => {
  it("leaves nothing that ends a tag, an attribute or an entity", () => {
    expect(escapeHtml(hostile)).not.toMatch(/[<>"']|&(?!(amp|lt|gt|quot|#39);)/);
    expect(escapeHtml(`a<b & "c"`)).toBe("a&lt;b &amp; &quot;c&quot;");
  });
});

describe("scriptJson(value)", () => {
  it("is the same value to whoever runs it", () => {
    const value = { [hostile]: [hostile, 1.5, null] };
    expect(JSON.parse(scriptJson(value))).toEqual(value);
    expect(new Function(`return ${scriptJson(value)}`)()).toEqual(value);
  });
  it("cannot close its script element, open a comment or break its line", () => {
    expect(scriptJson({ [hostile]: hostile })).not.toMatch(/[<>\u2028\u2029]/);
  });
});
