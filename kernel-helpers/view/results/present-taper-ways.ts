import { type Angle, formatFixed, type Length, type Measured, measured } from "../../quantity/index.js";
import type { TaperCorrection, TaperWay, TaperWays } from "../../shaft/index.js";
import type { Fact, Presentation } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { degreesMinutesSeconds } from "./angle-text.js";
import { scaled } from "./scaled.js";
import {
  nominalText,
  type ShownUnits,
  shownUnits,
  sizeText,
  smallAtMost,
  smallText,
  systemOfLength,
} from "./shown-units.js";
import { angleFact, withUnit } from "./taper-facts.js";
import { warningBlocks } from "./warning-blocks.js";

/** The ways to set a taper, side by side, and how it is proved. */
export function presentTaperWays(result: TaperWays): Presentation {
  const units = shownUnits(result.unitSystem);
  const best = result.ways.find(({ verdict }) => verdict === "good enough");
  const stacked = result.ways.find(({ stack }) => stack !== undefined)?.stack;
  return Object.freeze<Presentation>({
    title: "Ways to set the taper",
    blocks: [
      {
        type: "verdict",
        outcome: best === undefined ? "no" : "yes",
        text:
          best === undefined
            ? "No way on this lathe sets it true enough at once."
            : `Truest by the setting alone: ${best.name}, ${settingText(best, units)}.`,
        because: `The setting may leave it wrong by ${best === undefined ? "more than" : `${smallText(best.error, units)} on diameter from end to end (95 %), allowed`} ${smallAtMost(result.allowed, units)}. ${best === undefined ? "Set the nearest, take a trial cut, and correct by what it measures." : "A trial cut proves it before the size is reached."}`,
      },
      {
        type: "facts",
        facts: [
          {
            label: "taper",
            value: formatMeasured(result.taper),
            note: `change of diameter per length; over ${nominalText(result.seat, units)} its own uncertainty is ${smallText(result.ofTheTaper, units)} on diameter (95 %)`,
          },
          ...(stacked === undefined
            ? []
            : [
                {
                  label: `gauge blocks, set ${stacked.set}`,
                  value: stacked.blocks.map((block) => blockText(block, units)).join(" + "),
                  note: `${blockText(stacked.height, units)} together, for the half angle`,
                },
              ]),
        ],
      },
      {
        type: "table",
        caption: "Error: by the setting alone, on diameter from end to end of the seat, 95 %.",
        columns: [
          { title: "way", align: "left" },
          { title: "set", align: "right" },
          { title: "that is", align: "left" },
          { title: "error", unit: units.smallSymbol, align: "right" },
          { title: "", align: "left" },
        ],
        stacked: true,
        rows: result.ways.map((way) => ({
          cells: [
            way.name,
            settingText(way, units),
            way.settingIs,
            formatFixed(way.error.in(units.small), units.small === "thou" ? 2 : 1),
            way.reason === "" ? way.verdict : `${way.verdict}: ${way.reason}`,
          ],
          ...(way.verdict === "good enough" ? {} : { mark: "warn" as const }),
        })),
      },
      {
        type: "text",
        text: "To set a slide by the sine bar: lay the bar on its blocks along the ways, and swing the slide until an indicator on it stands still along the bar. Prove it: a stripe of thin blue along the flank, the hub or gauge pushed on and turned by less than a quarter; blue taken off at the large end only means too much taper, at the small end only too little. Then how far it still stands off tells the metal to come off: stand-off times the taper, on diameter.",
      },
      ...warningBlocks(result.warnings),
    ],
  });
}

function settingText({ setting }: TaperWay, units: ShownUnits): string {
  const { value } = setting;
  if (value.dimension === "angle")
    return `${formatFixed(value.in("degree"), 2)}° (${degreesMinutesSeconds(value as Angle)})`;
  return sizeText((setting as Measured<Length>).value, units);
}

function blockText(block: Length, { size, sizeSymbol }: ShownUnits): string {
  return `${formatFixed(block.in(size), 4).replace(/0$/, "")} ${sizeSymbol}`;
}

/** Of a foot [-]. */
const perHundred = 100 / 304.8;

/** What a trial cut showed, and how to move each part. */
export function presentTaperCorrection(result: TaperCorrection): Presentation {
  const units = shownUnits(systemOfLength(result.onDiameter.value));
  const move = (label: string, value: Measured<Length>, note: string): Fact => ({
    label,
    value: plusMinus(value, { unit: units.small }),
    note,
  });
  return Object.freeze<Presentation>({
    title: "After the trial cut",
    blocks: [
      {
        type: "facts",
        facts: [
          {
            label: "taper as cut",
            value: withUnit(scaled(result.cut, 100), "%"),
            note: `wanted ${formatFixed(100 * result.wanted, 3)} %`,
          },
          move(
            "wrong between the places",
            result.onDiameter,
            "on diameter, 95 %; above 0 it wants more taper",
          ),
          angleFact("swing the compound slide by", result.compound, "above 0 for more taper"),
          units.system === "inch"
            ? move("move the attachment by, per foot", result.attachmentPerFoot, "on diameter")
            : move(
                "move the attachment by, per 100 mm",
                measured(
                  result.attachmentPerFoot.value.times(perHundred),
                  result.attachmentPerFoot.standardUncertainty.times(perHundred),
                  result.attachmentPerFoot.degreesOfFreedom,
                ),
                "on diameter",
              ),
          ...(result.tailstock === undefined
            ? []
            : [move("move the tailstock by", result.tailstock, "sideways")]),
        ],
      },
      { type: "text", text: result.text },
    ],
  });
}
