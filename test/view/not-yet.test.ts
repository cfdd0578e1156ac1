import { describe, expect, it } from "vitest";
import { notYet } from "../../kernel-helpers/view/not-yet.js";
import { present } from "../../kernel-helpers/view/present.js";
import { renderText } from "../../kernel-helpers/view/render-text.js";

describe("notYet(missing, leaves)", () => {
  it("shows what is missing as a heading and what that leaves open under it", () => {
    const shown = renderText(present(notYet("No gauges read", "The calibration is taken on trust."))!);
    expect(shown).toMatch(/^No gauges read\n═+\n\nThe calibration is taken on trust\.\n?$/);
  });
  it("rejects what is no text", () => {
    expect(() => notYet("No gauges read", "")).toThrow(/leaves must be a text, got ""/);
    expect(() => notYet(undefined as unknown as string, "x")).toThrow(
      /missing must be a text, got undefined/,
    );
  });
});
