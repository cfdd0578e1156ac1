import type { Release } from "../../joint/release-types.js";
import { isQuantity, type TemperatureDifference } from "../../quantity/index.js";
import type { Presentation, TableBlock, VerdictBlock } from "../blocks.js";
import {
  forceRange,
  inUnit,
  type JointUnits,
  jointUnits,
  mostForceText,
  rangeText,
  warmerText,
} from "./joint-text.js";
import { percentText } from "./percent-text.js";

/** Whether the hub comes off: cold, or how warm it must be, and the ways to choose from. */
export function presentRelease(release: Release): Presentation {
  const units = jointUnits(release.interferenceLeft);
  return Object.freeze<Presentation>({
    title: "Will it press off?",
    blocks: [
      coldVerdict(release, units),
      { type: "text", text: heatText(release, units) },
      optionsTable(release, units),
    ],
  });
}

function coldVerdict(release: Release, units: JointUnits): VerdictBlock {
  const { cold, chanceCold, pressOff, rating, weakest } = release;
  const text = {
    yes: "It presses off cold.",
    no: "It does not press off cold with this rig.",
    "cannot tell yet": "Whether it presses off cold cannot be told yet.",
  };
  return {
    type: "verdict",
    outcome: cold,
    text: text[cold],
    because: `It needs ${forceRange(pressOff, units)}; the rig allows ${mostForceText(rating, units)} by its ${weakest}: enough in ${percentText(chanceCold)} of the cases.`,
  };
}

function heatText({ cold, warmer, interferenceLeft }: Release, units: JointUnits): string {
  if (cold === "yes") return "Heat is not needed: the rig does it cold in the tightest case too.";
  const middle =
    warmer.middle.si === 0
      ? "In the middle case the rig does it cold"
      : `In the middle case the rig's rating does it with the hub ${warmerText(warmer.middle, units)} warmer than the shaft`;
  return `${cold === "no" ? "Heat is needed, or a stronger rig." : "Have heat ready, and press first."} ${middle}, in the tightest with ${warmerText(warmer.high, units)}; ${inUnit(interferenceLeft, units.small, 2)} of interference may then be left.`;
}

function optionsTable({ options }: Release, units: JointUnits): TableBlock {
  return {
    type: "table",
    stacked: true,
    caption: "Ways to choose from",
    columns: [
      { title: "way", align: "left" },
      { title: "figures", align: "left" },
      { title: "against it", align: "left" },
    ],
    rows: options.map(({ name, figures, breaks }) => ({
      cells: [
        name,
        Object.entries(figures)
          .map(([label, value]) => `${label}: ${figureText(value, units)}`)
          .join("; "),
        breaks.length === 0 ? "no limit broken" : breaks.join("; "),
      ],
      ...(breaks.length === 0 ? {} : { mark: "warn" as const }),
    })),
  };
}

function figureText(value: unknown, units: JointUnits): string {
  if (isQuantity(value, "temperature difference")) return warmerText(value as TemperatureDifference, units);
  if (isQuantity(value, "force")) return rangeText({ low: value, high: value }, units.force, 2);
  if (isQuantity(value, "length")) return inUnit(value, units.small, 2);
  return String(value);
}
