import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { stripVTControlCharacters } from "node:util";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CellError } from "../../../kernel-helpers/notebook/client/client-errors.js";
import { KernelClient } from "../../../kernel-helpers/notebook/client/kernel-client.js";
import type { KernelOutput } from "../../../kernel-helpers/notebook/client/running-kernel.js";
import { packageRoot, packageVersion } from "../../../kernel-helpers/record/package-root.js";
import { buildTimeout, ensureBuilt } from "../../support/built.js";
import { temporaryFolder } from "../../support/temporary-folder.js";

// One real kernel over the wire, in a folder far from the package.
const folder = temporaryFolder({
  "spin.ts": "export function spin(): never {\n  for (;;) {}\n}\n",
  "helper.ts": [
    "export interface Limit { most: number }",
    "",
    "export function check(value: number, limit: Limit): number {",
    "  if (value > limit.most) throw new RangeError('check: value must be small, got ' + value);",
    "  return value;",
    "}",
  ].join("\n"),
  "node_modules/own-package/package.json": JSON.stringify({
    name: "own-package",
    exports: { ".": { types: "./index.d.ts", default: "./index.js" } },
  }),
  "node_modules/own-package/index.js": "exports.answer = 42;",
  "node_modules/own-package/index.d.ts": "export declare const answer: number;",
});
let kernel: KernelClient;
beforeAll(async () => {
  await ensureBuilt();
  kernel = await KernelClient.start({ directory: folder });
}, buildTimeout);
afterAll(async () => kernel.close());

/** What a cell shows, without the repetition of its input. */
async function run(code: string): Promise<readonly KernelOutput[]> {
  const { outputs } = await kernel.execute(code);
  return outputs.filter(({ type }) => type !== "execute_input");
}

/** The plain text of a cell's result. */
async function resultOf(code: string): Promise<unknown> {
  const result = (await run(code)).find(({ type }) => type === "execute_result");
  return (result?.content.data as Record<string, unknown> | undefined)?.["text/plain"];
}

async function failureOf(
  code: string,
): Promise<{ error: CellError; told: string[]; outputs: KernelOutput[] }> {
  const outputs: KernelOutput[] = [];
  const error = await kernel.execute(code, { onOutput: (output) => outputs.push(output) }).then(
    () => new Error("the cell went well"),
    (thrown: unknown) => thrown,
  );
  if (!(error instanceof CellError)) throw error;
  return { error, told: error.traceback.map(stripVTControlCharacters), outputs };
}

