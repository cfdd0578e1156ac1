import type { NutRemoval, WrenchRow } from "../../joint/fastener-types.js";
import { formatNumber } from "../../quantity/index.js";
import type { Presentation, TableRow, VerdictBlock } from "../blocks.js";
import { nutPullDrawing } from "./nut-pull-drawing.js";
import { type NutUnits, nutUnits } from "./nut-units.js";

const outcomes: Readonly<Record<NutRemoval["first"], Pick<VerdictBlock, "outcome" | "text">>> = {
  "nut breaks loose": { outcome: "yes", text: "The nut comes loose before the stud is in danger." },
  "stop limit of the stud": { outcome: "no", text: "The stud's stop limit comes first: do not pull harder." },
  "not known which": {
    outcome: "cannot tell yet",
    text: "Nut or stud, it cannot be told which gives first.",
  },
};

/** How hard the nut may be pulled: what comes first, the scale of torque, and each wrench. */
export function presentNutRemoval(nut: NutRemoval): Presentation {
  const units = nutUnits(nut.thread.threadsPerInch !== undefined);
  const { breakLoose, tightening, preload, onePerson, stopLimit, stopLimitIfSlack } = nut;
  return Object.freeze<Presentation>({
    title: `How hard may the nut be pulled? ${nut.thread.name}, ${nut.state}`,
    blocks: [
      { type: "verdict", ...outcomes[nut.first], because: nut.text },
      {
        type: "drawing",
        drawing: nutPullDrawing(nut, units),
        narrow: nutPullDrawing(nut, units, "narrow"),
        alt: `Torques on one scale. Tightened with ${units.torques(tightening.low, tightening.high)}; breaks loose at ${units.torques(breakLoose.low, breakLoose.high)}; stop limit of the stud at ${units.mostTorque(stopLimit)}; one person's pull on each wrench, up to ${units.torque(nut.wrenches.at(-1)!.length.times(onePerson.strong))} on the longest.`,
        caption: "What may happen, on one scale of torque. Ranges are as wide as the trade knows them.",
      },
      {
        type: "facts",
        facts: [
          {
            label: "stop limit",
            value: units.mostTorque(stopLimit),
            note: `${formatNumber(nut.stopShare * 100)} % of ${units.torque(nut.rootYields)}, where the stud's root yields with the greatest tension in it; ${units.mostTorque(stopLimitIfSlack)} if it held the least. All of the pull is taken to reach the root: a nut seized in its thread leaves nothing to its seat. The share is common practice, no source.`,
          },
          {
            label: "breaks loose at",
            value: units.torques(breakLoose.low, breakLoose.high),
            note: breakLoose.because,
          },
          {
            label: "was tightened with",
            value: units.torques(tightening.low, tightening.high),
            note: `${tightening.because}. About half of it stayed under the nut.`,
          },
          {
            label: "tension in the stud",
            value: units.tensions(preload.low, preload.high),
            note: preload.because,
          },
          {
            label: "longest wrench for one",
            value: units.mostLength(nut.longestSafeWrench),
            note: `on a longer one a single strong pull of ${units.force(onePerson.strong)} passes the stop limit`,
          },
        ],
      },
      {
        type: "table",
        stacked: true,
        caption: `Pull at the end of the wrench, square to it; its length from nut to hand. A person gives ${units.forces(onePerson.steady, onePerson.strong)} (steady to strong; common practice, no source).`,
        columns: [
          { title: "wrench", align: "right" },
          { title: "pull to break loose", align: "right" },
          { title: "stop at a pull of", align: "right" },
          { title: "one person", align: "left" },
        ],
        rows: nut.wrenches.map((wrench) => row(wrench, units)),
      },
    ],
  });
}

function row(wrench: WrenchRow, units: NutUnits): TableRow {
  const { length, pullLow, pullHigh, pullAtStop, onePersonCanPassTheLimit } = wrench;
  return {
    cells: [
      units.length(length),
      units.forces(pullLow, pullHigh),
      units.mostForce(pullAtStop),
      onePersonCanPassTheLimit ? "can pass the limit: use a spring balance" : "cannot pass the limit",
    ],
    ...(onePersonCanPassTheLimit ? { mark: "warn" as const } : {}),
  };
}
