import type { RunningFit } from "../../handbook/index.js";
import {
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  type Temperature,
} from "../../quantity/index.js";
import { normalCdf } from "../../statistics/index.js";
import { type ForetoldBox, type RunningPrediction, runningPrediction } from "../film/index.js";

/** A range of DIAMETRAL clearances and where it comes from. */
export interface ClearanceRange {
  readonly name: string;
  /** DIAMETRAL. */
  readonly low: Length;
  readonly high: Length;
  /** What sets either end; undefined for a rule, and where the search ended first. */
  readonly lowBecause: string | undefined;
  readonly highBecause: string | undefined;
  readonly source: string;
  /** Chance that the intended clearance, as it will come out, lies within [-]. */
  readonly chance: number;
}

/** Rules for the clearance beside what the film makes of it, and whether the intended one will do. */
export interface ClearanceChoice {
  readonly kind: "clearance choice";
  /** DIAMETRAL, as intended. */
  readonly intended: Measured<Length>;
  readonly ranges: readonly ClearanceRange[];
  /** The range in which every box has a full film and stays cool enough; undefined where there is none. */
  readonly film: ClearanceRange | undefined;
  readonly verdict: "fits" | "does not fit" | "cannot tell yet";
  readonly because: string;
}

/** Films looked at between the ends of what is searched. */
const looked = 40;
const halvings = 12;
/** Searched, as shares of the diameter. */
const searched = { from: 0.0003, to: 0.006 } as const;
/** Journals that differ by less than this share are of one size. */
const oneSize = 0.05;
/** One-sided 95 %. */
const k = 1.645;
const sure = 0.95;

/**
 * The intended clearance against rules of thumb and against the film: the range in which every box runs on a full film and
 * stays below its stop temperature.
 *
 * At each clearance `runningPrediction` gives film and rise of every box; good where the least film is at least 3 times the
 * roughness, that on the oil given (where it is known) too, and room + rise + 1.645 u(rise) lies below the stop temperature. The range is the unbroken one round the best
 * film, its ends found by halving. Searched from 0.3 to 6 thousandths of the diameter.
 *
 * Valid when: as `runningFilm`; all boxes of one clearance and, within 5 %, one diameter.
 *
 * @param boxes  as for `runningPrediction`; their clearance is the intended one
 * @param options.room, options.stopAt  [K]
 * @param options.rules  e.g. by `runningFitByThumb`, `standardRunningFit`
 * @returns the ranges side by side, and the verdict of the film
 * @throws RangeError  no boxes, boxes whose diameters differ by more than 5 % or whose clearances differ, or a stop temperature not above the room's
 * @example
 * const air = { boxSurface: quantity(250, "inch2"), cooling: boxCooling("still air"), roughness: thou(0.06) };
 * const box = { name: "far box", diameter: inch(2.5), length: inch(8), speed: rpm(110), oil: oil("ISO VG 100"), ...air };
 * const boxes = [{ ...box, diametralClearance: measured(thou(4), thou(0.3)), load: measured(lbf(800), lbf(60)) }];
 * clearanceChoice(boxes, { room: degF(65), stopAt: degF(150), rules: [runningFitByThumb(inch(2.5))] }).verdict // "fits"
 * @source full film from 3 times the roughness: common practice, no source; film: see `runningFilm`
 */
export function clearanceChoice(
  boxes: readonly ForetoldBox[],
  options: {
    readonly room: Temperature;
    readonly stopAt: Temperature;
    readonly rules: readonly RunningFit[];
  },
): ClearanceChoice {
  const { room, stopAt, rules } = options;
  const [first] = boxes;
  if (first === undefined) throw new RangeError("clearanceChoice: at least one box is needed, got none");
  for (const { name, diameter, diametralClearance } of boxes)
    if (
      diametralClearance.value.si !== first.diametralClearance.value.si ||
      Math.abs(diameter.si / first.diameter.si - 1) > oneSize
    )
      throw new RangeError(
        `clearanceChoice: boxes must be of one size and one clearance, got ${first.diameter} and ${first.diametralClearance.value} in ${first.name}, ${diameter} and ${diametralClearance.value} in ${name}; choose for each size by itself`,
      );
  if (!(stopAt.kelvin > room.kelvin))
    throw new RangeError(`clearanceChoice: stopAt must be above the room's ${room}, got ${stopAt}`);
  const intended = first.diametralClearance;
  const small = (si: number): Length => quantityFromSi("length", si, intended.value.writtenIn as "thou");
  const chanceIn = (low: number, high: number): number => {
    const { value, standardUncertainty: u } = intended;
    if (u.si === 0) return value.si >= low && value.si <= high ? 1 : 0;
    return normalCdf((high - value.si) / u.si) - normalCdf((low - value.si) / u.si);
  };
  const film = filmRange(boxes, room, stopAt, first.diameter.si);
  const short = shortOfOil(boxes, room);
  const found: ClearanceRange | undefined =
    film &&
    Object.freeze({
      name: "oil film",
      low: small(film.low),
      high: small(film.high),
      lowBecause: film.lowBecause,
      highBecause: film.highBecause,
      source: "full film and below the stop temperature in every box; see runningFilm",
      chance: chanceIn(film.low, film.high),
    });
  const verdict =
    found === undefined || found.chance <= 1 - sure
      ? "does not fit"
      : found.chance >= sure
        ? "fits"
        : "cannot tell yet";
  return Object.freeze({
    kind: "clearance choice",
    intended,
    ranges: Object.freeze([
      ...rules.map(({ name, low, high, source }) =>
        Object.freeze({
          name,
          low,
          high,
          lowBecause: undefined,
          highBecause: undefined,
          source,
          chance: chanceIn(low.si, high.si),
        }),
      ),
      ...(found === undefined ? [] : [found]),
    ]),
    film: found,
    verdict,
    because:
      found === undefined
        ? `At no clearance has every box a whole film and stays below the stop temperature: ${short.length === 0 ? "" : "more oil, "}another oil, a longer box or more cooling is needed`
        : verdict === "fits"
          ? `With it every box ${short.length === 0 ? "runs on a full film" : "has a film that keeps the metals apart"} and stays below the stop temperature${short.length === 0 ? "" : `; ${short.join(" and ")} ${short.length === 1 ? "is" : "are"} short of oil, and no clearance mends that`}`
          : intended.value.si < (found.low.si + found.high.si) / 2
            ? `Tighter than ${found.low}, ${found.lowBecause ?? "nothing was searched"}`
            : `Slacker than ${found.high}, ${found.highBecause ?? "nothing was searched"}`,
  });
}

