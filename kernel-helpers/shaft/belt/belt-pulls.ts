import type { BeltFriction } from "../../handbook/index.js";
import {
  type Angle,
  type Force,
  type Length,
  type Measured,
  measured,
  type Power,
  type Quantity,
  quantityFromSi,
  type RotationalSpeed,
  type Speed,
  systemOf,
  type Torque,
} from "../../quantity/index.js";
import { carriedInput, type MaybeMeasured } from "../carried/carried-input.js";
import { carry } from "../carried/carry.js";
import type { BeltWrap } from "./belt-wrap.js";

/** A belt at work on a pulley of the shaft. */
export interface BeltPullsOptions {
  /** What goes through this belt. */
  readonly power: MaybeMeasured<Power>;
  readonly speed: MaybeMeasured<RotationalSpeed>;
  /** DIAMETER of the pulley on the shaft. */
  readonly diameter: MaybeMeasured<Length>;
  /** Of `beltWrap`, or the arc of contact alone, as measured; that on the pulley is then taken for the smaller one. */
  readonly wrap: BeltWrap | MaybeMeasured<Angle>;
  /** Of the handbook, or a range of one's own [-]. */
  readonly friction: BeltFriction | { readonly low: number; readonly high: number };
  /** Mass of the belt per length, e.g. a quantity in kg/m as mass over length; without it belts are taken as light. */
  readonly beltMass?: MaybeMeasured<Quantity<"unnamed (length -1, mass 1, time 0, temperature 0, angle 0)">>;
  /** Tension of the belt at rest, where it was measured. Else it is taken to be just so tight that it does not slip. */
  readonly initialTension?: MaybeMeasured<Force>;
  /** Where the other shaft lies, seen from the end where the stations begin: from the right, counter-clockwise, up is 90°. */
  readonly towards?: MaybeMeasured<Angle>;
  /** How this shaft turns, seen from there, and whether the belt drives the pulley; tells which side is tight. */
  readonly turning?: "clockwise" | "counter-clockwise";
  readonly pulleyIs?: "driven" | "driving";
}

/** A value and the ends between which the friction leaves it. */
export interface BeltRange<Q> {
  readonly low: Q;
  readonly high: Q;
}

/** What a belt does to its shaft. */
export interface BeltPulls {
  readonly kind: "belt pulls";
  /** Whether the belt carries the power without slipping, for all, for none, or for some of the friction's range. */
  readonly state: "carries" | "slips" | "cannot tell yet";
  /** Whether the tension at rest was given; else the least that does not slip was reckoned with. */
  readonly tensionKnown: boolean;
  readonly beltSpeed: Measured<Speed>;
  readonly torque: Measured<Torque>;
  /** Tight less slack side. */
  readonly effective: Measured<Force>;
  readonly tight: Measured<Force>;
  readonly slack: Measured<Force>;
  readonly initial: Measured<Force>;
  /** Part of both tensions that holds the belt in its curve and presses on no pulley. */
  readonly centrifugal: Measured<Force>;
  /** On the shaft. Where the tension is unknown the friction's range counts in its uncertainty as a rectangular one. */
  readonly pull: Measured<Force>;
  /** Between low and high friction; both equal where the tension at rest was given. */
  readonly pullRange: BeltRange<Force>;
  readonly initialRange: BeltRange<Force>;
  /** Where the pull points; undefined where it was not said where the other shaft lies. */
  readonly direction: Angle | undefined;
  /** Friction that must be there for no slip, with the tension given [-]; undefined where that is unknown. */
  readonly frictionNeeded: number | undefined;
  readonly friction: BeltRange<number>;
  readonly wrap: Angle;
  readonly warnings: readonly string[];
}