describe("a cell that goes well", () => {
  it("shows its input and number, then its last value as a result with that number", async () => {
    await kernel.reset({ directory: folder });
    const { executionCount, outputs } = await kernel.execute("const a = 20;\na + 1");
    expect(executionCount).toBe(1);
    expect(outputs).toEqual([
      { type: "execute_input", content: { code: "const a = 20;\na + 1", execution_count: 1 } },
      { type: "execute_result", content: { execution_count: 1, data: { "text/plain": "21" }, metadata: {} } },
    ]);
  });
  it("keeps names for the next cell, which may declare them anew", async () => {
    expect(await resultOf("const b = a * 2;\nb")).toBe("40");
    expect(await resultOf('const a = "anew";\na')).toBe("'anew'");
  });
  it("awaits at top level, and awaits its last value", async () => {
    expect(await resultOf("await Promise.resolve(3) + 1")).toBe("4");
    expect(await resultOf("Promise.resolve(5)")).toBe("5");
  });
  it("shows nothing for undefined, null and statements", async () => {
    expect(await run("undefined")).toEqual([]);
    expect(await run("null")).toEqual([]);
    expect(await run("const nothing = 1;")).toEqual([]);
  });
  it("shows rows of quantities as a table, a record of them one a line, and a function without the kernel's name for it", async () => {
    const htmlOf = async (code: string): Promise<string> => {
      const result = (await run(code)).find(({ type }) => type === "execute_result");
      return String((result!.content.data as Record<string, unknown>)["text/html"]);
    };
    await run('import { inch, thou } from "journalbox";');
    const rows = await htmlOf("[{ station: inch(1), wear: thou(3) }, { station: inch(2), wear: thou(5) }]");
    expect(rows).toMatch(/<table[\s\S]*station[\s\S]*thou[\s\S]*<td[^>]*>5</);
    expect(await htmlOf("({ bore: inch(2), wear: thou(3) })")).toMatch(/bore[\s\S]*2\sin/);
    expect(await resultOf("(x: number) => x")).toBe("[Function (anonymous)]");
  });
  it("tells what a cell prints while it works, though it never waits", async () => {
    const heard: number[] = [];
    const code =
      "for (const part of [1, 2, 3]) {\n  const start = Date.now();\n  process.stdout.write('part ' + part + '\\n');\n  while (Date.now() - start < 600) {}\n}";
    await kernel.execute(code, {
      onOutput: ({ type }) => {
        if (type === "stream") heard.push(Date.now());
      },
    });
    const ended = Date.now();
    // Heard only once the cell has ended, it would be heard with it. The first may wait for the second: 600 ms.
    expect(ended - heard[0]!).toBeGreaterThan(500);
  });
  it("tells printed text in order, before the result", async () => {
    const outputs = await run('console.log("one"); console.error("two"); process.stdout.write("Ø"); 3');
    expect(outputs.map(({ type, content }) => [type, content.name, content.text])).toEqual([
      ["stream", "stdout", "one\n"],
      ["stream", "stderr", "two\n"],
      ["stream", "stdout", "Ø"],
      ["execute_result", undefined, undefined],
    ]);
  });
  it("loses no line of ten thousand, and sends them in few messages", async () => {
    const outputs = await run("for (let i = 0; i < 10_000; i++) console.log(i);");
    const text = outputs.map(({ content }) => content.text).join("");
    expect(text.split("\n")).toHaveLength(10_001);
    expect(text.endsWith("9999\n")).toBe(true);
    expect(outputs.length).toBeLessThan(1000);
  });
  it("shows what tslab's display is given; JSON arrives as JSON", async () => {
    const [shown] = await run(
      'import { display } from "tslab";\ndisplay.raw("application/vnd.test+json", JSON.stringify({ a: [1] }));',
    );
    expect(shown).toMatchObject({
      type: "display_data",
      content: { data: { "application/vnd.test+json": { a: [1] } } },
    });
  });
});

describe("a cell whose types are wrong", () => {
  it("is not run, and says in plain words what is wrong, with its line", async () => {
    await run("let ran = false;");
    const { error, told, outputs } = await failureOf('ran = true;\nconst wrong: number = "2.5";');
    expect(error.ename).toBe("TypeCheckError");
    expect(error.evalue).toBe("a plain number was expected here, but this is text (line 2)");
    expect(told).toContain('> 2 | const wrong: number = "2.5";');
    expect(told).toContain("    |       ^^^^^");
    expect(told).toContain("TS2322: Type 'string' is not assignable to type 'number'.");
    expect(outputs.at(-1)).toMatchObject({
      type: "error",
      content: { ename: error.ename, evalue: error.evalue },
    });
    expect(await resultOf("ran")).toBe("false");
  });
  it("says a fault of grammar once, without its consequences, and nothing of lines that are not the cell's", async () => {
    const magic = await failureOf("%matplotlib inline");
    expect(magic.told.join("\n")).not.toMatch(/is not known here/);
    const exported = await failureOf("export const handed = 3;");
    expect(exported.error.evalue).toMatch(/^leave out the word export/);
    expect(exported.told.join("\n")).not.toContain("line 2");
  });
  it("names no file of the machinery in TypeScript's own words", async () => {
    await run('import { inch } from "journalbox";');
    const { told } = await failureOf("inch(1) + inch(2)");
    expect(told.join("\n")).toMatch(/TS2365: .*'Quantity<"length">'/);
    expect(told.join("\n")).not.toContain("import(");
  });
  it("is checked strictly: no implicit any, nothing possibly missing", async () => {
    expect((await failureOf("const half = (x) => x / 2;")).error.evalue).toBe(
      "say what x is, e.g. x: number (line 1)",
    );
    expect((await failureOf("[1, 2].find((n) => n > 5).toFixed()")).error.evalue).toMatch(/may be missing/);
  });
});

