import { formatFixed, formatNumber, type Length } from "../../quantity/index.js";
import type { DrawnStretch, ShaftDrawing } from "../../shaft/index.js";
import type { Presentation } from "../blocks.js";
import type { Drawing, Point, Shape } from "../drawing/drawing.js";
import { type ShownUnits, shownUnits, sizeText } from "./shown-units.js";

/** The sheet [px]: a shaft lies along it, lengths drawn shorter the longer they are, or a short seat could not be read. */
const left = 40;
const wide = 760;
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
          "Neither lengths nor steps to scale. Numbers in circles lead to the table; lines as ISO 128, dimensions as ISO 129, a thread's root as a thin line as ISO 6410 draws it.",
      },
      {
        type: "table",
        caption: `All sizes in ${inWords(units)}, diameters at 20 °C.`,
        columns: [
          { title: "stretch", align: "left" },
          { title: "length", align: "right" },
          { title: "diameter", align: "right" },
          { title: "limits", align: "left" },
          { title: "Ra at most", align: "right" },
          { title: "", align: "left" },
        ],
        stacked: true,
        rows: shaft.stretches.map((stretch, i) => ({
          cells: [
            `${i + 1} ${stretch.name}`,
            lengthText(stretch.length, units),
            stretch.endDiameter === undefined
              ? size(stretch.diameter, units)
              : `${size(stretch.diameter, units)} to ${size(stretch.endDiameter, units)}`,
            stretch.limits === undefined
              ? ""
              : `${size(stretch.limits.smallest, units)} to ${size(stretch.limits.largest, units)} (${stretch.tolerance})`,
            stretch.roughness === undefined ? "" : raText(stretch.roughness, units),
            remarks(stretch, units),
          ],
        })),
      },
      ...shaft.notes.map((text) => ({ type: "text" as const, text })),
    ],
  });
}

