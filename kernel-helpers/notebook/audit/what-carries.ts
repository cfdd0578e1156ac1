import type { CarryingReading, CarryingReadings } from "../../view/results/audit-types.js";
import { figureMoves } from "../../view/results/decision-moves.js";
import type { RunGives } from "./judge-decision.js";
import type { RebuildState } from "./rebuild-state.js";
import { type Reading, readingsIn, withReading } from "./table-readings.js";

export interface WhatCarriesInput {
  readonly now: RebuildState;
  /** What the run on the readings as they are gives. */
  readonly gives: RunGives;
  /** Runs the rebuild in a state, and tells what it gives for the decision. */
  readonly runIn: (state: RebuildState) => Promise<RunGives>;
  readonly onProgress?: (what: string) => void;
}

/** How far each reading is moved, in steps of its last written place. */
const reach = [10, 100] as const;

/**
 * Finds the readings that carry a decision: each is moved by itself, down and up by 10 and 100 steps of its last written
 * place, with all behind the decision computed again each time; where the decision is overturned, the nearest step that
 * overturns it is found by halving. What is moved are readings as written: a reading far off its neighbours is set aside
 * as a slip by the survey itself, so that a flip nearer by may undo itself further out, and one between the steps tried
 * that undoes itself again is not seen.
 */
export async function whatCarries(input: WhatCarriesInput): Promise<CarryingReadings> {
  const { now, gives, onProgress } = input;
  const readings = [...now.files].flatMap(([file, text]) =>
    file.endsWith(".csv") ? readingsIn(file, text) : [],
  );
  const overturning: { readonly reading: CarryingReading; readonly nearest: number }[] = [];
  let moving = 0;
  for (const [i, reading] of readings.entries()) {
    onProgress?.(`moving reading ${i + 1} of ${readings.length}`);
    const tried = new Tries(reading, input);
    const down = await tried.nearestFlip(-1);
    const up = await tried.nearestFlip(1);
    if (tried.moves(gives)) moving += 1;
    if (down === undefined && up === undefined) continue;
    const { file, line, column, text } = reading;
    overturning.push({
      nearest: Math.min(down ?? Number.POSITIVE_INFINITY, up ?? Number.POSITIVE_INFINITY),
      reading: {
        file,
        line,
        column,
        reading: text,
        ...(down !== undefined && { flipsBelow: reading.moved(-down) }),
        ...(up !== undefined && { flipsAbove: reading.moved(up) }),
      },
    });
  }
  overturning.sort((a, b) => a.nearest - b.nearest);
  return {
    method: `Each was moved by itself, down and up by ${reach.join(" and ")} steps of its last written place, and the nearest overturning step found by halving; two readings moved together were not tried.`,
    readings: readings.length,
    moving,
    overturning: overturning.map(({ reading }) => reading),
  };
}

/** Runs with one reading moved, each step once. */
class Tries {
  readonly #reading: Reading;
  readonly #input: WhatCarriesInput;
  readonly #given = new Map<number, RunGives>();

  constructor(reading: Reading, input: WhatCarriesInput) {
    this.#reading = reading;
    this.#input = input;
  }

  /** The fewest steps in a direction that overturn the decision; undefined where none within reach does. */
  async nearestFlip(direction: 1 | -1): Promise<number | undefined> {
    let safe = 0;
    for (const steps of reach) {
      if (await this.#flips(direction * steps)) return this.#halve(direction, safe, steps);
      safe = steps;
    }
    return undefined;
  }

  /** Whether any of the steps tried moves a figure of the decision. */
  moves({ grounds }: RunGives): boolean {
    return [...this.#given.values()].some(
      (given) =>
        given.grounds === undefined ||
        (grounds !== undefined && figureMoves(grounds, given.grounds).length > 0),
    );
  }

  async #halve(direction: 1 | -1, safe: number, flipped: number): Promise<number> {
    if (flipped - safe <= 1) return flipped;
    const middle = Math.floor((safe + flipped) / 2);
    return (await this.#flips(direction * middle))
      ? this.#halve(direction, safe, middle)
      : this.#halve(direction, middle, flipped);
  }

  /** A run that stops before the decision does not overturn it: nobody could have decided on such readings. */
  async #flips(steps: number): Promise<boolean> {
    const { now, gives, runIn } = this.#input;
    const given = await runIn({ ...now, files: withReading(now.files, this.#reading, steps) });
    this.#given.set(steps, given);
    return given.refused !== undefined || (given.choice !== undefined && given.choice !== gives.choice);
  }
}
