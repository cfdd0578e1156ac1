import {
  type Force,
  type Length,
  type Measured,
  measured,
  type Pressure,
  quantityFromSi,
  type Speed,
  type Temperature,
  type TemperatureDifference,
} from "../../quantity/index.js";
import type { ForetoldBox, RunningFilm, RunningPrediction } from "../film/index.js";

const supplies = ["hand", "drop", "wick", "ring", "bath", "forced"] as const;

/** How oil comes to a box. */
export type OilSupply = (typeof supplies)[number];

/** What one box asks of its metal. */
export interface DesignedBox {
  readonly name: string;
  readonly load: Measured<Force>;
  readonly diameter: Length;
  readonly length: Length;
  readonly lengthOverDiameter: number;
  /** Load over diameter times length. */
  readonly pressure: Measured<Pressure>;
  /** The highest in the film: mean pressure where there is no film. */
  readonly highestPressure: Measured<Pressure>;
  /** Of the journal's surface. */
  readonly speed: Speed;
  /** Mean pressure times speed [W/m²]. */
  readonly pressureTimesSpeed: number;
  /** On the oil that is given, where that is known. */
  readonly film: RunningFilm["state"];
  /** Less oil is given than a full film would lose. */
  readonly shortOfOil: boolean;
  readonly filmTemperature: Temperature;
  /** Standard, of the film's temperature. */
  readonly temperatureUncertainty: TemperatureDifference;
}

/** What the boxes ask of their metal: load, speed and heat, side by side. */
export interface BoxDesign {
  readonly kind: "box design";
  readonly supply: OilSupply;
  readonly boxes: readonly DesignedBox[];
}

/**
 * Load, pressure, speed, pv and L/D of each box, with the heat foretold.
 *
 * p = W/(D·L); v = ω·D/2; pv = p·v. The highest pressure is that of the film (the shorter one where oil is short) and moves with the load. Film = room + (1 +
 * a)·rise, a the film's factor over the box.
 *
 * Valid when: as `runningFilm`.
 *
 * @param boxes  as they were given to `runningPrediction` [m], [N], [rad/s]
 * @param prediction  as `runningPrediction` returns it
 * @param supply  "hand", "drop", "wick", "ring", "bath" or "forced"
 * @returns a box each, in the order given
 * @throws RangeError  a box of which nothing is foretold, or no such supply
 * @example
 * const air = { boxSurface: quantity(250, "inch2"), cooling: boxCooling("still air"), roughness: thou(0.06) };
 * const box = { name: "far box", diameter: inch(2.5), length: inch(8), speed: rpm(110), oil: oil("ISO VG 100"), ...air };
 * const boxes = [{ ...box, diametralClearance: measured(thou(4), thou(0.3)), load: measured(lbf(800), lbf(60)) }];
 * boxDesign(boxes, runningPrediction(boxes, degF(65)), "ring").boxes[0].pressure.value.in("psi").toFixed(0) // "40"
 * @source J. E. Shigley & C. R. Mischke, Mechanical Engineering Design, chapter 12 (definitions; from memory)
 */
export function boxDesign(
  boxes: readonly ForetoldBox[],
  prediction: RunningPrediction,
  supply: string,
): BoxDesign {
  const known = supplies.find((one) => one === supply);
  if (known === undefined)
    throw new RangeError(`boxDesign: supply must be one of ${supplies.join(", ")}, got "${supply}"`);
  return Object.freeze({
    kind: "box design",
    supply: known,
    boxes: Object.freeze(boxes.map((box) => designed(box, prediction))),
  });
}

function designed(box: ForetoldBox, prediction: RunningPrediction): DesignedBox {
  const { name, diameter, length, load, filmOverBox = 0.75 } = box;
  const foretold = prediction.boxes.find((one) => one.name === name);
  if (foretold === undefined)
    throw new RangeError(
      `boxDesign: nothing is foretold of "${name}", only of ${prediction.boxes.map((one) => `"${one.name}"`).join(", ")}`,
    );
  const { film, rise } = foretold;
  const share = load.standardUncertainty.si / load.value.si;
  const [d, l] = [diameter.si, length.si];
  const inch = diameter.writtenIn === "inch" || diameter.writtenIn === "thou";
  const mean = quantityFromSi("pressure", load.value.si / (d * l), inch ? "psi" : "megapascal");
  const speed = (box.speed.si * d) / 2;
  const scaled = (pressure: Pressure): Measured<Pressure> => measured(pressure, pressure.times(share));
  // A film short of oil is shorter, and pressed the higher.
  const highest =
    film.short !== undefined && film.short.highestPressure.si > film.highestPressure.si
      ? film.short.highestPressure
      : film.highestPressure;
  return Object.freeze({
    name,
    load,
    diameter,
    length,
    lengthOverDiameter: l / d,
    pressure: scaled(mean),
    highestPressure: scaled(highest),
    speed: quantityFromSi("speed", speed, inch ? "footPerMinute" : "metrePerSecond"),
    pressureTimesSpeed: mean.si * speed,
    film: film.short?.state ?? film.state,
    shortOfOil: film.starved,
    filmTemperature: film.filmTemperature,
    temperatureUncertainty: rise.standardUncertainty.times(1 + filmOverBox),
  });
}
