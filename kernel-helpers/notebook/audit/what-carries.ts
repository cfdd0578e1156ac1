import type { DecisionGrounds } from "../../record/index.js";
import type { CarryingReading, CarryingReadings } from "../../view/results/audit-types.js";
import { figureMoves, figureSize } from "../../view/results/decision-moves.js";
import type { RunGives } from "./judge-decision.js";
import type { RebuildState } from "./rebuild-state.js";
import { type Reading, readingsIn, withReading } from "./table-readings.js";

type Files = RebuildState["files"];

/** Runs what leads up to a decision on other readings. */
export type RunOn = (files: Files) => Promise<RunGives>;

/** Somebody who runs, one run at a time. */
export interface Worker {
  readonly runOn: RunOn;
  /** Runs more than `runOn` does, to confirm what it found; where not given, `runOn` runs all there is. */
  readonly confirm?: RunOn;
}

export interface WhatCarriesInput {
  /** The files behind the decision, as they are. */
  readonly files: Files;
  /** Those of them that a run reads; readings in others cannot move the decision. */
  readonly read: ReadonlySet<string>;
  /** What the run on the readings as they are gives. */
  readonly gives: RunGives;
  /** Who runs what leads up to the decision; all go through the readings side by side. */
  readonly workers: readonly Worker[];
  /** What is run, in a sentence or two. */
  readonly cells: string;
  readonly onProgress?: (what: string) => void;
}

/** How far each reading is moved, in steps of its last written place. */
const [near, far] = [10, 100] as const;

/** A whole number, as a station in inches or a count, is not moved by a hundred. */
function farthest({ text }: Reading): number {
  return text.includes(".") ? far : near;
}

/**
 * Finds the readings that carry a decision: each is moved by itself, down and up by 100 steps of its last written place
 * (10 for a whole number), and what leads up to the decision is computed again each time. Where the figures do not answer in proportion, or the
 * decision is overturned, it is moved by 10 steps too: a reading far off its neighbours is set aside as a slip by the
 * survey itself, so that a flip nearer by may undo itself further out. Where the decision is overturned, the nearest
 * step that overturns it is found by halving. A flip between the steps tried that undoes itself again is not seen.
 */
export async function whatCarries(input: WhatCarriesInput): Promise<CarryingReadings> {
  const { files, read, cells, onProgress } = input;
  const all = [...files].flatMap(([file, text]) => (file.endsWith(".csv") ? readingsIn(file, text) : []));
  const readings = all.filter(({ file }) => read.has(file));
  const found: Found[] = [];
  const waiting = readings.entries();
  const work = async (worker: Worker): Promise<void> => {
    for (const [i, reading] of waiting) {
      onProgress?.(`moving reading ${i + 1} of ${readings.length}`);
      found[i] = await findFlips(reading, worker, input);
    }
  };
  await Promise.all(input.workers.map(work));
  const overturning = found
    .flatMap(({ nearest, carrying }) => (carrying === undefined ? [] : [{ nearest, carrying }]))
    .sort((a, b) => a.nearest - b.nearest);
  const confirmed = overturning.length > 0 && input.workers.some(({ confirm }) => confirm !== undefined);
  return {
    method: `Readings were moved one at a time, down and up by ${far} steps of their last written place (whole numbers by ${near}), and by ${near} where the figures did not answer in proportion; the nearest step that overturns was found by halving. Moves further than that, and of two readings together, were not tried.`,
    reach: `${far} steps of its last written place (a whole number ${near})`,
    cells: confirmed ? `${cells} Each step told was confirmed with all cells.` : cells,
    readings: all.length,
    apart: all.length - readings.length,
    moving: found.filter(({ moves }) => moves).length,
    overturning: overturning.map(({ carrying }) => carrying),
  };
}

/** What was found of one reading. */
interface Found {
  readonly moves: boolean;
  /** The fewest steps that overturn the decision. */
  readonly nearest: number;
  readonly carrying?: CarryingReading;
}

async function findFlips(reading: Reading, worker: Worker, input: WhatCarriesInput): Promise<Found> {
  const tried = new Tries(reading, worker, input);
  const { down, up } = await tried.nearestFlips();
  const moves = tried.moves(input.gives);
  const nearest = Math.min(down ?? Number.POSITIVE_INFINITY, up ?? Number.POSITIVE_INFINITY);
  if (nearest === Number.POSITIVE_INFINITY) return { moves, nearest };
  const { file, line, column, text } = reading;
  const carrying: CarryingReading = {
    file,
    line,
    column,
    reading: text,
    ...(down !== undefined && { flipsBelow: reading.moved(-down) }),
    ...(up !== undefined && { flipsAbove: reading.moved(up) }),
  };
  return { moves, nearest, carrying };
}

/** Runs with one reading moved, each step once. */
class Tries {
  readonly #reading: Reading;
  readonly #input: WhatCarriesInput;
  readonly #far: number;
  readonly #confirm: RunOn | undefined;
  #runOn: RunOn;
  readonly #given = new Map<number, RunGives>();

