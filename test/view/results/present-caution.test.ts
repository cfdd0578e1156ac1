import { describe, expect, it } from "vitest";
import { caution } from "../../../kernel-helpers/view/caution.js";
import { present } from "../../../kernel-helpers/view/present.js";
import { renderHtml } from "../../../kernel-helpers/view/render-html.js";
import { renderText } from "../../../kernel-helpers/view/render-text.js";

describe("present(caution)", () => {
  const given = caution("turning between centres");
  const presentation = present(given)!;

  it("is one block of caution, with every point in its order", () => {
    expect(presentation).toEqual({
      title: "Before the work",
      blocks: [{ type: "caution", title: given.title, points: given.points }],
    });
    expect(Object.isFrozen(presentation)).toBe(true);
  });

  it("cannot be overlooked: called a caution in text, in HTML, and to a screen reader", () => {
    expect(renderText(presentation)).toContain("━ CAUTION: Turning between centres ━");
    const html = renderHtml(presentation, { picture: () => "", withStyle: false });
    expect(html).toContain("<strong>CAUTION: Turning between centres</strong>");
    expect(html).toContain(`role="note" aria-label="Caution"`);
    expect(html.match(/<li>/g)).toHaveLength(given.points.length);
  });
});
