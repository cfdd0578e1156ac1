import { readFileSync } from "node:fs";
import { basename } from "node:path";
import type { QuickInfo } from "@tslab/typescript-for-tslab";
import type { CompletionInfo, Converter, ConvertResult, Diagnostic } from "tslab/dist/converter.js";
import type { ConverterSet, Executor } from "tslab/dist/executor.js";
import type { CompileSteps } from "./cell-typescript.js";
import { type CompiledCell, CompiledCells } from "./compiled-cells.js";
import type { Tslab } from "./load-tslab.js";
import type { Scripts } from "./scripts.js";
import { Interrupted, type StopFlag } from "./stop-flag.js";

/** How one cell went. */
export type CellOutcome =
  | { readonly status: "ok"; readonly value: unknown }
  | { readonly status: "type-error"; readonly diagnostics: readonly Diagnostic[] }
  | { readonly status: "thrown"; readonly thrown: unknown }
  | { readonly status: "interrupted"; readonly stopped?: Interrupted };

/**
 * Runs cells on tslab's converter and executor, one at a time.
 *
 * The executor tells its results to a console; the one it is given here keeps the last value of the cell and
 * what was thrown as they are. tslab keeps no names of a cell that threw.
 */
export class CellRunner {
  readonly #tslab: Tslab;
  readonly #scripts: Scripts;
  readonly #stopFlag: StopFlag;
  #converter: Converter;
  #executor: Executor;
  /** Compiled files beside the notebook: tslab compiles each once, an executor starts without any. */
  readonly #sideOutputs = new Map<string, string>();
  #sideOutputsGiven = true;
  /** Modules written in cells, by file name without ending. */
  readonly #modules = new Map<string, string>();
  readonly #compiled: CompiledCells = new CompiledCells();
  #cellsRun = 0;
  // Of the cell in hand:
  #number = 0;
  #source = "";
  #diagnostics: readonly Diagnostic[] = [];
  #value: unknown;
  #thrown: readonly unknown[] = [];
  #interrupt: (() => void) | undefined;

  constructor(tslab: Tslab, scripts: Scripts, stopFlag: StopFlag) {
    this.#tslab = tslab;
    this.#scripts = scripts;
    this.#stopFlag = stopFlag;
    this.#converter = tslab.createConverter({ isJS: false, isBrowser: false });
    this.#executor = this.#newExecutor();
  }