describe("a cell that throws", () => {
  it("shows name, message and its own line, and nothing of the machinery", async () => {
    const { error, told } = await failureOf(
      "interface A { x: number }\n\nconst bad = (v: number): number => {\n  throw new RangeError('bad: v must be small, got ' + v);\n};\nbad(3);",
    );
    expect(error.ename).toBe("RangeError");
    expect(error.evalue).toBe("bad: v must be small, got 3");
    expect(told[0]).toBe("RangeError: bad: v must be small, got 3");
    expect(told[1]).toMatch(/^in cell \d+, line 4:9$/);
    expect(told).toContain("> 4 |   throw new RangeError('bad: v must be small, got ' + v);");
    expect(told.at(-1)).toMatch(/^called from cell \d+, line 6:1$/);
    expect(told.join("\n")).not.toMatch(/tslab|node:|node_modules|dist/);
  });
  it("shows the line after an await, and in a function of an earlier cell", async () => {
    await run("const late = async (): Promise<never> => {\n  await null;\n  throw new Error('late');\n};");
    const { told } = await failureOf("const x = 1;\n\nawait late();");
    expect(told).toContain("> 3 |   throw new Error('late');");
    expect(told.at(-1)).toMatch(/^called from cell \d+, line 3:1$/);
  });
  it("shows the chain of causes", async () => {
    const { told } = await failureOf("throw new Error('outer', { cause: new TypeError('inner') });");
    expect(told).toContain("caused by TypeError: inner");
  });
  it("shows a thrown value that is no error", async () => {
    expect((await failureOf("throw { code: 5 };")).error).toMatchObject({
      ename: "Thrown",
      evalue: "{ code: 5 }",
    });
  });
  it("shows the line of a TypeScript file beside the notebook", async () => {
    const { told } = await failureOf('import { check } from "./helper";\ncheck(3, { most: 2 });');
    expect(told[1]).toBe("in helper.ts, line 4:33");
    expect(told.join("\n")).toContain("> 4 |   if (value > limit.most) throw new RangeError(");
  });
  it("makes its stack speak of cells, for whoever prints it", async () => {
    const outputs = await run("try { throw new Error('x'); } catch (e) { console.log((e as Error).stack); }");
    expect(outputs[0]?.content.text).toMatch(/^Error: x\n {4}at cell \d+, line 1:13\n$/);
  });
  it("does not keep its names", async () => {
    await failureOf("const lost = 1; throw new Error('x');");
    expect((await failureOf("lost")).error.evalue).toMatch(/^lost is not known here/);
  });
});

describe("what nobody awaits", () => {
  it("makes its cell fail when a promise is rejected while the cell runs", async () => {
    const { error, told } = await failureOf(
      "const c = 1;\nvoid (async () => { throw new Error('stray'); })();\nc",
    );
    expect(error.evalue).toBe("stray");
    expect(told).toContain("> 2 | void (async () => { throw new Error('stray'); })();");
    expect(told.at(-1)).toMatch(/^Nothing waited for this: put await before/);
  });
  it("makes its cell fail when it throws outside any promise while the cell runs", async () => {
    for (const later of ["queueMicrotask", "process.nextTick"]) {
      const { error, told } = await failureOf(
        `const c = 2;\n${later}(() => { throw new Error("${later}"); });\nc`,
      );
      expect(error.evalue).toBe(later);
      expect(told.join("\n")).toContain(`> 2 | ${later}(`);
    }
  });
  it("is fine where it is awaited a moment later", async () => {
    const code =
      "const p = Promise.reject(new Error('x'));\nawait new Promise((r) => setTimeout(r, 5));\nawait p.catch(() => 7)";
    expect(await resultOf(code)).toBe("7");
  });
  it("is shown under its own cell when it comes later, not under the next", async () => {
    const first: KernelOutput[] = [];
    await kernel.execute("setTimeout(() => { console.log('hello'); throw new Error('after'); }, 80);", {
      onOutput: (output) => first.push(output),
    });
    const next = await run("await new Promise((r) => setTimeout(r, 250));");
    expect(next).toEqual([]);
    const texts = first.flatMap(({ type, content }) =>
      type === "stream" ? [[content.name, content.text]] : [],
    );
    expect(texts[0]).toEqual(["stdout", "hello\n"]);
    expect(texts[1]?.[0]).toBe("stderr");
    expect(texts[1]?.[1]).toMatch(/Error: after[\s\S]*line 1:\d+[\s\S]*after its cell had ended/);
  });
});

