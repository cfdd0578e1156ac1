import { join } from "node:path";
import { packageName, packageRoot } from "../../record/package-root.js";

/** A kernel that nobody has asked anything for so long is at leisure [ms]. */
const quiet = 100;
/** Helpers are loaded for so long at a time [ms]. */
const together = 30;

/**
 * Work that cells will ask for sooner or later, done while nobody waits. It is cut into steps of a tenth of a second
 * at most, on an ordinary machine, and whoever asks something meanwhile comes before the next.
 */
export class WarmUp {
  readonly #steps: Iterator<void>;
  readonly #isFree: () => boolean;
  #timer: NodeJS.Timeout | undefined;
  #done = false;

  /** `isFree` tells whether no cell runs or waits. */
  constructor(steps: Iterator<void>, isFree: () => boolean) {
    this.#steps = steps;
    this.#isFree = isFree;
  }

  /** Somebody asks something, and may ask more: what is left to do waits until all is quiet. */
  postpone(): void {
    this.#continueIn(quiet);
  }

  #continueIn(milliseconds: number): void {
    clearTimeout(this.#timer);
    if (!this.#done) this.#timer = setTimeout(() => this.#step(), milliseconds);
  }

  #step(): void {
    if (!this.#isFree()) {
      this.postpone();
      return;
    }
    try {
      this.#done = this.#steps.next().done === true;
    } catch {
      this.#done = true; // the cell that comes to it will say why
    }
    this.#continueIn(1); // in which requests are read
  }
}

/** What the first cells of a worksheet need: the types of the language and of the helpers, and the helpers. */
export function* firstNeeds(compile: (source: string) => void): Iterator<void> {
  compile("1 + 1");
  yield;
  compile(`import { openRebuild } from "${packageName}";\nopenRebuild;`);
  yield;
  const helpers: Readonly<Record<string, unknown>> = require(join(packageRoot(), "dist", "index.js"));
  let begun = performance.now();
  for (const name of Object.keys(helpers)) {
    void helpers[name]; // loads the module it comes from
    if (performance.now() - begun < together) continue;
    yield;
    begun = performance.now();
  }
}
