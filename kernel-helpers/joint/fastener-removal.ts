import { nutFactorOf, type StandardThread, type ThreadSurface, threadFriction } from "../handbook/index.js";
import {
  type Force,
  formatNumber,
  inch,
  type Length,
  lbf,
  mm,
  newton,
  type Pressure,
  quantityFromSi,
  type Torque,
} from "../quantity/index.js";
import { studYieldTorque } from "./fastener-stud.js";
import { screwTorque, torqueRange } from "./fastener-torque.js";
import type { FirstReached, NutRemoval, TorqueSpan, WrenchRow } from "./fastener-types.js";
import { wrenchPull } from "./fastener-wrench.js";

/** Tension in a nut found on an old machine, as a share of what makes its stud yield. */
const preloadShares = { low: 0.2, high: 0.6 } as const;
/** Seized hard, rust takes more room than the iron it came from and wedges the flanks. */
const seizing = { low: 1, high: 2 } as const;
const defaultStopShare = 0.75;

/** What is known of the nut before anybody pulls. */
export interface NutRemovalInput {
  readonly thread: StandardThread;
  /** Yield strength of the stud, the least it may have; a brittle metal of the handbook has none, and is refused. */
  readonly yield: Pressure | undefined;
  /** "anti-seize", "oiled", "dry", "rusted", or "seized": rusted, and did not move at a first pull. */
  readonly state: string;
  /** What wrenches there are, nut's centre to hand; 12, 18, 24, 36 and 48 in (300 to 1200 mm) without it. */
  readonly wrenches?: readonly Length[];
  /** Tension left in the stud, where it is known better than a fifth to three fifths of yield. */
  readonly preload?: { readonly low: Force; readonly high: Force };
  /** The share of the root's yield torque at which to stop [-]; 0.75 without it. */
  readonly stopShare?: number;
}

/**
 * How hard a nut may be pulled: the torque that may break it loose as a range, the torque at which its stud gives way,
 * the stop limit below that, what each wrench asks of the arm, and which is reached first.
 *
 * preload: 0.2 to 0.6 S As;  tightening: K F d;  break-loose: friction in thread and seat, loosening (`screwTorque`)
 * stop limit: share × torque that makes the root yield under the greatest preload (`studYieldTorque`); it comes first for
 * sure only where the least break-loose torque passes the limit of the least preload
 *
 * All torque of the wrench is taken to reach the stud's root, for nobody knows how much the seat takes: this errs to the
 * safe side.
 *
 * Valid when: the stud is sound. Look for cracks, waists and an old weld first; a cracked stud has no limit that can be
 * reckoned.
 *
 * @param input.thread  as `threadOf` gives it [-]
 * @param input.yield  least yield strength of the stud [Pa], > 0
 * @param input.state  state of thread and seat [-]
 * @param input.wrenches  lengths from the nut's centre to the hand [m], > 0
 * @param input.preload  tension in the stud [N]
 * @param input.stopShare  above 0 to 1 [-]
 * @returns torques [N·m] and pulls [N] as ranges with their reasons, the stop limit, and what comes first
 * @throws RangeError  a value is outside its bound, or the state is none of the handbook's
 * @example nutRemoval({ thread: threadNamed("1 in BSW"), yield: psi(30000), state: "oiled" }).first // "not known which"
 * @source screw and stud: Shigley & Nisbett, Mechanical Engineering Design, 9th ed., chapters 3, 5 and 8; the shares of
 * preload, seizing, stop limit, and a person's pull: common practice, no source
 */
export function nutRemoval(input: NutRemovalInput): NutRemoval {
  const { thread, state, stopShare = defaultStopShare } = input;
  if (!(stopShare > 0 && stopShare <= 1))
    throw new RangeError(`nutRemoval: stop share must lie above 0 and not above 1, got ${stopShare}`);
  const strength = input.yield;
  if (strength === undefined)
    throw new RangeError(
      "nutRemoval: yield strength must be given, got none: a brittle metal has no yield point, and its stud no stop limit that can be reckoned",
    );
  if (!(strength.si > 0))
    throw new RangeError(`nutRemoval: yield strength must be more than 0, got ${strength}`);
  const inches = thread.threadsPerInch !== undefined;
  const preload = preloadOf(input, strength, inches);
  const breakLoose = breakLooseSpan(thread, preload, state);
  const yieldsAt = (tension: Force): Torque =>
    studYieldTorque({ rootDiameter: thread.rootDiameter, yield: strength, tension });
  const rootYields = yieldsAt(preload.high);
  const stopLimit = rootYields.times(stopShare);
  const stopLimitIfSlack = yieldsAt(preload.low).times(stopShare);
  const onePerson = inches
    ? { steady: lbf(50), strong: lbf(120) }
    : { steady: newton(220), strong: newton(530) };
  const longest = quantityFromSi("length", stopLimit.si / onePerson.strong.si, inches ? "inch" : "mm");
  const first = firstReached(breakLoose, stopLimit, stopLimitIfSlack);
  return Object.freeze({
    kind: "nut removal",
    thread,
    state,
    preload,
    tightening: tighteningSpan(thread, preload),
    breakLoose,
    rootYields,
    yield: strength,
    stopLimit,
    stopLimitIfSlack,
    stopShare,
    onePerson: Object.freeze(onePerson),
    wrenches: Object.freeze(
      wrenchLengths(input.wrenches, inches).map((length) =>
        wrenchRow(length, breakLoose, stopLimit, onePerson.strong),
      ),
    ),
    longestSafeWrench: longest,
    first,
    text: words(first, breakLoose, stopLimit),
  });
}

