import type { KernelEvent } from "../../server/live-event.js";
import { ServerAway, wordsOf } from "../api/request.js";
import type { Notices } from "../dom/notices.js";
import type { KernelDesk } from "./kernel-desk.js";
import type { SheetRunner } from "./sheet-runner.js";

/** Says what becomes of the kernel, and offers what can be done about it. */
export class KernelWatch {
  readonly #desk: KernelDesk;
  readonly #runner: SheetRunner;
  readonly #notices: Notices;

  constructor(desk: KernelDesk, runner: SheetRunner, notices: Notices) {
    this.#desk = desk;
    this.#runner = runner;
    this.#notices = notices;
    desk.changed.connect((_, state) => {
      if (state === "dead") {
        runner.forgetWaiting();
        runner.forgetRuns();
        this.#sayDead();
      }
      if (state === "restarting") runner.forgetRuns();
      if (state === "idle" || state === "busy") notices.clear("kernel");
    });
  }

  /** Does something with the kernel, and says so where it fails. */
  async attempt(act: () => Promise<void>): Promise<boolean> {
    try {
      await act();
      this.#notices.clear("kernel-trouble");
      return true;
    } catch (error) {
      if (error instanceof ServerAway) return false; // the page says that already
      this.#notices.show("kernel-trouble", {
        kind: "trouble",
        text: `The kernel did not do that: ${wordsOf(error)}`,
        actions: [{ label: "Start it again", act: () => void this.#startAgain() }],
        canClose: true,
      });
      return false;
    }
  }

  /** What the server tells of the kernel; another page of the sheet may have started it over, or again. */
  hear({ state, why }: KernelEvent): void {
    const here = this.#desk.state;
    if (state === "dead" && here === "dead") this.#sayDead(why);
    if (state === "restarted" && here !== "restarting") this.#runner.forgetRuns();
    if ((state === "started" || state === "restarted") && here === "dead")
      void this.attempt(() => this.#desk.start());
  }

  /** The server was away and is back: so may be the kernel, or another one. */
  async resume(): Promise<void> {
    await this.attempt(async () => {
      if (!(await this.#desk.resume())) this.#sayNew();
    });
  }

  #startAgain(): Promise<boolean> {
    return this.attempt(() => this.#desk.startAgain());
  }

  #sayDead(why = ""): void {
    const how = why === "" ? "" : ` (${why})`;
    this.#notices.show("kernel", {
      kind: "trouble",
      text: `The kernel has stopped${how}. All you typed is here; the names it knew are gone.`,
      actions: [
        { label: "Start it again", act: () => void this.#startAgain() },
        { label: "Start it and run all", act: () => void this.#startAndRunAll() },
      ],
    });
  }

  async #startAndRunAll(): Promise<void> {
    if (await this.#startAgain()) this.#runner.runAll();
  }

  #sayNew(): void {
    this.#runner.forgetRuns();
    const runAll = (): void => {
      this.#notices.clear("new-kernel");
      this.#runner.runAll();
    };
    this.#notices.show("new-kernel", {
      kind: "word",
      text: "The server was started again, and with it the kernel. What the cells show is from before; names are known again when the cells have been run.",
      actions: [{ label: "Run all", act: runAll }],
      canClose: true,
    });
  }
}
