import type { Oil } from "../../handbook/index.js";
import { type Length, quantityFromSi } from "../../quantity/index.js";
import { type RunningFilm, type RunningFilmOptions, runningFilm } from "./running-film.js";

/** How a box would run over a range of clearances, oil by oil. */
export interface ClearanceMap {
  readonly kind: "clearance map";
  readonly oils: readonly {
    readonly oil: string;
    readonly films: readonly {
      readonly diametralClearance: Length;
      readonly film: RunningFilm | undefined;
    }[];
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
  /** Clearances looked at; default 25. */
  readonly steps?: number;
  /** Told after each film how many of all are done. */
  readonly progress?: (done: number, of: number) => void;
}

/**
 * Running temperature and least film of a box over a range of DIAMETRAL clearances, for several oils.
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
  const { clearances, oils, intended, steps = 25, progress, ...box } = options;
  const [from, to] = clearances;
  if (!(from.si > 0 && to.si > from.si))
    throw new RangeError(`clearanceMap: clearances must grow from above 0, got ${from} to ${to}`);
  if (oils.length === 0) throw new RangeError("clearanceMap: at least one oil is needed, got none");
  if (!(Number.isInteger(steps) && steps >= 2))
    throw new RangeError(`clearanceMap: steps must be a whole number of at least 2, got ${steps}`);
  let done = 0;
  const told = <T>(found: T): T => {
    done += 1;
    progress?.(done, steps * oils.length);
    return found;
  };
  return Object.freeze({
    kind: "clearance map",
    intended,
    oils: Object.freeze(
      oils.map((oil) =>
        Object.freeze({
          oil: oil.name,
          films: Object.freeze(
            Array.from({ length: steps }, (_, i) => {
              const si = from.si + ((to.si - from.si) * i) / (steps - 1);
              const diametralClearance = quantityFromSi("length", si, from.writtenIn as never);
              return Object.freeze({
                diametralClearance,
                film: told(filmIfAny({ ...box, oil, diametralClearance })),
              });
            }),
          ),
        }),
      ),
    ),
  });
}

function filmIfAny(options: RunningFilmOptions): RunningFilm | undefined {
  try {
    return runningFilm(options);
  } catch (error) {
    if (error instanceof RangeError && error.message.includes("no balance below")) return undefined;
    throw error;
  }
}
