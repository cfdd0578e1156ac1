import { carriedInput } from "../carried/carried-input.js";
import type { ShaftCase } from "./shaft-case.js";
import { type TwoBoxes, twoBoxes } from "./two-box-loads.js";

const gravity = 9.80665;

/** An input of a load case as plain numbers. */
export interface CaseInput {
  readonly name: string;
  /** For a simulation: 1 ± relative uncertainty of what it scales [-]. */
  readonly u: number;
}

/** A load case as plain numbers, with what is uncertain in it as factors about 1. */
export interface CaseNumbers {
  /** "power", then a tightness and a mass for each wheel. */
  readonly inputs: readonly CaseInput[];
  /** Forces and moments for factors by the names of the inputs; 1 where one is missing. */
  readonly carried: (factors: Readonly<Record<string, number>>) => TwoBoxes;
  /** Torque at a position for the power's factor [N·m]. */
  readonly torqueAt: (position: number, power: number) => number;
}

export const powerName = "power";
export const tightnessOf = (wheel: string): string => `belt tension, ${wheel}`;
export const massOf = (wheel: string): string => `mass, ${wheel}`;

/**
 * Reads and checks a load case. The power scales all pulls and the torque alike; what a belt pulls beyond the power
 * (friction, tension at rest) is a factor of its own.
 *
 * @throws RangeError  not two boxes, no wheel, a belt without direction, nothing that loads
 */
export function caseNumbers(where: string, given: ShaftCase): CaseNumbers {
  const { boxes, wheels, loadCase } = given;
  if (typeof loadCase !== "string" || loadCase.trim() === "")
    throw new RangeError(
      `${where}: the load case is empty: say in words what the shaft carries, e.g. loadCase: "12 hp, all through the second pulley"`,
    );
  if (boxes.length !== 2)
    throw new RangeError(
      `${where}: the shaft must run in two boxes, got ${boxes.length === 0 ? "none" : boxes.map(({ name }) => name).join(", ")}; with more, their settling decides what each carries`,
    );
  if (wheels.length === 0)
    throw new RangeError(
      `${where}: the load case has no wheel, so nothing loads the shaft; give each with station, mass and belt`,
    );
  const middle = boxes.map(({ from, to }) => (from.si + to.si) / 2) as [number, number];
  const read = wheels.map(({ name, station, mass, belt }) => {
    if (belt?.kind !== "belt pulls" || belt.direction === undefined)
      throw new RangeError(
        `${where}: the belt on ${name} must say where it pulls: beltPulls({ ..., towards: degree(200), turning: "clockwise", pulleyIs: "driven" })`,
      );
    const weighed = carriedInput(`${where}: ${name}`, "mass", mass, "mass", "0 or more");
    const power = relative(belt.torque);
    const pull = relative(belt.pull);
    return {
      name,
      position: station.si,
      mass: weighed,
      pull: belt.pull.value.si,
      // What is left of the pull's uncertainty once the power's is taken away.
      uTightness: Math.sqrt(Math.max(0, pull ** 2 - power ** 2)),
      torque: belt.torque.value.si,
      uPower: power,
      x: Math.cos(belt.direction.si),
      y: Math.sin(belt.direction.si),
    };
  });
  const positions = read.map(({ position }) => position);
  const [firstWheel, lastWheel] = [Math.min(...positions), Math.max(...positions)];
  const torque = Math.max(...read.map((wheel) => wheel.torque));
  return {
    inputs: [
      { name: powerName, u: Math.max(...read.map(({ uPower }) => uPower)) },
      ...read.flatMap((wheel) => [
        { name: tightnessOf(wheel.name), u: wheel.uTightness },
        { name: massOf(wheel.name), u: wheel.mass.si === 0 ? 0 : wheel.mass.u / wheel.mass.si },
      ]),
    ],
    carried: (factors) =>
      twoBoxes(
        ...middle,
        read.map((wheel) => {
          const pull = wheel.pull * (factors[powerName] ?? 1) * (factors[tightnessOf(wheel.name)] ?? 1);
          const weight = wheel.mass.si * gravity * (factors[massOf(wheel.name)] ?? 1);
          return { position: wheel.position, x: pull * wheel.x, y: pull * wheel.y - weight };
        }),
      ),
    torqueAt: (position, power) =>
      position > firstWheel - 1e-9 && position < lastWheel + 1e-9 ? torque * power : 0,
  };
}

function relative(of: {
  readonly value: { readonly si: number };
  readonly standardUncertainty: { readonly si: number };
}): number {
  return of.value.si === 0 ? 0 : of.standardUncertainty.si / of.value.si;
}
