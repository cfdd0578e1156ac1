import type { Presentation } from "../blocks.js";
import type { Caution } from "../caution.js";

/** A caution, unmistakable in every form. */
export function presentCaution({ title, points }: Caution): Presentation {
  return Object.freeze<Presentation>({
    title: "Before the work",
    blocks: [{ type: "caution", title, points }],
  });
}
