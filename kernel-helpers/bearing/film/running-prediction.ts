import {
  type Angle,
  type Force,
  type KindName,
  type Length,
  type Measured,
  measured,
  type Power,
  type Pressure,
  type Quantity,
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
  /** Of the film, from the same sources; what oil is not brought does to it is in `film.short`. */
  readonly uncertainty: FilmUncertainty;
}

/** Standard uncertainties of what a film is foretold to be. */
export interface FilmUncertainty {
  readonly filmTemperature: TemperatureDifference;
  readonly leastFilm: Length;
  /** Of the film that the oil brought keeps up; undefined where it is enough, or not known. */
  readonly shortLeastFilm: Length | undefined;
  readonly attitude: Angle;
  readonly meanPressure: Pressure;
  readonly highestPressure: Pressure;
  readonly frictionPower: Power;
  readonly sideFlow: Quantity<"volume flow">;
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
 * The rise of `runningFilm` at the values given; its standard uncertainty, and that of the film, from clearance, load, cooling, viscosity and
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
  const films = (Object.keys(up) as (keyof typeof up)[]).map((source) => ({
    source,
    up: filmOf(up[source]),
    down: filmOf(down[source]),
  }));
  /** What a source alone makes of a figure of the film: half the difference of both sides. */
  const halves = (figure: (film: RunningFilm) => number): number[] =>
    films.map((one) => Math.abs(figure(one.up) - figure(one.down)) / 2);
  const rises = halves(({ rise }) => rise.si);
  const half = (of: keyof typeof up): number => rises[films.findIndex(({ source }) => source === of)]!;
  const shares = (
    [
      ...(film.short === undefined
        ? []
        : [["oil that is not brought", unbrought(film, film.short)] as const]),
      ["clearance", half("clearance")],
      ["load", half("load")],
      ["cooling of the box", half("cooling")],
      ["viscosity of the oil", half("oil")],
      ["film hotter than the box", half("film")],
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
    uncertainty: uncertaintyOf(film, (figure) => Math.hypot(...halves(figure))),
  });
}

/** Standard uncertainties of a film's figures, each in the unit its figure is written in. */
function uncertaintyOf(
  film: RunningFilm,
  all: (figure: (film: RunningFilm) => number) => number,
): FilmUncertainty {
  const like = <K extends KindName>(kind: K, of: Quantity<K>, si: number): Quantity<K> =>
    quantityFromSi(kind, si, of.writtenIn as never);
  const { short } = film;
  return Object.freeze({
    filmTemperature: like(
      "temperature difference",
      film.rise,
      all(({ filmTemperature }) => filmTemperature.kelvin),
    ),
    leastFilm: like(
      "length",
      film.leastFilm,
      all(({ leastFilm }) => leastFilm.si),
    ),
    shortLeastFilm:
      short &&
      like(
        "length",
        short.leastFilm,
        all((one) => (one.short ?? one).leastFilm.si),
      ),
    attitude: like(
      "angle",
      film.attitude,
      all(({ attitude }) => attitude.si),
    ),
    meanPressure: like(
      "pressure",
      film.meanPressure,
      all(({ meanPressure }) => meanPressure.si),
    ),
    highestPressure: like(
      "pressure",
      film.highestPressure,
      all(({ highestPressure }) => highestPressure.si),
    ),
    frictionPower: like(
      "power",
      film.frictionPower,
      all(({ frictionPower }) => frictionPower.si),
    ),
    sideFlow: like(
      "volume flow",
      film.sideFlow,
      all(({ sideFlow }) => sideFlow.si),
    ),
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
