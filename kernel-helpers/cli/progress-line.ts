import { styleText } from "node:util";
import type { Progress } from "../notebook/runner/run-sheets.js";

/** One line that says what is going on, over-written in a terminal, and one a sheet that stays. */
export class ProgressLine {
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
