import {
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  type RotationalSpeed,
  systemOf,
} from "../../quantity/index.js";
import { carry } from "../carried/carry.js";
import { factorOf, solved, times } from "./banded-matrix.js";
import { type BeamMesh, beamMesh, massMatrix, stiffnessMatrix } from "./beam-mesh.js";
import { lowestModes } from "./lowest-modes.js";
import { type PlainShaft, readModel } from "./read-model.js";
import type { ShaftModel } from "./shaft-model.js";

/** What is asked besides the shaft. */
export interface CriticalSpeedsOptions {
  /** How many are sought; default 3. */
  readonly modes?: number;
  /** The speed it is to run at, for the margin. */
  readonly speed?: RotationalSpeed;
  /** How far from every critical speed it is to stay, as a share of that; default 0.2. */
  readonly keepAway?: number;
}

/** A speed at which the shaft whirls, and how it bends there. */
export interface CriticalSpeed {
  readonly speed: Measured<RotationalSpeed>;
  /** By station, the largest 1 [-]; of both planes the one that moves more. */
  readonly shape: readonly number[];
  /** Which plane moves more; "both" where the bearings give alike both ways. */
  readonly plane: "both" | "horizontal" | "vertical";
}

/**
 * How the shaft bends while it goes round: with its turning, not at all (struck at rest), against its turning; "tied"
 * where the bearings give differently both ways, and forward and backward come together.
 */
export type WhirlSense = "forward" | "at rest" | "backward" | "tied";

/** A whirl to keep away from. */
export interface WhirlMet {
  readonly speed: Measured<RotationalSpeed>;
  readonly sense: WhirlSense;
}

/** The lateral critical speeds of a shaft. */
export interface CriticalSpeeds {
  readonly kind: "critical speeds";
  readonly modes: readonly CriticalSpeed[];
  readonly stations: readonly Length[];
  readonly supports: readonly { readonly name: string; readonly station: Length }[];
  readonly wheels: readonly { readonly name: string; readonly station: Length }[];
  /** The slowest whirl of all senses: where the bearings give alike, the first backward one. */
  readonly lowest: WhirlMet;
  /** The whirl of any sense nearest to the running speed, by its share. */
  readonly nearest: WhirlMet | undefined;
  /** The first one of the shaft at rest, without gyroscopic effect, and the two bounds it must lie between. */
  readonly atRest: RotationalSpeed;
  readonly dunkerley: RotationalSpeed;
  readonly rayleigh: RotationalSpeed;
  readonly speed: RotationalSpeed | undefined;
  /** Of the nearest whirl less the running speed, over that of the whirl [-]; negative where it runs above it. */
  readonly margin: Measured<number> | undefined;
  readonly keepAway: number;
  readonly verdict: "clear" | "too near" | "cannot tell yet" | "no speed given";
  readonly warnings: readonly string[];
}

/** Prisms at least: three modes come out within some parts in a million. */
const finest = 24;

/**
 * Lateral critical speeds of a shaft with its wheels: where it whirls with its own turning, by unbalance.
 *
 * K u = ω² M u, with consistent mass of the shaft and the tilting of its sections and wheels; the wheels' gyroscopic
 * moment counts for whirling at the speed of turning: (I_d − I_p) in place of the inertia against tilting forward,
 * (I_d + I_p) backward. Where bearings give differently both ways, the two planes are solved as one, tied by I_p.
 * The modes are the forward ones, which unbalance drives. The running speed is held against the nearest whirl of any
 * sense: boxes give differently both ways, though nobody has measured how, and then unbalance drives the backward
 * whirl too, which is the slowest; and the shaft at rest lies between. Beside it, for the shaft at rest:
 * Rayleigh's quotient of the shape it takes under its weight (above the first), Dunkerley's sum 1/Σ(1/ω²) (below it).
 * Pulls and torques do not count. Uncertainty as in `shaftBending`.
 *
 * Valid when: bearings hold in their middle; oil films, slack boxes and soft foundations give way, and the true speeds
 * lie lower than with stiff supports. Give the stiffness as a range of cases where it matters. No damping.
 *
 * @param model  as `shaftBending`; wheels with polar inertia where they are large [kg·m²]
 * @param options.modes  1 or more; default 3
 * @param options.speed  the running speed, > 0 [rad/s]
 * @param options.keepAway  above 0, below 1; default 0.2, common practice, no source [-]
 * @returns critical speeds [rad/s] with standard uncertainties, shapes, bounds, margin
 * @throws TypeError   something is no quantity of its kind
 * @throws RangeError  as `shaftBending`; an option out of its range; nothing that has mass
 * @example
 * const stretches = [{ from: inch(0), to: inch(31), diameter: inch(1) }];
 * const steel = { modulus: psi(30e6), density: poundPerCubicInch(0.0000001) };
 * const supports = [{ name: "left", at: inch(0) }, { name: "right", at: inch(31) }];
 * const wheels = [{ name: "a", at: inch(7), mass: pound(35) }, { name: "b", at: inch(20), mass: pound(55) }];
 * const found = criticalSpeeds({ stretches, material: steel, supports, wheels }, { modes: 1 });
 * found.modes[0].speed.value.in("rpm").toFixed(0) // "1191"
 * @source critical speeds by consistent mass: H. D. Nelson & J. M. McVaugh, The dynamics of rotor-bearing systems using
 * finite elements, Journal of Engineering for Industry 98 (1976) 593-600 (from memory); backward whirl driven by
 * unbalance in unlike bearings: G. Genta, Dynamics of Rotating Systems, 2005, chapter 5 (from memory); Rayleigh, Dunkerley: Shigley's
 * Mechanical Engineering Design, 10th edition, section 7-6
 */
