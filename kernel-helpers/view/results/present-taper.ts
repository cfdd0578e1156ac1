import { formatFixed, formatNumber } from "../../quantity/index.js";
import type { TaperFit } from "../../survey/profile-types.js";
import type { Fact, Presentation, TableBlock } from "../blocks.js";
import { formatMeasured, plusMinus } from "../format-measured.js";
import { angleText, degreesMinutesSeconds } from "./angle-text.js";
import { countText } from "./count-text.js";
import { cutNote, mostRows } from "./cut-rows.js";
import { grossTable } from "./gross-table.js";
import { correctionFact } from "./profile-facts.js";
import { scaled } from "./scaled.js";
import { type ShownUnits, shownUnits, stationText } from "./shown-units.js";
import { taperFacts } from "./taper-facts.js";
import { taperFigure } from "./taper-figure.js";
import { warningBlocks } from "./warning-blocks.js";

/** What a fitted taper looks like: the answer in words, the figure, every name of the taper, the readings. */
export function presentTaper(fit: TaperFit): Presentation {
  const units = shownUnits(fit.profile.unitSystem);
  const { profile, readings, gross } = fit;
  return Object.freeze<Presentation>({
    title: `Taper of ${profile.title}`,
    blocks: [
      { type: "text", text: summary(fit, units) },
      ...(readings.length === 0 ? [] : [taperFigure(fit)]),
      { type: "facts", facts: [...taperFacts(fit, units), ...howFacts(fit, units)] },
      ...grossTable(profile, gross, units),
      readingTable(fit, units),
      ...cutNote(readings.length, profile.file),
      ...warningBlocks([...profile.warnings, ...fit.warnings]),
    ],
  });
}

function summary(
  { taper, halfAngle, residualShape, gross, profile }: TaperFit,
  { system }: ShownUnits,
): string {
  const lines = gross.map(({ reading }) => profile.readings[reading]!.line).join(", ");
  const left =
    gross.length === 0 ? "" : ` ${countText(gross.length, "reading")} given no weight: line ${lines}.`;
  const named =
    system === "inch" ? `${plusMinus(scaled(taper, 12))} in per foot` : `${plusMinus(scaled(taper, 100))} %`;
  return `The taper is ${named} on diameter (95 %), a half angle of ${degreesMinutesSeconds(halfAngle.value)}. ${residualShape.text}${left}`;
}

function howFacts(
  { method, residualShape, noiseRatio, degreesOfFreedom, readings, profile }: TaperFit,
  units: ShownUnits,
): Fact[] {
  const { bow, shape } = residualShape;
  return [
    {
      label: "shape of the flanks",
      value: shape,
      ...(bow === undefined
        ? {}
        : {
            note: `middle over the ends ${formatMeasured(bow, { unit: units.small })}, on diameter; above zero is a barrel`,
          }),
    },
    {
      label: "line fitted by",
      value: method,
      note:
        method === "errors in both"
          ? "diameters and stations both weighted (York)"
          : "diameters weighted, stations taken as exact",
    },
    { label: "readings used", value: String(readings.length), note: profile.file },
    correctionFact(profile),
    {
      label: "scatter about the line",
      value: `${formatFixed(noiseRatio, 2)} times the stated uncertainty`,
      note: `${formatNumber(degreesOfFreedom)} degrees of freedom; near 1 when the instrument does what is said of it`,
    },
  ];
}

function readingTable({ readings }: TaperFit, units: ShownUnits): TableBlock {
  return {
    type: "table",
    caption: "Readings and their distance from the line, on diameter, at 20 °C",
    columns: [
      { title: "line", align: "right" },
      { title: "station", unit: units.sizeSymbol, align: "right" },
      { title: "angle", align: "right" },
      { title: "diameter", unit: units.sizeSymbol, align: "right" },
      { title: "off the line", unit: units.smallSymbol, align: "right" },
    ],
    rows: readings.slice(0, mostRows).map(({ line, station, angle, diameter, residual }) => ({
      cells: [
        String(line),
        stationText(station, units),
        angleText(angle),
        formatFixed(diameter.in(units.size), units.decimals),
        formatFixed(residual.in(units.small), units.small === "thou" ? 2 : 1),
      ],
    })),
    showRows: 24,
  };
}
