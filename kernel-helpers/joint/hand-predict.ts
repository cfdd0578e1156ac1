import type { Hand, HandPrediction, NutDuty, Turning } from "./hand-types.js";

/** What a sheet says of the duty: words from rebuild.json, checked here. */
export interface NutDutyWords {
  readonly driver: string;
  readonly rotation: string;
  readonly seenFrom: string;
  readonly brake?: string | undefined;
  readonly contact?: string | undefined;
}

/**
 * The hand of thread that running tightens, for a nut that holds a wheel on a shaft.
 *
 * - The driven member lags: where the shaft drives, the wheel creeps backwards on it; where the wheel drives, it creeps
 *   forwards.
 * - The nut is dragged by the wheel's face the way the wheel creeps. A wheel loose on the shaft that rolls round inside
 *   the nut's seat turns it the other way.
 * - Dragged clockwise, seen facing it, a nut tightens if its thread is right-hand.
 * - A brake on the driver's side turns the torque in the joint round; one on the driven side does not.
 *
 * So, facing the nut, drag: shaft drives and turns counter-clockwise → right; clockwise → left; wheel drives → the
 * reverse.
 *
 * Valid when: the maker thought of it. A key, a pin, a lock washer or a taper that holds by itself makes the hand a
 * matter of habit: the prediction is a warning to look, never a leave not to.
 *
 * @param duty.driver  "shaft" or "wheel": which drives the other [-]
 * @param duty.rotation  "clockwise" or "counter-clockwise" [-]
 * @param duty.seenFrom  "nut side" or "far side" [-]
 * @param duty.brake  "none" (default), "driver" or "driven": the side the brake acts on [-]
 * @param duty.contact  "drag" (default) or "rolling" [-]
 * @returns the hand for running and for braking, with the steps that lead to it
 * @throws RangeError  a word is none of these; the message names the field
 * @example predictHand({ driver: "shaft", rotation: "counter-clockwise", seenFrom: "nut side" }).hand // "right"
 * @example predictHand({ driver: "wheel", rotation: "clockwise", seenFrom: "nut side" }).hand // "right"
 * @source common practice, no source
 */
export function predictHand(duty: NutDutyWords): HandPrediction {
  const checked: NutDuty = Object.freeze({
    driver: oneOf("driver", duty.driver, ["shaft", "wheel"]),
    rotation: oneOf("rotation", duty.rotation, ["clockwise", "counter-clockwise"]),
    seenFrom: oneOf("seenFrom", duty.seenFrom, ["nut side", "far side"]),
    brake: oneOf("brake", duty.brake ?? "none", ["none", "driver", "driven"]),
    contact: oneOf("contact", duty.contact ?? "drag", ["drag", "rolling"]),
  });
  const { driver, rotation, seenFrom, brake, contact } = checked;
  const rotationAtNut = seenFrom === "nut side" ? rotation : reversed(rotation);
  const creep = driver === "wheel" ? rotationAtNut : reversed(rotationAtNut);
  const dragged = contact === "drag" ? creep : reversed(creep);
  const hand = tightenedBy(dragged);
  const whenBraking =
    brake === "none" ? undefined : tightenedBy(brake === "driver" ? reversed(dragged) : dragged);
  return Object.freeze({
    kind: "hand prediction",
    duty: checked,
    rotationAtNut,
    hand,
    whenBraking,
    steps: Object.freeze([
      seenFrom === "nut side"
        ? `Facing the nut, the machine turns ${rotationAtNut}.`
        : `Seen from the far side it turns ${rotation}, so facing the nut it turns ${rotationAtNut}.`,
      driver === "wheel"
        ? `The wheel drives the shaft: it pulls ahead, and creeps ${creep} on the shaft.`
        : `The shaft drives the wheel: the wheel holds back, and creeps ${creep} on the shaft.`,
      contact === "drag"
        ? `The wheel's face drags the nut the same way, ${dragged}.`
        : `The wheel is loose and rolls round in the nut's seat: it turns the nut the other way, ${dragged}.`,
      `Turned ${dragged}, a ${hand}-hand nut tightens.`,
      ...brakeStep(brake, hand, whenBraking),
    ]),
  });
}

function brakeStep(brake: NutDuty["brake"], hand: Hand, whenBraking: Hand | undefined): string[] {
  if (whenBraking === undefined) return [];
  return [
    whenBraking === hand
      ? "The brake acts on the driven side: the torque in the joint keeps its direction, and so does the nut."
      : `The brake acts on the ${brake}'s side: the torque in the joint turns round, and braking tightens a ${whenBraking}-hand nut.`,
  ];
}

/** A right-hand nut goes on clockwise, seen from its outer face. */
function tightenedBy(turning: Turning): Hand {
  return turning === "clockwise" ? "right" : "left";
}

/** The other way round. */
export function reversed(turning: Turning): Turning {
  return turning === "clockwise" ? "counter-clockwise" : "clockwise";
}

function oneOf<T extends string>(field: string, word: string, words: readonly T[]): T {
  const found = words.find((one) => one === String(word).trim().toLowerCase());
  if (found === undefined)
    throw new RangeError(
      `predictHand: ${field} must be ${words.map((one) => `"${one}"`).join(" or ")}, got ${JSON.stringify(word)}`,
    );
  return found;
}
