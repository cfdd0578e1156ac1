import {
  isQuantity,
  type Length,
  type Mass,
  type Measured,
  measured,
  quantityFromSi,
} from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";
import type { Lift, LiftLeg, LiftVerdict } from "./lift-types.js";

/** How a load is slung, and what the tags say. */
export interface LiftOptions {
  readonly what: string;
  readonly mass: Measured<Mass>;
  /**
   * Where the two points of the slings lie to either side of the centre of mass, measured level, and how high the hook
   * stands above them. Without it one straight leg hangs over the centre of mass.
   */
  readonly points?: { readonly left: Length; readonly right: Length; readonly hookAbove: Length };
  /** How the sling holds, as its tag calls it. */
  readonly hitch: "vertical" | "choker" | "basket";
  /** What the sling's tag allows ONE leg in that hitch, hanging straight. */
  readonly slingTag: Mass;
  /** The least of the tags of hook, hoist and what they hang from. */
  readonly hookTag: Mass;
}

const leastAngle = Math.PI / 6;

/**
 * The pull in each leg of a sling, with the hook over the centre of mass, against the tags of the gear.
 *
 * angles: tan θ = h/a on each side; pulls: T₁ = m·b/((a + b)·sin θ₁), T₂ = m·a/((a + b)·sin θ₂), θ from HORIZONTAL;
 * holds: mean + 1.645·u is not above the tag; does not hold: mean − 1.645·u is above it; between the two, cannot tell yet
 *
 * Valid when: the load is lifted slowly and straight up; a jerk may double every pull. The tag counts for the hitch it
 * names, at its full choker angle (120° and more), with nothing worn, knotted or over a sharp edge. The hook must stand
 * over the centre of mass: else the load swings until it does.
 *
 * @param options.mass  of the load with its standard uncertainty, > 0 [kg]
 * @param options.points  level distances of both points from the centre of mass, > 0, and height of the hook, > 0 [m]
 * @param options.slingTag  for one leg in the hitch used, > 0 [kg]
 * @param options.hookTag  > 0 [kg]
 * @returns angle and pull of each leg, the verdicts, and what breaks a rule
 * @throws RangeError  a value is not above 0
 * @example
 * const mass = measured(pound(1000), pound(0));
 * const points = { left: inch(10), right: inch(10), hookAbove: inch(10) };
 * const gear = { hitch: "vertical", slingTag: pound(800), hookTag: pound(2000) };
 * liftOf({ what: "pulley", mass, points, ...gear }).legs[0].pull.value.in("pound") // 707.107
 * @source statics; least angle of 30°, choker angle of 120°: riggers' tables after ASME B30.9 (read in public reprints)
 */
export function liftOf(options: LiftOptions): Lift {
  const { what, mass, points, hitch, slingTag, hookTag } = options;
  const above = (name: string, value: Mass | Length): void => {
    if (!isQuantity(value) || !(value.si > 0))
      throw new RangeError(`liftOf: ${name} must be above 0, with its unit, got ${value}`);
  };
  above("mass", mass.value);
  above("slingTag", slingTag);
  above("hookTag", hookTag);
  if (points !== undefined) for (const [name, value] of Object.entries(points)) above(name, value);
  if (!["vertical", "choker", "basket"].includes(hitch))
    throw new RangeError(`liftOf: hitch must be vertical, choker or basket, got "${hitch}"`);
  const k = coverageFactor(0.9, mass.degreesOfFreedom);
  const scaled = (share: number): Measured<Mass> =>
    measured(
      quantityFromSi("mass", mass.value.si * share, mass.value.writtenIn),
      quantityFromSi("mass", mass.standardUncertainty.si * share, mass.value.writtenIn),
      mass.degreesOfFreedom,
    );
  const leg = (name: string, angle: number, share: number): LiftLeg => {
    const pull = scaled(share);
    return Object.freeze({
      name,
      angle: quantityFromSi("angle", angle, "degree"),
      pull,
      verdict: against(pull, slingTag, k),
    });
  };
  const legs =
    points === undefined ? [leg("the sling", Math.PI / 2, 1)] : legsOver(points).map((one) => leg(...one));
  const most = Math.max(...legs.map(({ pull }) => pull.value.si + k * pull.standardUncertainty.si));
  const breaks = legs.flatMap(({ name, angle }) =>
    angle.si < leastAngle - 1e-12
      ? [
          `${name} stands at ${angle.in("degree").toFixed(0)}°, less than 30° from level: longer slings or a spreader`,
        ]
      : [],
  );
  const slingVerdict = worst(legs.map(({ verdict }) => verdict));
  return Object.freeze<Lift>({
    kind: "lift",
    what,
    mass,
    legs: Object.freeze(legs),
    slingTag,
    hitch,
    hookTag,
    most: quantityFromSi("mass", most, mass.value.writtenIn),
    mostAtHook: quantityFromSi("mass", mass.value.si + k * mass.standardUncertainty.si, mass.value.writtenIn),
    slingVerdict: breaks.length > 0 ? "does not hold" : slingVerdict,
    hookVerdict: against(mass, hookTag, k),
    ...(points === undefined ? {} : { hookHeight: points.hookAbove }),
    breaks: Object.freeze(breaks),
    warnings: Object.freeze(
      mass.standardUncertainty.si === 0
        ? ["The mass counts as exact: weigh it, or reckon it with the uncertainty of its sizes."]
        : [],
    ),
  });
}

function legsOver({
  left,
  right,
  hookAbove,
}: NonNullable<LiftOptions["points"]>): [string, number, number][] {
  const [a, b, h] = [left.si, right.si, hookAbove.si];
  const [one, other] = [Math.atan2(h, a), Math.atan2(h, b)];
  return [
    ["left leg", one, b / ((a + b) * Math.sin(one))],
    ["right leg", other, a / ((a + b) * Math.sin(other))],
  ];
}

function against({ value, standardUncertainty }: Measured<Mass>, tag: Mass, k: number): LiftVerdict {
  if (value.si + k * standardUncertainty.si <= tag.si) return "holds";
  return value.si - k * standardUncertainty.si > tag.si ? "does not hold" : "cannot tell yet";
}

function worst(verdicts: readonly LiftVerdict[]): LiftVerdict {
  if (verdicts.includes("does not hold")) return "does not hold";
  return verdicts.includes("cannot tell yet") ? "cannot tell yet" : "holds";
}
