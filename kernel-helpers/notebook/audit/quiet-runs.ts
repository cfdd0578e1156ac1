import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { stripVTControlCharacters } from "node:util";
import {
  type CellCode,
  fileHash,
  hashOfRecalled,
  readSheetRecord,
  recordFolder,
  recordPath,
  type SheetRecord,
  splitPlace,
  writeFile,
} from "../../record/index.js";
import { CellError } from "../client/client-errors.js";
import { KernelClient } from "../client/kernel-client.js";
import type { RunningKernel } from "../client/running-kernel.js";
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

/** What a sheet left behind in an earlier run of the same code, and as a file holds it. */
export interface EarlierRun {
  readonly record: SheetRecord;
  readonly text: string;
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
   *
   * @param earlier  earlier runs of the same code: a sheet is not run again where all it read and recalled is as it was
   *                 then, for it would leave the same behind
   */
  async run(
    directory: string,
    sheets: readonly QuietSheet[],
    earlier: ReadonlyMap<string, EarlierRun> = new Map(),
  ): Promise<readonly QuietFailure[]> {
    for (const folder of [recordFolder, outputFolder]) {
      rmSync(join(directory, folder), { recursive: true, force: true });
      mkdirSync(join(directory, folder)); // a kernel in a sandbox may write in them, and not make them
    }
    const failures: QuietFailure[] = [];
    for (const { name, cells } of sheets) {
      const same = earlier.get(name);
      if (same !== undefined && standsOnTheSame(directory, same.record)) {
        writeFile(join(directory, recordPath(name)), same.text);
        continue;
      }
      await this.#client.reset({ directory, sheet: name, thrownAway: true });
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

/** What the sheets left behind in a folder. */
export function runsIn(directory: string, sheets: Iterable<string>): ReadonlyMap<string, EarlierRun> {
  return new Map(
    [...sheets].flatMap((sheet) => {
      const record = readSheetRecord(directory, sheet);
      if (record === undefined) return [];
      return [[sheet, { record, text: readFileSync(join(directory, recordPath(sheet)), "utf8") }] as const];
    }),
  );
}

function standsOnTheSame(directory: string, { inputs, recalled }: SheetRecord): boolean {
  return (
    Object.entries(inputs).every(([file, hash]) => fileHash(join(directory, file)) === hash) &&
    Object.entries(recalled).every(([place, hash]) => {
      const [sheet, name] = splitPlace(place);
      const record = readSheetRecord(directory, sheet);
      return record !== undefined && hashOfRecalled(record, name) === hash;
    })
  );
}
