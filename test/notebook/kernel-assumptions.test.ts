import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import vm from "node:vm";
import type * as TypeScript from "@tslab/typescript-for-tslab";
import type * as ConverterModule from "tslab/dist/converter.js";
import type * as ExecutorModule from "tslab/dist/executor.js";
import { afterAll, describe, expect, it } from "vitest";

// What the kernel takes for granted of tslab and of Node. When one of these fails after an update, the kernel
// file named beside it must be looked at again.

const root = join(__dirname, "..", "..");
const fromTslab = createRequire(join(root, "node_modules", "tslab", "package.json"));
const converterModule: typeof ConverterModule = fromTslab("./dist/converter.js");
const executorModule: typeof ExecutorModule = fromTslab("./dist/executor.js");
const ts: typeof TypeScript = fromTslab("@tslab/typescript-for-tslab");

const converter = converterModule.createConverter({ isJS: false, isBrowser: false });
afterAll(() => converter.close());

/** An executor that writes down what it tells its console. */
function watched(): { executor: ExecutorModule.Executor; said: [how: string, what: unknown][] } {
  const said: [string, unknown][] = [];
  const converters = { node: converter, browser: converter, close: () => {} };
  const executor = executorModule.createExecutor(process.cwd(), converters, {
    log: (what: unknown) => said.push(["log", what]),
    error: (what: unknown) => said.push(["error", what]),
  });
  return { executor, said };
}

describe("tslab 1.0.22", () => {
  it("is the version installed, and pinned", () => {
    expect(JSON.parse(readFileSync(join(root, "package.json"), "utf8")).dependencies.tslab).toBe("1.0.22");
    expect(fromTslab("./package.json").version).toBe("1.0.22");
  });
  it("brings TypeScript 5.0.4 (name-of-type.ts and plain-words.ts know its wording)", () => {
    expect(ts.version).toBe("5.0.4");
  });
  it("reads its TypeScript through the module cache, once (cell-typescript.ts replaces it there)", () => {
    const source = readFileSync(fromTslab.resolve("./dist/converter.js"), "utf8");
    expect(source.match(/require\("@tslab\/typescript-for-tslab"\)/g)).toHaveLength(1);
    expect(source).toContain("ts.createWatchCompilerHost(");
    expect(source).toContain("ts.transpileModule(js, {");
  });
  it("compiles a cell with one line before it (cell-runner.ts: linesBefore)", () => {
    const [fault] = converter.convert("", "nothingOfThisName;").diagnostics;
    expect(fault?.start).toMatchObject({ line: 0, character: 0 });
    expect(readFileSync(fromTslab.resolve("./dist/converter.js"), "utf8")).toContain(
      'const srcPrefix = "export {};" + ts.sys.newLine;',
    );
  });
  it("begins a compiled cell with a line of its own, so that the words it is wrapped in shift no column (scripts.ts)", () => {
    for (const cell of ["1 + 1", "const a = 1;", "await null; 2", 'import "node:path"; 3'])
      expect(converter.convert("", cell).output).toMatch(
        /^Object\.defineProperty\(exports, "__esModule", .*\);\n/,
      );
  });
  it("gives a message and its details one after the other, at one place (type-error.ts)", () => {
    const source =
      "const f = (a: { b: number }): void => {};\nf({ b: 'x' as unknown as { c: 1 } } as { b: { c: 1 } });";
    const { diagnostics } = converter.convert("", source);
    expect(diagnostics.length).toBeGreaterThan(1);
    expect(new Set(diagnostics.map(({ start }) => start.offset)).size).toBe(1);
  });
});

describe("tslab's use of TypeScript", () => {
  const source = readFileSync(fromTslab.resolve("./dist/converter.js"), "utf8");
  it("asks four things of a program's builder, and nothing else (light-program.ts)", () => {
    const asked = [...source.matchAll(/\bbuilder\s*\.(\w+)/g)].map(([, member]) => member);
    expect([...new Set(asked)].sort()).toEqual(["emit", "getAllDependencies", "getProgram", "getSourceFile"]);
  });
  it("leaves the making of programs to the host (cell-typescript.ts)", () => {
    expect(source).toContain("const watch = ts.createWatchProgram(host);");
    expect(typeof Reflect.get(ts, "bindSourceFile")).toBe("function");
    expect(typeof ts.createAbstractBuilder).toBe("function");
  });
  it("turns the text of a file into a tree in one place of TypeScript (quick-start/snapshot-entry.ts)", () => {
    const text = readFileSync(fromTslab.resolve("@tslab/typescript-for-tslab"), "utf8");
    const place =
      "return text !== void 0 ? createSourceFile(fileName, text, languageVersionOrOptions, setParentNodes) : void 0;";
    expect(text.split(place)).toHaveLength(2);
  });
});

describe("tslab's executor", () => {
  it("overlooks a short-form property that names an earlier cell's value (shorthand-names.ts mends it)", async () => {
    const { executor, said } = watched();
    expect(await executor.execute("const nominal = 2;")).toBe(true);
    expect(await executor.execute("({ nominal: nominal }).nominal")).toBe(true);
    expect(await executor.execute("({ nominal }).nominal")).toBe(false);
    expect(said).toEqual([
      ["log", 2],
      ["error", expect.objectContaining({ message: "nominal is not defined" })],
    ]);
  });
  it("hands the last value to log as it is, and what was thrown to error (cell-runner.ts)", async () => {
    const { executor, said } = watched();
    expect(await executor.execute("const list = [1];\nlist")).toBe(true);
    expect(await executor.execute('throw "thrown"')).toBe(false);
    expect(said).toEqual([
      ["log", [1]],
      ["error", "thrown"],
    ]);
  });
  it("says nothing for undefined and null", async () => {
    const { executor, said } = watched();
    await executor.execute("undefined");
    await executor.execute("null");
    expect(said).toEqual([]);
  });
  it("keeps no names of a cell that threw", async () => {
    const { executor } = watched();
    expect(await executor.execute("const lost = 1; throw new Error();")).toBe(false);
    expect(await executor.execute("lost")).toBe(false);
  });
  it("starts without names, however many executors share a converter (cell-runner.ts: reset)", async () => {
    const first = watched();
    await first.executor.execute("const name = 1;");
    const second = watched();
    expect(await second.executor.execute("const name = 'anew'; name")).toBe(true);
    expect(second.said).toEqual([["log", "anew"]]);
  });
  it("ends a waiting cell with an error of this text when interrupted (cell-runner.ts)", async () => {
    const { executor, said } = watched();
    const cell = executor.execute("await new Promise(() => {});");
    await new Promise((next) => setTimeout(next, 10));
    executor.interrupt();
    expect(await cell).toBe(false);
    expect(said).toEqual([["error", expect.objectContaining({ message: "Interrupted asynchronously" })]]);
  });
});

describe("Node", () => {
  it("calls a script by its sourceURL, also when that is not the last line (cell-runner.ts, stack-places.ts)", () => {
    const { prepareStackTrace } = Error;
    Error.prepareStackTrace = (_, calls) => calls.map((call) => call.getScriptNameOrSourceURL());
    try {
      const names: unknown = vm.runInThisContext(
        "(function() { return new Error().stack\n//# sourceURL=cell-1.ts\n})()",
      );
      expect(Array.isArray(names) ? names[0] : names).toBe("cell-1.ts");
    } finally {
      Error.prepareStackTrace = prepareStackTrace;
    }
  });
  it("has the two loader members that resolve-imports.ts stands on", () => {
    const loader = fromTslab("node:module");
    expect([typeof loader._initPaths, typeof loader._resolveFilename]).toEqual(["function", "function"]);
  });
});
