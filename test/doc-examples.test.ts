import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { setUnitSystem } from "../kernel-helpers/quantity/index.js";
import { docExamples, faultOfExample } from "./support/doc-examples.js";

const root = join(__dirname, "..", "kernel-helpers");

/** Files whose examples need a rebuild folder, a kernel or a browser, each with its reason; it may only shrink. */
const needMoreThanCode: Readonly<Record<string, string>> = {};

const files = readdirSync(root, { recursive: true, encoding: "utf8" })
  .filter((path) => path.endsWith(".ts"))
  .map((path) => path.replaceAll("\\", "/"))
  .sort();
const withExamples = files
  .map((file) => ({ file, examples: docExamples(readFileSync(join(root, file), "utf8")) }))
  .filter(({ examples }) => examples.length > 0);

/** What an example may name: what a worksheet may import, its own folder's contents, and its own file's. */
async function scopeOf(file: string): Promise<Readonly<Record<string, unknown>>> {
  const folder = join(dirname(file), "index.ts").replaceAll("\\", "/");
  const modules = ["index.ts", "quantity/index.ts", ...(files.includes(folder) ? [folder] : []), file];
  const scope: Record<string, unknown> = {};
  for (const module of modules) Object.assign(scope, await import(join(root, module)));
  return scope;
}

/** Exported functions and constants with no example in the comment above (any one, of overloads). */
function exportsWithoutExample(file: string): string[] {
  const source = readFileSync(join(root, file), "utf8");
  const pattern = /(\/\*\*(?:(?!\*\/)[\s\S])*\*\/\n)?export (?:function|const) (\w+)/g;
  const exported = [...source.matchAll(pattern)].map((match) => ({
    name: match[2]!,
    hasExample: match[1]?.includes("@example") === true,
  }));
  const shown = new Set(exported.filter((e) => e.hasExample).map((e) => e.name));
  return [...new Set(exported.map((e) => e.name))].filter((name) => !shown.has(name));
}

describe("the examples in the doc comments", () => {
  afterEach(() => setUnitSystem(undefined));

  for (const { file, examples } of withExamples) {
    if (Object.hasOwn(needMoreThanCode, file)) continue;
    it(`of ${file} give what they show`, async () => {
      const scope = await scopeOf(file);
      const faults: string[] = [];
      for (const example of examples) {
        setUnitSystem(undefined);
        const fault = await faultOfExample(example, scope);
        if (fault !== undefined) faults.push(`kernel-helpers/${file}:${example.line}: ${fault}`);
      }
      expect(faults).toEqual([]);
    });
  }

  it("stand on every exported helper of quantity/", () => {
    const without = files
      .filter((file) => file.startsWith("quantity/") && !file.endsWith("index.ts"))
      .flatMap((file) => exportsWithoutExample(file).map((name) => `${file}: ${name}`));
    expect(without).toEqual([]);
  });

  it("are left unchecked only where the reason still holds", () => {
    const names = withExamples.map(({ file }) => file);
    expect(Object.keys(needMoreThanCode).filter((file) => !names.includes(file))).toEqual([]);
  });
});
