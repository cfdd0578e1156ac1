import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import ts from "typescript";
import { beforeAll, describe, expect, it } from "vitest";
import * as source from "../../kernel-helpers/index.js";
import { packageRoot } from "../../kernel-helpers/record/package-root.js";
import { buildTimeout, ensureBuilt } from "../support/built.js";
import { temporaryFolder } from "../support/temporary-folder.js";

const dist = join(packageRoot(), "dist");
const scripts = join(packageRoot(), "kernel-helpers", "build");
interface Scripts {
  gatherTypes(index: string): string;
  lateIndexes(sources: string, built: string): Map<string, string>;
}
let gatherTypes: Scripts["gatherTypes"];
let lateIndexes: Scripts["lateIndexes"];
beforeAll(async () => {
  ({ gatherTypes } = (await import(join(scripts, "gather-types.mjs"))) as Scripts);
  ({ lateIndexes } = (await import(join(scripts, "late-indexes.mjs"))) as Scripts);
});
beforeAll(ensureBuilt, buildTimeout);

/** What a program prints as JSON. */
function printed(program: string, ...options: string[]): unknown {
  const { stdout, stderr } = spawnSync(process.execPath, [...options, "-e", program], { encoding: "utf8" });
  if (stderr !== "") throw new Error(stderr);
  return JSON.parse(stdout);
}

/** The modules of this package that a program has loaded in the end. */
function modulesOf(program: string): string[] {
  const own = JSON.stringify(`${dist}/`);
  return printed(
    `${program}; console.log(JSON.stringify(Object.keys(require.cache).filter((file) => file.startsWith(${own}))))`,
  ) as string[];
}

const index = JSON.stringify(join(dist, "index.js"));

describe("the built table of contents", () => {
  it("hands on the names of the source, each the very thing of the module it comes from", () => {
    const built = createRequire(__filename)(join(dist, "index.js")) as Record<string, unknown>;
    expect(Object.keys(built).sort()).toEqual(Object.keys(source).sort());
    for (const name of Object.keys(built)) expect(built[name], name).toBeDefined();
    const { inch } = createRequire(__filename)(join(dist, "quantity", "make.js")) as { inch: unknown };
    expect(built.inch).toBe(inch);
    expect(built.inch).toBe(inch); // and when asked again
  });
  it("loads a module when one of its names is first used", () => {
    expect(modulesOf(`require(${index})`)).toEqual([join(dist, "index.js")]);
    const few = modulesOf(`require(${index}).inch(2)`);
    expect(few).toContain(join(dist, "quantity", "make.js"));
    expect(few.filter((file) => !file.includes("quantity"))).toEqual([join(dist, "index.js")]);
    expect(modulesOf(`Object.values(require(${index}))`).length).toBeGreaterThan(300);
  });
  it("is read by an ES module too", () => {
    const address = JSON.stringify(pathToFileURL(join(dist, "index.js")).href);
    const program = `import { inch, openRebuild } from ${address}; console.log(JSON.stringify([inch(2).in("mm"), typeof openRebuild]))`;
    expect(printed(program, "--input-type=module")).toEqual([50.8, "function"]);
  });
});

describe("lateIndexes(sources, built)", () => {
  const files = {
    "src/index.ts": 'export * from "./a/index.js";\nexport { type T, two as second } from "./b.js";\n',
    "src/a/index.ts": 'export { one } from "./one.js";\n',
    "built/index.js": "",
    "built/a/index.js": 'exports.one = require("./one.js").one;',
    "built/a/one.js": "exports.one = 1;",
    "built/b.js": "exports.two = 2;",
  };
  it("writes each index that hands on names only, renamed ones too", () => {
    const folder = temporaryFolder(files);
    const texts = lateIndexes(join(folder, "src"), join(folder, "built"));
    expect([...texts.keys()]).toEqual([join(folder, "built/index.js"), join(folder, "built/a/index.js")]);
    expect(texts.get(join(folder, "built/index.js"))).toContain("0 && (module.exports = { one, second });");
  });
  it("leaves an index that does more", () => {
    const folder = temporaryFolder({ ...files, "src/a/index.ts": "export const one = 1;\n" });
    const texts = lateIndexes(join(folder, "src"), join(folder, "built"));
    expect([...texts.keys()]).toEqual([join(folder, "built/index.js")]);
  });
  it("throws where a name is handed on twice", () => {
    const twice = 'export * from "./a/index.js";\nexport { two as one } from "./b.js";\n';
    const folder = temporaryFolder({ ...files, "src/index.ts": twice });
    expect(() => lateIndexes(join(folder, "src"), join(folder, "built"))).toThrow(/got one twice/);
  });
});

