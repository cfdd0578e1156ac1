import { type ChildProcess, fork } from "node:child_process";
import { join } from "node:path";
import { packageRoot } from "../../record/index.js";
import { bodyLimits } from "./body.js";
import { HttpError } from "./http-error.js";
import type { LiveEvent, ProgressEvent, RunEndedEvent, RunStartedEvent } from "./live-event.js";
import { listSheets } from "./rebuild-files.js";
import { type Route, route } from "./router.js";

/** What the program in run-program.ts tells while it works. */
export type RunMessage = RunStartedEvent | ProgressEvent | RunEndedEvent;

/** The program, as built: it runs as a process of its own, from the sources too. */
function runProgram(): string {
  return join(packageRoot(), "dist", "live", "server", "run-program.js");
}

/** So much of what the program writes to its error output is kept [characters]. */
const kept = 2000;

/** Runs sheets as `journalbox run` does, in a process of its own, so that the pages are answered meanwhile. */
export class RunJob {
  readonly #directory: string;
  readonly #tell: (event: LiveEvent) => void;
  readonly #changed: () => void;
  #child: ChildProcess | undefined;

  constructor(directory: string, tell: (event: LiveEvent) => void, changed: () => void) {
    this.#directory = directory;
    this.#tell = tell;
    this.#changed = changed;
  }

  routes(): readonly Route[] {
    return [
      route("POST", "/api/run", async ({ body }) => {
        const sheets = this.#sheetsFrom((await body(bodyLimits.small)).sheets);
        if (this.#child !== undefined) throw new HttpError(409, "sheets are being run already");
        this.#start(sheets);
        return { status: 202, json: { sheets } };
      }),
      route("DELETE", "/api/run", () => {
        this.cancel();
        return { status: 204 };
      }),
    ];
  }

  cancel(): void {
    this.#child?.kill("SIGKILL");
  }

  /** The sheets to run, in the order of the rebuild; all where none are named. */
  #sheetsFrom(asked: unknown): readonly string[] {
    const all = listSheets(this.#directory).map(({ name }) => name);
    if (asked === undefined) return all;
    if (!Array.isArray(asked) || asked.length === 0)
      throw new HttpError(400, "sheets must be a list of names");
    const stranger = asked.find((name) => !all.includes(name));
    if (stranger !== undefined) throw new HttpError(404, `there is no worksheet ${JSON.stringify(stranger)}`);
    return all.filter((name) => asked.includes(name));
  }

  #start(sheets: readonly string[]): void {
    const child = fork(runProgram(), [this.#directory, ...sheets], {
      stdio: ["ignore", "ignore", "pipe", "ipc"],
    });
    this.#child = child;
    // Told only when the program has gone: whoever hears that a run has ended may begin the next at once.
    let ended: RunEndedEvent | undefined;
    let lastWords = "";
    child.stderr?.on("data", (bytes: Buffer) => {
      lastWords = (lastWords + bytes.toString("utf8")).slice(-kept);
    });
    child.on("message", (message) => {
      const event = message as RunMessage;
      if (event.type === "run-ended") {
        ended = event;
        return;
      }
      this.#tell(event);
      if (event.type === "progress" && event.stage === "sheet-ended") this.#changed();
    });
    child.once("error", (error) => {
      lastWords = error.message;
    });
    child.once("close", (_, signal) => {
      this.#child = undefined;
      const error = signal === "SIGKILL" ? "the run was stopped" : lastWords.trim() || "the run ended early";
      this.#tell(ended ?? { type: "run-ended", failed: [], report: false, error });
      this.#changed();
    });
  }
}
