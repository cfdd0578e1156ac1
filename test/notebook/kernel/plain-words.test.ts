import { createRequire } from "node:module";
import { join } from "node:path";
import type * as TypeScript from "@tslab/typescript-for-tslab";
import { beforeAll, describe, expect, it } from "vitest";
import { nameOfType, withArticle } from "../../../kernel-helpers/notebook/kernel/name-of-type.js";
import { type CompilerMessage, plainWords } from "../../../kernel-helpers/notebook/kernel/plain-words.js";
import { buildTimeout, ensureBuilt } from "../../support/built.js";

const root = join(__dirname, "..", "..", "..");
const prelude = `
import { inch, thou, lbf, degF, type Quantity, type Temperature } from "${root.replaceAll("\\", "/")}/dist/quantity/index.js";
declare function fit(options: { bore: Quantity<"length">; load: Quantity<"force"> }): number;
declare const maybe: { size: number } | undefined;
declare const later: Promise<{ size: number }>;
declare const name: string;
interface Part { length: number; bore: number; mass: number; }
interface Tool { length: number; }
declare const other: Tool;
declare function takes(part: Part): void;
interface Place { folder?: string; }
declare function open(place?: Place): void;
`;

/** Lines of a cell, and what is to be said of the fault in each. */
const cases: readonly (readonly [cell: string, words: string])[] = [
  ["inch(2.5).plus(lbf(3));", "a length was expected here, but this is a force"],
  [
    'const d: Quantity<"torque or energy"> = inch(1);',
    "a torque or energy was expected here, but this is a length",
  ],
  [
    "inch(1).plus(2);",
    "a length was expected here, but this is a plain number: give it a unit, e.g. inch(2.5) or mm(60)",
  ],
  ["degF(70).plus(inch(1));", "a temperature difference was expected here, but this is a length"],
  ["const t: Temperature = inch(1);", "a temperature was expected here, but this is a length"],
  ['inch("2 1/2");', "a plain number was expected here, but this is text"],
  ["inch(1) + thou(2);", "+ does not work between a length and a length: write .plus() in its place"],
  [
    "inch(1) * 2;",
    "this is no plain number: for quantities write .plus(), .minus(), .times() or .over() in place of + - * /",
  ],
  ["fit({ bore: inch(1) });", "load is missing here"],
  ["fit({ bore: inch(1), load: inch(2) });", "a force was expected here, but this is a length"],
  ["fit({ bore: inch(1), load: lbf(2), wear: 1 });", "there is no wear here"],
  ["fit({ bore: inch(1), loads: lbf(2) });", "there is no loads here; did you mean load?"],
  ["inches(2);", "inches is not known here; did you mean inch?"],
  ['inch(1).times("2");', "a plain number was expected here, but this is text"],
  ["journal;", "journal is not known here: is it spelled right, and was its cell run before?"],
  ["inch(2).pluss(inch(1));", "a length has no pluss; did you mean plus?"],
  ["inch(2).diameter;", "a length has no diameter"],
  ["inch();", "1 values were expected in the brackets, but 0 were given"],
  ["maybe.size;", "maybe may be missing: check that it is there before using it"],
  ["later.size;", "size is not there yet: put await before what it is taken from"],
  [
    'import { q } from "no-such-package"; q;',
    "no-such-package was not found: is it spelled right, and is it installed?",
  ],
  ["const one = 1; one = 2;", "one cannot be changed: give the new value a name of its own"],
  ["const two = 1; const two = 2;", "two is named twice in this cell: give one of them another name"],
  ["const half = (x) => x / 2;", "say what x is, e.g. x: number"],
  ["inch(2;", ") is missing before this"],
  ['const s = "open;', "this text has no closing quotation mark"],
  ["const v = ;", "a value is missing here"],
  ["const list: number[] = [inch(1)];", "a plain number was expected here, but this is a length"],
  ['const names: string = ["a"];', "text was expected here, but this is a list (of text)"],
  [
    "const n: number = later;",
    "a plain number was expected here, but this is a value still being computed: put await before it",
  ],
  ['inch(2).in("lbf");', "a unit of length was expected here, but lbf is a unit of force"],
  ['inch(2).in("in");', 'there is no unit "in"; did you mean "inch"?'],
  ['inch(2).in("MM");', 'there is no unit "MM"; did you mean "mm"?'],
  ['inch(2).in("micrometer");', 'there is no unit "micrometer"; did you mean "micrometre"?'],
  [
    'lbf(2).in("smoot");',
    'there is no unit "smoot"; a force has "newton", "kilonewton", "lbf", "kgf", "shortTonForce", "longTonForce"',
  ],
  ["inch(2).in(name);", "a unit of length was expected here, but this is text"],
  ["takes(inch(3));", "Part was expected here, but this is a length"],
  ["takes(other);", "Part was expected here, but this is Tool"],
  ["open('here');", 'Place was expected here, but this is text "here"'],
  ["wearBands;", 'wearBands is not known here: put import { wearBands } from "journalbox" before it'],
  ["later && 1;", "this is a value still being computed: put await before it"],
  ["let unset: number; unset;", "unset has no value yet"],
  ["null.size;", "there is nothing here that this could be taken from"],
  ["return 5;", "return has no place outside a function: a cell shows the value of its last line"],
  ["const w: number = undefined;", "a plain number was expected here, but this is nothing"],
];

