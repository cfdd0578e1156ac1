import type { LiveEvent } from "./link/live-events.js";
import { loadRebuild, type RebuildState, runSheets, type SheetState } from "./link/server.js";

/** The worksheets of the rebuild: which are stale, and how far a run of them is. */
export class SheetWatch {
  rebuild: RebuildState | undefined;
  /** Those that are stale, and which of them were not before the last save. */
  stale: readonly SheetState[] = [];
  becameStale: readonly string[] = [];
  /** What a run is doing, or came to; "" before the first one. */
  run = "";
  isRunning = false;
  failed: readonly string[] = [];

  readonly #changed: () => void;
  readonly #failedTo: (error: unknown, what: string) => void;

  /**
   * @param changed   called whenever something of the above is not what it was
   * @param failedTo  told of what went wrong, and with what
   */
  constructor(changed: () => void, failedTo: (error: unknown, what: string) => void) {
    this.#changed = changed;
    this.#failedTo = failedTo;
  }

  /** What a worksheet is called. */
  titleOf(name: string): string {
    return this.rebuild?.sheets.find((sheet) => sheet.name === name)?.title ?? name;
  }

  /** Asks for the states; what is stale now and was not among `staleBefore` became so. */
  async look(staleBefore: readonly string[]): Promise<void> {
    try {
      this.rebuild = await loadRebuild();
      this.stale = this.rebuild.sheets.filter(({ state }) => state === "stale");
      this.becameStale = this.stale.map(({ name }) => name).filter((name) => !staleBefore.includes(name));
      this.#changed();
    } catch (error) {
      this.#failedTo(error, "The states of the worksheets are not known");
    }
  }

  /** Lets the stale ones run. */
  async runStale(): Promise<void> {
    this.#begin();
    try {
      await runSheets(this.stale.map(({ name }) => name));
    } catch (error) {
      this.run = "";
      this.isRunning = false;
      this.#changed();
      this.#failedTo(error, "The worksheets were not run");
    }
  }

  heard(event: LiveEvent): void {
    if (event.type === "run-started") this.#begin();
    else if (event.type === "progress" && event.sheet !== undefined) {
      const cell =
        event.stage === "cell-started" ? `, cell ${(event.index ?? 0) + 1} of ${event.cells ?? "?"}` : "";
      this.run = `Running ${this.titleOf(event.sheet)}${cell} …`;
      this.isRunning = true;
      this.#changed();
    } else if (event.type === "run-ended") {
      this.failed = event.failed ?? [];
      this.run =
        event.error ??
        (this.failed.length === 0 ? "The run is done." : "The run is done; not all went well.");
      this.isRunning = false;
      void this.look([]);
    } else if (event.type === "state" && !this.isRunning) {
      const known = this.stale.map(({ name }) => name);
      void this.look(known.filter((name) => !this.becameStale.includes(name)));
    }
  }

  #begin(): void {
    this.run = "The run begins …";
    this.isRunning = true;
    this.failed = [];
    this.#changed();
  }
}