/** The boxes to which less oil comes than their films would lose, at the intended clearance. */
function shortOfOil(boxes: readonly ForetoldBox[], room: Temperature): readonly string[] {
  const fed = boxes.filter(({ supply }) => supply !== undefined);
  if (fed.length === 0) return [];
  return runningPrediction(fed, room)
    .boxes.filter(({ film }) => film.starved)
    .map(({ name }) => name);
}

interface FilmRange {
  readonly low: number;
  readonly high: number;
  readonly lowBecause: string | undefined;
  readonly highBecause: string | undefined;
}

/** What is wrong at a clearance; undefined where all is well. */
type Fault = string | undefined;

function filmRange(
  boxes: readonly ForetoldBox[],
  room: Temperature,
  stopAt: Temperature,
  diameter: number,
): FilmRange | undefined {
  const at = (si: number): { readonly fault: Fault; readonly ratio: number } => {
    const clearance = quantityFromSi("length", si, boxes[0]!.diametralClearance.value.writtenIn as "thou");
    const asked = boxes.map((box) => ({
      ...box,
      diametralClearance: measured(clearance, box.diametralClearance.standardUncertainty.times(0)),
    }));
    let found: RunningPrediction;
    try {
      found = runningPrediction(asked, room);
    } catch (error) {
      if (error instanceof RangeError && error.message.includes("no balance below"))
        return { fault: "a box finds no balance below 150 °C", ratio: 0 };
      throw error;
    }
    const ratio = Math.min(...found.boxes.map(({ film }) => film.short?.filmRatio ?? film.filmRatio));
    const thin = found.boxes.find(({ film }) => film.state !== "full film");
    const starved = found.boxes.find(({ film }) => film.short && film.short.state !== "full film");
    const hot = found.boxes.find(
      ({ rise }) => room.kelvin + rise.value.si + k * rise.standardUncertainty.si > stopAt.kelvin,
    );
    return {
      fault:
        hot !== undefined
          ? `${hot.name} may pass ${stopAt}`
          : thin !== undefined
            ? `the film of ${thin.name} is thinner than 3 times the roughness`
            : starved !== undefined
              ? `the film of ${starved.name}, short of oil, is thinner than 3 times the roughness`
              : undefined,
      ratio,
    };
  };
  const { from, to } = searched;
  const grid = Array.from({ length: looked + 1 }, (_, i) => {
    // Even steps of the logarithm: the tight end wants the finer steps.
    const si = diameter * from * (to / from) ** (i / looked);
    return { si, ...at(si) };
  });
  const good = grid.filter(({ fault }) => fault === undefined);
  if (good.length === 0) return undefined;
  const best = grid.indexOf(good.reduce((a, b) => (b.ratio > a.ratio ? b : a)));
  const edge = (way: 1 | -1): { readonly si: number; readonly because: string | undefined } => {
    let i = best;
    while (grid[i + way] !== undefined && grid[i + way]!.fault === undefined) i += way;
    const beyond = grid[i + way];
    if (beyond === undefined) return { si: grid[i]!.si, because: undefined };
    let [inside, outside, because] = [grid[i]!.si, beyond.si, beyond.fault!];
    for (let n = 0; n < halvings; n++) {
      const middle = (inside + outside) / 2;
      const { fault } = at(middle);
      if (fault === undefined) inside = middle;
      else [outside, because] = [middle, fault];
    }
    return { si: inside, because };
  };
  const [low, high] = [edge(-1), edge(1)];
  return { low: low.si, high: high.si, lowBecause: low.because, highBecause: high.because };
}
