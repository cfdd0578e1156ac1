import type { Hang, Tipping } from "../../intake/index.js";
import { formatLimit, formatNumber } from "../../quantity/index.js";
import type { Presentation } from "../blocks.js";
import { threeAtMost } from "./three-digits.js";

/** How far a body leans in its sling. */
export function presentHang({ lean, turnsOver }: Hang): Presentation {
  return Object.freeze<Presentation>({
    title: "How it hangs",
    blocks: [
      {
        type: "verdict",
        outcome: turnsOver ? "no" : "yes",
        text: turnsOver
          ? "It turns over: the point lies below the centre of mass."
          : `It leans ${formatNumber(lean.in("degree"), 2)}° and hangs so.`,
        because: "A body swings until its centre of mass lies under the point that holds it.",
      },
    ],
  });
}

/** What a strong person pushes [N]: 120 lbf (common practice, no source). */
const strongPush = 534;

/** What tips a standing body. */
export function presentTipping({ lean, push }: Tipping): Presentation {
  return Object.freeze<Presentation>({
    title: "What tips it",
    blocks: [
      {
        type: "facts",
        facts: [
          { label: "falls when leaning", value: `${formatLimit(lean.in("degree"), 2, "at most")}°` },
          {
            label: "least push that tips it",
            value: threeAtMost(push),
            note: "95 %, one-sided; where it does not slide first",
          },
        ],
      },
      ...(push.si <= strongPush
        ? [
            {
              type: "warning" as const,
              text: "One person can push it over: lay it flat, or wedge it on both sides and tie it.",
            },
          ]
        : []),
    ],
  });
}
