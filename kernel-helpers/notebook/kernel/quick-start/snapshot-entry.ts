import { readFileSync } from "node:fs";
import Module from "node:module";
import { dirname, resolve } from "node:path";
import { startupSnapshot } from "node:v8";
import { Script } from "node:vm";
import type * as TypeScript from "@tslab/typescript-for-tslab";
import type { SnapshotInput } from "./prepare-quick-start.js";

// Run by `node --build-snapshot`: whatever is in memory at its end is written to a file, from which later
// processes start. Only Node's own modules can be loaded here.

const input: SnapshotInput = JSON.parse(readFileSync(process.env.JOURNALBOX_SNAPSHOT_INPUT!, "utf8"));
const { compiler, options, files } = input;

/** Declarations read already; one is used again only for the very same text, read anew by the later process. */
const parsed = new Map<string, TypeScript.SourceFile>();

/** The one place in which TypeScript turns the text of a file into a tree, and what stands there instead. */
const place =
  "return text !== void 0 ? createSourceFile(fileName, text, languageVersionOrOptions, setParentNodes) : void 0;";
const instead = `
  if (text === void 0) return void 0;
  const known = parsed.get(fileName);
  if (known !== void 0 && known.text === text && known.languageVersion === (languageVersionOrOptions.languageVersion ?? languageVersionOrOptions)) return known;
  const made = createSourceFile(fileName, text, languageVersionOrOptions, setParentNodes);
  if (keeping.now) parsed.set(fileName, made);
  return made;`;

const source = readFileSync(compiler, "utf8");
if (source.split(place).length !== 2)
  throw new Error("TypeScript reads its files in another place than expected");

const keeping = { now: true };
const compilerModule: { exports: unknown } = { exports: {} };
const run: (...parameters: unknown[]) => void = new Script(
  `(function (exports, require, module, __filename, __dirname, parsed, keeping) {${source.replace(place, () => instead)}\n})`,
  { filename: compiler },
).runInThisContext();
run(compilerModule.exports, require, compilerModule, compiler, dirname(compiler), parsed, keeping);
const ts = compilerModule.exports as typeof TypeScript;

// Parses and binds, as the first program of a kernel would.
const texts = new Map(files.map(({ name, text }) => [name, text]));
const host = ts.createCompilerHost(options);
const { fileExists } = host;
host.readFile = (name) => texts.get(name) ?? ts.sys.readFile(name);
host.fileExists = (name) => texts.has(name) || fileExists(name);
ts.createProgram({ rootNames: [...texts.keys()], options, host }).getTypeChecker();
for (const name of parsed.keys()) if (!texts.has(name)) parsed.delete(name);
keeping.now = false;

startupSnapshot.setDeserializeMainFunction(() => {
  Error.stackTraceLimit = 10; // Node leaves it out of the snapshot, and errors are then without a stack
  process.chdir("."); // Node remembers the folder of the process that wrote the snapshot
  process.execArgv = process.execArgv.filter((argument) => !argument.startsWith("--snapshot-blob"));
  const program = resolve(process.argv[1]!);
  const known = new Module(compiler);
  known.filename = compiler;
  known.loaded = true;
  known.exports = ts;
  (Module as unknown as { _cache: Record<string, Module> })._cache[compiler] = known;
  Module.createRequire(program)(program);
});
