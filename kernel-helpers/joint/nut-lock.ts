import { threadNamed } from "../handbook/index.js";
import { type Angle, formatNumber, quantityFromSi } from "../quantity/index.js";
import { reversed } from "./hand-predict.js";
import type { NutLock, NutLockInput } from "./nut-lock-types.js";

/**
 * How the nut of a tapered hub is tightened and locked: which way and how far, by which torque, what running does to it,
 * and whether the lock catches within the draw-up that is wanted.
 *
 * Turn from first contact = 2π·a/p; from one place of the lock to the next 2π/n, which draws the hub on by p/n and adds
 * t·p/n of interference. Draw-ups from a_low to a_high hold a place for certain where a_high − a_low ≥ p/n; else in the
 * share (a_high − a_low)·n/p of the cases. A nut is never turned back to meet its lock: that takes the pull off.
 *
 * Valid when: thread single-start, and hub and nut move together. The thread stretches and the hub gives, so the nut
 * turns further than said: watch the gauge on the hub, not the nut. A lock is wanted whichever way running turns the
 * nut, because starting, braking and jolts turn the torque round.
 *
 * @param input.hand    as `threadHand` gives it
 * @param input.drawUp  as `drawUp` gives it
 * @param input.thread  as the handbook names it
 * @param input.lock    what locks it, in words
 * @param input.places  in how many places of a turn it catches, a whole number of at least 1 [-]
 * @returns turns [rad], torques [N·m], the step from place to place [m], verdict
 * @throws RangeError  no lock is named, places is no whole number of at least 1, or the thread is not known
 * @example
 * const expected = predictHand({ driver: "wheel", rotation: "clockwise", seenFrom: "nut side" });
 * const up = { shaftTaper: { value: 1 / 16 }, drawUp: { low: inch(0.02), middle: inch(0.03), high: inch(0.04) } };
 * const nut = { hand: threadHand(expected, { seen: "right" }), drawUp: up, thread: "1 1/2-6 UNC" };
 * nutLock({ ...nut, lock: "split pin", places: 12 }).step.interference.in("thou").toFixed(3) // "0.868"
 * @source geometry of screw and cone; that a lock is wanted, and that a nut is not turned back: common practice, no source
 */
export function nutLock(input: NutLockInput): NutLock {
  const { hand, drawUp, lock, places } = input;
  if (lock.trim() === "")
    throw new RangeError('nutLock: lock must say what keeps the nut, e.g. "split pin", got nothing');
  if (!(Number.isInteger(places) && places >= 1))
    throw new RangeError(
      `nutLock: places must be a whole number of at least 1, in how many places of a turn the lock catches, got ${places}`,
    );
  const pitch = threadNamed(input.thread).pitch.si;
  const turnOf = (way: number): Angle => quantityFromSi("angle", (2 * Math.PI * way) / pitch, "degree");
  const { low, middle, high } = drawUp.drawUp;
  const way = pitch / places;
  const taper = drawUp.shaftTaper.value;
  const chancePlace = Math.min(1, (high.si - low.si) / way);
  const inch = low.writtenIn === "inch";
  const tightens = (called: typeof hand.seen): "tightens it" | "loosens it" =>
    called === hand.seen ? "tightens it" : "loosens it";
  const { whenBraking } = hand.prediction;
  const [running, braking] = [
    tightens(hand.prediction.hand),
    whenBraking === undefined ? undefined : tightens(whenBraking),
  ];
  const { nutTorque } = drawUp;
  return Object.freeze<NutLock>({
    kind: "nut lock",
    lock,
    places,
    seen: hand.seen,
    tighten: hand.tighten,
    loosen: reversed(hand.tighten),
    running,
    braking,
    turn: Object.freeze({ low: turnOf(low.si), middle: turnOf(middle.si), high: turnOf(high.si) }),
    torque: nutTorque,
    step: Object.freeze({
      angle: quantityFromSi("angle", (2 * Math.PI) / places, "degree"),
      way: quantityFromSi("length", way, low.writtenIn),
      interference: quantityFromSi("length", taper * way, inch ? "thou" : "micrometre"),
    }),
    stepTorque: nutTorque?.high.times((taper * way) / drawUp.interference.value.si),
    chancePlace,
    verdict: chancePlace === 1 ? "locks" : "may fall between two places",
    reasons: Object.freeze([
      `Running ${running}${braking === undefined ? "" : braking === running ? ", and so does braking" : `, but braking ${braking}`}; locked it must be all the same, because starting, stopping and jolts turn the torque round.`,
      chancePlace === 1
        ? "Wherever the hub comes to stand, a place of the lock lies within the draw-up wanted: turn on to it, never back."
        : `In ${formatNumber(Math.round(100 * (1 - chancePlace)))} % of the cases no place of the lock lies within the draw-up wanted: face the washer so that one does, never turn the nut back to it.`,
    ]),
  });
}
