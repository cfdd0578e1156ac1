import { formatNumber, inFraction } from "../../quantity/index.js";
import type { BeltAlignment, RimSpeed, RingRunOut, WheelRunOut } from "../../shaft/index.js";
import type { Fact, Presentation, TableBlock } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { type ShownUnits, shownUnits, smallText } from "./shown-units.js";
import { threeAtMost, threeDigits } from "./three-digits.js";
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
        because: `It runs at ${threeDigits(rimSpeed)} (${threeDigits(speed)}) and may at ${threeAtMost(permitted)} (${threeAtMost(permittedTurning)}); a crack, a blow hole or a welded repair is covered by nothing.`,
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
            value: threeAtMost(permittedStress),
            note: `strength over ${formatNumber(safetyFactor)}${jointEfficiency === 1 ? ", rim in one piece" : `, times ${formatNumber(jointEfficiency)} for the joint`}`,
          },
        ],
      },
    ],
  });
}

/** Run-out of a wheel: offset, wobble, out of round apart, of rim and hub. */
export function presentWheelRunOut(found: WheelRunOut): Presentation {
  const units = shownUnits(found.unitSystem);
  const { rim, face, hub, hubFace } = found;
  const rings = [
    { name: "rim", ring: rim },
    { name: "rim, face", ring: face },
    { name: "hub", ring: hub },
    { name: "hub, face", ring: hubFace },
  ].flatMap(({ name, ring }) => (ring === undefined ? [] : [{ name, ring }]));
  return Object.freeze<Presentation>({
    title: `Run-out of ${found.title}`,
    blocks: [
      { type: "text", text: sentence(found, units) },
      ...[seatSentence(found, units)].flatMap((text) =>
        text === "" ? [] : [{ type: "text", text } as const],
      ),
      ringTable(rings, units),
      { type: "text", text: lobeSentence(rings, units) },
      { type: "facts", facts: leanFacts(found) },
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

/** What of it is the seat's, which the hub shows, and what is the wheel's own. */
function seatSentence({ hub, ownOffset, hubFace, ownLean }: WheelRunOut, units: ShownUnits): string {
  if (hub === undefined || ownOffset === undefined) return "";
  const seat = hub.real
    ? `The hub sits ${plusMinus(hub.once, { unit: units.small })} off centre on its shaft`
    : "The hub runs true within the readings' noise";
  const own = ownOffset.real
    ? `the rim is ${plusMinus(ownOffset.amount, { unit: units.small })} off its own hub, towards ${plusMinus(ownOffset.towards, { unit: "degree" })}: that the wheel was made with, and no other seat mends it`
    : "the rim is true to its hub";
  const lean =
    hubFace === undefined || ownLean === undefined
      ? ""
      : ` ${hubFace.real ? "The hub leans on its shaft" : "The hub stands square"}, ${ownLean.real ? "and the rim leans against its own hub" : "and the rim stands square to it"}.`;
  return `${seat}; ${own}.${lean}`;
}

function ringTable(
  rings: readonly { readonly name: string; readonly ring: RingRunOut }[],
  units: ShownUnits,
): TableBlock {
  const symbol = units.smallSymbol;
  return {
    type: "table",
    caption: "Ring by ring; once a turn is half of the total indicator reading it makes alone; ± U (95 %)",
    columns: [
      { title: "read on", align: "left" },
      { title: "in all", unit: symbol, align: "right" },
      { title: "once a turn", unit: symbol, align: "right" },
      { title: "towards", unit: "°", align: "right" },
      { title: "rest", unit: symbol, align: "right" },
    ],
    rows: rings.map(({ name, ring: { tir, once, towards, real, rest } }) => ({
      cells: [
        name,
        bare(smallText(tir, units), symbol),
        real ? bare(plusMinus(once, { unit: units.small }), symbol) : "none to be told",
        real ? plusMinus(towards, { unit: "degree" }).replace(/\u00b0$/, "") : "",
        bare(smallText(rest, units), symbol),
      ],
    })),
  };
}

/** What the rest of each ring is made of. */
function lobeSentence(
  rings: readonly { readonly name: string; readonly ring: RingRunOut }[],
  units: ShownUnits,
): string {
  const told = rings.flatMap(({ name, ring: { lobes } }) =>
    lobes.map(
      ({ order, peakToValley }) =>
        `${name} ${lobeWord(order)} by ${plusMinus(peakToValley, { unit: units.small })}`,
    ),
  );
  return told.length === 0
    ? "The rest is noise, or a scratch."
    : `Of the rest, peak to valley (95 %): ${told.join("; ")}. What else there is, is noise or a scratch.`;
}

function lobeWord(order: number): string {
  return order === 2 ? "oval" : `with ${order} lobes`;
}

function bare(text: string, symbol: string): string {
  return text.replace(new RegExp(`\\s*${symbol}$`), "");
}

function leanFacts({ face, lean, hubFace, hubLean, ownLean }: WheelRunOut): Fact[] {
  const fact = (label: string, angle: WheelRunOut["lean"], real: boolean | undefined): Fact[] =>
    angle === undefined
      ? []
      : [
          {
            label,
            value: real === true ? formatMeasured(angle, { unit: "degree" }) : "not to be told from noise",
          },
        ];
  return [
    ...fact("rim leans from square", lean, face?.real),
    ...fact("hub leans from square", hubLean, hubFace?.real),
    ...fact("rim leans against its hub", ownLean?.amount, ownLean?.real),
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
