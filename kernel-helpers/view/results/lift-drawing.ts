import type { Lift, LiftVerdict } from "../../intake/index.js";
import { formatNumber } from "../../quantity/index.js";
import type { Drawing, Point, Shape } from "../drawing/drawing.js";
import { threeAtLeast, threeDigits } from "./three-digits.js";

// Two side by side fill a telephone.
const [cellWidth, cellHeight] = [180, 232];
/** The hook, and the longest that a leg's rise and run are drawn [px]. */
const [hookDown, longest] = [74, 62];

/** One load in its slings. */
export interface DrawnLift {
  readonly what: string;
  readonly lift: Lift;
  readonly verdict: LiftVerdict;
}

/**
 * Loads in their slings, two in a row: the hook with what it carries, each leg at its true angle with the most it pulls,
 * the centre of mass under the hook. What does not hold is drawn in the pen of warnings.
 */
export function liftDrawing(lifts: readonly DrawnLift[]): Drawing {
  const columns = Math.min(2, lifts.length);
  return {
    width: columns * cellWidth,
    height: Math.ceil(lifts.length / columns) * cellHeight,
    shapes: lifts.flatMap((one, i) =>
      cell(one, [(i % columns) * cellWidth, Math.floor(i / columns) * cellHeight]),
    ),
  };
}

/** The drawing in words. */
export function liftDrawingAlt(lifts: readonly DrawnLift[]): string {
  return lifts
    .map(
      ({ what, lift }) =>
        `${what}: the hook carries at most ${threeAtLeast(lift.mostAtHook)}; ${lift.legs
          .map(({ name, angle, pull }) => `${name} at ${degrees(angle.si)} pulls ${threeDigits(pull.value)}`)
          .join(", ")}.`,
    )
    .join(" ");
}

function cell({ what, lift, verdict }: DrawnLift, [x0, y0]: Point): Shape[] {
  const middle = x0 + cellWidth / 2;
  const hook: Point = [middle, y0 + hookDown];
  const pen = verdict === "does not hold" ? "warn" : "force";
  const [one, other] = lift.legs;
  const runs = other === undefined ? [0, 0] : [1 / Math.tan(one!.angle.si), 1 / Math.tan(other.angle.si)];
  const rise = longest / Math.max(1, ...runs.map(Math.abs));
  const [left, right] = [middle - runs[0]! * rise, middle + runs[1]! * rise];
  const top = hook[1] + rise;
  const [bodyLeft, bodyRight] = [Math.min(left, middle - 22) - 8, Math.max(right, middle + 22) + 8];
  const bottom = top + 34;
  const ends: Point[] =
    other === undefined
      ? [[middle, top]]
      : [
          [left, top],
          [right, top],
        ];
  return [
    { type: "text", at: [middle, y0 + 18], text: clipped(what), anchor: "middle" },
    {
      type: "text",
      at: [middle, y0 + 36],
      text: `hook: at most ${threeAtLeast(lift.mostAtHook)}`,
      size: "small",
      anchor: "middle",
      ink: "force",
    },
    { type: "arrow", from: [middle, hook[1] - 8], to: [middle, y0 + 42], pen },
    { type: "circle", centre: hook, radius: 5, pen: "outline", fill: "shade" },
    {
      type: "polygon",
      points: [
        [bodyLeft, top],
        [bodyRight, top],
        [bodyRight, bottom],
        [bodyLeft, bottom],
      ],
      pen: "outline",
      fill: "none",
    },
    { type: "line", from: hook, to: [middle, bottom + 8], pen: "centre" },
    { type: "circle", centre: [middle, top + 17], radius: 6, pen: "outline", fill: "iron" },
    ...ends.map((end): Shape => ({ type: "line", from: hook, to: end, pen })),
    ...lift.legs.map(
      ({ angle }, i): Shape => ({
        type: "text",
        at: other === undefined ? [middle + 8, top - 26] : [i === 0 ? left - 2 : right + 2, top - 6],
        text: other === undefined ? "straight" : degrees(angle.si),
        size: "small",
        ink: "pencil",
        anchor: other === undefined ? "start" : i === 0 ? "end" : "start",
      }),
    ),
    {
      type: "text",
      at: [middle, bottom + 22],
      text: `a leg: at most ${threeAtLeast(lift.most)}`,
      size: "small",
      anchor: "middle",
      ink: "force",
    },
    {
      type: "text",
      at: [middle, bottom + 38],
      text: verdict,
      size: "small",
      anchor: "middle",
      ink: verdict === "holds" ? "pencil" : "warn",
    },
  ];
}

function degrees(radians: number): string {
  return `${formatNumber((radians * 180) / Math.PI, 2)}°`;
}

function clipped(what: string): string {
  return what.length > 24 ? `${what.slice(0, 23)}…` : what;
}
