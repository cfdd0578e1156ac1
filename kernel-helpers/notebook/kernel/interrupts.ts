import { setImmediate as nextTurn } from "node:timers/promises";
import type { Header, Message } from "../wire/message.js";

/**
 * Which cells an interrupt belongs to: those sent before it and not answered yet.
 *
 * Cells and interrupts come on channels of their own, so a busy kernel may read an interrupt before the cell it is
 * for. Of one client their dates tell which was sent first. Those of two clients stand by two clocks, and a signal has no
 * date: what is read just after them was on its way, and is taken for sent before.
 */
export class Interrupts {
  readonly #struck = new WeakSet<Message>();
  #last: Header | undefined;
  #justCame = 0;

  /** An interrupt came while these had no answer yet; by a signal where no header is given. */
  strike(unanswered: readonly Message[], by: Header | undefined): void {
    this.#last = by;
    for (const request of unanswered)
      if (wasSentBefore(request.header, by) ?? true) this.#struck.add(request);
    void this.#whileOnTheirWay();
  }

  /** A cell was read. */
  read(request: Message): void {
    if (wasSentBefore(request.header, this.#last) ?? this.#justCame > 0) this.#struck.add(request);
  }

  /** Whether this cell is to stop, or not to begin. */
  isStruck(request: Message): boolean {
    return this.#struck.has(request);
  }

  /** In the first turn what has come is read, in the second what that let through. */
  async #whileOnTheirWay(): Promise<void> {
    this.#justCame += 1;
    await nextTurn();
    await nextTurn();
    this.#justCame -= 1;
  }
}

/** By one client's clock; undefined where its dates do not tell. */
function wasSentBefore(request: Header, interrupt: Header | undefined): boolean | undefined {
  if (interrupt === undefined || interrupt.session !== request.session) return undefined;
  const [sent, interrupted] = [microseconds(request.date), microseconds(interrupt.date)];
  return sent < interrupted ? true : sent > interrupted ? false : undefined;
}

function microseconds(date: string): number {
  const fraction = /\.(\d+)/.exec(date);
  const whole = Date.parse(date.replace(/\.\d+/, "")) * 1000;
  return whole + Number((fraction?.[1] ?? "").padEnd(6, "0").slice(0, 6));
}
