import type { DrawUp } from "../../joint/draw-up-types.js";
import type { Fact, Presentation, VerdictBlock } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { drawUpAlt, drawUpDrawing, narrowDrawUpDrawing } from "./draw-up-drawing.js";
import {
  forceRange,
  inUnit,
  type JointUnits,
  jointUnits,
  rangeText,
  spreadText,
  stressText,
} from "./joint-text.js";
import { percentText } from "./percent-text.js";
import { warningBlocks } from "./warning-blocks.js";

/** A tapered hub drawn up: whether it holds, how far to draw it, where it sits, what it carries and what stops it. */
export function presentDrawUp(up: DrawUp): Presentation {
  const units = jointUnits(up.hubLength);
  const closer = narrowDrawUpDrawing(up, units);
  return Object.freeze<Presentation>({
    title: "Drawing up the hub",
    blocks: [
      verdict(up, units),
      {
        type: "drawing",
        drawing: drawUpDrawing(up, units),
        ...(closer === undefined ? {} : { narrow: closer }),
        alt: drawUpAlt(up, units),
        caption: "Sketch, not to scale: first contact in hidden lines, the seat in full ones.",
      },
      { type: "facts", facts: facts(up, units) },
      ...warningBlocks(up.warnings),
    ],
  });
}

function verdict(up: DrawUp, units: JointUnits): VerdictBlock {
  const outcome = {
    holds: "yes",
    "bottoms first": "no",
    "does not hold": "no",
    "cannot tell yet": "cannot tell yet",
  } as const;
  const text = {
    holds: `It holds: draw it up ${inUnit(up.drawUp.middle, units.size, 3)} from first contact.`,
    "bottoms first": "It bottoms before it holds.",
    "does not hold": "Drawn up as wanted it does not hold.",
    "cannot tell yet": "Whether it holds before it bottoms cannot be told yet.",
  };
  const small = up.interference;
  return {
    type: "verdict",
    outcome: outcome[up.verdict],
    text: text[up.verdict],
    because: [
      `${plusMinus(small, { unit: units.small })} of interference (95 %), on diameter, as a mean along the hub.`,
      ...up.reasons,
    ].join(" "),
  };
}

function facts(up: DrawUp, units: JointUnits): Fact[] {
  const { fit, stops, nutTorque, threadLoad } = up;
  return [
    {
      label: "first contact, small face at station",
      value: spreadText(up.firstContact, units.size, 5),
      note: "pushed on by hand, clean and dry",
    },
    {
      label: "bears first",
      value: up.bearsFirst,
      note: `gap at the other end ${rangeText(up.gap, units.small, 2)} on diameter; bears all along after ${rangeText(up.bearsAllAfter, units.size, 2)}`,
    },
    {
      label: "draw up from first contact",
      value: `${inUnit(up.drawUp.middle, units.size, 3)} (${rangeText({ low: up.drawUp.low, high: up.drawUp.high }, units.size, 3)})`,
      note: `for ${rangeText(up.wanted, units.small, 3)} of interference half-way, on diameter`,
    },
    {
      label: "it then sits at station",
      value: spreadText(up.seat, units.size, 5),
      note: "small face; a place far off this means dirt, or another taper",
    },
    { label: "force to draw it up", value: forceRange(fit.pressOn, units) },
    ...(nutTorque === undefined
      ? []
      : [
          {
            label: "torque on the nut",
            value: rangeText(nutTorque, units.torque, 2),
            note: `loads the thread to ${percentText(threadLoad ?? 0)} of its yield at most`,
          },
        ]),
    {
      label: "torque carried by friction",
      value: spreadText(fit.torque, units.torque, 2),
      ...(up.torqueNeeded === undefined
        ? {}
        : {
            note: `asked for ${inUnit(up.torqueNeeded, units.torque, 3)}: carried in ${percentText(up.chanceCarries ?? 0)} of the cases`,
          }),
    },
    { label: "force to press it off again", value: forceRange(fit.pressOff, units) },
    {
      label: "tension in the hub",
      value: spreadText(fit.hubStress.stress, units.stress, 2),
      note: `${fit.hubStress.strengthIs} ${stressText(fit.hubStress.strength, units)}: ${fit.hubStress.verdict}`,
    },
    ...stops.map(({ what, left, chanceFirst }) => ({
      label: `way left to the ${what}`,
      value: spreadText(left, units.size, 2),
      note: `meets it before it holds in ${percentText(chanceFirst)} of the cases`,
    })),
  ];
}
