import { SourceMap } from "node:module";
import { dirname, resolve } from "node:path";
import type * as TypeScript from "@tslab/typescript-for-tslab";
import { addEmitSteps } from "./emit-steps.js";
import { createLightProgram } from "./light-program.js";
import { resolveQuickly } from "./resolve-quickly.js";
import { shorthandStep } from "./shorthand-names.js";
import { stopLoopsStep } from "./stop-loops.js";

/** How one script was compiled: from the last step back to the first. */
export type CompileSteps = readonly SourceMap[];

/** What the kernel adds to tslab's TypeScript. */
export interface CellTypeScript {
  readonly ts: typeof TypeScript;
  /** The way back from compiled code to its source, by the compiled text itself. */
  readonly takeSteps: (compiled: string) => CompileSteps | undefined;
  /** The program in which the last cell was checked. */
  readonly lastProgram: () => TypeScript.Program | undefined;
}

/**
 * Hands tslab a TypeScript that checks strictly and keeps source maps. tslab fixes its own compiler options,
 * so its TypeScript is replaced in node's module cache: this must run before tslab's converter is loaded.
 *
 * tslab compiles a cell in two steps: TypeScript to an ES module, then that to CommonJS. The first step
 * writes its map at the end of the text, the second is told to make one.
 */
export function prepareTypeScript(): CellTypeScript {
  const path = require.resolve("@tslab/typescript-for-tslab", {
    paths: [dirname(require.resolve("tslab/package.json"))],
  });
  const ts: typeof TypeScript = require(path);
  const steps = new Map<string, CompileSteps>();
  let lastProgram: TypeScript.Program | undefined;

  const createWatchCompilerHost = (
    files: string[],
    options: TypeScript.CompilerOptions,
    ...rest: unknown[]
  ): unknown =>
    (ts.createWatchCompilerHost as (...args: unknown[]) => unknown)(
      files,
      { ...options, ...cellOptions(ts) },
      ...rest,
    );

  const transpileModule = (
    input: string,
    options: TypeScript.TranspileOptions,
  ): TypeScript.TranspileOutput => {
    const first = cutInlineMap(input);
    const output = ts.transpileModule(first.code, {
      ...options,
      compilerOptions: { ...options.compilerOptions, sourceMap: true },
    });
    const second = cutMapComment(output.outputText);
    if (first.map !== undefined && output.sourceMapText !== undefined)
      steps.set(
        second,
        [output.sourceMapText, first.map].map((text) => new SourceMap(JSON.parse(text))),
      );
    return { ...output, outputText: second };
  };

  const createWatchProgram = (
    host: TypeScript.WatchCompilerHostOfFilesAndCompilerOptions<TypeScript.BuilderProgram>,
  ): unknown => {
    addEmitSteps(host, [(checker) => shorthandStep(ts, checker), () => stopLoopsStep(ts)]);
    resolveQuickly(ts, host);
    const create = createLightProgram(ts);
    host.createProgram = (...asked) => {
      const made = create(...asked);
      lastProgram = made.getProgram();
      return made;
    };
    return ts.createWatchProgram(host);
  };

  require.cache[path]!.exports = { ...ts, createWatchCompilerHost, createWatchProgram, transpileModule };
  return {
    ts,
    lastProgram: () => lastProgram,
    takeSteps: (compiled) => {
      const found = steps.get(compiled);
      steps.delete(compiled);
      return found;
    },
  };
}

/** Strict, packages found through "exports" too, and Node's own types from this installation. */
function cellOptions(ts: typeof TypeScript): TypeScript.CompilerOptions {
  return {
    strict: true,
    inlineSourceMap: true,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    types: ["node"],
    typeRoots: [resolve(dirname(require.resolve("@types/node/package.json")), "..")],
  };
}

const inlineMap = /\n\/\/# sourceMappingURL=data:application\/json;base64,(\S+)\s*$/;

function cutInlineMap(code: string): { readonly code: string; readonly map?: string } {
  const found = inlineMap.exec(code);
  if (found === null) return { code };
  return { code: code.slice(0, found.index), map: Buffer.from(found[1]!, "base64").toString("utf8") };
}

function cutMapComment(code: string): string {
  return code.replace(/\n\/\/# sourceMappingURL=.*\s*$/, "\n");
}
