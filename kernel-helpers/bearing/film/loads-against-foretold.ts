import {
  type Angle,
  type Force,
  type Measured,
  measured,
  type Pressure,
  quantityFromSi,
  type TemperatureDifference,
} from "../../quantity/index.js";
import type { ShaftLoads } from "../../shaft/index.js";
import type { RunningPrediction } from "./running-prediction.js";

/** What presses on a box now, against what its film was reckoned for. */
export interface BoxLoadNow {
  readonly name: string;
  readonly foretold: Measured<Force>;
  readonly now: Measured<Force>;
  /** Now less foretold. */
  readonly more: Measured<Force>;
  /** From straight down, counter-clockwise seen from where the stations begin. */
  readonly direction: Angle;
  readonly state: "as reckoned" | "more" | "less";
  /** Force over length times diameter, now. */
  readonly meanPressure: Pressure;
  /** By about how much the change of load alone changes the rise foretold, without sign. */
  readonly riseChange: TemperatureDifference;
}

/** Loads on the boxes with the belts as they are, against those the bearings were designed for. */
export interface LoadsAgainst {
  readonly kind: "loads against foretold";
  readonly boxes: readonly BoxLoadNow[];
}

/** In standard uncertainties of the difference: 95 %. */
const departs = 1.96;

/**
 * What presses on each box now, held against the load its running was foretold for.
 *
 * d = F now − F foretold, u(d)² = u² + u²; more or less where |d| > 1.96 u(d). The rise changes by |d| times what the
 * load's own uncertainty makes of the rise, over that uncertainty; 0 where the load was foretold without one.
 *
 * Valid when: both are of one power. They share it and the masses, so u(d) is somewhat too large, and "as reckoned" too
 * easily said; "more" still means more.
 *
 * @param prediction  as `runningPrediction` returns it [N]
 * @param now  as `shaftLoads` returns it, with the belts as they are [N]
 * @returns a row a box of the prediction
 * @throws RangeError  a box of the prediction is not among the loads
 * @example
 * const air = { boxSurface: quantity(250, "inch2"), cooling: boxCooling("still air"), roughness: thou(0.06) };
 * const box = { name: "far box", diameter: inch(2.4375), length: inch(8), speed: rpm(110), oil: oil("ISO VG 100"), ...air };
 * const known = { diametralClearance: measured(thou(4), thou(0.3)), load: measured(lbf(700), lbf(60)) };
 * const pressed = { name: "far box", force: measured(lbf(900), lbf(30)), direction: degree(20) };
 * const now = { kind: "shaft loads", loadCase: "12 hp", boxes: [pressed], places: [] };
 * loadsAgainstForetold(runningPrediction([{ ...box, ...known }], degF(65)), now).boxes[0].state // "more"
 * @source JCGM 100:2008 (GUM), 5.1.2
 */
export function loadsAgainstForetold(prediction: RunningPrediction, now: ShaftLoads): LoadsAgainst {
  return Object.freeze<LoadsAgainst>({
    kind: "loads against foretold",
    boxes: Object.freeze(
      prediction.boxes.map(({ name, load, film, shares }): BoxLoadNow => {
        const found = now.boxes.find((box) => box.name === name);
        if (found === undefined)
          throw new RangeError(
            `loadsAgainstForetold: no load is given for "${name}", only for ${now.boxes.map((box) => `"${box.name}"`).join(", ")}`,
          );
        const { force, direction } = found;
        const difference = force.value.si - load.value.si;
        const u = Math.hypot(force.standardUncertainty.si, load.standardUncertainty.si);
        const share = shares.find(({ from }) => from === "load")!.standardUncertainty;
        const perForce = load.standardUncertainty.si > 0 ? 1 / load.standardUncertainty.si : 0;
        const like = (si: number): Force =>
          quantityFromSi("force", si, (force.value.writtenIn ?? "newton") as never);
        return Object.freeze({
          name,
          foretold: load,
          now: force,
          more: measured(like(difference), like(u)),
          direction,
          state: Math.abs(difference) <= departs * u ? "as reckoned" : difference > 0 ? "more" : "less",
          meanPressure: film.meanPressure.times(force.value.si / load.value.si),
          riseChange: share.times(Math.abs(difference) * perForce),
        });
      }),
    ),
  });
}
