import { KernelLink } from "./kernel-link.js";

/** After one is taken the page has better things to do than to wait for the next [ms]. */
const rest = 1500;

/** Keeps one kernel warm, so that opening a sheet or starting its kernel anew takes no time. */
export class SpareKernels {
  readonly #directory: string;
  readonly #warm: boolean;
  #spare: Promise<KernelLink> | undefined;
  #timer: NodeJS.Timeout | undefined;
  #closed = false;

  /** `warm` is false where kernels are to be started only when they are asked for. */
  constructor(directory: string, warm: boolean) {
    this.#directory = directory;
    this.#warm = warm;
    this.#start();
  }

  /**
   * A kernel that answers, and soon another in its place.
   *
   * @throws Error no kernel can be started
   */
  async take(): Promise<KernelLink> {
    if (this.#closed) throw new Error("the server is closing");
    const spare = this.#spare ?? KernelLink.start(this.#directory);
    this.#spare = undefined;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.#start(), rest).unref();
    const link = await spare.catch(() => KernelLink.start(this.#directory));
    if (!this.#closed) return link;
    await link.close();
    throw new Error("the server is closing");
  }

  async close(): Promise<void> {
    this.#closed = true;
    clearTimeout(this.#timer);
    const link = await this.#spare?.catch(() => undefined);
    await link?.close();
  }

  #start(): void {
    if (!this.#warm || this.#closed || this.#spare !== undefined) return;
    const spare = KernelLink.start(this.#directory);
    this.#spare = spare;
    // One that dies while it waits is no spare any more; the next to be taken is started when asked for.
    const forget = (): void => {
      if (this.#spare === spare) this.#spare = undefined;
    };
    spare.then(({ ended }) => ended.then(forget), forget);
  }
}
