import type { Hand, HandPrediction, ThreadHand } from "./hand-types.js";

/** What was seen on the thread itself. */
export interface HandSeen {
  /** "right" or "left", as seen on the thread; anything else stops the sheet. */
  readonly seen: string;
  /** How it was seen. */
  readonly how?: string | undefined;
  /** Why the thread is to be believed where it contradicts the prediction. */
  readonly resolved?: string | undefined;
}

const howToLook =
  "clean a few turns, hold the shaft upright before you, and look which way the threads in front rise: to the right is right-hand, to the left is left-hand";

/**
 * The hand of a thread: predicted from the duty, compared with what is seen. The thread seen wins. Where the two
 * disagree, the work stops until the reason is written down: one of the two is wrong, and a nut tightened by mistake
 * breaks its stud.
 *
 * @param prediction  as `predictHand` gives it
 * @param look.seen  "right" or "left", from the thread itself [-]
 * @param look.how  how it was seen, for the record [-]
 * @param look.resolved  where they disagree: why the thread is right and the prediction is not, at least a few words [-]
 * @returns the hand, and which way to turn the nut, facing it
 * @throws RangeError  the hand was not seen yet, or it contradicts the prediction and no reason is given
 * @example
 * const prediction = predictHand({ driver: "wheel", rotation: "counter-clockwise", seenFrom: "nut side" });
 * threadHand(prediction, { seen: "left" }).loosen // "clockwise"
 * @source common practice, no source
 */
export function threadHand(prediction: HandPrediction, look: HandSeen): ThreadHand {
  const { how, resolved } = look;
  const seen = handOf(look.seen);
  const agrees = seen === prediction.hand;
  const reason = resolved?.trim();
  if (!agrees && (reason === undefined || reason.split(/\s+/).length < 3))
    throw new RangeError(
      `threadHand: the thread seen is ${seen}-hand, but running calls for ${prediction.hand}-hand. Stop. ${prediction.steps.join(" ")} Look at the thread again (${howToLook}), and ask again which member drives. If the thread stands, write why: threadHand(prediction, { seen: "${seen}", resolved: "the reason" })`,
    );
  const loosen = seen === "right" ? "counter-clockwise" : "clockwise";
  return Object.freeze({
    kind: "thread hand",
    prediction,
    seen,
    how: how?.trim() || undefined,
    agrees,
    resolved: agrees ? undefined : reason,
    loosen,
    tighten: seen === "right" ? "clockwise" : "counter-clockwise",
    text: `${seen === "right" ? "Right" : "Left"}-hand thread: facing the nut, turn it ${loosen} to undo it.${
      agrees
        ? ""
        : " This is against what running calls for; the thread seen wins, and the reason is on record."
    }`,
  });
}

function handOf(seen: string): Hand {
  const word = String(seen)
    .trim()
    .toLowerCase()
    .replace(/[- ]?hand$/, "");
  if (word === "right" || word === "left") return word;
  throw new RangeError(
    `threadHand: seen must be "right" or "left", as seen on the thread itself, got ${JSON.stringify(seen)}. Not looked yet? Then nobody pulls yet: ${howToLook}`,
  );
}
