import type { CompileSteps } from "./cell-typescript.js";
import type { Position } from "./excerpt.js";

/** Code the kernel compiled: a cell, or a TypeScript file beside the notebook that a cell imports. */
export interface Script {
  /** How people call it: "cell 3" or "helper.ts". */
  readonly title: string;
  readonly source: string;
  readonly steps: CompileSteps;
  /** Lines tslab puts before the source when it compiles. */
  readonly linesBefore: number;
  /** Lines of the compiled code; what tslab puts after them is no part of the script. */
  readonly compiledLines: number;
}

/** A place in a script's source. */
export interface Place {
  readonly script: Script;
  readonly at: Position;
}

/** The scripts of this kernel, by the name under which the engine knows them. */
export class Scripts {
  readonly #byName = new Map<string, Script>();

  add(name: string, script: Script): void {
    this.#byName.set(name, script);
  }

  has(name: string): boolean {
    return this.#byName.has(name);
  }

  /** The place in the source for a place in the compiled code; both count from 1. */
  placeOf(name: string, line: number, column: number): Place | undefined {
    const script = this.#byName.get(name);
    const at = script && backToSource(script, line, column);
    return script && at && { script, at };
  }
}

function backToSource(script: Script, line: number, column: number): Position | undefined {
  if (line > script.compiledLines) return undefined;
  let at = { line: line - 1, column: column - 1 };
  for (const step of script.steps) {
    const entry = step.findEntry(at.line, at.column);
    if (!("originalLine" in entry)) return undefined;
    at = { line: entry.originalLine, column: entry.originalColumn };
  }
  const sourceLine = at.line - script.linesBefore;
  return sourceLine < 0 ? undefined : { line: sourceLine + 1, column: at.column + 1 };
}
