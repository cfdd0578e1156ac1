import { carriedInput } from "../carried/carried-input.js";
import type { ShaftCase } from "./shaft-case.js";
import { type EvenForce, type TwoBoxes, twoBoxes } from "./two-box-loads.js";

const gravity = 9.80665;

/** An input of a load case as plain numbers. */
export interface CaseInput {
  readonly name: string;
  /** 1 of what scales something [-]; 0 of what turns a pull [rad]. */
  readonly estimate: 0 | 1;
  /** Its standard uncertainty: relative [-], or [rad]. */
  readonly u: number;
}

/** The load of one wheel as drawn: its mass, and its belt's pull with where that points. */
export interface WheelDrawn {
  readonly name: string;
  readonly position: number;
  readonly mass: number;
  /** To the right and up [N]. */
  readonly x: number;
  readonly y: number;
}

/** A load case as plain numbers, with what is uncertain in it as factors about 1, and turns about 0. */
export interface CaseNumbers {
  /** "power", then a tightness, a direction and a mass for each wheel. */
  readonly inputs: readonly CaseInput[];
  /** Forces and moments for factors by the names of the inputs; 1 where one is missing. */
  readonly carried: (factors: Readonly<Record<string, number>>) => TwoBoxes;
  /** The wheels for such factors, in the order given. */
  readonly wheels: (factors: Readonly<Record<string, number>>) => readonly WheelDrawn[];
  /** Torque that runs between the first and the last wheel [N·m], for the estimates. */
  readonly torque: number;
  /** Torque at a position for the power's factor [N·m]. */
  readonly torqueAt: (position: number, power: number) => number;
}

export const powerName = "power";
export const tightnessOf = (wheel: string): string => `belt tension, ${wheel}`;
export const directionOf = (wheel: string): string => `belt direction, ${wheel}`;
export const massOf = (wheel: string): string => `mass, ${wheel}`;

/**
 * Reads and checks a load case. The power scales all pulls and the torque alike; what a belt pulls beyond the power
 * (friction, tension at rest) is a factor of its own.
 *
 * @throws RangeError  not two boxes, no wheel, a belt without direction, nothing that loads
 */
export function caseNumbers(where: string, given: Omit<ShaftCase, "duty">): CaseNumbers {
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
  const even = evenWeight(where, given);
  const read = wheels.map(({ name, station, mass, belt, aim }) => {
    if (belt?.kind !== "belt pulls" || belt.direction === undefined)
      throw new RangeError(
        `${where}: the belt on ${name} must say where it pulls: beltPulls({ ..., towards: degree(200), turning: "clockwise", pulleyIs: "driven" })`,
      );
    const weighed = carriedInput(`${where}: ${name}`, "mass", mass, "mass", "0 or more");
    const off =
      aim === undefined ? 0 : carriedInput(`${where}: ${name}`, "aim", aim, "angle", "0 or more").si;
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
      direction: belt.direction.si,
      uDirection: off,
    };
  });
  const positions = read.map(({ position }) => position);
  const [firstWheel, lastWheel] = [Math.min(...positions), Math.max(...positions)];
  const torque = Math.max(...read.map((wheel) => wheel.torque));
  const drawn = (factors: Readonly<Record<string, number>>): readonly WheelDrawn[] =>
    read.map(({ name, position, mass, pull, direction }) => {
      const strong = pull * (factors[powerName] ?? 1) * (factors[tightnessOf(name)] ?? 1);
      const angle = direction + (factors[directionOf(name)] ?? 0);
      return {
        name,
        position,
        mass: mass.si * (factors[massOf(name)] ?? 1),
        x: strong * Math.cos(angle),
        y: strong * Math.sin(angle),
      };
    });
  return {
    inputs: [
      { name: powerName, estimate: 1, u: Math.max(...read.map(({ uPower }) => uPower)) },
      ...read.flatMap((wheel): CaseInput[] => [
        { name: tightnessOf(wheel.name), estimate: 1, u: wheel.uTightness },
        { name: directionOf(wheel.name), estimate: 0, u: wheel.uDirection },
        {
          name: massOf(wheel.name),
          estimate: 1,
          u: wheel.mass.si === 0 ? 0 : wheel.mass.u / wheel.mass.si,
        },
      ]),
    ],
    wheels: drawn,
    torque,
    carried: (factors) =>
      twoBoxes(
        ...middle,
        drawn(factors).map(({ position, mass, x, y }) => ({ position, x, y: y - mass * gravity })),
        even,
      ),
    torqueAt: (position, power) =>
      position > firstWheel - 1e-9 && position < lastWheel + 1e-9 ? torque * power : 0,
  };
}

/** The shaft's own weight as an even force. */
function evenWeight(where: string, { ownWeight }: Pick<ShaftCase, "ownWeight">): readonly EvenForce[] {
  if (ownWeight === undefined) return [];
  const { from, to } = ownWeight;
  if (!(to.si > from.si))
    throw new RangeError(
      `${where}: ownWeight must reach from a lower to a higher station, got ${from} to ${to}`,
    );
  const d = carriedInput(`${where}: ownWeight`, "diameter", ownWeight.diameter, "length", "more than 0").si;
  const density = carriedInput(
    `${where}: ownWeight`,
    "density",
    ownWeight.density,
    "density",
    "more than 0",
  ).si;
  const mass = density * (Math.PI / 4) * d * d * (to.si - from.si);
  return [{ from: from.si, to: to.si, x: 0, y: -mass * gravity }];
}

function relative(of: {
  readonly value: { readonly si: number };
  readonly standardUncertainty: { readonly si: number };
}): number {
  return of.value.si === 0 ? 0 : of.standardUncertainty.si / of.value.si;
}
