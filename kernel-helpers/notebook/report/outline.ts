/** The deepest heading of HTML. */
const deepest = 6;

/**
 * Gives the headings inside a section of the report their levels, so that none is skipped, whatever levels the
 * worksheet uses: what comes next under a heading is exactly one deeper.
 */
export class Outline {
  readonly #base: number;
  /** The worksheet's own levels that lead to where we are, e.g. 2 then 4. */
  readonly #open: number[] = [];

  /** @param base  level of the heading over the whole section, e.g. 2 */
  constructor(base: number) {
    this.#base = base;
  }

  /** Opens a heading that has this level in the worksheet; returns its level in the report. */
  enter(level: number): number {
    while (this.#open.length > 0 && this.#open.at(-1)! >= level) this.#open.pop();
    this.#open.push(level);
    return Math.min(this.#base + this.#open.length, deepest);
  }

  /** The level of a heading one below where we are. */
  get below(): number {
    return Math.min(this.#base + this.#open.length + 1, deepest);
  }
}
