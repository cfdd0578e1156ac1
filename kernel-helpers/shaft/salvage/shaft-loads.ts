import {
  type Force,
  type Length,
  measured,
  quantityFromSi,
  systemOf,
  type Torque,
} from "../../quantity/index.js";
import { carry } from "../carried/carry.js";
import { caseNumbers, powerName } from "./case-numbers.js";
import type { ShaftCase, ShaftLoads } from "./shaft-case.js";

/**
 * What presses on each of two boxes, and the bending moment and torque at the places of a shaft.
 *
 * Forces and moments in balance, see `twoBoxes`: each wheel loads with its belt's pull and its weight. Torque runs
 * between the first and the last wheel.
 *
 * Valid when: two boxes, each a hinge at its middle; the shaft's own weight is given, or small beside pulls and wheels;
 * all the power goes in at one end wheel and out at the other.
 *
 * @param given   the load case: boxes and wheels by station [m], masses [kg], pulls with direction [N], [rad]
 * @param places  name and station of what is asked for besides the case's own seats [m]
 * @returns forces [N] with direction, moments and torques [N·m], with standard uncertainties: of power, tension and direction of
 * each belt and mass, each moved by its own
 * @throws RangeError  the load case is empty or not determined by two boxes
 * @example
 * const belt = beltPulls({ power: hp(5), speed: rpm(110), diameter: inch(30), wrap: degree(170), friction: { low: 0.3, high: 0.3 }, towards: degree(270) });
 * const box = (name, from) => ({ name: name, from: inch(from), to: inch(from + 8) });
 * const wheel = { name: "pulley", station: inch(29), mass: pound(0), belt: belt };
 * const duty = { steel: assumedSteel("mild steel of the period"), surface: "machined", demanded: 1.5 };
 * const loads = shaftLoads({ loadCase: "5 hp", boxes: [box("near box", 5), box("far box", 45)], wheels: [wheel], seats: [], duty: duty }, []);
 * loads.boxes[0].force.value.over(belt.pull.value).toFixed(2) // "0.50"
 * @source statics
 */
export function shaftLoads(
  given: Omit<ShaftCase, "duty">,
  places: readonly { readonly name: string; readonly station: Length }[] = [],
): ShaftLoads {
  const numbers = caseNumbers("shaftLoads", given);
  const asked = [...given.seats.map(({ name, station }) => ({ name, station })), ...places];
  const imperial = systemOf(given.boxes[0]!.from.writtenIn ?? "mm") === "inch";
  const inputs = numbers.inputs.map(({ name, estimate, u }) => ({
    name,
    si: estimate,
    u,
    degreesOfFreedom: Number.POSITIVE_INFINITY,
    unit: undefined,
  }));
  const found = carry((values) => {
    const factors = Object.fromEntries(inputs.map(({ name }, i) => [name, values[i]!]));
    const { onFirst, onSecond, momentAt } = numbers.carried(factors);
    return [
      Math.hypot(onFirst.x, onFirst.y),
      Math.hypot(onSecond.x, onSecond.y),
      ...asked.flatMap(({ station }) => [
        momentAt(station.si),
        numbers.torqueAt(station.si, factors[powerName]!),
      ]),
    ];
  }, inputs);
  const force = (k: number) => measured(forceOf(found.values[k]!, imperial), forceOf(found.u[k]!, imperial));
  const torque = (k: number) =>
    measured(torqueOf(found.values[k]!, imperial), torqueOf(found.u[k]!, imperial));
  const { onFirst, onSecond } = numbers.carried({});
  return Object.freeze<ShaftLoads>({
    kind: "shaft loads",
    loadCase: given.loadCase,
    boxes: Object.freeze(
      [onFirst, onSecond].map(({ x, y }, i) => {
        const turn = (Math.atan2(y, x) + Math.PI / 2 + 4 * Math.PI) % (2 * Math.PI);
        return Object.freeze({
          name: given.boxes[i]!.name,
          force: force(i),
          direction: quantityFromSi("angle", turn, "degree"),
        });
      }),
    ),
    places: Object.freeze(
      asked.map(({ name, station }, i) =>
        Object.freeze({ name, station, moment: torque(2 + 2 * i), torque: torque(3 + 2 * i) }),
      ),
    ),
  });
}

function forceOf(si: number, imperial: boolean): Force {
  return quantityFromSi("force", si, imperial ? "lbf" : "newton");
}

function torqueOf(si: number, imperial: boolean): Torque {
  return quantityFromSi("torque or energy", si, imperial ? "lbfInch" : "newtonMetre");
}
