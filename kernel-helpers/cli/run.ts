import { relative } from "node:path";
import { parseArgs, styleText } from "node:util";
import { failureText } from "../notebook/index.js";
import { runRebuild } from "../notebook/run-rebuild.js";
import type { Progress } from "../notebook/runner/run-sheets.js";
import { demoFolder, findRebuild, versions } from "../record/index.js";
import type { Command } from "./command.js";
import { UsageError } from "./usage-error.js";

/** journalbox run: every worksheet of a rebuild, through the kernel, into notebooks, record and report. */
export const runCommand: Command = {
  summary: "runs a rebuild's worksheets; writes executed notebooks, record and report",
  usage: `journalbox run [folder]

Runs every worksheet of the rebuild in the folder (the one you stand in without it) through the kernel.
Executed notebooks and the report go to out/, what the sheets publish to record/. Where no rebuild.json
lies there or above, the demo rebuild is run.

Exit code: 0 all sheets ran, 1 a sheet failed, 2 the call was off.`,

  async run(args) {
    const folder = folderFrom(args);
    const found = findRebuild(folder ?? process.cwd());
    if (found === undefined && folder !== undefined)
      throw new UsageError(`no rebuild.json in ${folder} or above it`);
    const directory = found ?? demoFolder();
    const progress = new ProgressLine();
    const { results, report } = await runRebuild({
      directory,
      onStart({ title, invented }) {
        const remark = invented ? " (a demonstration, with invented readings)" : "";
        console.log(`Journalbox ${versions().journalbox}: ${title}${remark}\n`);
        progress.show("starting the kernel");
      },
      onProgress: (event) => progress.tell(event),
    });

    const here = (path: string): string => relative(process.cwd(), path) || ".";
    const failed = results.filter(({ status }) => status === "failed");
    for (const result of failed) console.error(`\n${failureText(result)}`);
    console.log("");
    for (const { path } of results) if (path !== undefined) console.log(`  notebook  ${here(path)}`);
    console.log(`  record    ${here(directory)}/record`);
    console.log(`  report    ${here(report)}`);
    return failed.length === 0 ? 0 : 1;
  },
};

function folderFrom(args: readonly string[]): string | undefined {
  try {
    const { positionals } = parseArgs({ args: [...args], allowPositionals: true, options: {} });
    if (positionals.length > 1) throw new Error(`one folder at the most, got ${positionals.join(" ")}`);
    return positionals[0];
  } catch (error) {
    throw new UsageError(error instanceof Error ? error.message : String(error));
  }
}

/** One line that says what is going on, over-written in a terminal, and one a sheet that stays. */
class ProgressLine {
  readonly #live = process.stdout.isTTY === true;
  #shown = false;

  show(text: string): void {
    if (!this.#live) return;
    process.stdout.write(`\r\x1b[2K  ${text}`);
    this.#shown = true;
  }

  tell(event: Progress): void {
    switch (event.type) {
      case "kernel-started":
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

  #keep({ result }: Extract<Progress, { type: "sheet-ended" }>): void {
    if (this.#shown) process.stdout.write("\r\x1b[2K");
    this.#shown = false;
    const seconds = `${(result.duration / 1000).toFixed(1)} s`;
    const mark = result.status === "ok" ? styleText("green", "ok") : styleText("red", "failed");
    console.log(`  ${result.sheet.padEnd(24)} ${mark}  ${seconds}`);
    if (result.newKernel !== undefined) console.log(`    in a new kernel: ${result.newKernel}`);
  }
}
