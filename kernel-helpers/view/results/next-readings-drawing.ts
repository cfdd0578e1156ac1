import type { NextReadings, OutlinePoint } from "../../survey/next-readings-types.js";
import type { DrawingBlock } from "../blocks.js";
import type { Point, Shape } from "../drawing/drawing.js";
import { type ShownUnits, stationText } from "./shown-units.js";

/** So wide that a telephone shows it whole, its letters still to be read. */
const width = 430;
const left = 30;
const right = 400;
const centre = 134;
/** Half the height at which the largest diameter is drawn [px]. */
const tallest = 44;
/** The least diameter is drawn so much lower at least, or in its true ratio where that shows by itself. */
const shownStep = 0.25;
const topOfMarks = 26;

/**
 * The shaft as surveyed, from the side, with an arrow at each place to read next, numbered as in the list. Differences
 * of diameter are drawn larger than they are. Nothing where there is no outline or nothing to read.
 */
export function nextReadingsDrawing(found: NextReadings, units: ShownUnits): DrawingBlock[] {
  const { outline = [], readings } = found;
  if (outline.length < 2 || readings.length === 0) return [];
  const stations = [...outline, ...readings].map(({ station }) => station.si);
  const [first, last] = [Math.min(...stations), Math.max(...stations)];
  const x = (si: number): number => left + ((right - left) * (si - first)) / (last - first);
  const half = halfHeight(outline);
  const top = outline.map(({ station, diameter }): Point => [x(station.si), centre - half(diameter.si)]);
  const bottom = top.map(([px, py]): Point => [px, 2 * centre - py]).reverse();
  const places = readings.map((reading, i) => ({ x: x(reading.station.si), number: i + 1 }));
  const marks = spread(places);
  const ends = [outline[0]!, outline[outline.length - 1]!];
  return [
    {
      type: "drawing",
      drawing: {
        width,
        height: centre + tallest + 44,
        shapes: [
          { type: "polygon", points: [...top, ...bottom], pen: "outline", fill: "metal" },
          { type: "line", from: [left - 14, centre], to: [right + 14, centre], pen: "centre" },
          ...marks.flatMap(({ x: at, number, row }): Shape[] => [
            {
              type: "arrow",
              from: [at, topOfMarks + 16 * row + 6],
              to: [at, centre - tallest - 2],
              pen: "force",
            },
            {
              type: "text",
              at: [at, topOfMarks + 16 * row],
              text: `${number}`,
              anchor: "middle",
              ink: "force",
            },
          ]),
          ...ends.map(
            ({ station }): Shape => ({
              type: "text",
              at: [x(station.si), centre + tallest + 24],
              text: `${stationText(station, units)} ${units.sizeSymbol}`,
              anchor: "middle",
            }),
          ),
        ],
      },
      alt: `The shaft from the side from station ${stationText(ends[0]!.station, units)} to ${stationText(ends[1]!.station, units)}, with an arrow at each place to read next: ${readings.map(({ station }, i) => `${i + 1} at ${stationText(station, units)}`).join(", ")}.`,
      caption: "Where to read next; differences of diameter are drawn larger than they are.",
    },
  ];
}

function halfHeight(outline: readonly OutlinePoint[]): (diameter: number) => number {
  const sizes = outline.map(({ diameter }) => diameter.si);
  const [least, most] = [Math.min(...sizes), Math.max(...sizes)];
  const step = Math.max(shownStep, 1 - least / most);
  return (diameter) => tallest * (most === least ? 1 : 1 - (step * (most - diameter)) / (most - least));
}

interface Mark {
  readonly x: number;
  readonly number: number;
  /** How many lines of text its number is moved down, so that it stands clear of its neighbour's. */
  readonly row: number;
}

function spread(places: readonly { readonly x: number; readonly number: number }[]): Mark[] {
  const marks: Mark[] = [];
  for (const place of [...places].sort((a, b) => a.x - b.x)) {
    const before = marks[marks.length - 1];
    const close = before !== undefined && place.x - before.x < 16;
    marks.push({ ...place, row: close ? (before.row + 1) % 3 : 0 });
  }
  return marks;
}
