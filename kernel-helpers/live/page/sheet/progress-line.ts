import { element } from "../dom/element.js";
import type { KernelState } from "./kernel-desk.js";
import type { RunEnd, RunProgress } from "./sheet-runner.js";

const kernelWords: Readonly<Record<KernelState, string>> = {
  none: "No kernel.",
  starting: "The kernel is starting.",
  idle: "Ready.",
  busy: "The kernel is at work for another page.",
  restarting: "The kernel is starting over.",
  dead: "The kernel has stopped.",
};

/** One line that says what is going on: "Cell 4 of 9 is running", and how the last run ended. */
export class ProgressLine {
  readonly node: HTMLElement;
  readonly #words = element("span");
  readonly #bar = element("progress", { max: "1", value: "0", hidden: true });
  #kernel: KernelState = "none";
  #progress: RunProgress | undefined;
  #last = "";

  constructor() {
    this.node = element("div", { class: "progress", role: "status" }, this.#words, this.#bar);
  }

  showKernel(state: KernelState): void {
    this.#kernel = state;
    if (state === "starting" || state === "restarting") this.#last = "";
    this.#show();
  }

  showRun(progress: RunProgress): void {
    this.#progress = progress;
    this.#show();
  }

  showEnd({ stoppedAt, leftOut }: RunEnd): void {
    const rest = leftOut === 0 ? "" : ` ${leftOut} more ${leftOut === 1 ? "was" : "were"} not run.`;
    this.#last = stoppedAt === undefined ? "Done." : `Stopped at cell ${stoppedAt}.${rest}`;
    this.#show();
  }

  #show(): void {
    const { running, cells = 0, waiting = 0 } = this.#progress ?? {};
    this.#bar.hidden = running === undefined;
    if (running !== undefined) {
      this.#bar.max = cells;
      this.#bar.value = running - 1;
      const more = waiting === 0 ? "" : ` ${waiting} more to go.`;
      this.#words.textContent = `Cell ${running} of ${cells} is running.${more}`;
      return;
    }
    const idle = this.#kernel === "idle";
    this.#words.textContent = idle && this.#last !== "" ? `${this.#last} Ready.` : kernelWords[this.#kernel];
  }
}
