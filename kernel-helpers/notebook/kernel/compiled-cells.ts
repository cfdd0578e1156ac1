import type { ConvertResult } from "tslab/dist/converter.js";
import type { CompileSteps } from "./cell-typescript.js";

/** What the compiler made of a cell, and the way back from it. */
export interface CompiledCell {
  readonly converted: ConvertResult;
  readonly steps: CompileSteps | undefined;
}

/** More cells than this are not kept: the one kept longest goes. */
const mostKept = 400;

/** A cell that imports a file beside the notebook: that file may be another the next time. */
const importsFile = /(?:\bfrom|\bimport|\brequire)\s*\(?\s*["'`]\.{1,2}\//;

/**
 * Cells by their source and by the declarations of the cells before: what they compile to follows from these alone, as
 * long as the folder is the same and no file beside the notebook is imported. A sheet that a warm kernel runs again is
 * so compiled once.
 */
export class CompiledCells {
  readonly #kept: Map<string, CompiledCell> = new Map();

  find(declarations: string, source: string): CompiledCell | undefined {
    return this.#kept.get(keyOf(declarations, source));
  }

  /** Keeps a cell that compiled without fault and stands on no file. */
  keep(declarations: string, source: string, { converted, steps }: CompiledCell): void {
    if (converted.diagnostics.length > 0 || (converted.sideOutputs ?? []).length > 0) return;
    if (importsFile.test(declarations) || importsFile.test(source)) return;
    this.#kept.set(keyOf(declarations, source), { converted: { ...converted }, steps });
    if (this.#kept.size > mostKept) this.#kept.delete(this.#kept.keys().next().value!);
  }

  forget(): void {
    this.#kept.clear();
  }
}

/** No source holds the character 0. */
function keyOf(declarations: string, source: string): string {
  return `${declarations}\0${source}`;
}
