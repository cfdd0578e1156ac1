import type { QuickInfo } from "@tslab/typescript-for-tslab";
import { describe, expect, it } from "vitest";
import { tooltip } from "../../../kernel-helpers/notebook/kernel/tooltip.js";

const words = (text: string): { text: string; kind: string }[] =>
  text.split(/(?<= )/).map((part) => ({ text: part, kind: "text" }));

const info = {
  kind: "function",
  kindModifiers: "",
  textSpan: { start: 0, length: 1 },
  displayParts: words("function area(diameter: Length): Area"),
  documentation: words("Area of a circle.\n\nValid when: diameter > 0."),
  tags: [
    { name: "param", text: words("diameter  of the circle [m]") },
    { name: "param", text: words("options.fast  whether it is urgent [-]") },
    { name: "returns", text: words("area [m²]") },
    { name: "example", text: words("area(mm(2)) // a `template` ```") },
    { name: "source", text: words("Euclid, XII.2") },
  ],
} as unknown as QuickInfo;

describe("tooltip(info)", () => {
  it("gives signature, prose, parameters with units, result, example and source as Markdown", () => {
    expect(tooltip(info)["text/markdown"]).toBe(
      [
        "```typescript\nfunction area(diameter: Length): Area\n```",
        "Area of a circle.\n\nValid when: diameter > 0.",
        "- `diameter` of the circle [m]\n- `options.fast` whether it is urgent [-]",
        "**Returns** area [m²]",
        "**Example**\n\n````typescript\narea(mm(2)) // a `template` ```\n````",
        "**Source** Euclid, XII.2",
      ].join("\n\n"),
    );
  });
  it("gives the same as plain text, tags by their names", () => {
    const plain = tooltip(info)["text/plain"];
    expect(plain).toMatch(/^function area\(diameter: Length\): Area\n\nArea of a circle\./);
    expect(plain).toContain("@param diameter  of the circle [m]");
    expect(plain).toContain("@source Euclid, XII.2");
  });
  it("is the signature alone where nothing else is known", () => {
    const bare = { ...info, documentation: undefined, tags: undefined };
    expect(tooltip(bare)["text/plain"]).toBe("function area(diameter: Length): Area");
  });
});