describe("plainWords(fault)", () => {
  // The texts come from the very TypeScript that checks the cells, so that a change of its wording is seen here.
  let said: string[];
  beforeAll(async () => {
    await ensureBuilt();
    said = faultsOf(cases.map(([cell]) => prelude + cell)).map(plainWords);
  }, buildTimeout);
  it.each(cases.map(([cell, words], i) => ({ cell, words, i })))("says of $cell: $words", ({ words, i }) => {
    expect(said[i]).toBe(words);
  });
  it("keeps TypeScript's own words where it knows no better", () => {
    expect(plainWords([{ code: 9999, messageText: "Something of tomorrow." }])).toBe("Something of tomorrow");
  });
});

describe("nameOfType(type)", () => {
  it.each([
    ['Quantity<"length">', "length"],
    [
      'Quantity<"unnamed (length 5, mass 0, time 0, temperature 0, angle 0)">',
      "unnamed (length 5, mass 0, time 0, temperature 0, angle 0)",
    ],
    ["number", "plain number"],
    ['readonly Quantity<"length">[]', "list (of length)"],
    ["Map<string, number>", "Map<string, number>"],
  ])("of %s is %s", (type, name) => {
    expect(nameOfType(type)).toBe(name);
  });
});

describe("withArticle(name)", () => {
  it("is an before a vowel, a before others, none before a type's own name", () => {
    expect([withArticle("area"), withArticle("length"), withArticle("Map<string, number>")]).toEqual([
      "an area",
      "a length",
      "Map<string, number>",
    ]);
  });
});

/** The first fault TypeScript finds in each text. */
function faultsOf(texts: readonly string[]): CompilerMessage[][] {
  const resolve = createRequire(join(root, "node_modules", "tslab", "package.json"));
  const ts: typeof TypeScript = resolve("@tslab/typescript-for-tslab");
  const options: TypeScript.CompilerOptions = {
    strict: true,
    noEmit: true,
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    lib: ["lib.es2022.d.ts"],
    types: [],
    skipLibCheck: true,
  };
  const files = new Map(texts.map((text, i) => [join(root, `cell-${i}.ts`), text]));
  const host = ts.createCompilerHost(options);
  const { fileExists, readFile } = host;
  host.fileExists = (path) => files.has(path) || fileExists(path);
  host.readFile = (path) => files.get(path) ?? readFile(path);
  const program = ts.createProgram([...files.keys()], options, host);
  return [...files.keys()].map((path) => {
    const file = program.getSourceFile(path);
    const [first] = [...program.getSyntacticDiagnostics(file), ...program.getSemanticDiagnostics(file)];
    if (first === undefined) throw new Error(`TypeScript finds nothing wrong in ${files.get(path)}`);
    return flat(first.messageText, first.code);
  });
}

/** A message and its details one after the other, as tslab hands them on. */
function flat(message: string | TypeScript.DiagnosticMessageChain, code: number): CompilerMessage[] {
  if (typeof message === "string") return [{ code, messageText: message }];
  return [message, ...(message.next ?? [])].flatMap((part, i) =>
    i === 0 ? [{ code: part.code, messageText: part.messageText }] : flat(part, part.code),
  );
}
