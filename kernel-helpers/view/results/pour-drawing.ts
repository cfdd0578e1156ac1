import { type Joint, type PourPlan, wholeArc } from "../../bearing/index.js";
import { formatFixed, type Length } from "../../quantity/index.js";
import type { Drawing, Point, Shape } from "../drawing/drawing.js";

/** How a size is written on the drawing. */
export type SizeText = (size: Length) => string;

const whole = wholeArc;
const shellWall = 26;
const bottom = 344;

/** Where the view along the shaft lies on the sheet [px], and what is written at its riser. */
interface LengthPlace {
  readonly left: number;
  readonly right: number;
  readonly down: number;
  readonly riser: string;
}
const beside: LengthPlace = { left: 410, right: 760, down: 0, riser: "pour here, riser" };
const below: LengthPlace = { left: 70, right: 290, down: bottom + 10, riser: "riser" };

/**
 * The box ready to pour: the end of it with shims, riser and the arc that must have no groove; the length of it, cut, with
 * mandrel, dams, riser and vents. Radii to scale with each other, the iron not.
 */
export function pourDrawing(plan: PourPlan, size: SizeText): Drawing {
  return Object.freeze({
    width: 860,
    height: bottom,
    shapes: [...endView(plan, size), ...lengthView(plan, size, beside)],
  });
}

/** The same views one under the other, for a telephone. */
export function narrowPourDrawing(plan: PourPlan, size: SizeText): Drawing {
  return Object.freeze({
    width: 350,
    height: below.down + bottom,
    shapes: [...endView(plan, size), ...lengthView(plan, size, below)],
  });
}

/** The same in words. */
export function pourDrawingAlt(plan: PourPlan, size: SizeText): string {
  return (
    `Two views of the ${plan.name} ready to pour. From the end: an iron shell of bore ${size(plan.shellBore)}, in it a mandrel of ${size(plan.mandrel)}, ` +
    `between them a ring of white metal ${size(plan.wall)} thick, parted by shims at both sides, fed by a riser from above; ` +
    `${grooved(plan).length === 2 ? "oil grooves at the two joints" : `an oil groove at the ${grooved(plan)[0]!.side} joint`}, none within ${whole} degrees to either side of the load. Cut along the shaft: the mandrel through the whole length of ${size(plan.length)}, ` +
    `dams at both ends, riser in the middle of the top, a vent near each end.`
  );
}

function endView(plan: PourPlan, size: SizeText): Shape[] {
  const centre: Point = [170, 190];
  const outer = 92;
  const bore = (outer * plan.mandrel.si) / plan.shellBore.si;
  const [x, y] = centre;
  const load = -90 + (plan.loadAt.si * 180) / Math.PI;
  const at = (radius: number, degrees: number): Point => [
    x + radius * Math.cos((degrees * Math.PI) / 180),
    y - radius * Math.sin((degrees * Math.PI) / 180),
  ];
  // Written in the half that the load's arrow leaves free.
  const pressesUp = Math.sin((load * Math.PI) / 180) > 0;
  const shim = 3;
  const onLeft = grooved(plan).some(({ side: of }) => of === "left");
  const half = Math.max(6, (outer * plan.riser.diameter.si) / plan.shellBore.si);
  const side = (way: 1 | -1): Shape => ({
    type: "polygon",
    points: [
      [x + way * bore, y - shim],
      [x + way * (outer + shellWall), y - shim],
      [x + way * (outer + shellWall), y + shim],
      [x + way * bore, y + shim],
    ],
    pen: "warn",
    fill: "warn",
  });
  return [
    { type: "circle", centre, radius: outer + shellWall, pen: "outline", fill: "iron" },
    { type: "circle", centre, radius: outer, pen: "outline", fill: "white metal" },
    {
      type: "polygon",
      points: [
        [x - half, y - bore - 2],
        [x - half, y - outer - shellWall - 16],
        [x + half, y - outer - shellWall - 16],
        [x + half, y - bore - 2],
      ],
      pen: "outline",
      fill: "white metal",
    },
    { type: "circle", centre, radius: bore, pen: "outline", fill: "metal" },
    side(1),
    side(-1),
    ...grooved(plan).map(
      ({ side: of }): Shape => groove(x + (of === "right" ? bore : -bore), y, of === "right" ? 1 : -1),
    ),
    { type: "line", from: [x - outer - 44, y], to: [x + outer + 44, y], pen: "centre" },
    { type: "line", from: [x, y - outer - 44], to: [x, y + outer + 40], pen: "centre" },
    { type: "arc", centre, radius: bore - 9, from: load - whole, to: load + whole, pen: "warn" },
    { type: "line", from: at(bore, load - whole), to: at(bore - 18, load - whole), pen: "warn" },
    { type: "line", from: at(bore, load + whole), to: at(bore - 18, load + whole), pen: "warn" },
    { type: "arrow", from: at(18, load), to: at(bore - 12, load), pen: "force" },
    {
      type: "text",
      at: at(bore * 0.62, load + 28),
      text: "load",
      size: "small",
      anchor: "middle",
      ink: "force",
    },
    { type: "text", at: [x, 20], text: "from the end", anchor: "middle", size: "large" },
    { type: "text", at: [x + half + 6, y - outer - shellWall - 4], text: "riser", size: "small" },
    {
      type: "text",
      at: [x + (onLeft ? 12 - bore : bore - 12), y + 20],
      text: "groove",
      size: "small",
      anchor: onLeft ? "start" : "end",
    },
    { type: "text", at: [x + outer + shellWall + 5, y - 8], text: "shims", size: "small", ink: "warn" },
    {
      type: "text",
      at: [x, bottom - 12],
      text: `no groove ${whole}° to either side of the load`,
      size: "small",
      anchor: "middle",
      ink: "warn",
    },
    { type: "text", at: [x, y + (pressesUp ? 51 : -14)], text: size(plan.mandrel), anchor: "middle" },
    { type: "text", at: [x, y + (pressesUp ? 35 : -30)], text: "mandrel", anchor: "middle", size: "small" },
  ];
}

