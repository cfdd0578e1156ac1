import { formatNumber } from "../../quantity/index.js";
import type { JournalCleanUps, Recentring, TaperCleanUp } from "../../shaft/index.js";
import type { Block, FigureBlock, Presentation } from "../blocks.js";
import { formatMeasured } from "../format-measured.js";
import { alarm, seriesLook } from "../palette.js";
import { angleText } from "./angle-text.js";
import { chanceText } from "./chance-text.js";
import { onScale } from "./plot-parts.js";
import { plotText } from "./plot-text.js";
import {
  type ShownUnits,
  shownUnits,
  sizeMeasured,
  sizeText,
  smallMeasured,
  smallText,
  stationText,
} from "./shown-units.js";

/** Every worn journal: what it cleans up to, the size that suggests itself, and station by station what is left. */
export function presentJournalCleanUps(found: JournalCleanUps): Presentation {
  const units = shownUnits(found.unitSystem);
  const { journals, wanted } = found;
  const open = [...new Set(journals.flatMap(({ cleanUp }) => [cleanUp.next, ...cleanUp.warnings]))].filter(
    Boolean,
  );
  return Object.freeze<Presentation>({
    title: "What each journal cleans up to",
    blocks: [
      {
        type: "table",
        caption: "Diameters ± U (95 %)",
        columns: [
          { title: "journal", align: "left" },

          { title: "worn evenly", align: "right" },
          { title: "own centres", align: "right" },
          { title: "all on one side", align: "right" },
          { title: "suggested", align: "right" },
          { title: "cleans up", align: "right" },
        ],
        rows: journals.map(({ name, cleanUp, suggested, chance }) => ({
          cells: [
            `${name}, ${stationText(cleanUp.from, units)} to ${stationText(cleanUp.to, units)} ${units.sizeSymbol}`,

            sizeMeasured(cleanUp.most, units),
            cleanUp.about[0] === undefined ? "not read" : sizeMeasured(cleanUp.about[0].diameter, units),
            sizeMeasured(cleanUp.least, units),
            sizeText(suggested, units),
            chanceText(chance),
          ],
        })),
      },
      {
        type: "text",
        text: `Planned on its own centres where the indicator was read (a bent shaft there costs more than wear alone), else on all wear on one side. Suggested: the largest size in steps of ${smallText(found.step, units)} that cleans up with ${chanceText(wanted)} or more.`,
      },
      leftFigure(found, units),
      ...open.map((text): Block => ({ type: "text", text })),
    ],
  });
}

/** What each station leaves, a panel a journal, with the size suggested as a line. */
function leftFigure({ journals }: JournalCleanUps, units: ShownUnits): FigureBlock {
  const { color, symbol } = seriesLook(0);
  const gap = 0.1;
  const share = (1 - gap * (journals.length - 1)) / journals.length;
  const axes: Record<string, unknown> = {};
  const shapes: unknown[] = [];
  const data = journals.map(({ cleanUp, suggested, name }, i) => {
    const n = i === 0 ? "" : String(i + 1);
    const from = i * (share + gap);
    axes[`xaxis${n}`] = {
      title: { text: plotText(`${name}: station [${units.sizeSymbol}]`) },
      domain: [from, from + share],
      anchor: `y${n}`,
    };
    axes[`yaxis${n}`] = {
      ...(i === 0
        ? { title: { text: `left, on diameter [${units.sizeSymbol}]` } }
        : { matches: "y", showticklabels: false }),
      anchor: `x${n}`,
      tickformat: `.${units.decimals}f`,
    };
    shapes.push({
      type: "line",
      xref: `x${n} domain`,
      yref: `y${n}`,
      x0: 0,
      x1: 1,
      y0: onScale(suggested, units.size),
      y1: onScale(suggested, units.size),
      line: { color: alarm, width: 1.5, dash: "dash" },
    });
    return {
      type: "scatter",
      mode: "markers",
      name: plotText(name),
      x: cleanUp.stations.map(({ station }) => onScale(station, units.size)),
      y: cleanUp.stations.map(({ leaves }) => onScale(leaves, units.size)),
      error_y: {
        type: "data",
        array: cleanUp.stations.map(
          ({ standardUncertainty }) => 2 * onScale(standardUncertainty, units.size),
        ),
        thickness: 1,
        width: 3,
      },
      marker: { color, symbol, size: 7 },
      xaxis: `x${n}`,
      yaxis: `y${n}`,
      hovertemplate: `%{x} ${units.sizeSymbol}: %{y:.${units.decimals}f} ${units.sizeSymbol}<extra></extra>`,
    };
  });
  return {
    type: "figure",
    alt: `What each station of ${journals.map(({ name }) => name).join(" and ")} leaves about the axis planned on, with the size suggested.`,
    caption:
      "Points: what each station leaves, ± 2 u. Dashed: the size suggested; every station must lie above it.",
    figure: {
      data,
      layout: {
        title: { text: "What is left, station by station" },
        width: 720,
        height: 340,
        margin: { l: 80, r: 24, t: 56, b: 56 },
        showlegend: false,
        ...axes,
        shapes,
      },
    },
  };
}