/** The names a declaration file exports, with what they stand for: a type or a value. */
function exportsOf(file: string, counts: (node: ts.Node) => boolean = () => true): string[] {
  const program = ts.createProgram([file], {
    module: ts.ModuleKind.Node16,
    moduleResolution: ts.ModuleResolutionKind.Node16,
    types: [],
  });
  const checker = program.getTypeChecker();
  const module = checker.getSymbolAtLocation(program.getSourceFile(file)!)!;
  return checker
    .getExportsOfModule(module)
    .filter((symbol) => symbol.declarations?.every(counts))
    .map((symbol) => {
      const { flags } = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
      return `${symbol.name} ${flags & ts.SymbolFlags.Value ? "value" : ""} ${flags & ts.SymbolFlags.Type ? "type" : ""}`;
    })
    .sort();
}

/** The list of what is declared for the sake of other types stands at the end. */
const isForUse = (node: ts.Node): boolean => !(ts.isExportSpecifier(node) && node.parent.parent.isTypeOnly);

describe("the gathered types", () => {
  it("export what the table of contents exports", () => {
    const names = exportsOf(join(dist, "index.d.ts"));
    expect(names.length).toBeGreaterThan(500);
    expect(exportsOf(join(dist, "journalbox.d.ts"), isForUse)).toEqual(names);
  });
  it("need no other file", () => {
    expect(readFileSync(join(dist, "journalbox.d.ts"), "utf8")).not.toMatch(/^import |from "|import\("/m);
  });
});

describe("gatherTypes(index)", () => {
  it("takes what is exported and what that needs, with comments; what is needed only, as a type", () => {
    const folder = temporaryFolder({
      "index.d.ts": 'export * from "./a.js";\nexport { B as Bee } from "./b.js";\n',
      "a.d.ts":
        'import type { B } from "./b.js";\ninterface Inner {\n    /** How long [m]. */\n    length: number;\n}\ninterface Unused {\n}\n/** Makes one. */\nexport declare function make(b: B): Inner;\nexport declare const limits: Readonly<Record<string, number>>;\nexport {};\n',
      "b.d.ts": "/** The letter. */\nexport type B = 1 | 2;\n",
    });
    expect(gatherTypes(join(folder, "index.d.ts"))).toBe(`/** The letter. */
type B = 1 | 2;
interface Inner {
    /** How long [m]. */
    length: number;
}
/** Makes one. */
declare function make(b: B): Inner;
declare const limits: Readonly<Record<string, number>>;
export { B as Bee, limits, make };
export type { Inner };
`);
  });
  it("tells two declarations of one name apart, wherever they are named; an exported one keeps its name", () => {
    const folder = temporaryFolder({
      "index.d.ts": 'export { a } from "./a.js";\nexport { b, type Same } from "./b.js";\n',
      "a.d.ts": "interface Same {\n    next?: Same;\n}\nexport declare const a: Same;\n",
      "b.d.ts": "export interface Same {\n    Same: 1;\n}\nexport declare const b: Same;\n",
    });
    expect(gatherTypes(join(folder, "index.d.ts"))).toBe(`interface Same_2 {
    next?: Same_2;
}
declare const a: Same_2;
interface Same {
    Same: 1;
}
declare const b: Same;
export { Same, a, b };
export type { Same_2 };
`);
  });
});
