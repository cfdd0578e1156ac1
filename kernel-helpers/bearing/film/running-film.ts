import { type Oil, viscosity } from "../../handbook/index.js";
import {
  type Angle,
  type Area,
  type Force,
  type Length,
  type Power,
  type Pressure,
  type Quantity,
  quantity,
  quantityFromSi,
  type RotationalSpeed,
  type Temperature,
  type TemperatureDifference,
  temperature,
} from "../../quantity/index.js";
import { clearanceNeeded } from "./clearance-needed.js";
import { type FilmCurve, filmAt, filmCurve } from "./film-curve.js";
import type { FilmSupply } from "./film-state.js";
import { type StarvedFilm, type StarvedFilms, starvedFilm, starvedFilms } from "./starved-film.js";

/** A box while it runs. */
export interface RunningFilmOptions {
  readonly diameter: Length;
  /** Of the bearing, along the shaft. */
  readonly length: Length;
  /** DIAMETRAL: bore less journal. */
  readonly diametralClearance: Length;
  readonly load: Force;
  readonly speed: RotationalSpeed;
  readonly oil: Oil;
  readonly room: Temperature;
  /** Outside of the box that gives heat to the air. */
  readonly boxSurface: Area;
  /** Heat given up by a square metre for a kelvin; see `boxCooling`. */
  readonly cooling: Quantity<"heat transfer coefficient">;
  /** How much hotter the film is than the box, over how much hotter the box is than the room [-]; default 0.75. */
  readonly filmOverBox?: number;
  /** Surface roughness of journal and bearing together (root mean square). */
  readonly roughness: Length;
  /** Oil that is given; undefined where a ring or bath gives as much as the film takes. */
  readonly supply?: Quantity<"volume flow">;
  /** Angles of the parting lines from the load; default a quarter turn to either side. */
  readonly grooves?: readonly Angle[];
}

/** How a box runs, by its film. */
export interface RunningFilm {
  readonly kind: "running film";
  readonly state: "full film" | "mixed" | "boundary";
  /** Why, in a sentence. */
  readonly because: string;
  /** Less oil is given than a full film loses at its ends. */
  readonly starved: boolean;
  /** The film that the oil given can keep up; undefined where it is enough, or not known. */
  readonly short: ShortFilm | undefined;
  readonly room: Temperature;
  readonly boxTemperature: Temperature;
  readonly filmTemperature: Temperature;
  /** Box over the room. */
  readonly rise: TemperatureDifference;
  readonly viscosity: Quantity<"dynamic viscosity">;
  readonly meanPressure: Pressure;
  readonly highestPressure: Pressure;
  readonly sommerfeld: number;
  readonly eccentricity: number;
  /** From the load on to the thinnest film, in the direction of rotation. */
  readonly attitude: Angle;
  readonly leastFilm: Length;
  /** Least film over the roughness [-]. */
  readonly filmRatio: number;
  readonly frictionCoefficient: number;
  readonly frictionPower: Power;
  /** What leaves at the ends of a full film. */
  readonly sideFlow: Quantity<"volume flow">;
  readonly radialClearance: Length;
  readonly oil: string;
  /** Where the film ends and begins anew, from the load on in the direction of rotation. */
  readonly grooves: readonly Angle[];
}

/** A film on less oil than it would lose, at the heat of the full one. */
export interface ShortFilm {
  /** Oil given over oil lost by a full film [-]. */
  readonly share: number;
  readonly state: RunningFilm["state"];
  /** Where the film begins, from the load on in the direction of rotation. */
  readonly begins: Angle;
  readonly leastFilm: Length;
  /** Least film over the roughness [-]. */
  readonly filmRatio: number;
  readonly highestPressure: Pressure;
  /** Friction over that of the full film [-]: at least and at most. */
  readonly friction: { readonly least: number; readonly most: number };
}

const fullFilm = 3;
const mixedFilm = 1;
/** Friction of white metal on steel with a film that only wets; common practice, no source. */
const boundaryFriction = 0.08;
const quarterTurns = Object.freeze([-90, 90].map((angle) => quantity(angle, "degree")));
const curves = new Map<string, FilmCurve>();
const late = new Map<string, StarvedFilms>();