/** Whether moving the centres pays. */
export function presentRecentring(found: Recentring): Presentation {
  const units = shownUnits(found.unitSystem);
  const { journals, kept, holes, gain, cost } = found;
  return Object.freeze<Presentation>({
    title: "About other centres",
    blocks: [
      {
        type: "text",
        text: `With the centre holes moved the journals keep ${smallText(gain, units)} more of their diameters in sum${kept.length === 0 ? "." : `, and what is not turned runs out by up to ${smallText(cost, units)} more (total indicator reading).`}`,
      },
      {
        type: "table",
        caption: "± U (95 %)",
        columns: [
          { title: "surface", align: "left" },
          { title: "what", align: "left" },
          { title: "own centres", align: "right" },
          { title: "centres moved", align: "right" },
        ],
        rows: [
          ...journals.map(({ name, own, moved }) => ({
            cells: [name, "cleans up to", sizeMeasured(own, units), sizeMeasured(moved, units)],
          })),
          ...kept.map(({ name, own, moved, readAt }) => ({
            cells: [
              name,
              `runs out (TIR), by the axis at ${stationText(readAt, units)} ${units.sizeSymbol}`,
              smallMeasured(own, units),
              smallMeasured(moved, units),
            ],
          })),
        ],
      },
      {
        type: "facts",
        facts: holes.map(({ station, by, towards }) => ({
          label: `axis at ${stationText(station, units)} ${units.sizeSymbol}`,
          value: `${smallText(by, units)} towards mark ${angleText(towards.as("degree"))}`.replace(
            /(\d+)\.\d+°$/,
            "$1°",
          ),
          note: "on radius, to be moved there",
        })),
      },
    ],
  });
}

/** What a taper costs to make true. */
export function presentTaperCleanUp(found: TaperCleanUp): Presentation {
  const units = shownUnits(found.unitSystem);
  const { stock, shift, room, left, ofRunOut, decidedAt } = found;
  return Object.freeze<Presentation>({
    title: "Making the taper true",
    blocks: [
      ...(left === undefined
        ? []
        : [
            {
              type: "verdict" as const,
              outcome:
                left.value.si > 2 * left.standardUncertainty.si
                  ? ("yes" as const)
                  : left.value.si < -2 * left.standardUncertainty.si
                    ? ("no" as const)
                    : ("cannot tell yet" as const),
              text:
                left.value.si > 2 * left.standardUncertainty.si
                  ? "the hub still has room to draw up"
                  : left.value.si < -2 * left.standardUncertainty.si
                    ? "the hub would run out of taper before it is tight"
                    : "whether the hub keeps room to draw up cannot be told yet",
              because: `${sizeMeasured(left, units)} of ${sizeMeasured(room!, units)} is left.`,
            },
          ]),
      {
        type: "facts",
        facts: [
          {
            label: "to come off",
            value: formatMeasured(stock, { unit: units.small }),
            note: `on DIAMETER, the same all along; the lowest reading is at ${stationText(decidedAt, units)} ${units.sizeSymbol}${ofRunOut === undefined ? "; run-out not counted" : `; ${smallText(ofRunOut, units)} of it for the run-out`}`,
          },
          {
            label: "hub goes farther up by",
            value: formatMeasured(shift, { unit: units.size }),
            note: `${formatNumber(shift.value.si / Math.max(stock.value.si, 1e-12), 3)} times that, by the taper on diameter`,
          },
        ],
      },
    ],
  });
}
