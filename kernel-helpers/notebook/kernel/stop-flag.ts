/** What a loop in a cell looks at, under a name no worksheet would choose. */
const globalName = "__stop__";

/** A cell was stopped on request. */
export class Interrupted extends Error {
  override readonly name = "Interrupted";

  constructor() {
    super("the cell was interrupted");
  }
}

/**
 * Whether the running cell is to stop: numbers in memory that the kernel's threads share, so that a cell which never lets
 * go of its own thread can be told from another.
 */
export class StopFlag {
  readonly memory: SharedArrayBuffer;
  readonly #view: Int32Array;
  /** How many of the other thread's requests the cells' thread has read. */
  #heard = 0;

  /** Without a memory, a flag of its own; with one, the flag of another thread. */
  constructor(memory: SharedArrayBuffer = new SharedArrayBuffer(4 * Int32Array.BYTES_PER_ELEMENT)) {
    this.memory = memory;
    this.#view = new Int32Array(memory);
  }

  /** Another thread asks the running cell to stop; the cells' thread will read why, and says so by `hear`. */
  ask(): void {
    Atomics.add(this.#view, asks, 1);
    this.stop();
  }

  /** The cells' thread has read what it was asked by `ask`. */
  hear(): void {
    this.#heard += 1;
  }

  /** Whether it was asked what the cells' thread has not read yet. */
  get isUnheard(): boolean {
    return Atomics.load(this.#view, asks) !== this.#heard;
  }

  /** The running cell is to stop. */
  stop(): void {
    Atomics.store(this.#view, noticed, 0);
    Atomics.store(this.#view, asked, 1);
  }

  /** A new cell begins. Who asked before and is not heard yet may have meant it: see `isUnheard`. */
  clear(): void {
    Atomics.store(this.#view, asked, 0);
  }

  /** The cells' thread is free, and has seen the request. */
  notice(): void {
    Atomics.store(this.#view, noticed, 1);
  }

  /** The kernel is about to signal itself, for what it was asked already. */
  signal(): void {
    Atomics.store(this.#view, signalled, 1);
  }

  /** Whether the signal that came is the kernel's own. */
  takeSignal(): boolean {
    return Atomics.exchange(this.#view, signalled, 0) === 1;
  }

  get isAsked(): boolean {
    return Atomics.load(this.#view, asked) === 1;
  }

  get isNoticed(): boolean {
    return Atomics.load(this.#view, noticed) === 1;
  }

  /** Puts the flag where the loops of cells look at it; `stop-loops.ts` writes the look into them. */
  showToLoops(): void {
    const now = (): never => {
      throw new Interrupted();
    };
    Object.defineProperty(globalThis, globalName, { value: Object.freeze({ asked: this.#view, now }) });
  }
}

const asked = 0;
const noticed = 1;
const asks = 2;
const signalled = 3;

/** The look at the flag, in JavaScript: it costs about a nanosecond. */
export const lookAtFlag: { readonly object: string; readonly asked: string; readonly now: string } = {
  object: globalName,
  asked: "asked",
  now: "now",
};
