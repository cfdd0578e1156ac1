import { type Angle, formatFixed, formatNumber, type Length, type Measured } from "../../quantity/index.js";
import type { BeltPulls, BeltWrap } from "../../shaft/index.js";
import type { Fact, Presentation, VerdictBlock } from "../blocks.js";
import { formatMeasured } from "../format-measured.js";
import { threeDigits } from "./three-digits.js";
import { warningBlocks } from "./warning-blocks.js";

/** How far a belt lies round its pulleys. */
export function presentBeltWrap({ drive, wrap, otherWrap, straight, length }: BeltWrap): Presentation {
  return Object.freeze<Presentation>({
    title: drive === "open" ? "Open belt" : "Crossed belt",
    blocks: [
      {
        type: "facts",
        facts: [
          { label: "arc of contact, this pulley", value: shown(wrap) },
          { label: "arc of contact, other pulley", value: shown(otherWrap) },
          { label: "straight part", value: shown(straight), note: "from pulley to pulley" },
          {
            label: "length of the belt",
            value: shown(length),
            note: "on the diameters given; nothing added for the joint",
          },
        ],
      },
    ],
  });
}

/** Diameters are mostly given as plain lengths: what comes of them is then shown to three digits, without a ±. */
function shown(found: Measured<Angle> | Measured<Length>): string {
  return found.standardUncertainty.si > 0 ? formatMeasured(found) : threeDigits(found.value);
}

/** What a belt pulls, and whether it carries the power. */
export function presentBeltPulls(found: BeltPulls): Presentation {
  const { tensionKnown, pull, pullRange, initial, initialRange, direction } = found;
  const range = `${threeDigits(pullRange.low)} to ${threeDigits(pullRange.high)} between high and low friction`;
  const facts: Fact[] = [
    {
      label: "pull on the shaft",
      value: formatMeasured(pull),
      note: tensionKnown ? "with the tension at rest that was given" : range,
    },
    ...(direction === undefined
      ? []
      : [
          {
            label: "points towards",
            value: `${formatFixed(direction.in("degree"), 0)}°`,
            note: "from the right, counter-clockwise, up is 90°; seen from the end where the stations begin",
          },
        ]),
    { label: "tight side", value: formatMeasured(found.tight) },
    { label: "slack side", value: formatMeasured(found.slack) },
    {
      label: tensionKnown ? "tension at rest, given" : "tension at rest, least",
      value: formatMeasured(initial),
      ...(tensionKnown
        ? {}
        : { note: `${threeDigits(initialRange.low)} to ${threeDigits(initialRange.high)}` }),
    },
    {
      label: "pull that does the work",
      value: formatMeasured(found.effective),
      note: "tight less slack side",
    },
    { label: "torque", value: formatMeasured(found.torque) },
    ...(found.centrifugal.value.si > 0
      ? [
          {
            label: "centrifugal part",
            value: formatMeasured(found.centrifugal),
            note: "of both tensions; presses on no pulley",
          },
        ]
      : []),
    { label: "belt speed", value: threeDigits(found.beltSpeed.value) },
    {
      label: "friction",
      value: `${formatNumber(found.friction.low)} to ${formatNumber(found.friction.high)}`,
      note: `over ${formatFixed(found.wrap.in("degree"), 0)}° of contact`,
    },
  ];
  return Object.freeze<Presentation>({
    title: "Pulls of a belt",
    blocks: [
      ...(tensionKnown ? [verdict(found)] : []),
      { type: "facts", facts },
      ...warningBlocks(found.warnings),
    ],
  });
}

function verdict({ state, frictionNeeded, friction }: BeltPulls): VerdictBlock {
  const words = {
    carries: ["yes", "the belt carries the power without slipping"],
    slips: ["no", "the belt slips under this power"],
    "cannot tell yet": ["cannot tell yet", "whether the belt slips cannot be told"],
  } as const;
  const [outcome, text] = words[state];
  const remedy =
    state === "carries"
      ? ""
      : " Tighten it, lengthen the arc of contact (longer centres, a jockey pulley on the slack side), or mend the belt's face.";
  return {
    type: "verdict",
    outcome,
    text,
    because: `It needs a friction of ${formatFixed(frictionNeeded!, 2)} and has ${formatNumber(friction.low)} to ${formatNumber(friction.high)}.${remedy}`,
  };
}
