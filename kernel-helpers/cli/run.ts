import { existsSync } from "node:fs";
import { join, relative } from "node:path";
import { parseArgs } from "node:util";
import { failureText } from "../notebook/runner/failure-text.js";
import { startRunKernel } from "../notebook/runner/start-run-kernel.js";
import { startLightly } from "../notebook/start-lightly.js";
import { findRebuild } from "../record/find-rebuild.js";
import { waitText } from "../record/one-run-at-a-time.js";
import { demoFolder, versions } from "../record/package-facts.js";
import type { Command } from "./command.js";
import { foreignIn } from "./foreign-rebuild.js";
import { ProgressLine } from "./progress-line.js";
import { UsageError } from "./usage-error.js";

/** journalbox run: every worksheet of a rebuild, through the kernel, into notebooks, record and report. */
export const runCommand: Command = {
  summary: "runs a rebuild's worksheets; writes executed notebooks, record and report",
  usage: `journalbox run [folder] [--all] [--png]
journalbox run <bundle> [--run-their-code] [--to folder] [--network-may-stay-open]

Runs the worksheets of the rebuild in the folder (the one you stand in without it) through the kernel, in the
order that follows from what each takes over from others. Sheets whose results still follow from the readings,
the code and rebuild.json as they are now are passed over. Executed notebooks and the report go to out/, what
the sheets publish to record/. Where no rebuild.json lies there or above, the demo rebuild is run.

  --all   run every sheet, fresh or not
  --png   put each figure into the executed notebooks as PNG too, for a conversion to PDF; takes longer

A bundle (see "journalbox share") is somebody else's, and its worksheets are programs. Without --run-their-code
you are told what would run and what the sandbox of this machine keeps from it, and nothing is run. With it the
bundle is unpacked to a folder of its own (--to names it) and run there, in the sandbox; such a folder stays
marked, and is run in the sandbox later too. Every other folder is taken for your own.

Exit code: 0 all sheets ran, 1 a sheet failed, 2 the call was off or the word was missing.`,

  async run(args) {
    const foreign = foreignIn(args);
    if (foreign !== undefined) return (await import("./run-foreign.js")).runForeign(foreign, args);
    const { folder, all, png } = read(args);
    const found = findRebuild(folder ?? process.cwd());
    if (found === undefined && folder !== undefined)
      throw new UsageError(`no rebuild.json in ${folder} or above it`);
    const directory = found ?? demoFolder();
    const progress = new ProgressLine();
    startLightly();
    // The kernel takes longest to start: it does so while all the rest is loaded. Where sheets have been run before
    // it may not be needed, and waits for that to be known.
    const early = all || !existsSync(join(directory, "record")) ? startRunKernel(directory) : undefined;
    await early?.spawned;
    const { runRebuild } = await import("../notebook/run-rebuild.js");
    const { results, fresh, missing, report } = await runRebuild({
      directory,
      png,
      ...(early && { kernel: early.kernel }),
      ...(!all && { only: "stale" as const }),
      onStart({ title, invented }) {
        const remark = invented ? " (a demonstration, with invented readings)" : "";
        console.log(`Journalbox ${versions().journalbox}: ${title}${remark}\n`);
        progress.show("looking what is to be run");
      },
      onWait: (other) => console.log(`  ${waitText(other)}`),
      onStale: (sheet, why) => progress.because(sheet, why),
      onProgress: (event) => progress.tell(event),
    });

    const here = (path: string): string => relative(process.cwd(), path) || ".";
    const failed = results.filter(({ status }) => status === "failed");
    progress.clear();
    for (const name of fresh) console.log(`  ${name.padEnd(24)} fresh, not run again`);
    for (const sentence of missing) console.log(`  ${sentence}`);
    for (const result of failed) console.error(`\n${failureText(result)}`);
    console.log("");
    if (results.length === 0)
      console.log("  nothing to run: every sheet is fresh (--all runs them all the same)");
    for (const { path } of results) if (path !== undefined) console.log(`  notebook  ${here(path)}`);
    console.log(`  record    ${here(directory)}/record`);
    console.log(`  report    ${here(report)}`);
    return failed.length === 0 ? 0 : 1;
  },
};

interface RunCall {
  readonly folder: string | undefined;
  readonly all: boolean;
  readonly png: boolean;
}

function read(args: readonly string[]): RunCall {
  try {
    const options = { all: { type: "boolean" }, png: { type: "boolean" } } as const;
    const { positionals, values } = parseArgs({ args: [...args], allowPositionals: true, options });
    if (positionals.length > 1) throw new Error(`one folder at the most, got ${positionals.join(" ")}`);
    return { folder: positionals[0], all: values.all === true, png: values.png === true };
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}
