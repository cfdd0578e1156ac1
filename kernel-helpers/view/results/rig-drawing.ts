import type { PressRig, RigPart } from "../../joint/rig-types.js";
import type { Drawing, Fill, Pen, Point, Shape } from "../drawing/drawing.js";
import { forceText, inUnit, type JointUnits, mostForceText } from "./joint-text.js";

/** From metres to places: the axis lies level, the beam on the left. */
interface Frame {
  readonly at: (x: number, y: number) => Point;
  readonly scale: number;
}

/** A telephone's sheet has no room for words between the lines: they stand around the rig and below it. */
const sheets = {
  wide: { across: 560, left: 96, right: 70, below: 64, crowded: false },
  narrow: { across: 272, left: 50, right: 24, below: 62, crowded: true },
} as const;
type Sheet = (typeof sheets)[keyof typeof sheets];

/**
 * The rig from the side, to scale, cut along the axis: beam, jack, shaft and hub, plate and rods, with the forces and
 * what each part allows; the weakest in the pen of warnings.
 */
export function rigDrawing(rig: PressRig, units: JointUnits, on: keyof typeof sheets = "wide"): Drawing {
  const sheet: Sheet = sheets[on];
  const { rods, plate, hub, shaftEnd, beamHeight } = rig.rig;
  const [span, length, rod] = [rods.span.si, rods.length.si, rods.diameter.si];
  const beam = beamHeight?.si ?? 0.6 * hub.length.si;
  const hubEnd = length - plate.thickness.si;
  const hubStart = hubEnd - hub.length.si;
  const end = hubStart - 0.6 * shaftEnd.si;
  const right = length + 0.22 * length;
  const scale = sheet.across / (right + rod * 3);
  const half = span / 2 + 1.6 * rod;
  const [left, top] = [sheet.left, 24];
  const frame: Frame = {
    scale,
    at: (x, y) => [left + rod * 1.5 * scale + x * scale, top + (half - y) * scale],
  };
  const shapes: Shape[] = [
    ...rodShapes(frame, rig, { length, span, rod }),
    box(frame, 0, -half, beam, half, penOf(rig, "cross-beam"), "metal"),
    ...jackShapes(frame, rig, beam, end),
    ...hubShapes(frame, rig, hubStart, hubEnd),
    ...plateShapes(frame, rig, hubEnd, length, half),
    ...shaftShapes(frame, rig, end, hubStart, hubEnd, right),
    ...forceShapes(frame, rig, { beam, length, span, end, units, sheet }),
    ...labels(frame, rig, { beam, hubStart, hubEnd, length, half, span, rod, end, units, sheet }),
    {
      type: "dimension",
      from: frame.at(length, -half),
      to: frame.at(0, -half),
      offset: -26,
      text: inUnit(rods.length, units.size, 4),
    },
    {
      type: "dimension",
      from: frame.at(0, -span / 2),
      to: frame.at(0, span / 2),
      offset: sheet.crowded ? -30 : -46,
      text: inUnit(rods.span, units.size, 4),
    },
  ];
  return Object.freeze({
    width: left + sheet.across + sheet.right,
    height: Math.ceil(top + 2 * half * scale + sheet.below),
    shapes,
  });
}

/** The headline, outside of the drawing: it stands still where the drawing scrolls. */
export function rigHeadline(rig: PressRig, units: JointUnits): string {
  return `Force of the jack, arrows in blue: ${forceText(rig.force, units)}, the most the hub may need. Weakest, in red: the ${rig.weakest}, allows ${mostForceText(rig.rating, units)}. From the side, to scale; hub and plate cut. Stand to the side of it, never in line with the shaft.`;
}

/** What the drawing shows, for those who cannot see it. */
export function rigDrawingAlt(rig: PressRig, units: JointUnits): string {
  const parts = rig.checks
    .map(({ part, pressForce }) => `${part} ${mostForceText(pressForce, units)}`)
    .join(", ");
  return `Press rig from the side, cut along the shaft: cross-beam on the left, jack between beam and shaft end, hub on the shaft, bearing plate behind it, ${rig.rig.rods.count} tie rods from beam to plate. The jack pushes the shaft to the right, the rods pull the hub to the left. Press force that each part allows: ${parts}. Weakest: ${rig.weakest}.`;
}