export function criticalSpeeds(model: ShaftModel, options: CriticalSpeedsOptions = {}): CriticalSpeeds {
  const where = "criticalSpeeds";
  const { modes: count = 3, speed, keepAway = 0.2 } = options;
  if (!(Number.isInteger(count) && count >= 1))
    throw new RangeError(`${where}: modes must be a whole number from 1, got ${count}`);
  if (!(keepAway > 0 && keepAway < 1))
    throw new RangeError(`${where}: keepAway must lie between 0 and 1, got ${keepAway}`);
  if (speed !== undefined && !(speed.si > 0))
    throw new RangeError(`${where}: speed must be more than 0, got ${speed}`);
  const { inputs, plain, unit } = readModel(where, model);
  const shaft = plain(inputs.map(({ si }) => si));
  const mesh = beamMesh(shaft, finest);
  const families = (now: PlainShaft): readonly Family[] =>
    whirlFamilies(where, now, beamMesh(now, finest), count);
  const middle = families(shaft);
  const modes = middle[0]!.whirls;
  const turning = (si: number): RotationalSpeed => quantityFromSi("rotational speed", si, "rpm");
  const marginTo = (omega: number): number => (omega - speed!.si) / omega;
  /** Which of all whirls, in their order, is the slowest, and which the nearest. */
  const all = middle.flatMap(({ sense, whirls }) => whirls.map(({ omega }) => ({ sense, omega })));
  const least = (by: (omega: number) => number): number =>
    all.reduce((best, { omega }, i) => (by(omega) < by(all[best]!.omega) ? i : best), 0);
  const slowest = least((omega) => omega);
  const near = speed === undefined ? undefined : least((omega) => Math.abs(marginTo(omega)));
  // What the pulls do moves no critical speed: their doubt need not be run through.
  const moved = inputs.map((input) => (/^(pull of|torque)/.test(input.name) ? { ...input, u: 0 } : input));
  const found = carry((numbers) => {
    const now = families(plain(numbers));
    const same = middle.flatMap(({ whirls }, f) =>
      whirls.map((_, i) => now[f]!.whirls[i]?.omega ?? Number.NaN),
    );
    return near === undefined ? same : [...same, marginTo(same[near]!)];
  }, moved);
  const speedOf = (i: number): Measured<RotationalSpeed> =>
    measured(turning(found.values[i]!), turning(found.u[i]!), found.degreesOfFreedom[i]!);
  const met = (i: number): WhirlMet => Object.freeze({ speed: speedOf(i), sense: all[i]!.sense });
  const rest = boundsOf(where, shaft, mesh);
  const inch = systemOf(unit) === "inch";
  const margin =
    speed === undefined
      ? undefined
      : measured(found.values[all.length]!, found.u[all.length]!, found.degreesOfFreedom[all.length]!);
  // A family that ends below the running speed with as many as were asked for may go on just above it.
  const beyond =
    speed !== undefined &&
    middle.some(({ whirls }) => whirls.length === count && whirls.at(-1)!.omega < speed.si);
  const judged = verdictOf(margin, keepAway);
  const place = ({ name, at }: { readonly name: string; readonly at: Length }) =>
    Object.freeze({ name, station: at });
  return Object.freeze({
    kind: "critical speeds",
    modes: Object.freeze(
      modes.map(({ shape, plane }, i) =>
        Object.freeze({ speed: speedOf(i), shape: Object.freeze(shape), plane }),
      ),
    ),
    stations: Object.freeze(mesh.stations.map((x) => quantityFromSi("length", x, inch ? "inch" : "mm"))),
    supports: Object.freeze(model.supports.map(place)),
    wheels: Object.freeze((model.wheels ?? []).map(place)),
    lowest: met(slowest),
    nearest: near === undefined ? undefined : met(near),
    atRest: turning(rest.atRest),
    dunkerley: turning(rest.dunkerley),
    rayleigh: turning(rest.rayleigh),
    speed,
    margin,
    keepAway,
    verdict: beyond && judged === "clear" ? "cannot tell yet" : judged,
    warnings: Object.freeze([
      ...whirlWarnings(model),
      ...(beyond
        ? [
            `It runs above the ${count === 1 ? "one mode" : `${count} modes`} sought: there may be one nearer; ask for more modes.`,
          ]
        : []),
      ...(speed !== undefined && speed.si > all[slowest]!.omega
        ? ["It runs above the slowest whirl: starting and stopping, it passes through."]
        : []),
    ]),
  });
}

