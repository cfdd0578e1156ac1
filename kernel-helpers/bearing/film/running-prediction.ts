import {
  type Force,
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  type RotationalSpeed,
  type Temperature,
  type TemperatureDifference,
} from "../../quantity/index.js";
import type { ForetoldRise } from "../run-in/index.js";
import { type RunningFilm, type RunningFilmOptions, runningFilm, type ShortFilm } from "./running-film.js";

/** A box whose running is foretold: what is uncertain of it as measured values. */
export interface ForetoldBox extends Omit<RunningFilmOptions, "diametralClearance" | "load" | "room"> {
  readonly name: string;
  /** DIAMETRAL: bore less journal. */
  readonly diametralClearance: Measured<Length>;
  readonly load: Measured<Force>;
  /** Relative standard uncertainty of the cooling [-]; default 0.2: draughts, paint and dirt. */
  readonly coolingShare?: number;
  /** Relative standard uncertainty of the oil's viscosity [-]; default 0.06: a grade is ± 10 %. */
  readonly viscosityShare?: number;
}

/** One source of the rise's uncertainty. */
export interface RiseShare {
  readonly from: string;
  /** What it alone makes of the rise's standard uncertainty. */
  readonly standardUncertainty: TemperatureDifference;
}

export interface BoxPrediction {
  readonly name: string;
  readonly film: RunningFilm;
  readonly diametralClearance: Measured<Length>;
  readonly load: Measured<Force>;
  readonly speed: RotationalSpeed;
  /** Box over the room when it has settled. */
  readonly rise: Measured<TemperatureDifference>;
  /** Largest first. */
  readonly shares: readonly RiseShare[];
}

/** How hot each box will run, foretold before it does. */
export interface RunningPrediction {
  readonly kind: "running prediction";
  readonly room: Temperature;
  readonly boxes: readonly BoxPrediction[];
}

const defaultCooling = 0.2;
const defaultViscosity = 0.06;
/** The factor from box to film is known to about this, as a share. */
const filmOverBoxShare = 0.3;

/**
 * Foretells how hot each box will run, with what the uncertainty comes from.
 *
 * The rise of `runningFilm` at the values given; its standard uncertainty from clearance, load, cooling, viscosity and
 * the factor from box to film, each moved by its own to both sides, half the difference, added as squares; where less oil is
 * brought than a full film loses, also from what friction its short film may have.
 *
 * Valid when: as `runningFilm`; the sources are independent and small enough to be linear.
 *
 * @param boxes  each with its name and what is known [m], [N], …
 * @param room  temperature of the room [K]
 * @returns a prediction a box
 * @throws RangeError  as `runningFilm`, with the box named; no boxes
 * @example
 * const air = { boxSurface: quantity(250, "inch2"), cooling: boxCooling("still air"), roughness: thou(0.06) };
 * const box = { name: "far box", diameter: inch(2.4375), length: inch(8), speed: rpm(110), oil: oil("ISO VG 100"), ...air };
 * const known = { diametralClearance: measured(thou(4), thou(0.3)), load: measured(lbf(700), lbf(60)) };
 * runningPrediction([{ ...box, ...known }], degF(65)).boxes[0].film.state // "full film"
 * @source JCGM 100:2008 (GUM), 5.1.3 note 2 (sensitivities by moving each input)
 */
export function runningPrediction(boxes: readonly ForetoldBox[], room: Temperature): RunningPrediction {
  if (boxes.length === 0) throw new RangeError("runningPrediction: at least one box is needed, got none");
  return Object.freeze({
    kind: "running prediction",
    room,
    boxes: Object.freeze(boxes.map((box) => predicted(box, room))),
  });
}

/** The rises foretold, as `runIn` takes them. */
export function foretoldRises({ boxes }: RunningPrediction): readonly ForetoldRise[] {
  return Object.freeze(boxes.map(({ name, rise, speed }) => Object.freeze({ box: name, rise, speed })));
}

function predicted(box: ForetoldBox, room: Temperature): BoxPrediction {
  const {
    name,
    diametralClearance,
    load,
    coolingShare = defaultCooling,
    viscosityShare = defaultViscosity,
  } = box;
  const a = box.filmOverBox ?? 0.75;
  const base: RunningFilmOptions = {
    ...box,
    room,
    diametralClearance: diametralClearance.value,
    load: load.value,
    filmOverBox: a,
  };
  const filmOf = (change: Partial<RunningFilmOptions>): RunningFilm => {
    try {
      return runningFilm({ ...base, ...change });
    } catch (error) {
      if (error instanceof RangeError) throw new RangeError(`${name}: ${error.message}`);
      throw error;
    }
  };
  const film = filmOf({});
  const difference = (si: number): TemperatureDifference =>
    quantityFromSi("temperature difference", si, room.toJSON().scale === "degF" ? "deltaF" : "deltaC");
  const half = (up: Partial<RunningFilmOptions>, down: Partial<RunningFilmOptions>): number =>
    Math.abs(filmOf(up).rise.si - filmOf(down).rise.si) / 2;
  const moved = (
    sign: 1 | -1,
  ): { [K in "clearance" | "load" | "cooling" | "oil" | "film"]: Partial<RunningFilmOptions> } => ({
    clearance: {
      diametralClearance: quantityFromSi(
        "length",
        shifted(diametralClearance, sign),
        diametralClearance.value.writtenIn as never,
      ),
    },
    load: { load: quantityFromSi("force", shifted(load, sign), load.value.writtenIn as never) },
    cooling: { cooling: box.cooling.times(1 + sign * coolingShare) as typeof box.cooling },
    oil: { oil: thicker(box.oil, 1 + sign * viscosityShare) },
    film: { filmOverBox: a * (1 + sign * filmOverBoxShare) },
  });
  const [up, down] = [moved(1), moved(-1)];
  const shares = (
    [
      ...(film.short === undefined
        ? []
        : [["oil that is not brought", unbrought(film, film.short)] as const]),
      ["clearance", half(up.clearance, down.clearance)],
      ["load", half(up.load, down.load)],
      ["cooling of the box", half(up.cooling, down.cooling)],
      ["viscosity of the oil", half(up.oil, down.oil)],
      ["film hotter than the box", half(up.film, down.film)],
    ] as const
  )
    .map(([from, si]) => Object.freeze({ from, standardUncertainty: difference(si) }))
    .sort((x, y) => y.standardUncertainty.si - x.standardUncertainty.si);
  const u = Math.hypot(...shares.map(({ standardUncertainty }) => standardUncertainty.si));
  return Object.freeze({
    name,
    film,
    diametralClearance,
    load,
    speed: box.speed,
    rise: measured(film.rise, difference(u)),
    shares: Object.freeze(shares),
  });
}

/** The friction of a film short of oil lies anywhere between its least and its most: a/√3 of the rise, by the wider side. */
function unbrought({ rise }: RunningFilm, { friction }: ShortFilm): number {
  return (rise.si * Math.max(Math.abs(friction.most - 1), Math.abs(1 - friction.least))) / Math.sqrt(3);
}

function shifted({ value, standardUncertainty }: Measured<Length> | Measured<Force>, sign: 1 | -1): number {
  return value.si + sign * standardUncertainty.si;
}

function thicker(oil: ForetoldBox["oil"], factor: number): ForetoldBox["oil"] {
  const { law } = oil;
  return law.form === "exponential"
    ? { ...oil, law: { ...law, mu0: law.mu0 * factor } }
    : { ...oil, law: { ...law, at40: law.at40 * factor, at100: law.at100 * factor } };
}