describe("a kernel at leisure", () => {
  /** How many modules of the helpers the kernel has loaded. */
  const loaded = `Object.keys(require.cache).filter((file) => /dist.(survey|shaft|bearing)/.test(file)).length`;
  it("reads the helpers before a cell asks for them, and nothing of that is seen in a cell", async () => {
    const other = await KernelClient.start({ directory: folder });
    const count = async (): Promise<number> => {
      const { outputs } = await other.execute(loaded);
      expect(outputs).toHaveLength(2); // its input and its result
      return Number((outputs[1]!.content.data as Record<string, unknown>)["text/plain"]);
    };
    try {
      expect(await count()).toBeLessThan(50);
      await expect.poll(count, { interval: 1000, timeout: 30_000 }).toBeGreaterThan(150);
      await expect(other.execute("openRebuild")).rejects.toMatchObject({ ename: "TypeCheckError" });
    } finally {
      await other.close();
    }
  });
});

describe("imports", () => {
  it("find this installation of the package, wherever the notebook lies", async () => {
    expect(await run('import * as journalbox from "journalbox";\njournalbox;')).toHaveLength(1);
    const file = await resultOf('require.resolve("journalbox")');
    expect(file).toBe(`'${packageRoot()}/dist/index.js'`);
  });
  it("have the package's types", async () => {
    const { error } = await failureOf('import { noSuchHelper } from "journalbox";');
    expect(error.evalue).toBe("journalbox has no noSuchHelper (line 1)");
    const near = await failureOf('import { openRebuilt } from "journalbox";');
    expect(near.error.evalue).toBe("journalbox has no openRebuilt; did you mean openRebuild? (line 1)");
  });
  it("find a package of the notebook's own folder, through its exports too", async () => {
    expect(await resultOf('import { answer } from "own-package";\nconst n: number = answer;\nn')).toBe("42");
  });
  it("find packages installed beside this one, and Node's own with types", async () => {
    expect(await resultOf('import { mean } from "simple-statistics";\nmean([1, 2, 3])')).toBe("2");
    expect(
      await resultOf('import { basename } from "node:path";\nconst s: string = basename("a/b");\ns'),
    ).toBe("'b'");
  });
  it("find a file beside the notebook as soon as it is there", async () => {
    const { error } = await failureOf('import { late } from "./late";\nlate');
    expect(error.evalue).toContain("./late");
    writeFileSync(join(folder, "late.ts"), "export const late = 7;\n");
    expect(await resultOf('import { late } from "./late";\nlate')).toBe("7");
  });
  it("keep the helpers' types for cells that import nothing, and names only where they were imported", async () => {
    await run('import { inch } from "journalbox";\nconst shaft = inch(2.4375);');
    expect((await failureOf("shaft.nothing")).error.evalue).toContain("nothing");
    expect(await resultOf("shaft.in('inch')")).toBe("2.4375");
    await kernel.reset({ directory: folder });
    expect((await failureOf("inch(1)")).error.evalue).toContain("inch");
    expect(await resultOf('import { thou } from "journalbox";\nthou(1000).in("inch")')).toBe("1");
  });
  it("say which package is not there", async () => {
    expect((await failureOf('import { x } from "no-such-package";')).error.evalue).toMatch(
      /^no-such-package was not found/,
    );
  });
});

