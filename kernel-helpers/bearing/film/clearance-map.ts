import type { Oil } from "../../handbook/index.js";
import { type Force, type Length, type Measured, measured, quantityFromSi } from "../../quantity/index.js";
import { type RunningFilm, type RunningFilmOptions, runningFilm } from "./running-film.js";
import { type BoxPrediction, runningPrediction } from "./running-prediction.js";

/** How a box would run over a range of clearances, oil by oil. */
export interface ClearanceMap {
  readonly kind: "clearance map";
  readonly oils: readonly {
    readonly oil: string;
    readonly films: readonly {
      readonly diametralClearance: Length;
      readonly film: RunningFilm | undefined;
    }[];
    /** At the clearance intended, with its uncertainty; undefined where that is not given or finds no balance. */
    readonly atIntended: BoxPrediction | undefined;
  }[];
  /** The clearance marked, e.g. the one intended. */
  readonly intended: Length | undefined;
}

/** The range and the oils to look at. */
export interface ClearanceMapOptions extends Omit<RunningFilmOptions, "diametralClearance" | "oil"> {
  /** DIAMETRAL, least and largest. */
  readonly clearances: readonly [Length, Length];
  readonly oils: readonly Oil[];
  readonly intended?: Length;
  /** Standard uncertainties with which the films at the clearance intended are foretold; 0 where left out. */
  readonly clearanceUncertainty?: Length;
  readonly loadUncertainty?: Force;
  /** Clearances looked at; default 25. */
  readonly steps?: number;
}

/** How many of the films are worked out. */
export interface FilmStep {
  readonly what: "films";
  readonly done: number;
  readonly of: number;
}

/**
 * Running temperature and least film of a box over a range of DIAMETRAL clearances, for several oils; at the one intended
 * with their uncertainty, as `runningPrediction` reckons it.
 *
 * @param options  as `runningFilm`, with a range of clearances and the oils
 * @returns a film a clearance and oil; undefined where there is no balance below 150 °C
 * @throws RangeError  a range that is none, no oil, fewer than 2 steps, or as `runningFilm`
 * @example
 * const air = { room: degF(65), boxSurface: quantity(250, "inch2"), cooling: boxCooling("still air"), roughness: thou(0.06) };
 * const box = { diameter: inch(2.4375), length: inch(8), load: lbf(700), speed: rpm(110), ...air };
 * clearanceMap({ ...box, clearances: [thou(2), thou(8)], oils: [oil("ISO VG 68")], steps: 4 }).oils[0].films.length // 4
 * @source see `runningFilm`
 */
export function clearanceMap(options: ClearanceMapOptions): ClearanceMap {
  const films = clearanceMapInSteps(options);
  for (;;) {
    const step = films.next();
    if (step.done === true) return step.value;
  }
}

/**
 * As `clearanceMap`, in steps: it rests after each film and tells how far it is, so that a sheet may show it:
 * `await inSteps(clearanceMapInSteps({ ... }))`.
 *
 * Valid when: as `clearanceMap`, which gives the same to the last digit.
 *
 * @param options  as `clearanceMap`
 * @returns steps { what, done, of } [-], and in the end what `clearanceMap` returns
 * @throws RangeError  as `clearanceMap`, at the first step or at the film it concerns
 * @source see `clearanceMap`
 */
export function* clearanceMapInSteps(options: ClearanceMapOptions): Generator<FilmStep, ClearanceMap> {
  const { clearances, oils, intended, clearanceUncertainty, loadUncertainty, steps = 25, ...box } = options;
  const [from, to] = clearances;
  if (!(from.si > 0 && to.si > from.si))
    throw new RangeError(`clearanceMap: clearances must grow from above 0, got ${from} to ${to}`);
  if (oils.length === 0) throw new RangeError("clearanceMap: at least one oil is needed, got none");
  if (!(Number.isInteger(steps) && steps >= 2))
    throw new RangeError(`clearanceMap: steps must be a whole number of at least 2, got ${steps}`);
  let done = 0;
  const mapped: ClearanceMap["oils"][number][] = [];
  for (const oil of oils) {
    const atIntended = intended && ifAny(() => foretold({ ...options, oil, diametralClearance: intended }));
    const films: ClearanceMap["oils"][number]["films"][number][] = [];
    for (let i = 0; i < steps; i++) {
      const si = from.si + ((to.si - from.si) * i) / (steps - 1);
      const diametralClearance = quantityFromSi("length", si, from.writtenIn as never);
      const film = ifAny(() => runningFilm({ ...box, oil, diametralClearance }));
      films.push(Object.freeze({ diametralClearance, film }));
      done += 1;
      yield { what: "films", done, of: steps * oils.length };
    }
    mapped.push(Object.freeze({ oil: oil.name, atIntended, films: Object.freeze(films) }));
  }
  return Object.freeze({ kind: "clearance map", intended, oils: Object.freeze(mapped) });
}

/** The film of one oil at the clearance intended. */
function foretold(
  options: RunningFilmOptions & Pick<ClearanceMapOptions, "clearanceUncertainty" | "loadUncertainty">,
): BoxPrediction {
  const { diametralClearance, load, clearanceUncertainty, loadUncertainty, ...box } = options;
  const known = {
    diametralClearance: withUncertainty(diametralClearance, clearanceUncertainty),
    load: withUncertainty(load, loadUncertainty),
  };
  return runningPrediction([{ ...box, name: box.oil.name, ...known }], options.room).boxes[0]!;
}

function withUncertainty<V extends Length | Force>(value: V, u: V | undefined): Measured<V> {
  return measured(value, u ?? (value.times(0) as V));
}

function ifAny<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (error) {
    if (error instanceof RangeError && error.message.includes("no balance below")) return undefined;
    throw error;
  }
}
