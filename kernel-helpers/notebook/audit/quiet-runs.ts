import { mkdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { stripVTControlCharacters } from "node:util";
import { type CellCode, recordFolder } from "../../record/index.js";
import { CellError } from "../client/client-errors.js";
import { KernelClient, type RunningKernel } from "../client/kernel-client.js";
import { outputFolder } from "../run-rebuild.js";

/** A sheet by its code alone. */
export interface QuietSheet {
  readonly name: string;
  readonly cells: readonly CellCode[];
}

/** A sheet that failed, and why. */
export interface QuietFailure {
  readonly sheet: string;
  readonly why: string;
}

const tenMinutes = 600_000;

/**
 * Runs sheets for what they compute, in one warm kernel and in clean state each, and shows nothing: no pictures, no
 * notebooks. What they publish and decide is in the records of the folder afterwards.
 */
export class QuietRuns {
  readonly #client: RunningKernel;

  /** In the kernel given, which is closed with this, or in one of its own without a sandbox. */
  static async start(directory: string, kernel?: Promise<RunningKernel>): Promise<QuietRuns> {
    return new QuietRuns(await (kernel ?? KernelClient.start({ directory })));
  }

  private constructor(client: RunningKernel) {
    this.#client = client;
  }

  /**
   * Runs the sheets in the order given, in a folder whose records and outputs are removed first. A sheet stops at the
   * first cell that fails; the next ones are run all the same.
   */
  async run(directory: string, sheets: readonly QuietSheet[]): Promise<readonly QuietFailure[]> {
    for (const folder of [recordFolder, outputFolder]) {
      rmSync(join(directory, folder), { recursive: true, force: true });
      mkdirSync(join(directory, folder)); // a kernel in a sandbox may write in them, and not make them
    }
    const failures: QuietFailure[] = [];
    for (const { name, cells } of sheets) {
      await this.#client.reset({ directory, sheet: name });
      const why = await this.#firstFailure(cells);
      if (why !== undefined) failures.push({ sheet: name, why });
    }
    return failures;
  }

  async #firstFailure(cells: readonly CellCode[]): Promise<string | undefined> {
    for (const { id, source } of cells) {
      try {
        await this.#client.execute(source, { cellId: id, timeout: tenMinutes, silent: true });
      } catch (error) {
        if (!(error instanceof CellError)) throw error;
        return `cell ${id}: ${stripVTControlCharacters(error.evalue)}`;
      }
    }
    return undefined;
  }

  async close(): Promise<void> {
    await this.#client.close();
  }
}
