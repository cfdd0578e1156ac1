import {
  type Angle,
  type Length,
  type Measured,
  type Pressure,
  quantityFromSi,
  type Temperature,
} from "../../quantity/index.js";
import { filmState } from "./film-state.js";
import type { BoxPrediction } from "./running-prediction.js";

/** Film and pressure of a box as it will run, unrolled. */
export interface FilmMap {
  readonly kind: "film map";
  readonly name: string;
  readonly diametralClearance: Measured<Length>;
  readonly filmTemperature: Temperature;
  /** Three times the roughness: the least film that keeps the metals apart. */
  readonly needed: Length;
  /** Round the bearing from the load on, in the direction of rotation, −180° to 180°. */
  readonly angles: readonly Angle[];
  /** Film at each angle. */
  readonly film: readonly Length[];
  /** Places along the bearing from its middle, both ways. */
  readonly along: readonly Length[];
  /** Pressure by place along, then by angle; 0 where there is no film under pressure. */
  readonly pressure: readonly (readonly number[])[];
  readonly pressureUnit: "psi" | "megapascal";
  readonly highest: Pressure;
  readonly highestAt: Angle;
  readonly leastFilm: Length;
  /** Standard. */
  readonly leastFilmUncertainty: Length;
  readonly highestUncertainty: Pressure;
  readonly leastAt: Angle;
  /** Parting lines with their relief, where the film begins anew. */
  readonly grooves: readonly Angle[];
}

const around = 72;
const places = 9;

/**
 * Film thickness and pressure of a box round its circumference and along its length, at the eccentricity foretold.
 *
 * h = c(1 + ε cos θ), θ from the thickest film, c RADIAL clearance; p = 6µω(R/c)²·P with P as `filmState` finds it between
 * two parting lines a quarter turn to either side of the load, scaled so that its sum is the load.
 *
 * Valid when: as `runningFilm`; a film carries (not boundary).
 *
 * @param box  one of a `runningPrediction`
 * @param size.diameter, size.length  of the box, > 0 [m]
 * @param size.roughness  > 0 [m]
 * @returns film and pressure, unrolled
 * @throws RangeError  the box runs without a film, or a size not above 0
 * @example
 * const air = { boxSurface: quantity(250, "inch2"), cooling: boxCooling("still air"), roughness: thou(0.06) };
 * const box = { name: "far box", diameter: inch(2.5), length: inch(8), speed: rpm(110), oil: oil("ISO VG 100"), ...air };
 * const boxes = [{ ...box, diametralClearance: measured(thou(4), thou(0.3)), load: measured(lbf(800), lbf(60)) }];
 * filmMap(runningPrediction(boxes, degF(65)).boxes[0], box).along.length // 17
 * @source see `filmPressure`
 */
export function filmMap(
  box: BoxPrediction,
  size: { readonly diameter: Length; readonly length: Length; readonly roughness: Length },
): FilmMap {
  const { diameter, length, roughness } = size;
  for (const [name, value] of Object.entries({ diameter, length, roughness }))
    if (!(value.si > 0)) throw new RangeError(`filmMap: ${name} must be above 0, got ${value}`);
  const { film, name } = box;
  if (!(film.eccentricity >= 0.01 && film.eccentricity <= 0.99))
    throw new RangeError(
      `filmMap: ${name} runs at an eccentricity of ${film.eccentricity.toPrecision(3)}, and there is a map from 0.01 to 0.99`,
    );
  const inch = diameter.writtenIn === "inch" || diameter.writtenIn === "thou";
  const supply = { at: "grooves", fromLoad: film.grooves.map(({ si }) => si) } as const;
  const mesh = { around, along: places - 1 };
  const state = filmState(film.eccentricity, length.si / diameter.si, supply, mesh);
  // ∫∫ P over the bearing stands for the load: mean pressure = scale × 1/(3πS) / 4.
  const scale = (film.meanPressure.si * 4 * 3 * Math.PI * state.sommerfeld) / (inch ? psi : 1e6);
  const c = film.radialClearance.si;
  const angleOf = (si: number): Angle => quantityFromSi("angle", si, "degree");
  const small = (si: number): Length => quantityFromSi("length", si, inch ? "thou" : "micrometre");
  // From the load on: θ = π − φ + angle.
  const fromLoad = (theta: number): number => wrapped(theta - Math.PI + state.attitude);
  const lines = state.pieces
    .flatMap(({ piece, pressure, mesh: { around: count, along } }) => [
      { at: fromLoad(piece.from), row: new Float64Array(along) },
      ...Array.from({ length: count }, (_, i) => ({
        at: fromLoad(piece.from + ((i + 1) * (piece.to - piece.from)) / (count + 1)),
        row: pressure.subarray(i * along, (i + 1) * along),
      })),
    ])
    .sort((a, b) => a.at - b.at);
  const half = places - 1;
  const along = Array.from({ length: 2 * half + 1 }, (_, k) => (length.si / 2) * ((k - half) / half));
  const pressure = along.map((_, k) =>
    lines.map(({ row }) => Number((scale * (row[Math.abs(k - half)] ?? 0)).toPrecision(5))),
  );
  const middle = pressure[half]!;
  const peak = middle.indexOf(Math.max(...middle));
  const thickness = (angle: number): number =>
    c * (1 + film.eccentricity * Math.cos(angle + Math.PI - state.attitude));
  return Object.freeze({
    kind: "film map",
    name,
    diametralClearance: box.diametralClearance,
    filmTemperature: film.filmTemperature,
    needed: small(3 * roughness.si),
    angles: Object.freeze(lines.map(({ at }) => angleOf(at))),
    film: Object.freeze(lines.map(({ at }) => small(thickness(at)))),
    along: Object.freeze(along.map((si) => quantityFromSi("length", si, inch ? "inch" : "mm"))),
    pressure: Object.freeze(pressure.map((row) => Object.freeze(row))),
    pressureUnit: inch ? "psi" : "megapascal",
    highest: quantityFromSi("pressure", middle[peak]! * (inch ? psi : 1e6), inch ? "psi" : "megapascal"),
    highestAt: angleOf(lines[peak]!.at),
    leastFilm: small(c * (1 - film.eccentricity)),
    leastFilmUncertainty: box.uncertainty.leastFilm,
    highestUncertainty: box.uncertainty.highestPressure,
    leastAt: angleOf(state.attitude),
    grooves: film.grooves,
  });
}

/** Pascals in a pound on a square inch. */
const psi = 6894.757293168361;

/** Between −π and π. */
function wrapped(angle: number): number {
  return angle - 2 * Math.PI * Math.floor((angle + Math.PI) / (2 * Math.PI));
}