function preloadOf(
  { thread, preload }: NutRemovalInput,
  strength: Pressure,
  inches: boolean,
): NutRemoval["preload"] {
  if (preload !== undefined) {
    if (!(preload.low.si >= 0 && preload.high >= preload.low))
      throw new RangeError(
        `nutRemoval: preload must run from 0 or more upwards, got ${preload.low} to ${preload.high}`,
      );
    return Object.freeze({ ...preload, because: "as given" });
  }
  const at = (share: number): Force =>
    quantityFromSi("force", share * strength.si * thread.stressArea.si, inches ? "lbf" : "kilonewton");
  return Object.freeze({
    low: at(preloadShares.low),
    high: at(preloadShares.high),
    because:
      "a fifth to three fifths of what makes the stud yield: nipped up by hand, to as tight as a good fitter sets it",
  });
}

function tighteningSpan(thread: StandardThread, preload: NutRemoval["preload"]): TorqueSpan {
  const factor = nutFactorOf("lubricated");
  return Object.freeze({
    ...torqueRange(preload, thread.majorDiameter, factor),
    because: `T = K F d, oiled: nut factor ${formatNumber(factor.low, 2)} to ${formatNumber(factor.high, 2)} (${factor.because})`,
  });
}

function breakLooseSpan(thread: StandardThread, preload: NutRemoval["preload"], state: string): TorqueSpan {
  const seized = state === "seized";
  const friction = threadFriction((seized ? "rusted" : state) as ThreadSurface);
  const at = (tension: Force, f: number, times: number): Torque =>
    screwTorque({ thread, preload: tension, friction: f }, "loosen").whole.times(times);
  return Object.freeze({
    low: at(preload.low, friction.low, 1),
    high: at(preload.high, friction.high, seized ? seizing.high : seizing.low),
    because: `friction ${friction.low} to ${friction.high} (${friction.because})${seized ? `; up to ${seizing.high} times that where rust has wedged the flanks` : ""}`,
  });
}

function wrenchLengths(given: readonly Length[] | undefined, inches: boolean): readonly Length[] {
  if (given !== undefined) return [...given].sort((a, b) => a.si - b.si);
  return inches
    ? [12, 18, 24, 36, 48].map((length) => inch(length))
    : [300, 450, 600, 900, 1200].map((length) => mm(length));
}

function wrenchRow(length: Length, breakLoose: TorqueSpan, stopLimit: Torque, strong: Force): WrenchRow {
  const pullAtStop = wrenchPull(stopLimit, length);
  return Object.freeze({
    length,
    pullLow: wrenchPull(breakLoose.low, length),
    pullHigh: wrenchPull(breakLoose.high, length),
    pullAtStop,
    onePersonCanPassTheLimit: strong > pullAtStop,
  });
}

/** Sure of the nut only at the worst, sure of the stud only at the kindest: least tension and least friction. */
function firstReached({ low, high }: TorqueSpan, stopLimit: Torque, stopLimitIfSlack: Torque): FirstReached {
  if (high <= stopLimit) return "nut breaks loose";
  return low > stopLimitIfSlack ? "stop limit of the stud" : "not known which";
}

function words(first: FirstReached, { low, high }: TorqueSpan, stopLimit: Torque): string {
  const share = (torque: Torque): string => formatNumber(torque.si / stopLimit.si, 2);
  const span = `breaking loose takes ${share(low)} to ${share(high)} times the stop limit`;
  if (first === "nut breaks loose") return `The nut comes loose before the stud is in danger: ${span}.`;
  if (first === "stop limit of the stud")
    return `The stud's stop limit comes before the nut breaks loose: ${span}. Do not pull harder: soak it, warm it, shock it squarely, and if it still stands split the nut.`;
  return `Which comes first cannot be told: ${span}. Pull steadily up to the stop limit and no further; if the nut has not moved there, soak it and warm it before the next pull.`;
}