describe("a long reckoning in steps", () => {
  const steps = (milliseconds: number) =>
    [
      'import { inSteps, type Step } from "journalbox";',
      "function* count(): Generator<Step, string> {",
      "  for (let done = 1; done <= 8; done++) {",
      `    const end = Date.now() + ${milliseconds};`,
      "    while (Date.now() < end);",
      '    yield { what: "shafts drawn", done: done, of: 8 };',
      "  }",
      '  return "all";',
      "}",
    ].join("\n");
  it("shows how far it is while it goes on, and takes that away", async () => {
    const shown = await run(`${steps(150)}\nconst found = await inSteps(count());\nfound`);
    const types = shown.map(({ type }) => type);
    expect(types[0]).toBe("display_data");
    expect(types.slice(1, -2).every((type) => type === "update_display_data")).toBe(true);
    expect(types.slice(-2)).toEqual(["clear_output", "execute_result"]);
    const texts = shown
      .slice(0, -2)
      .map(({ content }) => (content.data as Record<string, string>)["text/plain"]!);
    expect(texts.length).toBeGreaterThan(2);
    expect(texts[0]).toMatch(/^━+─+ {2}\d of 8 shafts drawn$/);
    const ids = new Set(shown.slice(0, -2).map(({ content }) => JSON.stringify(content.transient)));
    expect(ids.size).toBe(1);
  });
  it("shows nothing where it is soon over, and takes nothing away that the cell has printed", async () => {
    expect((await run(`${steps(1)}\nawait inSteps(count())`)).map(({ type }) => type)).toEqual([
      "execute_result",
    ]);
    const printed = await run(`${steps(100)}\nconsole.log("first");\nawait inSteps(count())`);
    expect(printed.map(({ type }) => type)).toEqual(["stream", "execute_result"]);
  });
  it("is stopped by an interrupt between two steps", async () => {
    const begun = Date.now();
    const failure = failureOf(`${steps(1500)}\nawait inSteps(count())`);
    await new Promise((resolve) => setTimeout(resolve, 1000));
    kernel.interrupt();
    expect((await failure).error).toMatchObject({ ename: "Interrupted" });
    expect(Date.now() - begun).toBeLessThan(9000);
  });
});

