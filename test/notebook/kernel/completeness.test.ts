import { createRequire } from "node:module";
import { join } from "node:path";
import type * as TypeScript from "@tslab/typescript-for-tslab";
import { describe, expect, it } from "vitest";
import { completeness } from "../../../kernel-helpers/notebook/kernel/completeness.js";

const root = join(__dirname, "..", "..", "..");
const ts: typeof TypeScript = createRequire(join(root, "node_modules", "tslab", "package.json"))(
  "@tslab/typescript-for-tslab",
);

describe("completeness(ts, code)", () => {
  it.each([
    "f()",
    "await f()",
    "<T>(x: T) => x",
    "const a = 1;\nif (a) {\n  a;\n}",
    "",
    "import x from 'y';",
  ])("%j may be run", (code) => expect(completeness(ts, code)).toEqual({ status: "complete" }));
  it.each([
    ["1 +", ""],
    ["const a =", ""],
    ["`abc", ""],
    ["/* remark", ""],
    ["f(", "  "],
    ["  const f = () => {\n", "    "],
    ["class A {\n  x = 1;", "  "],
  ])("%j wants more lines", (code, indent) =>
    expect(completeness(ts, code)).toEqual({ status: "incomplete", indent }),
  );
  it.each(["1 2", "}", 'const s = "abc', "const const;"])("%j will not be mended by more lines", (code) =>
    expect(completeness(ts, code)).toEqual({ status: "invalid" }),
  );
  it("takes two empty lines as the wish to run", () => {
    expect(completeness(ts, "if (a) {\n\n\n")).toEqual({ status: "complete" });
  });
});