/**
 * Pulls of a flat belt: tension of both sides, and what the shaft gets of them as force and direction.
 *
 * v = ω d/2; F₁ − F₂ = P/v; F_c = m v²; on the point of slip (F₁ − F_c)/(F₂ − F_c) = e^(f φ), φ the smaller wrap;
 * F_i = (F₁ + F₂)/2 − F_c. Least tension that does not slip: F_i = (P/2v)·(e^(fφ) + 1)/(e^(fφ) − 1).
 * On the shaft: the sum of F₁ − F_c and F₂ − F_c, each along its straight part, β off the line of centres.
 *
 * A belt of unknown tension is reckoned as just tight enough; belts are mostly tighter, and a new or a wet one much
 * more: the pull is then more too. Where it counts, measure it (weight in the middle of the slack side, and its dip).
 *
 * Valid when: the belt is flat, the load steady. Starting under load takes more.
 *
 * @param options.power  ≥ 0 [W]
 * @param options.speed  of the shaft, > 0 [rad/s]
 * @param options.diameter  > 0 [m]
 * @param options.wrap  of `beltWrap`, or the arc, > 0 [rad]
 * @param options.friction  range, 0 < low ≤ high [-]
 * @param options.beltMass  ≥ 0 [kg/m]
 * @param options.initialTension  > 0 [N]
 * @param options.towards  the other shaft's side [rad]
 * @param options.turning  "clockwise" or "counter-clockwise"
 * @param options.pulleyIs  "driven" or "driving"
 * @returns tensions and pull [N], torque [N·m], with standard uncertainties; whether it slips
 * @throws RangeError  a value out of its range; a tension too small for any friction: the slack side would push
 * @example
 * const belt = { power: hp(15), speed: rpm(1750), diameter: inch(6), wrap: radian(3.0165) };
 * beltPulls({ ...belt, friction: { low: 0.8, high: 0.8 } }).effective.value.in("lbf").toFixed(0) // "180"
 * @source R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 10th edition, section 17-2,
 * equations 17-7 to 17-10
 */
export function beltPulls(options: BeltPullsOptions): BeltPulls {
  const where = "beltPulls";
  const { friction, initialTension } = options;
  if (!(friction.low > 0 && friction.high >= friction.low))
    throw new RangeError(
      `${where}: friction must be a range above 0, got ${friction.low} to ${friction.high}`,
    );
  const given = "kind" in options.wrap && options.wrap.kind === "belt wrap" ? options.wrap : undefined;
  const arc = given === undefined ? options.wrap : smaller(given);
  const known = initialTension !== undefined;
  const zero = { si: 0, u: 0, degreesOfFreedom: Number.POSITIVE_INFINITY, unit: undefined };
  const inputs = [
    carriedInput(where, "power", options.power, "power", "0 or more"),
    carriedInput(where, "speed", options.speed, "rotational speed", "more than 0"),
    carriedInput(where, "diameter", options.diameter, "length", "more than 0"),
    carriedInput(where, "wrap", arc, "angle", "more than 0"),
    {
      name: "friction",
      ...zero,
      si: (friction.low + friction.high) / 2,
      u: (friction.high - friction.low) / Math.sqrt(12),
    },
    options.beltMass === undefined
      ? { name: "beltMass", ...zero }
      : carriedInput(where, "beltMass", options.beltMass, massPerLength as never, "0 or more"),
    known
      ? carriedInput(where, "initialTension", initialTension, "force", "more than 0")
      : { name: "initialTension", ...zero },
  ];
  const spread = given?.spread.value.si ?? 0;
  const at = (numbers: readonly number[]): readonly number[] => tensions(numbers, known, spread);
  const found = carry(at, inputs);
  const plain = inputs.map(({ si }) => si);
  const withFriction = (f: number): readonly number[] => at(plain.map((x, i) => (i === 4 ? f : x)));
  const [looser, tighter] = [withFriction(friction.high), withFriction(friction.low)];
  const imperial = systemOf(inputs[2]!.unit ?? "mm") === "inch";
  const force = (si: number): Force => quantityFromSi("force", si, imperial ? "lbf" : "newton");
  const forceAt = (k: number): Measured<Force> =>
    measured(force(found.values[k]!), force(found.u[k]!), found.degreesOfFreedom[k]!);
  const [effective, tight, slack, initial, centrifugal, pull] = [0, 1, 2, 3, 4, 5].map(forceAt);
  if (known && !(slack!.value.si > centrifugal!.value.si))
    throw new RangeError(
      `${where}: initialTension must be more than half of the pull of the power, ${force(effective!.value.si / 2)}: with ${force(plain[6]!)} the slack side hangs loose at any friction`,
    );
  const frictionNeeded = known
    ? Math.log((tight!.value.si - centrifugal!.value.si) / (slack!.value.si - centrifugal!.value.si)) /
      plain[3]!
    : undefined;
  const speed = (si: number): Speed =>
    quantityFromSi("speed", si, imperial ? "footPerMinute" : "metrePerSecond");
  const torque = (si: number): Torque =>
    quantityFromSi("torque or energy", si, imperial ? "lbfInch" : "newtonMetre");
  return Object.freeze({
    kind: "belt pulls",
    state:
      frictionNeeded === undefined || frictionNeeded <= friction.low
        ? "carries"
        : frictionNeeded > friction.high
          ? "slips"
          : "cannot tell yet",
    tensionKnown: known,
    beltSpeed: measured(speed(found.values[6]!), speed(found.u[6]!), found.degreesOfFreedom[6]!),
    torque: measured(torque(found.values[7]!), torque(found.u[7]!), found.degreesOfFreedom[7]!),
    effective: effective!,
    tight: tight!,
    slack: slack!,
    initial: initial!,
    centrifugal: centrifugal!,
    pull: pull!,
    pullRange: Object.freeze({ low: force(looser[5]!), high: force(tighter[5]!) }),
    initialRange: Object.freeze({ low: force(looser[3]!), high: force(tighter[3]!) }),
    direction: directionOf(
      options,
      tight!.value.si - centrifugal!.value.si,
      slack!.value.si - centrifugal!.value.si,
      spread,
    ),
    frictionNeeded,
    friction: Object.freeze({ low: friction.low, high: friction.high }),
    wrap: quantityFromSi("angle", plain[3]!, "degree"),
    warnings: Object.freeze(warningsOf(options, given !== undefined, found.values[4]!, found.values[0]!)),
  });
}