describe("interrupting", () => {
  it("ends a cell that waits, and what it left running", async () => {
    const shown: KernelOutput[] = [];
    const code = "await new Promise((r) => setTimeout(r, 300)); console.log('went on');";
    const cell = kernel.execute(code, { onOutput: (output) => shown.push(output) });
    await new Promise((r) => setTimeout(r, 150));
    kernel.interrupt();
    await expect(cell).rejects.toMatchObject({ ename: "Interrupted" });
    await run("await new Promise((r) => setTimeout(r, 300));");
    expect(shown.some(({ type }) => type === "stream")).toBe(false);
  });
  it.each([
    ["that never waits", "for (;;) {}", "line 1:"],
    ["after an await", "await null;\nwhile (true);", "line 2:"],
    ["after a timer", "await new Promise((r) => setTimeout(r, 10));\ndo {} while (true);", "line 2:"],
    ["that waits for nothing", "for (;;) await null;", "line 1:"],
    [
      "over an endless list",
      "const all = function* () { for (;;) yield 1; };\nfor (const one of all()) one;",
      "",
    ],
    ["that catches every error", "await null;\nfor (;;) try { for (;;) {} } catch {}", "line 2:"],
    ["in a file beside the notebook", 'import { spin } from "./spin";\nawait null;\nspin();', "spin.ts"],
  ])("ends a loop %s, says where it was, and keeps earlier names", async (_, code, place) => {
    await run("const kept = 41;");
    const cell = kernel.execute(code);
    await new Promise((r) => setTimeout(r, 300));
    kernel.interrupt();
    const error = await cell.catch((thrown: unknown) => thrown);
    expect(error).toMatchObject({ ename: "Interrupted", evalue: "the cell was interrupted" });
    expect((error as CellError).traceback.map(stripVTControlCharacters).join("\n")).toContain(place);
    expect(await resultOf("kept + 1")).toBe("42");
  });
  it("lets a loop that is ended tidy up", async () => {
    const shown: KernelOutput[] = [];
    const code = "await null;\ntry { for (;;) {} } finally { console.log('tidied'); }";
    const cell = kernel.execute(code, { onOutput: (output) => shown.push(output) });
    await new Promise((r) => setTimeout(r, 200));
    kernel.interrupt();
    await expect(cell).rejects.toMatchObject({ ename: "Interrupted" });
    expect(shown.some(({ content }) => content.text === "tidied\n")).toBe(true);
  });
  it.runIf(process.platform !== "win32")(
    "ends code without a loop too, where it has not awaited yet",
    async () => {
      const cell = kernel.execute(
        "const f = (n: number): number => (n < 2 ? 1 : f(n - 1) + f(n - 2));\nf(90);",
      );
      await new Promise((r) => setTimeout(r, 200));
      kernel.interrupt();
      await expect(cell).rejects.toMatchObject({ ename: "Interrupted" });
      expect(await resultOf("1 + 1")).toBe("2");
    },
  );
  it("ends what an earlier cell left running", async () => {
    await run("setInterval(() => { for (;;) {} }, 20);");
    await new Promise((r) => setTimeout(r, 150)); // it runs by now, and the kernel answers nothing
    kernel.interrupt();
    expect(await resultOf("1 + 1")).toBe("2");
    expect(await resultOf("await new Promise((r) => setTimeout(r, 60));\n2 + 2")).toBe("4");
  });
  it("leaves the next cell alone", async () => {
    const cell = kernel.execute("for (;;) {}");
    await new Promise((r) => setTimeout(r, 200));
    kernel.interrupt();
    await expect(cell).rejects.toMatchObject({ ename: "Interrupted" });
    expect(
      await resultOf("let n = 0;\nwhile (n < 1000) n += 1;\nawait null;\nfor (const x of [1, 2]) n += x;\nn"),
    ).toBe("1003");
  });
  it("does no harm between cells", async () => {
    kernel.interrupt();
    expect(await resultOf("1 + 1")).toBe("2");
  });
  /** Keeps the kernel from whatever else it has to do, for a second: an earlier cell's timer that nothing breaks. */
  const hold = async (): Promise<void> => {
    const wait = "Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 1000)";
    await run(`setTimeout(() => void ${wait}, 20);`);
    await new Promise((r) => setTimeout(r, 200));
  };
  const endless = "const end = Date.now() + 4000;\nawait null;\nwhile (Date.now() < end);";
  it.each([
    ["a request", () => kernel.interrupt()],
    ...(process.platform === "win32"
      ? []
      : [["a signal", () => void process.kill(kernel.pid!, "SIGINT")] as const]),
  ] as const)("by %s ends a cell that was sent, though the kernel had not begun it", async (_, interrupt) => {
    await hold();
    const cell = kernel.execute(endless);
    await new Promise((r) => setTimeout(r, 100)); // it has come to the kernel's socket by now
    interrupt();
    await expect(cell).rejects.toMatchObject({ ename: "Interrupted" });
    expect(await resultOf("1 + 1")).toBe("2");
  });
  it("belongs to all cells that were sent before, and to none after", async () => {
    await hold();
    const before = [1, 2].map((n) => kernel.execute(`${n}`, { stopOnError: false }));
    kernel.interrupt();
    const after = kernel.execute("3");
    const ends = await Promise.allSettled([...before, after]);
    expect(ends.map((end) => (end.status === "rejected" ? end.reason.ename : "ok"))).toEqual([
      "Interrupted",
      "Interrupted",
      "ok",
    ]);
  });
});

describe("cells sent before the one that fails has been answered", () => {
  it("are aborted, and say so; the next one is run", async () => {
    // This one keeps the kernel from reading, so that the others are still on their way when it fails.
    const busy = "const end = Date.now() + 300; while (Date.now() < end); throw new Error('first');";
    const sent = [kernel.execute(busy), kernel.execute("1"), kernel.execute("2")];
    const ends = await Promise.allSettled(sent);
    expect(ends.map((end) => (end.status === "rejected" ? end.reason.ename : "ok"))).toEqual([
      "Error",
      "Aborted",
      "Aborted",
    ]);
    expect(await resultOf("3")).toBe("3");
  });
  it("are run where the front end asked for no stop", async () => {
    const sent = [kernel.execute("throw new Error('first');", { stopOnError: false }), kernel.execute("1")];
    const ends = await Promise.allSettled(sent);
    expect(ends.map(({ status }) => status)).toEqual(["rejected", "fulfilled"]);
  });
});

