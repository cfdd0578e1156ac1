import type { Length, Measured } from "../../quantity/index.js";
import type { SurveyReport, SurveyReportRow } from "../../survey/survey-report-types.js";
import type { Presentation } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { angleText } from "./angle-text.js";
import { chanceText } from "./chance-text.js";
import { percentText } from "./percent-text.js";
import { scaled } from "./scaled.js";
import { placeText, type ShownUnits, shownUnits, stationText } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** A survey in one table, as a measurement report has it: result, interval, what it hangs on, what to read next. */
export function presentSurveyReport(report: SurveyReport): Presentation {
  const units = shownUnits(report.unitSystem);
  return Object.freeze<Presentation>({
    title: `Measurement report: ${report.title}`,
    blocks: [
      { type: "text", text: `${report.how.join(" ")} Readings as written down: ${report.file}.` },
      {
        type: "table",
        caption:
          "Every result with its 95 % interval, what its uncertainty mostly comes of, and what to do next",
        columns: [
          { title: "result", align: "left" },
          { title: "value, 95 %", align: "left" },
          { title: "found from", align: "left" },
          { title: "uncertain mostly by", align: "left" },
          { title: "do next", align: "left" },
        ],
        rows: report.rows.map((row) => ({
          // A value is not to be broken over two lines.
          cells: [
            row.what,
            valueText(row, units).replaceAll(" ", "\u00a0"),
            row.from,
            mostlyText(row),
            nextText(row, units),
          ],
        })),
        stacked: true,
      },
      ...warningBlocks(report.warnings),
    ],
  });
}

function valueText({ about, value, between }: SurveyReportRow, units: ShownUnits): string {
  if (between !== undefined)
    return `${placeText(between.low, units)} to ${placeText(between.high, units)} ${units.sizeSymbol}`;
  if (about === "taper") {
    const taper = value as Measured<number>;
    return units.system === "inch"
      ? `${plusMinus(scaled(taper, 12))} in per foot`
      : `${plusMinus(scaled(taper, 100))} mm per 100 mm`;
  }
  return plusMinus(value as Measured<Length>, { unit: about === "depth" ? units.small : units.size });
}

function mostlyText({ mostly, share }: SurveyReportRow): string {
  return share > 0.9995 ? mostly : `${mostly} (${percentText(share)} of the variance)`;
}

function nextText({ next, instead }: SurveyReportRow, units: ShownUnits): string {
  if (next === undefined) return instead;
  const angles = next.angles.map(angleText).filter((text) => text !== "");
  const at = angles.length === 0 ? "" : ` at ${angles.join(" and ")}`;
  return `read station ${stationText(next.station, units)} ${units.sizeSymbol}${at}: takes ${chanceText(next.gain)} of the uncertainty away`;
}
