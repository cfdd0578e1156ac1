import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  remarkParts,
  remarkText,
  withRemarkParts,
} from "../../../../kernel-helpers/live/grid/model/index.js";
import { readTableRows } from "../../../../kernel-helpers/survey/read-table-rows.js";

const line = fc
  .tuple(
    fc.constantFrom("#", "# ", "  #  "),
    fc.array(fc.constantFrom(..."ab: /1.é\t")),
    fc.constantFrom("", " "),
  )
  .map(([start, letters, end]) => start + letters.join("") + end);

describe("remarkParts(line)", () => {
  it("put together gives the line", () => {
    fc.assert(
      fc.property(line, (text) => {
        const { before, label, between, value, after } = remarkParts(text);
        expect(before + label + between + value + after).toBe(text);
      }),
      { numRuns: 2000 },
    );
  });

  it("sees the key and value that the table reader sees", () => {
    fc.assert(
      fc.property(line, (text) => {
        const [read] = readTableRows(text, () => {}).remarks;
        const { label, value } = remarkParts(text);
        expect({ key: label.trim().replace(/\s+/g, " ").toLowerCase(), value: value.trim() }).toEqual({
          key: read!.key,
          value: read!.value,
        });
      }),
      { numRuns: 2000 },
    );
  });

  it("takes no clock time apart", () => {
    expect(remarkParts("# begun 10:30").label).toBe("");
    expect(remarkText("#  when: 10:30")).toBe("when: 10:30");
  });
});

describe("withRemarkParts(line, change)", () => {
  it.each([
    ["# part: shaft", { value: "spindle" }, "# part: spindle"],
    ["#part:shaft ", { label: "piece" }, "# piece: shaft "],
    ["# washed", { label: "when" }, "# when: washed"],
    ["# part:", { value: "shaft" }, "# part: shaft"],
    ["# part: shaft", { label: "" }, "# shaft"],
    ["# a: b", { label: "x: y", value: "1\n2" }, "# x  y: 1 2"],
  ])("%j with %j is %j", (before, change, after) => {
    expect(withRemarkParts(before, change)).toBe(after);
  });

  it("is read as the label and value that were written", () => {
    const word = fc.stringMatching(/^[a-z]{1,5}( [a-z]{1,4})?$/);
    fc.assert(
      fc.property(line, word, word, (text, label, value) => {
        const parts = remarkParts(withRemarkParts(text, { label, value }));
        expect([parts.label, parts.value]).toEqual([label, value]);
      }),
    );
  });
});
