import { setImmediate as nextTurn } from "node:timers/promises";
import { setUnitSystem } from "../../quantity/display.js";
import { tellStepsTo } from "../../record/in-steps.js";
import { packageVersion } from "../../record/package-root.js";
import { resetSession, setSession } from "../../record/session.js";
import { waitForDisk } from "../../record/write-file.js";
import type { Message } from "../wire/message.js";
import { currentCell } from "./cell-context.js";
import { CellDesk, type ExecuteReply } from "./cell-desk.js";
import { withJsonParsed } from "./cell-display.js";
import { CellProgress } from "./cell-progress.js";
import { CellRunner } from "./cell-runner.js";
import { cancelTimers, watchTimers } from "./cell-timers.js";
import { rememberState } from "./clean-state.js";
import { completeness } from "./completeness.js";
import { completion } from "./completion.js";
import type { FrontEnd, RequestChannel } from "./front-end.js";
import { importCompletion } from "./import-completion.js";
import { Interrupts } from "./interrupts.js";
import { kernelInfo } from "./kernel-info.js";
import type { Tslab } from "./load-tslab.js";
import { unitsFromCharacters } from "./offsets.js";
import { Output, type Publish } from "./output.js";
import { RequestQueue } from "./request-queue.js";
import { Scripts } from "./scripts.js";
import { speakOfCells } from "./stack-places.js";
import { Interrupted, type StopFlag } from "./stop-flag.js";
import { watchStrays } from "./strays.js";
import { thrownError } from "./thrown-error.js";
import { tooltip } from "./tooltip.js";
import { updateNote } from "./update-note.js";
import { firstNeeds, WarmUp } from "./warm-up.js";

type Content = Record<string, unknown>;

/** Read now: the file may be another later. */
const packageVersionAtStart = packageVersion();

/** What the kernel tells the process it lives in. */
export interface KernelEvents {
  readonly cellEnded: () => void;
  /** The kernel has been told to shut down, and has said so. */
  readonly shutDown: () => void;
}

/** Whom the kernel talks to. */
export type KernelFrontEnd = Pick<FrontEnd, "reply" | "publish" | "status">;

/** Answers requests: those that run code in their order, the others at once. */
export class Kernel {
  readonly #frontEnd: KernelFrontEnd;
  readonly #tslab: Tslab;
  readonly #runner: CellRunner;
  readonly #stopFlag: StopFlag;
  readonly #interrupts: Interrupts = new Interrupts();
  readonly #desk: CellDesk;
  readonly #output: Output;
  readonly #state: ReturnType<typeof rememberState>;
  readonly #queue: RequestQueue;
  readonly #events: KernelEvents;
  readonly #warmUp: WarmUp;
  /** A runner knows what it runs, and its outputs must depend on that alone. */
  #tellsOfUpdates = true;