  /** Runs one cell and waits for its last value, where that is a promise. The stop flag is clear, unless it is to stop. */
  async run(source: string, number: number): Promise<CellOutcome> {
    if (this.#tslab.getCodeMetadata(source).mode === "browser")
      return { status: "thrown", thrown: new Error("cells marked @browser do not run here") };
    this.#number = number;
    this.#source = source;
    this.#diagnostics = [];
    this.#value = undefined;
    this.#thrown = [];
    const interrupted = new Promise<CellOutcome>((resolve) => {
      this.#interrupt = () => resolve({ status: "interrupted" });
    });
    try {
      return await Promise.race([this.#execute(source), interrupted]);
    } finally {
      this.#interrupt = undefined;
      this.#stopFlag.notice(); // whoever asked it to stop must not break into the next cell
    }
  }

  /** Compiles for the sake of what has to be read for it; nothing of it is kept. */
  compileForNothing(source: string): void {
    const { output } = this.#converter.convert("", source);
    if (output !== undefined) this.#tslab.takeSteps(output);
  }

  /** Ends a waiting cell, and the loops it left running. */
  interrupt(): void {
    this.#stopFlag.stop();
    this.#stopFlag.notice();
    this.#interrupt?.();
    this.#executor.interrupt();
  }

  /** A clean state: no names, no declarations, no modules of an earlier sheet. */
  reset(sameFolder: boolean): void {
    if (!sameFolder || this.#modules.size > 0) {
      // tslab's converter is bound to its folder, and keeps modules written in cells for good.
      this.#converter.close();
      this.#converter = this.#tslab.createConverter({ isJS: false, isBrowser: false });
      this.#sideOutputs.clear();
      this.#modules.clear();
      this.#compiled.forget();
    }
    this.#executor = this.#newExecutor();
    this.#sideOutputsGiven = false;
  }

  complete(source: string, position: number): CompletionInfo {
    return this.#executor.complete(source, position);
  }

  /** What is known of the name at a position; undefined where nothing is. */
  inspect(source: string, position: number): QuickInfo | undefined {
    this.#tslab.readComments();
    return this.#executor.inspect(source, position);
  }

  close(): void {
    this.#converter.close();
  }

  async #execute(source: string): Promise<CellOutcome> {
    const ok = await this.#executor.execute(source);
    if (this.#diagnostics.length > 0) return { status: "type-error", diagnostics: this.#diagnostics };
    if (!ok) return this.#thrownOrInterrupted(this.#thrown[0]);
    try {
      return { status: "ok", value: await this.#value };
    } catch (thrown) {
      return this.#thrownOrInterrupted(thrown);
    }
  }

  #thrownOrInterrupted(thrown: unknown): CellOutcome {
    if (thrown instanceof Interrupted) return { status: "interrupted", stopped: thrown };
    const code = (thrown as { code?: unknown } | undefined)?.code;
    const message = (thrown as { message?: unknown } | undefined)?.message;
    // Where the engine took the signal, no other part of the kernel will see it.
    if (code === "ERR_SCRIPT_EXECUTION_INTERRUPTED") this.#stopFlag.takeSignal();
    else if (message !== "Interrupted asynchronously") return { status: "thrown", thrown };
    return { status: "interrupted" };
  }

  #newExecutor(): Executor {
    const node: Converter = {
      convert: (declarations, source) => this.#convert(declarations, source),
      addModule: (name, source, meta) => {
        this.#modules.set(name, source);
        this.#diagnostics = this.#converter.addModule(name, source, meta);
        return [...this.#diagnostics];
      },
      inspect: (...asked) => this.#converter.inspect(...asked),
      complete: (...asked) => this.#converter.complete(...asked),
      close: () => this.#converter.close(),
    };
    const converters: ConverterSet = { node, browser: node, close: () => node.close() };
    return this.#tslab.createExecutor(process.cwd(), converters, {
      log: (value: unknown) => {
        this.#value = value;
      },
      error: (...said: unknown[]) => {
        this.#thrown = said;
      },
    });
  }

  #convert(declarations: string, source: string): ConvertResult {
    // A file beside the notebook, or a module written in a cell, may be another by now.
    const alone = this.#sideOutputs.size === 0 && this.#modules.size === 0;
    const known = alone ? this.#compiled.find(declarations, source) : undefined;
    if (known !== undefined) return this.#again(known);
    const converted = this.#converter.convert(declarations, source);
    this.#diagnostics = converted.diagnostics;
    for (const { path, data } of converted.sideOutputs ?? []) {
      this.#sideOutputs.set(path, data);
      this.#nameFile(path, data);
    }
    const { output } = converted;
    const steps = output === undefined ? undefined : this.#tslab.takeSteps(output);
    if (alone) this.#compiled.keep(declarations, source, { converted, steps });
    if (output !== undefined) this.#nameCell(converted, output, steps);
    if (this.#sideOutputsGiven) return converted;
    this.#sideOutputsGiven = true;
    return { ...converted, sideOutputs: [...this.#sideOutputs].map(([path, data]) => ({ path, data })) };
  }

  /** A cell that was compiled before; it stands on no file. */
  #again({ converted: { ...converted }, steps }: CompiledCell): ConvertResult {
    this.#diagnostics = converted.diagnostics;
    if (converted.output !== undefined) this.#nameCell(converted, converted.output, steps);
    this.#sideOutputsGiven = true;
    return converted;
  }

  /** Gives the compiled cell a name by which the engine, and so each stack, will call it. */
  #nameCell(converted: ConvertResult, output: string, steps: CompileSteps | undefined): void {
    this.#cellsRun += 1;
    const name = `cell-${this.#cellsRun}.ts`;
    if (steps !== undefined)
      this.#scripts.add(name, {
        title: `cell ${this.#number}`,
        source: this.#source,
        steps,
        linesBefore: 1, // tslab's own "export {};"
        compiledLines: lineCount(output),
      });
    converted.output = `${output}\n//# sourceURL=${name}`;
  }

  /** A compiled file beside the notebook, or a module written in a cell. */
  #nameFile(path: string, compiled: string): void {
    const name = basename(path, ".js");
    const module = this.#modules.get(name);
    const steps = this.#tslab.takeSteps(compiled);
    if (steps === undefined) return;
    const source = module ?? readIfThere(path.replace(/js$/, "ts"));
    const linesBefore = module === undefined ? 0 : 1;
    this.#scripts.add(path, {
      title: `${name}.ts`,
      source,
      steps,
      linesBefore,
      compiledLines: lineCount(compiled),
    });
  }
}

/** The line break at the end begins no line. */
function lineCount(compiled: string): number {
  return compiled.trimEnd().split("\n").length;
}

function readIfThere(path: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return ""; // a file of another ending: its places are told without an excerpt
  }
}