interface Whirl {
  readonly omega: number;
  readonly shape: readonly number[];
  readonly plane: CriticalSpeed["plane"];
}

interface Family {
  readonly sense: WhirlSense;
  readonly whirls: readonly Whirl[];
}

/** The whirls by sense, those that unbalance drives first. */
export function whirlFamilies(
  where: string,
  shaft: PlainShaft,
  mesh: BeamMesh,
  count: number,
): readonly Family[] {
  const alike = shaft.supports.every(({ horizontal, vertical }) => horizontal === vertical);
  const senses = alike
    ? ([
        ["forward", -1],
        ["at rest", 0],
        ["backward", 1],
      ] as const)
    : ([
        ["tied", -1],
        ["at rest", 0],
      ] as const);
  return senses.map(([sense, polar]) => ({
    sense,
    whirls: whirlsOf(where, shaft, mesh, count, alike, polar),
  }));
}

function whirlsOf(
  where: string,
  shaft: PlainShaft,
  mesh: BeamMesh,
  count: number,
  alike: boolean,
  polar: -1 | 0 | 1,
): readonly Whirl[] {
  const planes = alike ? (["vertical"] as const) : (["horizontal", "vertical"] as const);
  const perNode = 2 * planes.length;
  const discs = polar === -1 ? shaft.wheels.filter((wheel) => wheel.polar > wheel.diametral).length : 0;
  const modes = lowestModes(
    stiffnessMatrix(shaft, mesh, planes),
    massMatrix(shaft, mesh, planes, polar),
    count,
    discs,
  );
  if (modes === undefined)
    throw new RangeError(`${where}: the supports do not hold the shaft: it must be held at two places apart`);
  if (modes.length === 0) throw new RangeError(`${where}: nothing on the shaft has mass, so nothing whirls`);
  return modes.map(({ omegaSquared, shape }) => {
    const of = (offset: number): number[] => mesh.stations.map((_, i) => shape[i * perNode + offset]!);
    const all = planes.map((_, p) => of(2 * p));
    const top = all.map((one) => Math.max(...one.map(Math.abs)));
    const p = top.length === 2 && top[1]! >= top[0]! ? 1 : 0;
    const one = all[p]!;
    const largest = one.reduce((best, x) => (Math.abs(x) > Math.abs(best) ? x : best), 0);
    return {
      omega: Math.sqrt(omegaSquared),
      shape: one.map((x) => x / largest),
      plane: alike ? "both" : planes[p]!,
    };
  });
}

/** The first whirl of the shaft at rest in its softer plane, and what must lie above and below it. */
function boundsOf(
  where: string,
  shaft: PlainShaft,
  mesh: BeamMesh,
): { readonly atRest: number; readonly dunkerley: number; readonly rayleigh: number } {
  const each = (["horizontal", "vertical"] as const).map((plane) => {
    const k = stiffnessMatrix(shaft, mesh, [plane]);
    const m = massMatrix(shaft, mesh, [plane], 0);
    const factor = factorOf(k);
    const first = lowestModes(k, m, 1, 0)?.[0];
    if (factor === undefined || first === undefined)
      throw new RangeError(`${where}: the supports do not hold the shaft, or nothing on it has mass`);
    // Weight of all masses, each on the side to which its part of the shaft swings: Rayleigh's shape.
    const lie = Float64Array.from({ length: k.size }, (_, i) =>
      i % 2 === 0 ? Math.sign(first.shape[i]!) : 0,
    );
    const load = times(m, lie);
    const y = solved(factor, load);
    const my = times(m, y);
    const product = (a: Float64Array, b: Float64Array): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);
    let trace = 0;
    for (let i = 0; i < m.size; i++) {
      const unit = new Float64Array(m.size);
      unit[i] = 1;
      trace += solved(factor, times(m, unit))[i]!;
    }
    return {
      atRest: Math.sqrt(first.omegaSquared),
      rayleigh: Math.sqrt(product(y, load) / product(y, my)),
      dunkerley: 1 / Math.sqrt(trace),
    };
  });
  return each.reduce((a, b) => (b.atRest < a.atRest ? b : a));
}

function verdictOf(margin: Measured<number> | undefined, keepAway: number): CriticalSpeeds["verdict"] {
  if (margin === undefined) return "no speed given";
  const [off, doubt] = [Math.abs(margin.value), 2 * margin.standardUncertainty];
  return off - doubt >= keepAway ? "clear" : off + doubt < keepAway ? "too near" : "cannot tell yet";
}

/** What a model leaves out that moves its critical speeds. */
export function whirlWarnings({ wheels = [], supports }: ShaftModel): string[] {
  const points = wheels.filter(({ polarInertia }) => polarInertia === undefined).map(({ name }) => name);
  return [
    ...(points.length > 0
      ? [`Reckoned as masses at a point, without what resists tilting: ${points.join(", ")}.`]
      : []),
    ...(supports.every(({ stiffness }) => stiffness === undefined)
      ? ["All bearings are reckoned stiff: with boxes and foundations that give, the true speeds lie lower."]
      : []),
  ];
}