  constructor(tslab: Tslab, frontEnd: KernelFrontEnd, stopFlag: StopFlag, events: KernelEvents) {
    this.#tslab = tslab;
    this.#frontEnd = frontEnd;
    this.#stopFlag = stopFlag;
    this.#events = events;
    const send: Publish = (cell, type, content) => frontEnd.publish(cell.request, type, content);
    const publish: Publish = (cell, type, content) => {
      if (type === "stream" || type === "display_data") cell.shown = true;
      send(cell, type, content);
    };
    const scripts = new Scripts();
    const placesOf = speakOfCells(scripts);
    this.#runner = new CellRunner(tslab, scripts, stopFlag);
    this.#output = new Output(publish);
    this.#desk = new CellDesk(this.#runner, this.#output, publish, placesOf);
    this.#queue = new RequestQueue(
      (request) => this.#runInTurn(request),
      (request) => this.#abort(request),
    );
    this.#warmUp = new WarmUp(
      firstNeeds((source) => this.#runner.compileForNothing(source)),
      () => this.#queue.isFree,
    );
    watchTimers();
    watchStrays((cell, reason) => {
      if (reason instanceof Interrupted) cancelTimers(cell); // a timer that loops would loop again
      this.#desk.tellLate(cell, reason);
    });
    process.on("SIGINT", () => {
      // One of its own says again what was asked by a request, which is read too.
      if (!stopFlag.takeSignal()) this.#interrupt();
    });
    tslab.setDisplayWriter((display, update) => {
      const cell = currentCell();
      if (cell === undefined) return;
      this.#output.flush();
      publish(cell, update ? "update_display_data" : "display_data", withJsonParsed(display));
    });
    const progress = new CellProgress(send, stopFlag);
    tellStepsTo((step) => progress.tell(step));
    this.#state = rememberState();
  }

  receive(channel: RequestChannel, request: Message): void {
    this.#warmUp.postpone();
    const type = request.header.msg_type;
    if (type === "execute_request" || type === "journalbox_reset_request") {
      this.#interrupts.read(request);
      this.#queue.add(request);
      return;
    }
    this.#frontEnd.status(request, "busy");
    if (type === "interrupt_request") {
      if (channel === "control") this.#stopFlag.hear();
      this.#interrupt(request);
    }
    const answer = this.#answers[type];
    if (answer !== undefined)
      this.#frontEnd.reply(
        channel,
        request,
        this.#trying(() => answer(request.content)),
      );
    this.#frontEnd.status(request, "idle");
    if (type === "shutdown_request") this.#events.shutDown();
  }

  /** The helpers were updated under the running kernel: the next cell says so, once. */
  noteUpdate(installed: string): void {
    if (this.#tellsOfUpdates) this.#desk.noteNext(updateNote(packageVersionAtStart, installed));
    this.#tellsOfUpdates = false;
  }

  close(): void {
    this.#runner.close();
  }

  /** What is answered at once, also while a cell waits for something. Other requests have no answer here. */
  readonly #answers: Readonly<Record<string, (asked: Content) => Content>> = {
    kernel_info_request: () => kernelInfo(this.#tslab.ts.version),
    shutdown_request: ({ restart }) => ({ status: "ok", restart: restart === true }),
    interrupt_request: () => ({ status: "ok" }),
    comm_info_request: () => ({ status: "ok", comms: {} }),
    // Kept by no front end of today but consoles, which have one of their own.
    history_request: () => ({ status: "ok", history: [] }),
    is_complete_request: ({ code }) => ({ ...completeness(this.#tslab.ts, String(code)) }),
    complete_request: ({ code, cursor_pos }) => {
      const text = String(code);
      const position = unitsFromCharacters(text, Number(cursor_pos));
      const found = this.#runner.complete(text, position);
      return completion(text, importCompletion(text, position, found));
    },
    inspect_request: ({ code, cursor_pos }) => {
      const text = String(code);
      const known = this.#runner.inspect(text, unitsFromCharacters(text, Number(cursor_pos)));
      return { status: "ok", found: known !== undefined, data: known ? tooltip(known) : {}, metadata: {} };
    },
  };

  async #runInTurn(request: Message): Promise<{ abortWaiting: boolean; reply(): void }> {
    this.#frontEnd.status(request, "busy");
    const isCell = request.header.msg_type === "execute_request";
    const content: Content = isCell
      ? { ...(await this.#runCell(request)) }
      : this.#trying(() => this.#reset(request.content));
    if (isCell) this.#events.cellEnded();
    return {
      abortWaiting: isCell && content.status === "error" && request.content.stop_on_error !== false,
      reply: () => {
        this.#frontEnd.reply("shell", request, content);
        this.#frontEnd.status(request, "idle");
      },
    };
  }

  async #runCell(request: Message): Promise<ExecuteReply> {
    // Whom the interrupts that came until now were meant for is known by then; one that comes later is meant for it.
    do {
      await nextTurn();
      this.#stopFlag.clear();
    } while (this.#stopFlag.isUnheard);
    return this.#desk.run(request, this.#interrupts.isStruck(request));
  }

  /** Stops what an interrupt is meant for; by a signal where no request is given. */
  #interrupt(by?: Message): void {
    const { unanswered } = this.#queue;
    this.#interrupts.strike(unanswered, by?.header);
    const [running] = unanswered;
    if (running === undefined || this.#interrupts.isStruck(running)) this.#runner.interrupt();
  }

  #abort(request: Message): void {
    this.#frontEnd.status(request, "busy");
    this.#frontEnd.reply("shell", request, { status: "aborted" });
    this.#frontEnd.status(request, "idle");
  }

  /**
   * Makes the kernel as good as new for a sheet in a folder; message type `journalbox_reset_request`. A client that
   * draws pictures itself says so: `pictures: "owed"`.
   */
  #reset({ directory, sheet, pictures, thrownAway }: Content): Content {
    const before = process.cwd();
    process.chdir(String(directory ?? before)); // throws where it is not there, before anything is changed
    this.#tellsOfUpdates = false;
    cancelTimers();
    this.#output.flush();
    this.#state.restore(before);
    this.#runner.reset(process.cwd() === before);
    this.#desk.reset(pictures === "owed" ? "owed" : "drawn");
    setUnitSystem(undefined);
    resetSession();
    setSession({ directory: process.cwd(), ...(typeof sheet === "string" && { sheet }) });
    waitForDisk(thrownAway !== true);
    return { status: "ok" };
  }

  #trying(answer: () => Content): Content {
    try {
      return answer();
    } catch (thrown) {
      return { status: "error", ...thrownError(thrown, () => []) };
    }
  }
}