describe("reset", () => {
  it("gives a clean state: names, globals, environment, modules, timers, numbers", async () => {
    await run('(globalThis as any).stray = 1; process.env.STRAY = "1"; const kept = 1;');
    await run('import { check } from "./helper";');
    await run(
      'import { appendFileSync } from "node:fs";\nsetInterval(() => appendFileSync("ticks.txt", "x"), 5);',
    );
    await run("await new Promise((r) => setTimeout(r, 60));");
    await kernel.reset({ directory: folder, sheet: "02-next" });
    const ticks = readFileSync(join(folder, "ticks.txt"), "utf8").length;
    expect(ticks).toBeGreaterThan(0);
    expect((await failureOf("kept")).error.evalue).toMatch(/^kept is not known here/);
    const { executionCount } = await kernel.execute("await new Promise((r) => setTimeout(r, 60));");
    expect(executionCount).toBe(2);
    expect(readFileSync(join(folder, "ticks.txt"), "utf8")).toHaveLength(ticks);
    expect(await resultOf("[(globalThis as any).stray, process.env.STRAY]")).toBe("[ undefined, undefined ]");
    expect(await resultOf('import { check } from "./helper";\ncheck(1, { most: 2 })')).toBe("1");
  });
  it("owes pictures to a client that draws them itself, and draws them for all others", async () => {
    const figure = { data: [], layout: { width: 300, height: 200 } };
    const code = `({ title: "Shaft", blocks: [{ type: "figure", figure: ${JSON.stringify(figure)}, alt: "" }] })`;
    const html = async (): Promise<string> =>
      String(((await run(code))[0]!.content.data as Record<string, unknown>)["text/html"]);
    await kernel.reset({ directory: folder, pictures: "owed" });
    expect(await html()).toContain("<!--journalbox: picture 0 comes here-->");
    await kernel.reset({ directory: folder });
    expect(await html()).toContain('<img src="data:image/svg+xml;base64,');
  });
  it("tells helpers which sheet runs, and where", async () => {
    await kernel.reset({ directory: folder, sheet: "02-next" });
    const session = `${packageRoot()}/dist/record/session.js`;
    expect(await resultOf(`require(${JSON.stringify(session)}).getSession()`)).toBe(
      `{ directory: '${folder}', sheet: '02-next' }`,
    );
  });
  it("compiles a cell it has compiled before no second time, and what it does and says is the same", async () => {
    const cells = [
      "const size = 3;\nsize",
      "const twice = size * 2;\nif (twice > 5) throw new Error('too big');",
    ];
    const told: (readonly string[])[] = [];
    for (let time = 0; time < 2; time += 1) {
      await kernel.reset({ directory: folder, sheet: "02-again" });
      expect(await resultOf(cells[0]!)).toBe("3");
      told.push((await failureOf(cells[1]!)).told);
    }
    expect(told[0]!.join("\n")).toContain("> 2 | if (twice > 5)");
    expect(told[1]).toEqual(told[0]);
  });
  it("takes a cell anew where the names before it are others", async () => {
    await kernel.reset({ directory: folder });
    await run("const size = 3;");
    expect(await resultOf("const twice: number = size * 2;\ntwice")).toBe("6");
    await kernel.reset({ directory: folder });
    await run('const size = "3";');
    expect((await failureOf("const twice: number = size * 2;\ntwice")).error.evalue).toMatch(/size|number/);
  });
  it("sees that a file beside the notebook is another, though the cell is the same", async () => {
    const cell = 'import { most } from "./bounds";\nmost';
    for (const most of ["1", "2"]) {
      writeFileSync(join(folder, "bounds.ts"), `export const most = ${most};\n`);
      await kernel.reset({ directory: folder });
      expect(await resultOf(cell)).toBe(most);
    }
  });
  it("moves to another folder, and back", async () => {
    const other = temporaryFolder();
    await kernel.reset({ directory: other });
    expect(await resultOf("process.cwd()")).toBe(`'${other}'`);
    await kernel.reset({ directory: folder });
    expect(await resultOf('import { check } from "./helper";\ncheck(1, { most: 2 })')).toBe("1");
  });
  it("says so when the folder is not there, and goes on", async () => {
    await expect(kernel.reset({ directory: `${folder}/missing` })).rejects.toThrow(/ENOENT/);
    expect(await resultOf("1")).toBe("1");
  });
});