function penOf({ weakest }: PressRig, part: RigPart): Pen {
  return weakest === part ? "warn" : "outline";
}

function box({ at }: Frame, x0: number, y0: number, x1: number, y1: number, pen: Pen, fill: Fill): Shape {
  return { type: "polygon", points: [at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)], pen, fill };
}

function rodShapes(
  frame: Frame,
  rig: PressRig,
  { length, span, rod }: { length: number; span: number; rod: number },
): Shape[] {
  const pen = penOf(rig, "tie rods");
  return [span / 2, -span / 2].flatMap((y) => [
    box(frame, -1.4 * rod, y - rod / 2, length + 1.4 * rod, y + rod / 2, pen, "none"),
    box(frame, -0.9 * rod, y - 0.85 * rod, 0, y + 0.85 * rod, pen, "shade"),
    box(frame, length, y - 0.85 * rod, length + 0.9 * rod, y + 0.85 * rod, pen, "shade"),
  ]);
}

function jackShapes(frame: Frame, rig: PressRig, beam: number, end: number): Shape[] {
  const pen = penOf(rig, "jack");
  const room = end - beam;
  const body = beam + 0.72 * room;
  const radius = Math.min(0.3 * room, 0.75 * rig.rig.shaftEnd.si + 0.25 * rig.rig.hub.face.si);
  return [
    box(frame, beam, -radius, body, radius, pen, "shade"),
    box(frame, body, -0.5 * radius, end - 0.06 * room, 0.5 * radius, pen, "none"),
    // A pad spares the centre hole.
    box(frame, end - 0.06 * room, -0.6 * radius, end, 0.6 * radius, "outline", "metal"),
  ];
}

function hubShapes(frame: Frame, { rig, weakest }: PressRig, start: number, end: number): Shape[] {
  const outer = rig.hub.face.si / 2;
  const [small, large] = boreOf(rig);
  const pen: Pen = weakest === "hub face" ? "warn" : "outline";
  return [1, -1].map((side) => ({
    type: "polygon",
    points: [
      frame.at(start, side * small),
      frame.at(end, side * large),
      frame.at(end, side * outer),
      frame.at(start, side * outer),
    ],
    pen,
    fill: "iron",
  }));
}

/** Radii of the bore at the small and the large end: drawn from the shaft's end and the slot, the taper made plain. */
function boreOf(rig: PressRig["rig"]): readonly [small: number, large: number] {
  const large = 0.47 * rig.plate.slot.si;
  return [Math.max(0.5 * rig.shaftEnd.si * 1.04, 0.8 * large), large];
}

function plateShapes(frame: Frame, rig: PressRig, from: number, to: number, half: number): Shape[] {
  const slot = rig.rig.plate.slot.si / 2;
  const pen = penOf(rig, "bearing plate");
  return [1, -1].map((side) =>
    box(frame, from, side > 0 ? slot : -half, to, side > 0 ? half : -slot, pen, "hatch"),
  );
}

function shaftShapes(
  { at }: Frame,
  rig: PressRig,
  end: number,
  hubStart: number,
  hubEnd: number,
  right: number,
): Shape[] {
  const thread = rig.rig.shaftEnd.si / 2;
  const [small, large] = boreOf(rig.rig);
  return [
    {
      type: "polygon",
      points: [
        at(end, thread),
        at(hubStart, thread),
        at(hubStart, small),
        at(hubEnd, large),
        at(right, large),
        at(right, -large),
        at(hubEnd, -large),
        at(hubStart, -small),
        at(hubStart, -thread),
        at(end, -thread),
      ],
      pen: penOf(rig, "shaft end"),
      fill: "none",
    },
    { type: "line", from: at(-0.02, 0), to: at(right + 0.005, 0), pen: "centre" },
  ];
}

