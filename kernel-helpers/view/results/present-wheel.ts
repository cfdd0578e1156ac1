import { formatNumber, inFraction } from "../../quantity/index.js";
import type { BeltAlignment, RimSpeed, RingRunOut, WheelRunOut } from "../../shaft/index.js";
import type { Fact, Presentation } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { type ShownUnits, shownUnits, smallText } from "./shown-units.js";
import { threeDigits } from "./three-digits.js";
import { warningBlocks } from "./warning-blocks.js";

/** How fast a rim runs against how fast it may. */
export function presentRimSpeed(found: RimSpeed): Presentation {
  const {
    state,
    rimSpeed,
    permitted,
    permittedTurning,
    stress,
    permittedStress,
    safetyFactor,
    jointEfficiency,
    speed,
  } = found;
  return Object.freeze<Presentation>({
    title: "Rim speed",
    blocks: [
      {
        type: "verdict",
        outcome: state === "within" ? "yes" : "no",
        text: state === "within" ? "the rim may run at this speed" : "too fast for this rim",
        because: `It runs at ${threeDigits(rimSpeed)} (${threeDigits(speed)}) and may at ${threeDigits(permitted)} (${threeDigits(permittedTurning)}); a crack, a blow hole or a welded repair is covered by nothing.`,
      },
      {
        type: "facts",
        facts: [
          {
            label: "hoop stress",
            value: threeDigits(stress),
            note: "of a thin free rim; bending between the arms comes on top",
          },
          {
            label: "permitted",
            value: threeDigits(permittedStress),
            note: `strength over ${formatNumber(safetyFactor)}${jointEfficiency === 1 ? ", rim in one piece" : `, times ${formatNumber(jointEfficiency)} for the joint`}`,
          },
        ],
      },
    ],
  });
}

/** Run-out of a wheel: offset, wobble, out of round apart. */
export function presentWheelRunOut(found: WheelRunOut): Presentation {
  const units = shownUnits(found.unitSystem);
  return Object.freeze<Presentation>({
    title: `Run-out of ${found.title}`,
    blocks: [
      { type: "text", text: sentence(found, units) },
      {
        type: "facts",
        facts: [
          ...ringFacts(
            "rim",
            "offset",
            "on radius: half of the total indicator reading it makes alone",
            found.rim,
            units,
          ),
          ...(found.face === undefined
            ? []
            : ringFacts(
                "face",
                "swing",
                "half of the total indicator reading it makes alone",
                found.face,
                units,
              )),
          ...(found.lean === undefined || found.face?.real !== true
            ? []
            : [{ label: "leans from square", value: formatMeasured(found.lean, { unit: "degree" }) }]),
        ],
      },
      ...warningBlocks(found.warnings),
    ],
  });
}

function sentence({ rim, face }: WheelRunOut, units: ShownUnits): string {
  const offset = rim.real
    ? `The rim is ${plusMinus(rim.once, { unit: units.small })} off centre towards ${plusMinus(rim.towards, { unit: "degree" })} (95 %)`
    : "No offset of the rim stands out of the readings' noise";
  const wobble =
    face === undefined
      ? ""
      : face.real
        ? `; the face swings ${plusMinus(face.once, { unit: units.small })} either way, furthest out at ${plusMinus(face.towards, { unit: "degree" })}`
        : "; the face runs square within the readings' noise";
  return `${offset}${wobble}.`;
}

function ringFacts(name: string, once: string, note: string, ring: RingRunOut, units: ShownUnits): Fact[] {
  return [
    {
      label: `${name}, total indicator reading`,
      value: smallText(ring.tir, units),
      note: `${ring.readingCount} readings`,
    },
    { label: `${name}, ${once} once a turn`, value: formatMeasured(ring.once, { unit: units.small }), note },
    {
      label: name === "rim" ? "rim, out of round" : "face, uneven",
      value: smallText(ring.rest, units),
      note: "what is left without it, peak to valley",
    },
  ];
}

/** How two pulleys stand to each other. */
export function presentBeltAlignment(found: BeltAlignment): Presentation {
  const { offset, angle, perFoot } = found;
  const inches = offset.value.writtenIn !== "mm";
  const near = inches ? ` (about ${inFraction(offset.value.absolute())})` : "";
  return Object.freeze<Presentation>({
    title: "Alignment of two pulleys",
    blocks: [
      {
        type: "facts",
        facts: [
          {
            label: "second pulley lies aside",
            value: `${formatMeasured(offset)}${near}`,
            note: "middle of its face against the middle plane of the first; grows away from the string",
          },
          {
            label: "shafts out of parallel",
            value: formatMeasured(angle, { unit: "degree" }),
            note: "in the plane of the string",
          },
          {
            label: inches ? "which is, along a foot of shaft" : "which is, along 300 mm of shaft",
            value: formatMeasured(perFoot),
          },
        ],
      },
    ],
  });
}