function drawingOf(shaft: ShaftDrawing, units: ShownUnits): Drawing {
  const weights = shaft.stretches.map(({ length }) => Math.max(Math.sqrt(length.si / shaft.length.si), 0.28));
  const sum = weights.reduce((a, b) => a + b, 0);
  const half = heights(shaft);
  const shapes: Shape[] = [];
  let x = left;
  shaft.stretches.forEach((stretch, i) => {
    const to = x + (wide * weights[i]!) / sum;
    const [a, b] = [half(stretch.diameter), half(stretch.endDiameter ?? stretch.diameter)];
    const [before, after] = [shaft.stretches[i - 1], shaft.stretches[i + 1]];
    const stepLeft = before === undefined ? 0 : half(before.endDiameter ?? before.diameter) - a;
    const stepRight = after === undefined ? 0 : half(after.diameter) - b;
    const round = stretch.fillet === undefined ? () => 0 : (step: number) => Math.max(0, Math.min(step, 6));
    const upper = [...fillet([x, a], round(stepLeft), 1), ...fillet([to, b], round(stepRight), -1).reverse()];
    const corners: Point[] = [
      ...upper.map(([along, up]): Point => [along, axis - up]),
      ...upper.map(([along, up]): Point => [along, axis + up]).reverse(),
    ];
    shapes.push({ type: "polygon", points: corners, pen: "outline", fill: "metal" });
    shapes.push(...threadLines(stretch, [x, to], a), ...keyseatSeen(stretch, [x, to], (a + b) / 2));
    const middle = (x + to) / 2;
    // Neighbours stand at two heights, so that no text runs into the next.
    const up = axis - tallest - 34 - (i % 2) * 62;
    const lines = [
      stretch.thread !== undefined
        ? stretch.thread.name
        : stretch.endDiameter === undefined
          ? `⌀ ${size(stretch.diameter, units)}`
          : taperText(stretch.taper!),
      ...(stretch.limits === undefined
        ? []
        : [`${size(stretch.limits.smallest, units)} – ${size(stretch.limits.largest, units)}`]),
      ...(stretch.endDiameter === undefined
        ? []
        : [`⌀ ${size(stretch.diameter, units)} – ${size(stretch.endDiameter, units)}`]),
      ...(stretch.fillet === undefined ? [] : [`fillets R ${lengthText(stretch.fillet, units)}`]),
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
      { type: "circle", centre: [middle, axis + 0.6 * a], radius: 10, pen: "thin", fill: "none" },
      { type: "text", at: [middle, axis + 0.6 * a + 5], text: String(i + 1), anchor: "middle" },
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
    ...shaft.stretches.flatMap((stretch, i) => keyseatSection(stretch, i, shaft, units)),
  );
  const sections = keyseats(shaft) > 0;
  return Object.freeze({
    width: wide + 2 * left,
    height: sections ? sectionHeight(shaft) + 80 : 450,
    shapes,
  });
}

/** Half the height [px] by diameter: in order of size, a step of a few thousandths still wide enough to be seen. */
function heights({ stretches }: ShaftDrawing): (diameter: Length) => number {
  const sizes = [
    ...new Set(
      stretches.flatMap(({ diameter, endDiameter }) =>
        endDiameter === undefined ? [diameter.si] : [diameter.si, endDiameter.si],
      ),
    ),
  ].sort((p, q) => q - p);
  const drops = sizes.map((size, i) =>
    i === 0 ? 0 : 5 + (0.5 * tallest * (sizes[i - 1]! - size)) / sizes[0]!,
  );
  const all = drops.reduce((sum, drop) => sum + drop, 0);
  const shrunk = Math.min(1, (0.55 * tallest) / all);
  const found = new Map<number, number>();
  let height = tallest;
  sizes.forEach((size, i) => {
    height -= drops[i]! * (all === 0 ? 1 : shrunk);
    found.set(size, height);
  });
  return (diameter) => found.get(diameter.si)!;
}

/** From the shoulder down to the stretch at its left (`way` 1) or right (−1) end, as [along, up from the axis]. */
function fillet([x, height]: Point, radius: number, way: 1 | -1): Point[] {
  if (radius === 0) return [[x, height]];
  return Array.from({ length: 7 }, (_, i): Point => {
    const turn = (i / 6) * (Math.PI / 2);
    return [x + way * radius * (1 - Math.cos(turn)), height + radius * (1 - Math.sin(turn))];
  });
}

function threadLines({ thread, diameter }: DrawnStretch, [from, to]: Point, half: number): Shape[] {
  if (thread === undefined) return [];
  // Roots of a fine thread still keep off the outline.
  const root = half - Math.max(4, half * (1 - thread.rootDiameter.si / diameter.si));
  return [-root, root].map((up) => ({
    type: "line",
    from: [from, axis + up],
    to: [to, axis + up],
    pen: "thin",
  }));
}

/** The keyseat as seen from above, its ends round as an end mill leaves them. */
function keyseatSeen(
  { keyseat, length, keyedDiameter }: ShaftDrawing["stretches"][number],
  [from, to]: Point,
  half: number,
): Shape[] {
  if (keyseat === undefined || keyedDiameter === undefined) return [];
  const scale = (to - from) / length.si;
  const wide = half * (keyseat.width.si / keyedDiameter.si);
  // Lengths are shortened on the sheet: a keyseat drawn no longer than it is wide would be read as a cross hole.
  const reach = Math.min(Math.max((keyseat.length.si * scale) / 2, 2.5 * wide), (to - from) / 2);
  const middle = Math.min(Math.max(from + keyseat.middle.si * scale, from + reach), to - reach);
  const ends = [middle - reach, middle + reach];
  const inset = Math.min(wide, (ends[1]! - ends[0]!) / 2);
  const cap = (x: number, way: number): Point[] =>
    Array.from({ length: 9 }, (_, i): Point => {
      const turn = (i / 8 - 0.5) * Math.PI * way;
      return [x + way * inset * Math.cos(turn), axis + way * wide * Math.sin(turn) * way];
    });
  const points = [...cap(ends[1]! - inset, 1), ...cap(ends[0]! + inset, -1)];
  return [{ type: "polygon", points, pen: "outline", fill: "shade" }];
}

function keyseats({ stretches }: ShaftDrawing): number {
  return stretches.filter(({ keyseat }) => keyseat !== undefined).length;
}

/** One section lies beside the title block, more of them below it. */
function sectionHeight(shaft: ShaftDrawing): number {
  return keyseats(shaft) > 1 ? 540 : 460;
}

/** The shaft cut across at the keyseat, hatched, with its width and what a micrometer reads from floor to far side. */
function keyseatSection(
  { keyseat, keyedDiameter, floorToFarSide }: ShaftDrawing["stretches"][number],
  index: number,
  shaft: ShaftDrawing,
  units: ShownUnits,
): Shape[] {
  if (keyseat === undefined || keyedDiameter === undefined || floorToFarSide === undefined) return [];
  const diameter = keyedDiameter;
  const before = shaft.stretches.slice(0, index).filter((one) => one.keyseat !== undefined).length;
  const [x, y, radius] = [left + 110 + before * 230, sectionHeight(shaft), 50];
  const half = (radius * keyseat.width.si) / diameter.si;
  const floor = y + radius - (2 * radius * floorToFarSide.si) / diameter.si;
  const aside = Math.asin(half / radius);
  const around = Array.from({ length: 73 }, (_, i): Point => {
    const turn = aside + ((2 * Math.PI - 2 * aside) * i) / 72;
    return [x + radius * Math.sin(turn), y - radius * Math.cos(turn)];
  });
  const top = y - radius * Math.cos(aside);
  return [
    {
      type: "polygon",
      points: [...around, [x - half, floor], [x + half, floor]],
      pen: "outline",
      fill: "hatch",
    },
    { type: "line", from: [x - radius - 10, y], to: [x + radius + 10, y], pen: "centre" },
    { type: "line", from: [x, y - radius - 8], to: [x, y + radius + 10], pen: "centre" },
    {
      type: "dimension",
      from: [x + half, top],
      to: [x - half, top],
      offset: 16,
      text: lengthText(keyseat.width, units),
    },
    {
      type: "dimension",
      from: [x, y + radius],
      to: [x, floor],
      offset: radius + 26,
      text: lengthText(floorToFarSide, units),
    },
    {
      type: "text",
      at: [x, y + radius + 26],
      text: `keyseat in ${index + 1}, ${lengthText(keyseat.length, units)} long`,
      size: "small",
      anchor: "middle",
    },
  ];
}

function remarks(stretch: ShaftDrawing["stretches"][number], units: ShownUnits): string {
  const { taper, thread, keyseat, fillet: radius, floorToFarSide, remark } = stretch;
  return [
    ...(taper === undefined ? [] : [taperText(taper)]),
    ...(thread === undefined ? [] : [`thread ${thread.name}`]),
    ...(keyseat === undefined
      ? []
      : [
          `keyseat ${lengthText(keyseat.width, units)} wide, ${lengthText(keyseat.length, units)} long, its middle ${lengthText(keyseat.middle, units)} from the left; floor to far side ${lengthText(floorToFarSide!, units)}${keyseat.floor === undefined ? "" : ` there, floor ${keyseat.floor}`}`,
        ]),
    ...(radius === undefined ? [] : [`fillets R ${lengthText(radius, units)}`]),
    ...(remark === undefined ? [] : [remark]),
  ].join("; ");
}

function titleBlock(shaft: ShaftDrawing, units: ShownUnits): Shape[] {
  const [x, y, width, height] = [left + wide - 430, 374, 430, 66];
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
