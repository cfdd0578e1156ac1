import { cpSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import { runRebuild } from "../../kernel-helpers/notebook/run-rebuild.js";
import { failureText } from "../../kernel-helpers/notebook/runner/failure-text.js";
import { templateFolder } from "../../kernel-helpers/record/find-sheets.js";
import { ensureBuilt } from "./built.js";
import { temporaryFolder } from "./temporary-folder.js";

/** A copy of a demo's facts and tables in a new folder; with the worksheets named alone, or with all. */
export function copyOfDemo(demo: string, sheets?: readonly string[]): string {
  const folder = temporaryFolder();
  for (const part of ["rebuild.json", "tables"])
    cpSync(join(templateFolder(), demo, part), join(folder, part), { recursive: true });
  if (sheets === undefined) return folder;
  mkdirSync(join(folder, "sheets"));
  for (const sheet of sheets)
    cpSync(join(templateFolder(), `${sheet}.ipynb`), join(folder, "sheets", `${sheet}.ipynb`));
  return folder;
}

/** Runs a rebuild through the kernel; fails with what every failed sheet says. */
export async function runThrough(directory: string): Promise<void> {
  await ensureBuilt();
  const { results } = await runRebuild({ directory });
  const failed = results.filter(({ status }) => status === "failed");
  if (failed.length > 0) throw new Error(failed.map(failureText).join("\n"));
}
