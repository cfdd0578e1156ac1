import { formatFixed, formatNumber, type Length } from "../../quantity/index.js";
import type { ShaftDrawing } from "../../shaft/index.js";
import type { Presentation } from "../blocks.js";
import type { Drawing, Point, Shape } from "../drawing/drawing.js";
import { type ShownUnits, shownUnits, sizeText } from "./shown-units.js";

/** The sheet [px]: a shaft lies along it, lengths drawn shorter the longer they are, or a short seat could not be read. */
const left = 40;
const wide = 1000;
const axis = 225;
const tallest = 62;

/** A shaft to be made: its drawing with sizes, limits, finish and title block, and the same figures as a table. */
export function presentShaftDrawing(shaft: ShaftDrawing): Presentation {
  const units = shownUnits(shaft.unitSystem);
  return Object.freeze<Presentation>({
    title: `Drawing: ${shaft.title}`,
    blocks: [
      {
        type: "drawing",
        drawing: drawingOf(shaft, units),
        alt: `Shaft, ${lengthText(shaft.length, units)} long, from left to right: ${shaft.stretches.map(({ name, diameter }) => `${name} of ${sizeText(diameter, units)}`).join(", ")}.`,
        caption:
          "Lengths not to scale. Numbers in circles lead to the table; centre line, outline and dimensions as ISO 128 and ISO 129 draw them.",
      },
      {
        type: "table",
        caption: `All sizes in ${inWords(units)}, diameters at 20 °C.`,
        columns: [
          { title: "no.", align: "right" },
          { title: "stretch", align: "left" },
          { title: "length", align: "right" },
          { title: "diameter", align: "right" },
          { title: "limits", align: "left" },
          { title: "Ra at most", align: "right" },
          { title: "", align: "left" },
        ],
        rows: shaft.stretches.map((stretch, i) => ({
          cells: [
            String(i + 1),
            stretch.name,
            lengthText(stretch.length, units),
            stretch.endDiameter === undefined
              ? size(stretch.diameter, units)
              : `${size(stretch.diameter, units)} to ${size(stretch.endDiameter, units)}`,
            stretch.limits === undefined
              ? ""
              : `${size(stretch.limits.smallest, units)} to ${size(stretch.limits.largest, units)} (${stretch.tolerance})`,
            stretch.roughness === undefined ? "" : raText(stretch.roughness, units),
            [stretch.taper === undefined ? "" : taperText(stretch.taper), stretch.remark ?? ""]
              .filter((word) => word !== "")
              .join("; "),
          ],
        })),
      },
      ...shaft.notes.map((text) => ({ type: "text" as const, text })),
    ],
  });
}

function drawingOf(shaft: ShaftDrawing, units: ShownUnits): Drawing {
  const largest = Math.max(
    ...shaft.stretches.map(({ diameter, endDiameter }) => Math.max(diameter.si, endDiameter?.si ?? 0)),
  );
  const weights = shaft.stretches.map(({ length }) => Math.max(Math.sqrt(length.si / shaft.length.si), 0.28));
  const sum = weights.reduce((a, b) => a + b, 0);
  // Steps of a few thousandths are drawn larger than they are, so that they can be seen at all.
  const half = (diameter: Length): number =>
    tallest * (1 - 0.5 * Math.min(1, 6 * (1 - diameter.si / largest)));
  const shapes: Shape[] = [];
  let x = left;
  shaft.stretches.forEach((stretch, i) => {
    const to = x + (wide * weights[i]!) / sum;
    const [a, b] = [half(stretch.diameter), half(stretch.endDiameter ?? stretch.diameter)];
    const corners: Point[] = [
      [x, axis - a],
      [to, axis - b],
      [to, axis + b],
      [x, axis + a],
    ];
    shapes.push({ type: "polygon", points: corners, pen: "outline", fill: "metal" });
    const middle = (x + to) / 2;
    // Neighbours stand at two heights, so that no text runs into the next.
    const up = axis - tallest - 34 - (i % 2) * 62;
    const lines = [
      stretch.endDiameter === undefined ? `⌀ ${size(stretch.diameter, units)}` : taperText(stretch.taper!),
      ...(stretch.limits === undefined
        ? []
        : [`${size(stretch.limits.smallest, units)} – ${size(stretch.limits.largest, units)}`]),
      ...(stretch.endDiameter === undefined
        ? []
        : [`⌀ ${size(stretch.diameter, units)} – ${size(stretch.endDiameter, units)}`]),
      ...(stretch.roughness === undefined ? [] : [`Ra ${raText(stretch.roughness, units)}`]),
    ];
    shapes.push({ type: "line", from: [middle, up + 6], to: [middle, axis - (a + b) / 2], pen: "thin" });
    lines.forEach((text, line) => {
      shapes.push({
        type: "text",
        at: [middle, up - 15 * (lines.length - 1 - line)],
        text,
        size: "small",
        anchor: "middle",
      });
    });
    shapes.push(
      { type: "circle", centre: [middle, axis], radius: 11, pen: "thin", fill: "none" },
      { type: "text", at: [middle, axis + 5], text: String(i + 1), anchor: "middle" },
      {
        type: "dimension",
        from: [to, axis + tallest],
        to: [x, axis + tallest],
        offset: -34,
        text: lengthText(stretch.length, units),
      },
    );
    x = to;
  });
  shapes.push(
    { type: "line", from: [left - 20, axis], to: [left + wide + 20, axis], pen: "centre" },
    {
      type: "dimension",
      from: [left + wide, axis + tallest],
      to: [left, axis + tallest],
      offset: -72,
      text: lengthText(shaft.length, units),
    },
    ...titleBlock(shaft, units),
  );
  return Object.freeze({ width: wide + 2 * left, height: 450, shapes });
}

function titleBlock(shaft: ShaftDrawing, units: ShownUnits): Shape[] {
  const [x, y, width, height] = [left + wide - 460, 374, 460, 66];
  const box: Point[] = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
  return [
    { type: "polygon", points: box, pen: "outline", fill: "none" },
    { type: "line", from: [x, y + 34], to: [x + width, y + 34], pen: "thin" },
    { type: "text", at: [x + 10, y + 23], text: shaft.title, size: "large" },
    {
      type: "text",
      at: [x + 10, y + 54],
      text: `${shaft.material} · sizes in ${inWords(units)} · edges broken · lengths not to scale`,
      size: "small",
    },
  ];
}

function size(length: Length, { size: unit, decimals }: ShownUnits): string {
  return formatFixed(length.in(unit), decimals);
}

function lengthText(length: Length, { size: unit, system }: ShownUnits): string {
  return formatNumber(Number(length.in(unit).toFixed(system === "inch" ? 3 : 1)), 6);
}

function inWords({ system }: ShownUnits): string {
  return system === "inch" ? "inches" : "millimetres";
}

function taperText(taper: number): string {
  return `taper 1:${formatNumber(1 / taper, 4)}`;
}

function raText(length: Length, { system }: ShownUnits): string {
  const micrometres = length.in("micrometre");
  return system === "metric"
    ? `${formatNumber(micrometres, 2)} µm`
    : `${formatNumber(micrometres / 0.0254, 2)} µin`;
}
