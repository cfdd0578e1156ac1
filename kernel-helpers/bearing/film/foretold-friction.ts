import {
  type Measured,
  measured,
  quantityFromSi,
  type RotationalSpeed,
  systemOf,
  type Torque,
} from "../../quantity/index.js";
import type { RunningPrediction } from "./running-prediction.js";

/**
 * Friction torque of all boxes together, as the film foretells it for the speed of the prediction.
 *
 * T = Σ P/ω, P the friction power of each box's film. With the cooling given a box's rise goes as its power, so a
 * box's u(P)/P is u(rise)/rise without the share of the cooling. Boxes share oil and method: their uncertainties are
 * added, not their squares.
 *
 * Valid when: the boxes are as warm as foretold; a cold box drags more, its oil is thicker.
 *
 * @param prediction  as `runningPrediction` returns it, all boxes at one speed
 * @returns torque [N·m] with its standard uncertainty
 * @throws RangeError  the boxes were foretold for different speeds
 * @example
 * const air = { boxSurface: quantity(250, "inch2"), cooling: boxCooling("still air"), roughness: thou(0.06) };
 * const box = { name: "far box", diameter: inch(2.4375), length: inch(8), speed: rpm(110), oil: oil("ISO VG 100"), ...air };
 * const known = { diametralClearance: measured(thou(4), thou(0.3)), load: measured(lbf(700), lbf(60)) };
 * foretoldFriction(runningPrediction([{ ...box, ...known }], degF(65))).value.in("lbfInch").toFixed(1) // "10.7"
 * @source power is torque times rotational speed
 */
export function foretoldFriction({ boxes }: RunningPrediction): Measured<Torque> {
  const { speed } = boxes[0]!;
  const other = boxes.find((box) => Math.abs(box.speed.si - speed.si) > 1e-9 * speed.si);
  if (other !== undefined)
    throw new RangeError(
      `foretoldFriction: all boxes must be foretold for one speed, got ${speed} for "${boxes[0]!.name}" and ${other.speed} for "${other.name}"`,
    );
  const imperial = systemOf(boxes[0]!.diametralClearance.value.writtenIn ?? "mm") === "inch";
  const torque = (si: number): Torque =>
    quantityFromSi("torque or energy", si, imperial ? "lbfInch" : "newtonMetre");
  const parts = boxes.map((box) => partOf(box, speed));
  return measured(
    torque(parts.reduce((sum, { torque: one }) => sum + one, 0)),
    torque(parts.reduce((sum, { u }) => sum + u, 0)),
  );
}

function partOf(
  { film, rise, shares }: RunningPrediction["boxes"][number],
  speed: RotationalSpeed,
): { readonly torque: number; readonly u: number } {
  const own = shares.filter(({ from }) => from !== "cooling of the box");
  const torque = film.frictionPower.si / speed.si;
  const share = Math.hypot(...own.map(({ standardUncertainty }) => standardUncertainty.si)) / rise.value.si;
  return { torque, u: torque * share };
}