  constructor(reading: Reading, { runOn, confirm }: Worker, input: WhatCarriesInput) {
    this.#reading = reading;
    this.#far = farthest(reading);
    this.#input = input;
    this.#runOn = runOn;
    this.#confirm = confirm;
  }

  /** The fewest steps in each direction that overturn the decision; undefined where none within reach does. */
  async nearestFlips(): Promise<{ readonly down?: number; readonly up?: number }> {
    const flips = { down: await this.#nearestFlip(-1), up: await this.#nearestFlip(1) };
    for (const [steps, flip] of [[-1, flips.down] as const, [1, flips.up] as const])
      if (flip !== undefined && !(await this.#isConfirmed(steps * flip))) {
        // What leads up to the decision is more than was run: this reading is tried again with all of it.
        this.#runOn = this.#confirm!;
        this.#given.clear();
        return { down: await this.#nearestFlip(-1), up: await this.#nearestFlip(1) };
      }
    return flips;
  }

  /** Whether any of the steps tried moves a figure of the decision. */
  moves({ grounds }: RunGives): boolean {
    return [...this.#given.values()].some(
      (given) =>
        given.grounds === undefined ||
        (grounds !== undefined && figureMoves(grounds, given.grounds).length > 0),
    );
  }

  async #nearestFlip(direction: 1 | -1): Promise<number | undefined> {
    const flipsFar = await this.#flips(direction * this.#far);
    if (!flipsFar && (await this.#answersInProportion())) return undefined;
    if (await this.#flips(direction * near)) return this.#halve(direction, 0, near);
    return flipsFar ? this.#halve(direction, near, this.#far) : undefined;
  }

  async #halve(direction: 1 | -1, safe: number, flipped: number): Promise<number> {
    if (flipped - safe <= 1) return flipped;
    const middle = Math.floor((safe + flipped) / 2);
    return (await this.#flips(direction * middle))
      ? this.#halve(direction, safe, middle)
      : this.#halve(direction, middle, flipped);
  }

  async #isConfirmed(steps: number): Promise<boolean> {
    if (this.#confirm === undefined) return true;
    return this.#overturns(await this.#confirm(this.#filesWith(steps)));
  }

  /** Whether every figure moves as far up for a reading moved one way as it moves down for one moved the other. */
  async #answersInProportion(): Promise<boolean> {
    const [middle, down, up] = [
      this.#input.gives.grounds,
      (await this.#gives(-this.#far)).grounds,
      (await this.#gives(this.#far)).grounds,
    ];
    if (middle === undefined || down === undefined || up === undefined) return false;
    const [sizes, sizesDown, sizesUp] = [middle, down, up].map(figureSizes);
    if (sizes!.size !== sizesDown!.size || sizes!.size !== sizesUp!.size) return false;
    const moves = [...sizes!]
      .map(([figure, size]) => ({
        size,
        fall: size - sizesDown!.get(figure)!,
        rise: sizesUp!.get(figure)! - size,
      }))
      .filter(({ size, fall, rise }) => Math.max(Math.abs(fall), Math.abs(rise)) > roundOff * Math.abs(size));
    return moves.every(
      ({ fall, rise }) => Math.abs(rise - fall) <= outOfProportion * Math.max(Math.abs(fall), Math.abs(rise)),
    );
  }

  /** A run that stops before the decision does not overturn it: nobody could have decided on such readings. */
  #overturns(given: RunGives): boolean {
    const { choice } = this.#input.gives;
    return given.refused !== undefined || (given.choice !== undefined && given.choice !== choice);
  }

  async #flips(steps: number): Promise<boolean> {
    return this.#overturns(await this.#gives(steps));
  }

  async #gives(steps: number): Promise<RunGives> {
    const given = this.#given.get(steps) ?? (await this.#runOn(this.#filesWith(steps)));
    this.#given.set(steps, given);
    return given;
  }

  #filesWith(steps: number): Files {
    return withReading(this.#input.files, this.#reading, steps);
  }
}

/** Below this share a figure has not moved: only the arithmetic differs. */
const roundOff = 1e-9;
/** By more than this share of the move, moves down and up are not alike. */
const outOfProportion = 0.1;

/** Figures of all options and limits as numbers, by option and name; one in words is left out. */
function figureSizes({ options, limits }: DecisionGrounds): ReadonlyMap<string, number> {
  const named = [
    ...options.map(({ name, figures }) => [name, figures] as const),
    ["", limits] as const, // no option has an empty name
  ];
  return new Map(
    named.flatMap(([of, figures]) =>
      Object.entries(figures).flatMap(([figure, value]) => {
        const size = figureSize(value);
        return size === undefined ? [] : [[JSON.stringify([of, figure]), size] as const];
      }),
    ),
  );
}
