import type { LoadsAgainst } from "../../bearing/index.js";
import { formatNumber } from "../../quantity/index.js";
import type { Presentation } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { threeDigits } from "./three-digits.js";

/** Loads on the boxes as they are now, against those their running was foretold for. */
export function presentLoadsAgainst({ boxes }: LoadsAgainst): Presentation {
  const off = boxes.filter(({ state }) => state !== "as reckoned");
  const heavier = off.some(({ state }) => state === "more");
  return Object.freeze<Presentation>({
    title: "Loads on the boxes, belts as they are",
    blocks: [
      {
        type: "verdict",
        outcome: heavier ? "no" : "yes",
        text:
          off.length === 0
            ? "the boxes are loaded as reckoned"
            : off.map(({ name, state }) => `${name} carries ${state} than was reckoned`).join(", "),
        because: `${boxes
          .map(
            ({ name, more, riseChange }) =>
              `${name}: ${plusMinus(more)} (95 %) against the forecast, which changes its rise by about ${threeDigits(riseChange).replace(" (difference)", "")}`,
          )
          .join("; ")}.${
          heavier
            ? " Slacken the belt to what carries the power, or put this tension into the shaft's strength and the bearings before it runs."
            : ""
        }`,
      },
      {
        type: "table",
        caption: "Each box; ± U (95 %)",
        columns: [
          { title: "box", align: "left" },
          { title: "foretold for", align: "right" },
          { title: "now", align: "right" },
          { title: "now pressed towards", unit: "°", align: "right" },
          { title: "mean pressure now", align: "right" },
          { title: "which is", align: "left" },
        ],
        rows: boxes.map(({ name, foretold, now, direction, meanPressure, state }) => ({
          cells: [
            name,
            plusMinus(foretold),
            plusMinus(now),
            formatNumber(Math.round(direction.in("degree"))),
            threeDigits(meanPressure),
            state,
          ],
          ...(state === "more" ? { mark: "warn" as const } : {}),
        })),
      },
      {
        type: "text",
        text: "Directions from straight down, counter-clockwise as seen from where the stations begin.",
      },
    ],
  });
}
