import type { HandPrediction, ThreadHand } from "../../joint/hand-types.js";
import type { Block, Presentation } from "../blocks.js";
import { handCard, handCardAlt } from "./hand-card.js";

const practice =
  "The reasoning is common practice of the trade, without a published source. A key, a pin or a taper that holds by itself may have left the maker free: look at the thread itself before anybody pulls.";

/** The hand that running calls for, step by step. */
export function presentHandPrediction(prediction: HandPrediction): Presentation {
  return Object.freeze<Presentation>({
    title: `Running calls for a ${prediction.hand}-hand thread`,
    blocks: [...reasoning(prediction), { type: "text", text: practice }],
  });
}

/** The hand of the thread: the answer, the card, and why. */
export function presentThreadHand(hand: ThreadHand): Presentation {
  const { prediction, seen, how, agrees, resolved, loosen, text } = hand;
  return Object.freeze<Presentation>({
    title: "Which way does the nut turn?",
    blocks: [
      {
        type: "verdict",
        outcome: "yes",
        text: `Undo ${loosen}, facing the nut.`,
        because: text,
      },
      ...(agrees
        ? []
        : [
            {
              type: "warning",
              text: "Prediction and thread disagree. Begin with a light pull, watch a mark across nut and stud, and stop if the nut draws in.",
            } as const,
          ]),
      {
        type: "drawing",
        drawing: handCard(hand),
        alt: handCardAlt(hand),
        caption: "Card for the bench: seen facing the nut.",
      },
      {
        type: "facts",
        facts: [
          { label: "seen on the thread", value: `${seen}-hand`, ...(how === undefined ? {} : { note: how }) },
          {
            label: "running calls for",
            value: `${prediction.hand}-hand`,
            note: agrees ? "agrees with the thread" : "contradicts the thread; the thread seen wins",
          },
          ...(prediction.whenBraking === undefined
            ? []
            : [
                {
                  label: "braking calls for",
                  value: `${prediction.whenBraking}-hand`,
                  note:
                    prediction.whenBraking === seen
                      ? "agrees with the thread"
                      : "braking works this nut loose: expect a key, a pin or a second nut, and look for it before pulling",
                },
              ]),
          ...(resolved === undefined ? [] : [{ label: "why the thread is believed", value: resolved }]),
        ],
      },
      ...reasoning(prediction),
      { type: "text", text: practice },
    ],
  });
}

function reasoning({ steps }: HandPrediction): Block[] {
  return [{ type: "text", text: steps.join(" ") }];
}