/** An oil groove at a parting line: cut from both halves, widest at the joint. */
function groove(x: number, y: number, way: 1 | -1): Shape {
  return {
    type: "polygon",
    points: [
      [x - way * 2, y - 13],
      [x + way * 9, y],
      [x - way * 2, y + 13],
    ],
    pen: "outline",
    fill: "oil",
  };
}

function lengthView(plan: PourPlan, size: SizeText, { left, right, down, riser }: LengthPlace): Shape[] {
  const y = 190 + down;
  const outer = 92;
  const bore = (outer * plan.mandrel.si) / plan.shellBore.si;
  const dam = 14;
  const middle = (left + right) / 2;
  const half = Math.max(6, (outer * plan.riser.diameter.si) / plan.shellBore.si);
  const vent = 4;
  // An eighth of the length at either end is left whole: common practice, no source.
  const short = (right - left) / 8;
  const box = (x0: number, y0: number, x1: number, y1: number): readonly Point[] => [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
  const halves = [1, -1].flatMap((way): Shape[] => [
    {
      type: "polygon",
      points: box(left, y + way * outer, right, y + way * (outer + shellWall)),
      pen: "outline",
      fill: "iron",
    },
    {
      type: "polygon",
      points: box(left, y + way * bore, right, y + way * outer),
      pen: "outline",
      fill: "white metal",
    },
    ...([left - dam, right] as const).map(
      (x0): Shape => ({
        type: "polygon",
        points: box(x0, y + way * bore, x0 + dam, y + way * (outer + 12)),
        pen: "outline",
        fill: "hatch",
      }),
    ),
  ]);
  const pipe = (x0: number, width: number, top: number): Shape => ({
    type: "polygon",
    points: box(x0 - width, y - outer - shellWall - top, x0 + width, y - outer + 1),
    pen: "outline",
    fill: width > vent ? "white metal" : "shade",
  });
  const vents = [left + 26, right - 26];
  return [
    ...halves,
    pipe(middle, half, 16),
    ...vents.map((x0) => pipe(x0, vent, 8)),
    {
      type: "polygon",
      points: box(left - 46, y - bore, right + 46, y + bore),
      pen: "outline",
      fill: "metal",
    },
    { type: "line", from: [left - 60, y], to: [right + 60, y], pen: "centre" },
    { type: "text", at: [middle, 20 + down], text: "cut along the shaft", anchor: "middle", size: "large" },
    {
      type: "text",
      at: [middle + half + 6, y - outer - shellWall - 4],
      text: riser,
      size: "small",
    },
    {
      type: "text",
      at: [vents[0]!, y - outer - shellWall - 12],
      text: "vent",
      size: "small",
      anchor: "middle",
    },
    {
      type: "text",
      at: [vents[1]!, y - outer - shellWall - 12],
      text: "vent",
      size: "small",
      anchor: "middle",
    },
    { type: "text", at: [right + dam + 6, y - outer - 2], text: "dam", size: "small" },
    { type: "text", at: [left - dam - 6, y - outer - 2], text: "dam", size: "small", anchor: "end" },
    // Along the parting line, behind the mandrel: it ends short of the ends, or the oil runs out.
    {
      type: "polygon",
      points: box(left + short, y - 4, right - short, y + 4),
      pen: "hidden",
      fill: "oil",
    },
    {
      type: "text",
      at: [middle, y - 12],
      text: "oil groove at the joint, short of both ends, cut after pouring",
      size: "small",
      anchor: "middle",
    },
    { type: "text", at: [middle, y + 22], text: "mandrel, clean, sooted, warm, held down", anchor: "middle" },
    {
      type: "text",
      at: [middle, y + (bore + outer) / 2 + 4],
      text: `white metal, wall ${size(plan.wall)}`,
      anchor: "middle",
    },
    {
      type: "dimension",
      from: [right, y + outer + shellWall],
      to: [left, y + outer + shellWall],
      offset: -22,
      text: size(plan.length),
    },
  ];
}

/** The joints that may have a groove. */
function grooved({ joints }: PourPlan): readonly Joint[] {
  return joints.filter((joint) => joint.grooved);
}

/** The arc without grooves, in words for a fact. */
export function grooveRule(plan: PourPlan): string {
  const degrees = (si: number): string => formatFixed((si * 180) / Math.PI, 0);
  const whereFrom = `ending short of the ends; none within ${whole}° of the load, which presses ${degrees(plan.loadAt.si)}° from straight down, counter-clockwise`;
  const near = plan.joints.find((joint) => !joint.grooved);
  return near === undefined
    ? `cut from both parting lines, ${whereFrom}`
    : `cut from the ${near.side === "left" ? "right" : "left"} parting line alone, ${whereFrom}: the ${near.side} parting line lies ${degrees(near.fromLoad.si)}° from it, so there no groove and no relief, both halves scraped flush`;
}
