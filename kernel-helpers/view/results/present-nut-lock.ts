import type { NutLock } from "../../joint/nut-lock-types.js";
import { type Angle, formatNumber } from "../../quantity/index.js";
import type { Fact, Presentation } from "../blocks.js";
import { inUnit, jointUnits, rangeText } from "./joint-text.js";

/** How the nut of a tapered hub is turned and locked. */
export function presentNutLock(nut: NutLock): Presentation {
  return Object.freeze<Presentation>({
    title: "Nut and its lock",
    blocks: [
      {
        type: "verdict",
        outcome: nut.verdict === "locks" ? "yes" : "cannot tell yet",
        text:
          nut.verdict === "locks"
            ? `${nut.lock}: it locks within the draw-up wanted`
            : `${nut.lock}: the draw-up wanted may fall between two of its places`,
        because: nut.reasons.join(" "),
      },
      { type: "facts", facts: facts(nut) },
    ],
  });
}

function facts({ seen, tighten, loosen, turn, torque, step, stepTorque, places }: NutLock): Fact[] {
  const units = jointUnits(step.way);
  return [
    { label: "facing it, tighten", value: tighten, note: `${seen}-hand thread, as seen; undone ${loosen}` },
    {
      label: "turn from first contact",
      value: `${degrees(turn.middle)} (${degrees(turn.low)} to ${degrees(turn.high)})`,
      note: "for the draw-up wanted; thread and hub give besides, so go by the gauge on the hub",
    },
    ...(torque === undefined
      ? []
      : [
          {
            label: "torque on the nut",
            value: rangeText(torque, units.torque, 2),
            note: "by the nut factor",
          },
        ]),
    {
      label: "from place to place of the lock",
      value: degrees(step.angle),
      note: `${formatNumber(places)} places a turn: ${inUnit(step.way, units.size, 2)} of draw-up, ${inUnit(step.interference, units.small, 2)} of interference${stepTorque === undefined ? "" : `, up to ${inUnit(stepTorque, units.torque, 2)} more on the nut`}`,
    },
  ];
}

function degrees(angle: Angle): string {
  return `${formatNumber(angle.in("degree"), 2)}°`;
}
