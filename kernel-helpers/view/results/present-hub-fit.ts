import type { HubFit, Narrowing } from "../../joint/hub-fit-types.js";
import { formatLimit, formatNumber } from "../../quantity/index.js";
import type { Fact, Presentation, TableBlock, VerdictBlock } from "../blocks.js";
import {
  forceRange,
  forceText,
  inUnit,
  type JointUnits,
  jointUnits,
  spreadText,
  stressText,
  warmerText,
} from "./joint-text.js";
import { percentText } from "./percent-text.js";
import { warningBlocks } from "./warning-blocks.js";

/** A hub on its shaft: the force to press it off, whether the hub stands its own fit, and what to measure. */
export function presentHubFit(fit: HubFit): Presentation {
  const units = jointUnits(fit.diameter);
  return Object.freeze<Presentation>({
    title: `Hub of ${fit.hub.material} on ${fit.shaft.material}`,
    blocks: [
      { type: "text", text: summary(fit, units) },
      hubVerdict(fit, units),
      { type: "facts", facts: facts(fit, units) },
      ...narrowingTable(fit, units),
      ...warningBlocks(fit.warnings),
    ],
  });
}

function summary({ pressOff, cases, selfHolding, taper }: HubFit, units: JointUnits): string {
  const holds =
    taper === 0
      ? ""
      : selfHolding.chance > 0.975
        ? " The taper holds by itself: taking off the nut does not free it."
        : ` The taper may let go of itself once the nut is off (${percentText(1 - selfHolding.chance)}): hold it before the nut comes off.`;
  return `To press it off takes ${forceRange(pressOff, units)}, ${forceText(pressOff.middle, units)} in the middle case. 95 % of ${cases} cases that the inputs allow lie in that range.${holds}`;
}

function hubVerdict({ hubStress, hub }: HubFit, units: JointUnits): VerdictBlock {
  const { verdict, stress, strength, strengthIs, chanceHolds, rule } = hubStress;
  const outcome = { holds: "yes", "does not hold": "no", "cannot tell yet": "cannot tell yet" } as const;
  const text = {
    holds: "The hub stands its own fit.",
    "does not hold": "The hub is stressed beyond its strength by its own fit: it may be cracked already.",
    "cannot tell yet": "Whether the hub stands its own fit cannot be told yet.",
  };
  return {
    type: "verdict",
    outcome: outcome[verdict],
    text: text[verdict],
    because: `${rule === "largest tension" ? "Largest tension at the bore" : "Hoop less radial stress at the bore"} ${spreadText(stress, units.stress, 2)}, against ${stressText(strength, units)} ${strengthIs} of ${hub.material}; it holds in ${percentText(chanceHolds)} of the cases.`,
  };
}

function facts(fit: HubFit, units: JointUnits): Fact[] {
  const { selfHolding } = fit;
  return [
    {
      label: "interference",
      value: spreadText(fit.interference, units.small, 2),
      note: `on diameter, at ${inUnit(fit.diameter, units.size, 4)}`,
    },
    {
      label: "friction",
      value: `${formatNumber(fit.friction.low, 2)} to ${formatNumber(fit.friction.high, 2)}`,
      note: "between hub and shaft",
    },
    { label: "pressure between them", value: spreadText(fit.pressure, units.stress, 2) },
    { label: "force to press it off", value: spreadText(fit.pressOff, units.force, 2) },
    {
      label: "force to press it on",
      value: spreadText(fit.pressOn, units.force, 2),
      note: "with the same friction",
    },
    {
      label: "torque at which it slips",
      value: spreadText(fit.torque, units.torque, 2),
      note: "by friction alone, without its key",
    },
    {
      label: "loose when the hub is warmer by",
      value: `${warmerText(fit.opening.low, units)} to ${warmerText(fit.opening.high, units)}, middle case ${warmerText(fit.opening.middle, units)}`,
      note: "than the shaft, which must stay cold",
    },
    ...(fit.taper === 0
      ? []
      : [
          {
            label: "holds itself with a friction above",
            value: formatLimit(selfHolding.above, 2, "at least"),
            note: "the tangent of the half angle",
          },
        ]),
    ...(fit.chanceLoose === 0
      ? []
      : [{ label: "chance that there is no interference", value: percentText(fit.chanceLoose) }]),
  ];
}

function narrowingTable({ narrowing }: HubFit, units: JointUnits): TableBlock[] {
  const told = narrowing.filter(({ gain }) => gain >= 0.02);
  if (told.length === 0) return [];
  return [
    {
      type: "table",
      stacked: true,
      caption: "What to know better: the press-off range if one of these were known exactly",
      columns: [
        { title: "input", align: "left" },
        { title: "known now", align: "left" },
        { title: "range would be", align: "right" },
        { title: "narrower by", align: "right" },
        { title: "how", align: "left" },
      ],
      rows: told.map((row) => ({
        cells: [
          row.input,
          row.known,
          `${inUnit(row.width, units.force, 2)} wide`,
          percentText(row.gain),
          howToKnow[row.input],
        ],
      })),
    },
  ];
}

const howToKnow: Readonly<Record<Narrowing["input"], string>> = {
  friction: "soak it; note the force at the first slip of a trial press",
  interference: "measure shaft and bore, or the draw-up from first contact",
  taper: "more readings along the seat, far apart",
  "hub modulus": "the class of the iron, from its maker or a chip",
  "hub Poisson's ratio": "hardly worth it",
  "shaft modulus": "hardly worth it",
};
