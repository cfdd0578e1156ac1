import { cpSync, existsSync, mkdirSync, renameSync } from "node:fs";
import { join } from "node:path";
import { afterAll, inject } from "vitest";
import { runRebuild } from "../../kernel-helpers/notebook/run-rebuild.js";
import { failureText } from "../../kernel-helpers/notebook/runner/failure-text.js";
import { templateFolder } from "../../kernel-helpers/record/find-sheets.js";
import { packageRoot } from "../../kernel-helpers/record/index.js";
import { ensureBuilt } from "./built.js";
import { type KeptKernel, keptKernel } from "./kept-kernel.js";
import { newestIn } from "./newest-in.js";
import { oneMakes } from "./one-makes.js";
import { temporaryFolder } from "./temporary-folder.js";

/** A copy of a demo's facts and tables in a new folder; with the worksheets named alone, or with all. */
export function copyOfDemo(demo: string, sheets?: readonly string[]): string {
  const folder = temporaryFolder();
  copyFacts(demo, folder);
  copySheets(folder, sheets);
  return folder;
}

/**
 * A copy of a demo that has been run: facts, tables, records of all worksheets, notebooks and report. The run itself is
 * made once for all test files, by the first that asks. With worksheets named, a run of the copy runs these alone, on
 * what the others left.
 */
export async function copyOfDemoRun(demo: string, sheets?: readonly string[]): Promise<string> {
  const folder = temporaryFolder();
  cpSync(await demoRun(demo), folder, { recursive: true });
  copySheets(folder, sheets);
  return folder;
}

// One kernel for all runs of a test file.
let kernel: KeptKernel | undefined;
afterAll(() => kernel?.close());

/** Runs a rebuild through the kernel, each sheet in a clean state; fails with what every failed sheet says. */
export async function runThrough(directory: string): Promise<void> {
  kernel ??= keptKernel(directory);
  const { results } = await runRebuild({ directory, startKernel: kernel.startKernel });
  const failed = results.filter(({ status }) => status === "failed");
  if (failed.length > 0) throw new Error(failed.map(failureText).join("\n"));
}

/** Where the run of a demo stands that is shared; made anew where a source has changed since, as it does while one watches. */
async function demoRun(demo: string): Promise<string> {
  await ensureBuilt();
  const sources = ["kernel-helpers", "worksheets"].map((name) => newestIn(join(packageRoot(), name)));
  const run = join(inject("sharedFolder"), `${demo}-${Math.max(...sources)}`);
  await oneMakes(
    `${run}.lock`,
    () => existsSync(run),
    async () => {
      const folder = `${run}.part`;
      copyFacts(demo, folder);
      await runThrough(folder);
      renameSync(folder, run);
    },
  );
  return run;
}

function copyFacts(demo: string, folder: string): void {
  for (const part of ["rebuild.json", "tables"])
    cpSync(join(templateFolder(), demo, part), join(folder, part), { recursive: true });
}

function copySheets(folder: string, sheets: readonly string[] | undefined): void {
  if (sheets === undefined) return;
  mkdirSync(join(folder, "sheets"));
  for (const sheet of sheets)
    cpSync(join(templateFolder(), `${sheet}.ipynb`), join(folder, "sheets", `${sheet}.ipynb`));
}