/**
 * The running temperature of a bearing that cools itself, and the film it runs on.
 *
 * Friction f·W·ω·R = cooling·surface·(T_box − T_room), T_film − T_box = a·(T_box − T_room); viscosity at T_film gives
 * S = µNDL/W·(R/c)², and S the film. Solved by bisection on T_film. Full film from least film ≥ 3 times the roughness,
 * boundary below 1: then friction is taken as 0.08 W, in between it is shared out.
 *
 * Valid when: steady load and speed, laminar film, box alone gives up the heat (oil that runs off takes little), oil
 * enough unless `starved` says otherwise: then `short` tells by `starvedFilm` what film the oil given keeps up, and all else is of
 * the full film.
 *
 * @param options.diameter, options.length, options.diametralClearance  > 0 [m]
 * @param options.load  > 0 [N]
 * @param options.speed  > 0 [rad/s]
 * @param options.boxSurface  > 0 [m²]
 * @param options.cooling  > 0 [W/(m²·K)]
 * @param options.filmOverBox  ≥ 0 [-]
 * @param options.roughness  > 0 [m]
 * @param options.supply  > 0 [m³/s]
 * @returns temperatures, film, friction and flow
 * @throws RangeError  a value not above 0, a clearance beyond a hundredth of the diameter, or a film hotter than the
 * oil's viscosity is known for
 * @example
 * const box = { diameter: inch(2.4375), length: inch(8), diametralClearance: thou(4), load: lbf(700) };
 * const air = { room: degF(65), boxSurface: quantity(250, "inch2"), cooling: boxCooling("shaft-stirred air") };
 * runningFilm({ ...box, ...air, speed: rpm(110), oil: oil("ISO VG 100"), roughness: thou(0.06) }).state // "full film"
 * @source J. E. Shigley & C. R. Mischke, Mechanical Engineering Design, section 12-10 (self-contained bearings: heat
 * balance and factor a) (from memory); film: see `filmState`; limits of film over roughness: common practice, no source
 */
export function runningFilm(options: RunningFilmOptions): RunningFilm {
  const { diameter, length, diametralClearance, load, speed, boxSurface, cooling, roughness, supply } =
    options;
  const { filmOverBox = 0.75, room } = options;
  for (const [name, value] of [
    ["diameter", diameter],
    ["length", length],
    ["diametralClearance", diametralClearance],
    ["load", load],
    ["speed", speed],
    ["boxSurface", boxSurface],
    ["cooling", cooling],
    ["roughness", roughness],
    ...(supply === undefined ? [] : [["supply", supply] as const]),
  ] as const)
    if (!(value.si > 0)) {
      const needed =
        name === "diametralClearance" && diameter.si > 0
          ? clearanceNeeded(diameter)
          : name === "speed"
            ? "; at rest no film forms: the speed it is to run at is needed"
            : name === "load"
              ? "; the force between journal and box is needed, however small"
              : "";
      throw new RangeError(`runningFilm: ${name} must be above 0, got ${value}${needed}`);
    }
  if (!(filmOverBox >= 0))
    throw new RangeError(`runningFilm: filmOverBox must be 0 or more, got ${filmOverBox}`);
  if (diametralClearance.si > diameter.si / 100)
    throw new RangeError(
      `runningFilm: a diametral clearance of ${diametralClearance} on ${diameter} is more than a hundredth: is it in thousandths?`,
    );
  const c = diametralClearance.si / 2;
  const [d, l, w] = [diameter.si, length.si, load.si];
  const turns = speed.si / (2 * Math.PI);
  const grooves = options.grooves ?? quarterTurns;
  const curve = curveFor(l / d, { at: "grooves", fromLoad: grooves.map(({ si }) => si) });
  const gives = cooling.si * boxSurface.si;

  /** The film at a temperature, the friction power, and the film temperature that this power makes. */
  const at = (
    kelvin: number,
  ): { film: ReturnType<typeof filmAt>; mu: number; f: number; least: number; makes: number } => {
    const mu = viscosity(options.oil, temperature(kelvin, "kelvin")).si;
    const film = filmAt(curve, ((mu * turns * d * l) / w) * (d / 2 / c) ** 2);
    const least = film === undefined ? 0 : c * (1 - film.eccentricity);
    const ratio = least / roughness.si;
    // Between full and boundary the load is shared between film and spots of contact.
    const contact = Math.min(1, Math.max(0, (fullFilm - ratio) / (fullFilm - mixedFilm)));
    const viscous = film === undefined ? 0 : film.friction / (d / 2 / c);
    const f = contact * boundaryFriction + (1 - contact) * viscous;
    const rise = (f * w * speed.si * (d / 2)) / gives;
    return { film, mu, f, least, makes: room.kelvin + rise * (1 + filmOverBox) };
  };
  // What the film makes falls as it gets hotter, but for mixed films; the coolest balance is the one it warms up to.
  let [low, high] = [room.kelvin, room.kelvin];
  do {
    high += 2;
    if (high > 423)
      throw new RangeError(
        `runningFilm: no balance below 150 °C: the box of ${boxSurface} cannot give up the heat of this film; a thinner oil, a larger clearance or more cooling is needed`,
      );
  } while (at(high).makes > high);
  low = Math.max(room.kelvin, high - 2);
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (at(middle).makes > middle) low = middle;
    else high = middle;
  }
  const filmKelvin = (low + high) / 2;
  const { film, mu, f, least } = at(filmKelvin);
  const power = f * w * speed.si * (d / 2);
  const boxRise = power / gives;
  const scale = room.toJSON().scale;
  const inch = diameter.writtenIn === "inch" || diameter.writtenIn === "thou";
  const ratio = least / roughness.si;
  const state = stateAt(ratio);
  const sideFlow = film === undefined ? 0 : film.flow * film.sideShare * (d / 2) * c * turns * l;
  const starved = supply !== undefined && supply.si < sideFlow;
  const sommerfeld = ((mu * turns * d * l) / w) * (d / 2 / c) ** 2;
  const begun = starved
    ? starvedFilm(starvedFor(l / d), sommerfeld, supply.si / ((d / 2) * c * turns * l))
    : undefined;
  const mean = w / (l * d);
  const rise = quantityFromSi("temperature difference", boxRise, scale === "degF" ? "deltaF" : "deltaC");
  const pressureIn = (si: number): Pressure => quantityFromSi("pressure", si, inch ? "psi" : "megapascal");
  const small = (si: number): Length => quantityFromSi("length", si, inch ? "thou" : "micrometre");
  const shortFilm = (found: StarvedFilm | undefined): ShortFilm => {
    // A parting line can only take away: never thicker than the full film.
    const thin = c * (1 - Math.max(found?.eccentricity ?? 1, film?.eccentricity ?? 1));
    const over = (drag: number): number => drag / (d / 2 / c) / f;
    const dry = boundaryFriction / f;
    // Where peaks touch, the metal may drag as much as without a film.
    const touching = thin / roughness.si < fullFilm ? dry : 0;
    return Object.freeze({
      share: supply!.si / sideFlow,
      state: stateAt(thin / roughness.si),
      begins: quantityFromSi("angle", found?.begins ?? 0, "degree"),
      leastFilm: small(thin),
      filmRatio: thin / roughness.si,
      highestPressure: pressureIn(found === undefined ? mean : mean / found.meanOverHighest),
      friction: Object.freeze(
        found === undefined
          ? { least: dry, most: dry }
          : { least: over(found.friction.least), most: Math.max(over(found.friction.most), touching) },
      ),
    });
  };
  const shown = (kelvin: number): Temperature =>
    temperature(Number(temperature(kelvin, "kelvin").in(scale).toFixed(2)), scale);
  return Object.freeze({
    kind: "running film",
    state,
    because: reason(state, starved, ratio),
    starved,
    short: starved ? shortFilm(begun) : undefined,
    room,
    boxTemperature: shown(room.kelvin + boxRise),
    filmTemperature: shown(filmKelvin),
    rise,
    viscosity: quantityFromSi("dynamic viscosity", mu, "millipascalSecond"),
    meanPressure: pressureIn(mean),
    highestPressure: pressureIn(film === undefined ? mean : mean / film.meanOverHighest),
    sommerfeld,
    eccentricity: film?.eccentricity ?? 1,
    attitude: quantityFromSi("angle", film?.attitude ?? 0, "degree"),
    leastFilm: small(least),
    filmRatio: ratio,
    frictionCoefficient: f,
    frictionPower: quantityFromSi("power", power, "watt"),
    sideFlow: quantityFromSi("volume flow", sideFlow, "litrePerMinute"),
    radialClearance: small(c),
    oil: options.oil.name,
    grooves,
  });
}

