import { formatFixed, formatFixedLimit, formatNumber } from "../../quantity/index.js";
import type { IndicatorSchedule } from "../../shaft/index.js";
import type { Presentation } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { indicatorDrawing } from "./indicator-drawing.js";
import { nominalText, shownUnits, smallAtMost, stationText } from "./shown-units.js";

/** What an indicator is to show at each travel while a slide is set, and what its lean spoils. */
export function presentIndicatorSchedule(schedule: IndicatorSchedule): Presentation {
  const { against, rows, lean, tooMuch, overSeat, seat, allowed, mostLean } = schedule;
  const units = shownUnits(schedule.unitSystem);
  const spoils = `${formatFixed(overSeat.in(units.small), units.small === "thou" ? 2 : 1)} ${units.smallSymbol}`;
  const may = smallAtMost(allowed, units);
  const within = overSeat.si <= allowed.si;
  const most =
    mostLean === undefined
      ? "any lean up to 60°"
      : `${formatFixedLimit(mostLean.in("degree"), 1, "at most")}°`;
  const bar = against === "parallel bar";
  return Object.freeze<Presentation>({
    title: `Indicator schedule, against ${bar ? "a parallel bar" : "the flank"}`,
    blocks: [
      {
        type: "verdict",
        outcome: within ? "yes" : "no",
        text: within
          ? `An indicator that leans by ${degrees(lean.in("degree"))} at most will do.`
          : `An indicator that may lean by ${degrees(lean.in("degree"))} spoils the taper.`,
        because: `It shows ${formatNumber(100 * tooMuch, 2)} % too much, and a slide set by it leaves the taper ${spoils} too small on diameter from end to end of ${nominalText(seat, units)}; ${may} is allowed, and the setting's own error comes on top. That alone would be used up by ${most}: set it with a square.`,
      },
      {
        type: "drawing",
        drawing: indicatorDrawing(against),
        alt: bar
          ? "A parallel bar between centres; an indicator on the slide moves away from it along the flank's direction, and its rise is half the change of diameter."
          : "A taper between centres; an indicator on the carriage runs along the axis, and its rise is half the change of diameter.",
        caption: "Taper and lean drawn larger than they are.",
      },
      {
        type: "table",
        caption: "What it is to show, on radius, ± U (95 %) of the taper",
        columns: [
          { title: "travel", unit: units.sizeSymbol, align: "right" },
          { title: "along the axis, by the carriage", unit: units.sizeSymbol, align: "right" },
          ...(bar
            ? [
                {
                  title: "along the flank, by the slide's dial",
                  unit: units.sizeSymbol,
                  align: "right" as const,
                },
              ]
            : []),
          {
            title: `along the axis, leaning by ${degrees(lean.in("degree"))}`,
            unit: units.sizeSymbol,
            align: "right",
          },
        ],
        rows: rows.map(({ travel, alongAxis, alongSlide, leaning }) => ({
          cells: [
            stationText(travel, units),
            withoutUnit(plusMinus(alongAxis, { unit: units.size })),
            ...(alongSlide === undefined ? [] : [withoutUnit(plusMinus(alongSlide, { unit: units.size }))]),
            formatFixed(leaning.in(units.size), units.decimals + 1),
          ],
        })),
        stacked: true,
      },
    ],
  });
}

function degrees(value: number): string {
  return `${formatNumber(value, 2)}°`;
}

/** The column's head names the unit. */
function withoutUnit(text: string): string {
  return text.replace(/ (in|mm)$/, "");
}