describe("other requests", () => {
  it("kernel_info_request: what it is, with its own version and TypeScript's", async () => {
    expect(await kernel.request("kernel_info_request", {})).toMatchObject({
      status: "ok",
      implementation: "journalbox",
      implementation_version: packageVersion(),
      protocol_version: "5.3",
      language_info: { name: "typescript", version: "5.0.4", file_extension: ".ts" },
    });
  });
  it("complete_request: names and members with their kinds, positions counted in characters", async () => {
    await run("const shaftLength = 2;");
    const at = { cursor_start: 5, cursor_end: 13 };
    expect(await kernel.request("complete_request", { code: '"😀"; shaftLen', cursor_pos: 13 })).toEqual({
      status: "ok",
      matches: ["shaftLength"],
      ...at,
      metadata: {
        _jupyter_types_experimental: [{ text: "shaftLength", type: "constant", start: 5, end: 13 }],
      },
    });
    const helpers = await kernel.request("complete_request", {
      code: 'import { inch,  } from "journalbox";',
      cursor_pos: 15,
    });
    const names = helpers.matches as string[];
    const built: object = require(join(packageRoot(), "dist", "index.js"));
    const values = Object.keys(built).filter((name) => name !== "inch");
    expect(names.slice(0, values.length).sort()).toEqual(values.sort()); // what is called, before all types
    expect(names).toEqual(expect.arrayContaining(["Length", "WearBands"]));
    expect(
      names.filter((name) => /^(NameByExponents|ExponentsOf|TableBlock|Point_2|UnitKinds)$/.test(name)),
    ).toEqual([]);
    const begun = { code: 'import { wearB } from "journalbox";', cursor_pos: 14 };
    expect(await kernel.request("complete_request", begun)).toMatchObject({
      matches: ["wearBands", "WearBand", "WearBands", "WearBandsOptions"],
    });
    const members = await kernel.request("complete_request", { code: "[1].reduceR", cursor_pos: 11 });
    expect(members).toMatchObject({
      matches: ["reduceRight"],
      metadata: { _jupyter_types_experimental: [{ text: "reduceRight", type: "method" }] },
    });
  });
  it("inspect_request: the type of a name", async () => {
    const { found, data } = await kernel.request("inspect_request", { code: "shaftLength", cursor_pos: 3 });
    expect(found).toBe(true);
    expect(data).toMatchObject({ "text/plain": expect.stringContaining("const shaftLength: 2") });
  });
  it("inspect_request: the doc comment of a helper as Markdown, with units and source", async () => {
    await run('import { wearBands } from "journalbox";');
    const { data } = await kernel.request("inspect_request", { code: "wearBands", cursor_pos: 2 });
    const markdown = String((data as Record<string, unknown>)["text/markdown"]);
    expect(markdown).toMatch(/^```typescript\n.*function wearBands\(/);
    expect(markdown).toMatch(/^- `options\.nominal` .*\[m\]$/m);
    expect(markdown).toMatch(/^\*\*Source\*\* ./m);
    expect(markdown).toContain("**Example**\n\n```typescript\n");
    expect((data as Record<string, unknown>)["text/plain"]).toContain("@param");
  });
  it("inspect_request: of a name that holds a helper's result, once its types were read without comments", async () => {
    await run('import { inch } from "journalbox";\nconst journal = inch(2);');
    const { data } = await kernel.request("inspect_request", { code: "journal.in", cursor_pos: 9 });
    expect((data as Record<string, unknown>)["text/plain"]).toMatch(/\n\n\S/); // prose after the signature
    expect(await resultOf('journal.in("mm")')).toBe("50.8");
  });
  it("inspect_request: finds nothing between names", async () => {
    expect(await kernel.request("inspect_request", { code: "  ", cursor_pos: 1 })).toEqual({
      status: "ok",
      found: false,
      data: {},
      metadata: {},
    });
  });
  it("is_complete_request: whether a line wants more", async () => {
    expect(await kernel.request("is_complete_request", { code: "f(" })).toEqual({
      status: "incomplete",
      indent: "  ",
    });
    expect(await kernel.request("is_complete_request", { code: "f()" })).toEqual({ status: "complete" });
  });
  it("history_request and comm_info_request: there is neither history nor widget", async () => {
    await run("'not remembered'");
    expect(await kernel.request("history_request", { hist_access_type: "tail", n: 5 })).toEqual({
      status: "ok",
      history: [],
    });
    expect(await kernel.request("comm_info_request", {})).toEqual({ status: "ok", comms: {} });
  });
});