const massPerLength = "unnamed (length -1, mass 1, time 0, temperature 0, angle 0)";

function smaller({ wrap, otherWrap }: BeltWrap): Measured<Angle> {
  return wrap.value.si <= otherWrap.value.si ? wrap : otherWrap;
}

/** Effective pull, tight, slack, at rest, centrifugal, on the shaft [N], belt speed [m/s], torque [N·m]. */
function tensions(numbers: readonly number[], known: boolean, spread: number): readonly number[] {
  const [power, omega, diameter, wrap, friction, mass, atRest] = numbers as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const v = (omega * diameter) / 2;
  const effective = power / v;
  const grip = Math.exp(friction * wrap);
  const initial = known ? atRest : ((effective / 2) * (grip + 1)) / (grip - 1);
  const centrifugal = mass * v * v;
  const [pressing1, pressing2] = [initial + effective / 2, initial - effective / 2];
  const along = (pressing1 + pressing2) * Math.cos(spread);
  const across = (pressing1 - pressing2) * Math.sin(spread);
  return [
    effective,
    pressing1 + centrifugal,
    pressing2 + centrifugal,
    initial,
    centrifugal,
    Math.hypot(along, across),
    v,
    power / omega,
  ];
}

/**
 * The way the pull points. A straight part on the left of the way to the other shaft turns the pulley clockwise, one on
 * the right counter-clockwise; the tight one turns a driven pulley on and holds a driving one back.
 */
function directionOf(
  { towards, turning, pulleyIs }: BeltPullsOptions,
  tight: number,
  slack: number,
  spread: number,
): Angle | undefined {
  if (towards === undefined) return undefined;
  const line = carriedInput("beltPulls", "towards", towards, "angle", "any").si;
  const left =
    turning === undefined || pulleyIs === undefined
      ? 0
      : (turning === "clockwise") === (pulleyIs === "driven")
        ? 1
        : -1;
  const off = left * Math.atan2((tight - slack) * Math.sin(spread), (tight + slack) * Math.cos(spread));
  const angle = (line + off) % (2 * Math.PI);
  return quantityFromSi("angle", angle < 0 ? angle + 2 * Math.PI : angle, "degree");
}

function warningsOf(
  { initialTension, beltMass }: BeltPullsOptions,
  bothPulleys: boolean,
  centrifugal: number,
  effective: number,
): string[] {
  return [
    ...(initialTension === undefined
      ? [
          "The belt's tension at rest was not measured: it is reckoned just tight enough not to slip. A tighter belt pulls more on the shaft.",
        ]
      : []),
    ...(bothPulleys
      ? []
      : [
          "The arc of contact was given for one pulley alone: the smaller one of the two decides whether the belt slips.",
        ]),
    ...(beltMass !== undefined && centrifugal > effective
      ? ["At this speed the belt's own mass takes more of its tension than the power does."]
      : []),
  ];
}
