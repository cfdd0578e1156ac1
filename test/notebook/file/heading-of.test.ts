import { describe, expect, it } from "vitest";
import { headingOf } from "../../../kernel-helpers/notebook/file/heading-of.js";

const cell = (source: string, cell_type: "markdown" | "raw" = "markdown") => ({
  cell_type,
  id: "a",
  metadata: {},
  source,
});

describe("headingOf(cells)", () => {
  it("is the first heading of the first level in the text, wherever it stands", () => {
    expect(headingOf([cell("# raw", "raw"), cell("Words\n\n# 04 Shaft survey  \n# Other")])).toBe(
      "04 Shaft survey",
    );
  });
  it("is undefined where there is none", () => {
    expect(headingOf([])).toBeUndefined();
    expect(headingOf([cell("## Smaller"), cell("#hash")])).toBeUndefined();
  });
});