/** Curves are the same for all bearings of one shape: made once. */
function curveFor(lengthOverDiameter: number, supply: FilmSupply): FilmCurve {
  const key = JSON.stringify([lengthOverDiameter.toFixed(4), supply]);
  let curve = curves.get(key);
  if (curve === undefined) {
    curve = filmCurve(lengthOverDiameter, supply);
    curves.set(key, curve);
  }
  return curve;
}

/** Likewise the films that begin late. */
function starvedFor(lengthOverDiameter: number): StarvedFilms {
  const key = lengthOverDiameter.toFixed(4);
  let films = late.get(key);
  if (films === undefined) {
    films = starvedFilms(Number(key));
    late.set(key, films);
  }
  return films;
}

function stateAt(ratio: number): RunningFilm["state"] {
  return ratio >= fullFilm ? "full film" : ratio >= mixedFilm ? "mixed" : "boundary";
}

function reason(state: RunningFilm["state"], starved: boolean, ratio: number): string {
  const film =
    state === "full film"
      ? `the least film is ${ratio.toFixed(1)} times the roughness, so journal and bearing are kept apart`
      : state === "mixed"
        ? `the least film is only ${ratio.toFixed(1)} times the roughness, so peaks touch`
        : "the film is thinner than the roughness: it runs on what clings to the metal";
  return starved
    ? `with oil enough, ${film}; less oil is given than a full film loses at its ends, so the film is thinner than that`
    : film;
}