function forceShapes(
  frame: Frame,
  rig: PressRig,
  {
    length,
    span,
    end,
    units,
    sheet,
  }: { beam: number; length: number; span: number; end: number; units: JointUnits; sheet: Sheet },
): Shape[] {
  const { at, scale } = frame;
  const arm = (sheet.crowded ? 30 : 56) / scale;
  return [
    { type: "arrow", from: at(end - arm / 2, 0), to: at(end + arm / 2, 0), pen: "force" },
    ...[span / 2, -span / 2].map(
      (y): Shape => ({
        type: "arrow",
        from: at(0.56 * length, y),
        to: at(0.56 * length - arm, y),
        pen: "force",
      }),
    ),
    ...(sheet.crowded ? [] : [1, -1]).map(
      (side): Shape => ({
        type: "text",
        at: [at(0.56 * length, 0)[0] + 6, at(0, side * (span / 2))[1] + 3],
        text: inUnit(rig.force.over(2), units.force, 2),
        size: "small",
        ink: "force",
      }),
    ),
  ];
}

function labels(
  { at }: Frame,
  rig: PressRig,
  place: {
    beam: number;
    hubStart: number;
    hubEnd: number;
    length: number;
    half: number;
    span: number;
    rod: number;
    end: number;
    units: JointUnits;
    sheet: Sheet;
  },
): Shape[] {
  const { beam, hubStart, hubEnd, length, half, span, rod, end, sheet } = place;
  const ink = (part: RigPart): "ink" | "warn" => (rig.weakest === part ? "warn" : "ink");
  const text = (x: number, y: number, words: string, part: RigPart): Shape => ({
    type: "text",
    at: at(x, y),
    text: words,
    size: "small",
    anchor: "middle",
    ink: ink(part),
  });
  const between = (span / 2 - rod / 2 + rig.rig.hub.face.si / 2) / 2;
  return [
    {
      ...text(beam / 2, half, "cross-beam", "cross-beam"),
      at: [at(beam / 2, 0)[0], at(0, half)[1] - 6],
    } as Shape,
    text(beam + 0.36 * (end - beam), 0.012, "jack", "jack"),
    ...(sheet.crowded
      ? underneath({ at }, rig, place)
      : [text((hubStart + hubEnd) / 2, between - 0.004, "hub", "hub face")]),
    {
      ...text(length, half, "bearing plate", "bearing plate"),
      at: [at(length, 0)[0], at(0, half)[1] - 6],
    } as Shape,
    ...(sheet.crowded
      ? []
      : [
          {
            type: "text",
            at: at(beam + 0.3 * rod, span / 2 - 1.5 * rod),
            text: `${rig.rig.rods.count} rods ${rig.rig.rods.thread}`,
            size: "small",
            ink: ink("tie rods"),
          } as const,
          text(length + 0.11 * length, -0.7 * rig.rig.plate.slot.si, "shaft", "shaft end"),
        ]),
  ];
}

/** Names and forces that find no room between the lines of a narrow sheet. */
function underneath(
  { at }: Pick<Frame, "at">,
  rig: PressRig,
  { hubStart, hubEnd, length, half, units }: Parameters<typeof labels>[2],
): Shape[] {
  const ink = (part: RigPart): "ink" | "warn" => (rig.weakest === part ? "warn" : "ink");
  const foot = at(0, -half)[1];
  const hub = at((hubStart + hubEnd) / 2, -rig.rig.hub.face.si / 2 + 0.004);
  const shaft = at(length * 1.13, -0.47 * rig.rig.plate.slot.si);
  return [
    { type: "line", from: hub, to: [hub[0], foot + 4], pen: "thin" },
    {
      type: "text",
      at: [hub[0], foot + 14],
      text: "hub",
      size: "small",
      anchor: "middle",
      ink: ink("hub face"),
    },
    {
      type: "text",
      at: [shaft[0], shaft[1] + 14],
      text: "shaft",
      size: "small",
      anchor: "middle",
      ink: ink("shaft end"),
    },
    {
      type: "text",
      at: [at(0, 0)[0], foot + 50],
      text: `${rig.rig.rods.count} rods ${rig.rig.rods.thread}, ${inUnit(rig.force.over(2), units.force, 2)} in each${rig.rig.rods.count === 2 ? "" : " row"}`,
      size: "small",
      ink: ink("tie rods"),
    },
  ];
}
