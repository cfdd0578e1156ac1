import type { Hand, ThreadHand, Turning } from "../../joint/hand-types.js";
import type { Drawing, Point, Shape } from "../drawing/drawing.js";

const nutAt: Point = [160, 205];
const threadAt: Point = [366, 205];

/**
 * The card to take to the nut: the nut as seen when facing it, the wrench on it, and the way to pull; beside it what the
 * thread looks like with the shaft held upright. So narrow that a telephone shows all of it.
 */
export function handCard(hand: ThreadHand): Drawing {
  const { seen, loosen } = hand;
  return {
    width: 432,
    height: 370,
    shapes: [
      text([20, 30], `UNDO ${loosen.toUpperCase()}`, { size: "large" }),
      text([20, 50], `${seen}-hand thread, seen facing the nut`, { ink: "pencil" }),
      ...nut(),
      ...wrench(loosen),
      ...machineTurns(hand.prediction.rotationAtNut),
      ...threadInset(seen),
    ],
  };
}

/** What the card shows, for those who cannot see it. */
export function handCardAlt({ seen, loosen, tighten, prediction }: ThreadHand): string {
  return `Card for the bench: a nut seen facing it, a wrench upright on it, a thick arrow that pulls the wrench ${loosen}, to the ${loosen === "clockwise" ? "right" : "left"}, to undo it; ${tighten} is crossed out as tightening. The machine itself turns ${prediction.rotationAtNut}, drawn thin. Beside it the thread with the shaft upright: its threads rise to the ${seen}, which is ${seen}-hand.`;
}

/** Hexagon with its washer face and the end of the stud in it. */
function nut(): Shape[] {
  const corner = (i: number): Point => [
    nutAt[0] + 46 * Math.cos((i * Math.PI) / 3),
    nutAt[1] + 46 * Math.sin((i * Math.PI) / 3),
  ];
  return [
    { type: "circle", centre: nutAt, radius: 92, pen: "thin", fill: "iron" },
    { type: "polygon", points: [0, 1, 2, 3, 4, 5].map(corner), pen: "outline", fill: "metal" },
    { type: "circle", centre: nutAt, radius: 26, pen: "outline", fill: "shade" },
    { type: "circle", centre: nutAt, radius: 22, pen: "thin", fill: "none" },
    { type: "line", from: [nutAt[0] - 104, nutAt[1]], to: [nutAt[0] + 104, nutAt[1]], pen: "centre" },
    { type: "line", from: [nutAt[0], nutAt[1] - 40], to: [nutAt[0], nutAt[1] + 104], pen: "centre" },
  ];
}

/** The wrench stands upright; pulled to the left it turns the nut counter-clockwise. */
function wrench(loosen: Turning): Shape[] {
  const [x, y] = nutAt;
  const side = loosen === "clockwise" ? 1 : -1;
  return [
    {
      type: "polygon",
      points: [
        [x - 11, y - 44],
        [x - 8, y - 128],
        [x + 8, y - 128],
        [x + 11, y - 44],
      ],
      pen: "outline",
      fill: "metal",
    },
    arrow([x + side * 12, y - 120], [x + side * 96, y - 120], "force"),
    text([x + side * 14, y - 128], "PULL", {
      size: "large",
      ink: "force",
      anchor: side > 0 ? "start" : "end",
    }),
    // The way round, drawn outside the nut from the wrench on.
    {
      type: "arc",
      centre: nutAt,
      radius: 74,
      from: side > 0 ? 70 : 110,
      to: side > 0 ? -20 : 200,
      pen: "force",
      head: true,
    },
    // The other way tightens.
    {
      type: "arc",
      centre: nutAt,
      radius: 74,
      from: side > 0 ? 110 : 70,
      to: side > 0 ? 165 : 15,
      pen: "warn",
      head: true,
    },
    text([x - side * 100, y - 62], "tightens", { ink: "warn", anchor: side > 0 ? "end" : "start" }),
  ];
}

/** Which way the machine turns, thin and outside everything. */
function machineTurns(rotation: Turning): Shape[] {
  const [x, y] = nutAt;
  const clockwise = rotation === "clockwise";
  return [
    {
      type: "arc",
      centre: nutAt,
      radius: 112,
      from: clockwise ? -40 : -140,
      to: clockwise ? -140 : -40,
      pen: "thin",
      head: true,
    },
    text([x, y + 134], `the machine runs ${rotation}`, { size: "small", ink: "pencil", anchor: "middle" }),
    text([x, y + 150], "(facing the nut)", { size: "small", ink: "pencil", anchor: "middle" }),
  ];
}

/** The thread as it looks with the shaft upright: in front it rises to the right if it is right-hand. */
function threadInset(seen: Hand): Shape[] {
  const [x, y] = threadAt;
  const climb = seen === "right" ? 1 : -1;
  const turns = Array.from({ length: 8 }, (_, i) => y - 74 + i * 21);
  return [
    {
      type: "polygon",
      points: [
        [x - 38, y - 92],
        [x + 38, y - 92],
        [x + 38, y + 92],
        [x - 38, y + 92],
      ],
      pen: "outline",
      fill: "metal",
    },
    ...turns.map(
      (at): Shape => ({
        type: "line",
        from: [x - 38, at + climb * 9],
        to: [x + 38, at - climb * 9],
        pen: "outline",
      }),
    ),
    // Along one thread, upwards.
    arrow([x - climb * 60, y + 15], [x + climb * 60, y - 15], "force"),
    text([x, y - 104], "shaft held upright", { size: "small", ink: "pencil", anchor: "middle" }),
    text([x, y + 116], `rises to the ${seen}:`, { anchor: "middle" }),
    text([x, y + 134], `${seen}-hand`, { anchor: "middle" }),
  ];
}

function arrow(from: Point, to: Point, pen: "force" | "thin"): Shape {
  return { type: "arrow", from, to, pen };
}

function text(
  at: Point,
  words: string,
  look: Omit<Extract<Shape, { type: "text" }>, "type" | "at" | "text"> = {},
): Shape {
  return { type: "text", at, text: words, ...look };
}
