import type { Length } from "../../quantity/index.js";
import type { DrawnStretch, ShaftDrawing } from "../../shaft/index.js";
import type { Drawing, Point, Shape } from "../drawing/drawing.js";
import { inWords, lengthText, limitsText, raText, size, taperText } from "./shaft-drawing-words.js";
import type { ShownUnits } from "./shown-units.js";

/** How a shaft lies on its sheet [px]: lengths are drawn shorter the longer they are, or a short seat could not be read. */
interface Sheet {
  readonly left: number;
  readonly wide: number;
  readonly axis: number;
  /** Sizes stand over their stretches; without, only the numbers that lead to the table. */
  readonly withSizes: boolean;
  /** Upper left corner and width of the title block, and whether its second line is broken. */
  readonly title: { readonly x: number; readonly y: number; readonly width: number; readonly lines: 1 | 2 };
  /** The middle of the first section, how far on the next lies, and how far down sections move if there is more than one. */
  readonly section: { readonly x: number; readonly y: number; readonly next: number; readonly move: number };
}

const tallest = 62;

const sheets: Readonly<Record<"wide" | "narrow", Sheet>> = {
  wide: {
    left: 40,
    wide: 760,
    axis: 225,
    withSizes: true,
    title: { x: 370, y: 374, width: 430, lines: 1 },
    section: { x: 150, y: 460, next: 230, move: 80 },
  },
  // A telephone's: the title block below, the sizes in the table alone.
  narrow: {
    left: 24,
    wide: 316,
    axis: 80,
    withSizes: false,
    title: { x: 24, y: 228, width: 316, lines: 2 },
    section: { x: 90, y: 400, next: 160, move: 0 },
  },
};

/** The drawing of a shaft with its title block and a section at every keyseat; sizes over the stretches where the sheet is wide. */
export function shaftDrawingOf(shaft: ShaftDrawing, units: ShownUnits, on: keyof typeof sheets): Drawing {
  const sheet = sheets[on];
  const { left, wide, axis } = sheet;
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
    shapes.push(
      ...threadLines(stretch, [x, to], a, axis),
      ...keyseatSeen(stretch, [x, to], (a + b) / 2, axis),
    );
    const middle = (x + to) / 2;
    if (sheet.withSizes)
      shapes.push(...sizesOver(stretch, { middle, half: (a + b) / 2, axis, higher: i % 2 }, units));
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
    ...titleBlock(shaft, units, sheet),
    ...shaft.stretches.flatMap((stretch, i) => keyseatSection(stretch, i, shaft, units, sheet)),
  );
  const sections = keyseats(shaft) > 0;
  return Object.freeze({
    width: wide + 2 * left,
    height: sections ? sectionHeight(shaft, sheet) + 80 : sheet.title.y + 76,
    shapes,
  });
}

/** Size, limits, fillets and finish over the middle of a stretch. Neighbours stand at two heights, so that no text runs into the next. */
function sizesOver(
  stretch: ShaftDrawing["stretches"][number],
  at: { readonly middle: number; readonly half: number; readonly axis: number; readonly higher: number },
  units: ShownUnits,
): Shape[] {
  const { middle, half, axis, higher } = at;
  const up = axis - tallest - 34 - higher * 62;
  const lines = [
    stretch.thread !== undefined
      ? stretch.thread.name
      : stretch.endDiameter === undefined
        ? `⌀ ${size(stretch.diameter, units)}`
        : taperText(stretch.taper!),
    ...(stretch.limits === undefined ? [] : [limitsText(stretch.limits, units, " – ")]),
    ...(stretch.endDiameter === undefined
      ? []
      : [`⌀ ${size(stretch.diameter, units)} – ${size(stretch.endDiameter, units)}`]),
    ...(stretch.fillet === undefined ? [] : [`fillets R ${lengthText(stretch.fillet, units)}`]),
    ...(stretch.roughness === undefined ? [] : [`Ra ${raText(stretch.roughness, units)}`]),
  ];
  return [
    { type: "line", from: [middle, up + 6], to: [middle, axis - half], pen: "thin" },
    ...lines.map(
      (text, line): Shape => ({
        type: "text",
        at: [middle, up - 15 * (lines.length - 1 - line)],
        text,
        size: "small",
        anchor: "middle",
      }),
    ),
  ];
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

function threadLines(
  { thread, diameter }: DrawnStretch,
  [from, to]: Point,
  half: number,
  axis: number,
): Shape[] {
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
  axis: number,
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
function sectionHeight(shaft: ShaftDrawing, { section }: Sheet): number {
  return section.y + (keyseats(shaft) > 1 ? section.move : 0);
}

/** The shaft cut across at the keyseat, hatched, with its width and what a micrometer reads from floor to far side. */
function keyseatSection(
  { keyseat, keyedDiameter, floorToFarSide }: ShaftDrawing["stretches"][number],
  index: number,
  shaft: ShaftDrawing,
  units: ShownUnits,
  sheet: Sheet,
): Shape[] {
  if (keyseat === undefined || keyedDiameter === undefined || floorToFarSide === undefined) return [];
  const diameter = keyedDiameter;
  const before = shaft.stretches.slice(0, index).filter((one) => one.keyseat !== undefined).length;
  const { section } = sheet;
  const [x, y, radius] = [section.x + before * section.next, sectionHeight(shaft, sheet), 50];
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

function titleBlock(
  shaft: ShaftDrawing,
  units: ShownUnits,
  { title: { x, y, width, lines } }: Sheet,
): Shape[] {
  const height = 50 + 16 * lines;
  const notes = [`${shaft.material} · sizes in ${inWords(units)}`, "edges broken · lengths not to scale"];
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
    ...(lines === 1 ? [notes.join(" · ")] : notes).map(
      (text, line): Shape => ({ type: "text", at: [x + 10, y + 54 + 16 * line], text, size: "small" }),
    ),
  ];
}
