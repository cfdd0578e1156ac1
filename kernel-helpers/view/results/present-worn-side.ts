import type { WornSide } from "../../survey/run-out-worn-side.js";
import type { Block, Presentation } from "../blocks.js";

/** Which side is worn, and whether that agrees with the load: the verdict, then each place in words. */
export function presentWornSide(found: WornSide): Presentation {
  const { places, agrees, loadDirection, within, evidence } = found;
  const verdict: Block[] =
    loadDirection === undefined || places.length === 0
      ? [{ type: "text", text: found.text }]
      : [
          {
            type: "verdict",
            outcome: agrees,
            text: {
              yes: "the worn side agrees with the load",
              no: "the worn side does not agree with the load",
              "cannot tell yet": "whether the worn side agrees with the load cannot be told yet",
            }[agrees],
            because: `${found.text} Load towards ${loadDirection}; within ${within} counts as agreeing.`,
          },
        ];
  return Object.freeze<Presentation>({
    title: `Worn side of ${found.title}, from ${evidence}`,
    blocks: [...verdict, ...places.map(({ text }): Block => ({ type: "text", text }))],
  });
}
