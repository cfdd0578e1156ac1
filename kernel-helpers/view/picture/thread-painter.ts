import { join } from "node:path";
import { Worker } from "node:worker_threads";
import type { Figure } from "../blocks.js";
import { figureText } from "./figure-text.js";
import type { Painter } from "./painter.js";
import type { PictureReply, PictureRequest } from "./painting-thread.js";

/** The thread's program, as built: it is started from there from the sources too. Three folders up is the root. */
const program = join(__dirname, "..", "..", "..", "dist", "view", "picture", "painting-thread.js");

/** A request without its number; over each of its forms by itself. */
type Wish = PictureRequest extends infer Each ? (Each extends unknown ? Omit<Each, "id"> : never) : never;

interface Waiting {
  readonly done: (picture: string | Uint8Array | undefined) => void;
  readonly failed: (error: Error) => void;
}

/**
 * Draws in a thread of its own, so that its owner stays free for other work, and draws each picture once: whoever
 * asks for it again gets the same. Close it when all is drawn; as long as something is being drawn, the thread keeps
 * the process alive.
 */
export class ThreadPainter implements Painter {
  readonly #thread: Worker;
  readonly #drawn: Map<string, Promise<string | Uint8Array | undefined>> = new Map();
  readonly #waiting: Map<number, Waiting> = new Map();
  readonly #wantsPng: boolean;
  #asked = 0;
  /** Why nothing is drawn any more. */
  #over: Error | undefined;

  /** @param options.png whether PNG files are wanted: they take as long as all the rest of a run */
  constructor({ png }: { readonly png: boolean }) {
    this.#wantsPng = png;
    this.#thread = new Worker(program, { execArgv: [] });
    this.#thread.unref();
    this.#thread.on("message", (reply: PictureReply) => this.#take(reply));
    this.#thread.on("error", (error: Error) => this.#fail(error));
    this.#thread.on("exit", () => this.#fail(new Error("the drawing thread has ended")));
  }

  async svg(figure: Figure): Promise<string> {
    const svg = await this.#once(`svg ${figureText(figure)}`, async () => this.#ask({ form: "svg", figure }));
    return svg as string;
  }

  async png(figure: Figure, scale: number): Promise<Uint8Array | undefined> {
    if (!this.#wantsPng) return undefined;
    const png = await this.#once(`png ${scale} ${figureText(figure)}`, async () =>
      this.#ask({ form: "png", svg: await this.svg(figure), scale }),
    );
    return png as Uint8Array | undefined;
  }

  async close(): Promise<void> {
    await this.#thread.terminate();
  }

  #once(
    key: string,
    draw: () => Promise<string | Uint8Array | undefined>,
  ): Promise<string | Uint8Array | undefined> {
    const known = this.#drawn.get(key) ?? draw();
    this.#drawn.set(key, known);
    return known;
  }

  #ask(wish: Wish): Promise<string | Uint8Array | undefined> {
    if (this.#over !== undefined) return Promise.reject(this.#over);
    this.#asked += 1;
    const id = this.#asked;
    return new Promise((done, failed) => {
      this.#waiting.set(id, { done, failed });
      this.#thread.ref();
      this.#thread.postMessage({ ...wish, id });
    });
  }

  #take({ id, picture, fault }: PictureReply): void {
    const waiting = this.#waiting.get(id);
    this.#waiting.delete(id);
    if (this.#waiting.size === 0) this.#thread.unref();
    if (fault === undefined) waiting?.done(picture);
    else waiting?.failed(Object.assign(new Error(fault.message), { name: fault.name }));
  }

  /** Nobody waits for a thread that is no more. */
  #fail(error: Error): void {
    this.#over ??= error;
    for (const { failed } of this.#waiting.values()) failed(error);
    this.#waiting.clear();
  }
}
