import { describe, expect, it } from "vitest";
import { architectureFaults, type House } from "./architecture.js";

const house: House = {
  pureFolders: ["quantity", "statistics", "survey"],
  fileReaders: ["survey/read-file.ts"],
  dataFiles: ["handbook/long-table.ts"],
  longestFile: 400,
};
const faultsOf = (tree: Readonly<Record<string, string>>): string[] =>
  architectureFaults(new Map(Object.entries(tree)), house);

describe("architectureFaults(sources, house)", () => {
  it("is content with arrows that point down, within a folder, and from the root", () => {
    expect(
      faultsOf({
        "index.ts": 'export * from "./cli/main.js"; export * from "./quantity/inch.js";',
        "cli/main.ts": 'import { a } from "../quantity/inch.js"; import { readFileSync } from "node:fs";',
        "quantity/inch.ts": 'import type { B } from "./unit.js";\nexport const a = 1;',
        "quantity/unit.ts": "export type B = { process: number };\nexport const f = (b: B) => b.process;",
        "bearing/a.ts": 'import "../shaft/a.js";',
        "shaft/a.ts": 'import "../joint/a.js"; import "../survey/read-file.js";',
        "joint/a.ts": "",
        "survey/read-file.ts": 'import { readFileSync } from "node:fs";',
        "view/figure.ts": 'import plotly from "plotly.js-dist";',
        "record/a.ts": 'import type { Data } from "plotly.js"; const b = () => require("plotly.js-dist");',
        "handbook/long-table.ts": "\n".repeat(500),
      }),
    ).toEqual([]);
  });

  it("finds an arrow that points up, however it is written", () => {
    for (const code of [
      'import { a } from "../statistics/mean.js";',
      'import type { A } from "../statistics/mean.js";',
      'export * from "../statistics/mean.js";',
      'const a = import("../statistics/mean.js");',
      'const a = require("../statistics/mean.js");',
      'type A = import("../statistics/mean.js").A;',
    ])
      expect(faultsOf({ "quantity/inch.ts": code, "statistics/mean.ts": "" })).toEqual([
        "quantity/inch.ts:1: quantity must not use statistics",
      ]);
  });

  it("keeps the four trade folders in their order", () => {
    expect(faultsOf({ "survey/a.ts": 'import "../joint/a.js";', "joint/a.ts": "" })).toEqual([
      "survey/a.ts:1: survey must not use joint",
    ]);
    expect(faultsOf({ "joint/a.ts": 'import "../bearing/a.js";', "bearing/a.ts": "" })).toEqual([
      "joint/a.ts:1: joint must not use bearing",
    ]);
  });

  it("finds a use of the root, an unknown folder, a missing ending and a missing file", () => {
    expect(faultsOf({ "view/a.ts": 'import "../index.js";', "index.ts": "" })[0]).toMatch(
      /table of contents/,
    );
    expect(faultsOf({ "misc/a.ts": 'import "./b.js";', "misc/b.ts": "" })[0]).toMatch(
      /misc is not in the list/,
    );
    expect(faultsOf({ "view/a.ts": 'import "./b";', "view/b.ts": "" })[0]).toMatch(/must end in \.js/);
    expect(faultsOf({ "view/a.ts": 'import "./c.js";' })[0]).toMatch(/c\.js is not there/);
  });

  it("finds input, output, clock and chance in pure folders", () => {
    for (const [code, name] of [
      ['import { readFileSync } from "node:fs";', "node:fs"],
      ['import { readFileSync } from "fs";', "fs"],
      ["console.log(1);", "console"],
      ["const a = process.env.HOME;", "process"],
      ["const p = process;", "process"],
      ["const a = Date.now();", "Date.now"],
      ["const a = new Date();", "new Date()"],
      ["const a = Math.random();", "Math.random"],
    ] as const)
      expect(faultsOf({ "statistics/a.ts": code })).toEqual([
        `statistics/a.ts:1: ${name} has no place in a pure folder`,
      ]);
    expect(faultsOf({ "survey/read-file.ts": 'import { spawn } from "node:child_process";' })).toHaveLength(
      1,
    );
    expect(faultsOf({ "survey/a.ts": 'import { createHash } from "node:crypto";' })).toEqual([]);
    expect(faultsOf({ "survey/a.ts": 'import { createHash, randomInt } from "node:crypto";' })).toHaveLength(
      1,
    );
    expect(faultsOf({ "survey/a.ts": 'import crypto from "node:crypto";' })).not.toEqual([]);
    expect(faultsOf({ "statistics/a.ts": "const a = new Date(2000, 1, 1);" })).toEqual([]);
  });

  it("finds plotly loaded at once outside view", () => {
    for (const code of ['import p from "plotly.js-dist";', 'const p = require("plotly.js-dist");'])
      expect(faultsOf({ "record/a.ts": code })).toEqual([
        "record/a.ts:1: plotly.js-dist is loaded at once; only view may do that",
      ]);
  });

  it("finds a ring of files, once", () => {
    expect(
      faultsOf({
        "view/c.ts": 'import "./a.js";',
        "view/a.ts": 'import "./b.js";',
        "view/b.ts": 'import "./c.js";',
      }),
    ).toEqual(["view/a.ts → view/b.ts → view/c.ts → view/a.ts: the files import each other"]);
    expect(faultsOf({ "view/a.ts": 'import type { A } from "./a.js";' })).toHaveLength(1);
  });

  it("finds a file that is too long", () => {
    expect(faultsOf({ "view/a.ts": "\n".repeat(401) })).toEqual([
      "view/a.ts: it has 401 lines, more than 400",
    ]);
  });
});
