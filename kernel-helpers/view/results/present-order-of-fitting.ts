import type { FittingStep, OrderOfFitting } from "../../bearing/index.js";
import type { Presentation } from "../blocks.js";
import { inUnit, jointUnits } from "./joint-text.js";

const marks = { done: undefined, next: "bad", later: "warn" } as const;

/** Whether the boxes may be closed up, and what is done on each before, in order. */
export function presentOrderOfFitting({ boxes, verdict }: OrderOfFitting): Presentation {
  const open = boxes.filter((box) => box.verdict === "not yet");
  return Object.freeze<Presentation>({
    title: "What to do, in this order",
    blocks: [
      {
        type: "verdict",
        outcome: verdict === "fitted" ? "yes" : "no",
        text: verdict === "fitted" ? "the boxes may be closed up" : "not to be closed up yet",
        because:
          verdict === "fitted"
            ? "Every box lies in line, has its clearance and bears."
            : `Open: ${open.map(({ name, steps }) => `${name}, ${steps.find(({ state }) => state === "next")!.name}`).join("; ")}.`,
      },
      {
        type: "table",
        caption: "A step undoes the readings of those after it: they are taken again",
        columns: [
          { title: "box", align: "left" },
          { title: "step", align: "left" },
          { title: "stands", align: "left" },
          { title: "what to do", align: "left" },
        ],
        stacked: true,
        rows: boxes.flatMap(({ name, steps }) =>
          steps.map((step) => {
            const mark = marks[step.state];
            return { cells: [name, step.name, step.state, workText(step)], ...(mark && { mark }) };
          }),
        ),
      },
    ],
  });
}

function workText({ work, amount, at }: FittingStep): string {
  const much = amount === undefined ? "" : `: ${inUnit(amount, jointUnits(amount).small, 2)}`;
  return `${work}${much}${at === undefined ? "" : ` at ${inUnit(at, jointUnits(at).size, 4)}`}`;
}
