import { existsSync } from "node:fs";
import { join, relative } from "node:path";
import { parseArgs, styleText } from "node:util";
import { failureText } from "../notebook/runner/failure-text.js";
import type { Progress } from "../notebook/runner/run-sheets.js";
import { startRunKernel } from "../notebook/runner/start-run-kernel.js";
import { startLightly } from "../notebook/start-lightly.js";
import { findRebuild } from "../record/find-rebuild.js";
import { demoFolder, versions } from "../record/package-facts.js";
import type { Command } from "./command.js";
import { UsageError } from "./usage-error.js";

/** journalbox run: every worksheet of a rebuild, through the kernel, into notebooks, record and report. */
export const runCommand: Command = {
  summary: "runs a rebuild's worksheets; writes executed notebooks, record and report",
  usage: `journalbox run [folder] [--all] [--png]

Runs the worksheets of the rebuild in the folder (the one you stand in without it) through the kernel, in the
order that follows from what each takes over from others. Sheets whose results still follow from the readings,
the code and rebuild.json as they are now are passed over. Executed notebooks and the report go to out/, what
the sheets publish to record/. Where no rebuild.json lies there or above, the demo rebuild is run.

  --all   run every sheet, fresh or not
  --png   put each figure into the executed notebooks as PNG too, for a conversion to PDF; takes longer

Exit code: 0 all sheets ran, 1 a sheet failed, 2 the call was off.`,

  async run(args) {
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

/** One line that says what is going on, over-written in a terminal, and one a sheet that stays. */
class ProgressLine {
  readonly #live = process.stdout.isTTY === true;
  #shown = false;
  /** Why a sheet is run, where another one of the rebuild was not. */
  readonly #why = new Map<string, string>();

  because(sheet: string, why: string): void {
    this.#why.set(sheet, why);
  }

  show(text: string): void {
    if (!this.#live) return;
    process.stdout.write(`\r\x1b[2K  ${text}`);
    this.#shown = true;
  }

  tell(event: Progress): void {
    switch (event.type) {
      case "kernel-started":
        this.show("starting the kernel");
        break;
      case "sheet-started":
        this.show(`${event.sheet}  0/${event.cells}`);
        break;
      case "cell-started":
        this.show(`${event.sheet}  ${event.index + 1}/${event.cells}`);
        break;
      case "sheet-ended":
        this.#keep(event);
    }
  }

  clear(): void {
    if (this.#shown) process.stdout.write("\r\x1b[2K");
    this.#shown = false;
  }

  #keep({ result }: Extract<Progress, { type: "sheet-ended" }>): void {
    this.clear();
    const seconds = `${(result.duration / 1000).toFixed(1)} s`;
    const mark = result.status === "ok" ? styleText("green", "ok") : styleText("red", "failed");
    console.log(`  ${result.sheet.padEnd(24)} ${mark}  ${seconds}`);
    const why = this.#why.get(result.sheet);
    if (why !== undefined && !why.startsWith("It has not been run")) console.log(`    ${why}`);
    if (result.newKernel !== undefined) console.log(`    in a new kernel: ${result.newKernel}`);
  }
}
