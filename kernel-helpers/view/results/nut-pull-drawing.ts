import type { NutRemoval } from "../../joint/fastener-types.js";
import { formatNumber, type Torque } from "../../quantity/index.js";
import type { Drawing, Shape } from "../drawing/drawing.js";
import type { NutUnits } from "./nut-units.js";

/** Where the scale of torque begins and ends on the sheet [px]. */
interface Span {
  readonly left: number;
  readonly right: number;
}

const sheets = { wide: { left: 190, right: 690 }, narrow: { left: 138, right: 340 } } as const;
const firstRow = 64;
const rowHeight = 34;
const barHeight = 14;

/**
 * A scale of torque: what tightened the nut, what may break it loose, what one person's pull gives, and the stop limit; for
 * a page or, narrow, for a telephone.
 */
export function nutPullDrawing(
  nut: NutRemoval,
  units: NutUnits,
  sheet: keyof typeof sheets = "wide",
): Drawing {
  const span = sheets[sheet];
  const { left, right } = span;
  const bars = barsOf(nut, units);
  const most = Math.max(...bars.map(({ to }) => to), nut.stopLimit.si) * 1.05;
  const at = (si: number): number => left + ((right - left) * si) / most;
  const bottom = firstRow + bars.length * rowHeight;
  return {
    width: right + 20,
    height: bottom + 46,
    shapes: [
      ...axis(most, at, bottom, span, units),
      ...bars.flatMap((bar, i) => barShapes(bar, i, at, left)),
      ...stopLine(nut.stopLimit, at, bottom, units),
    ],
  };
}

interface Bar {
  readonly label: string;
  /** [N·m] */
  readonly from: number;
  readonly to: number;
  readonly fill: "metal" | "shade" | "hatch";
}

function barsOf({ tightening, breakLoose, onePerson, wrenches }: NutRemoval, units: NutUnits): Bar[] {
  return [
    { label: "tightened with", from: tightening.low.si, to: tightening.high.si, fill: "shade" },
    { label: "breaks loose at", from: breakLoose.low.si, to: breakLoose.high.si, fill: "metal" },
    ...wrenches.map(
      ({ length }): Bar => ({
        label: `one person, ${units.length(length)}`,
        from: onePerson.steady.si * length.si,
        to: onePerson.strong.si * length.si,
        fill: "hatch",
      }),
    ),
  ];
}

function barShapes(
  { label, from, to, fill }: Bar,
  row: number,
  at: (si: number) => number,
  left: number,
): Shape[] {
  const middle = firstRow + row * rowHeight + rowHeight / 2;
  const [a, b] = [at(from), Math.max(at(to), at(from) + 2)];
  return [
    { type: "text", at: [left - 10, middle + 4], text: label, anchor: "end" },
    {
      type: "polygon",
      points: [
        [a, middle - barHeight / 2],
        [b, middle - barHeight / 2],
        [b, middle + barHeight / 2],
        [a, middle + barHeight / 2],
      ],
      pen: "outline",
      fill,
    },
  ];
}

function stopLine(limit: Torque, at: (si: number) => number, bottom: number, units: NutUnits): Shape[] {
  const x = at(limit.si);
  return [
    { type: "line", from: [x, 40], to: [x, bottom], pen: "warn" },
    { type: "text", at: [x, 30], text: `stop at ${units.mostTorque(limit)}`, ink: "warn", anchor: "middle" },
  ];
}

function axis(
  most: number,
  at: (si: number) => number,
  bottom: number,
  { left, right }: Span,
  units: NutUnits,
): Shape[] {
  const step = niceStep(most / units.torqueUnit.si);
  const ticks: number[] = [];
  for (let value = 0; value * units.torqueUnit.si <= most; value += step) ticks.push(value);
  return [
    { type: "line", from: [left, bottom], to: [right, bottom], pen: "thin" },
    ...ticks.flatMap((value): Shape[] => {
      const x = at(value * units.torqueUnit.si);
      return [
        { type: "line", from: [x, bottom], to: [x, bottom + 5], pen: "thin" },
        { type: "text", at: [x, bottom + 18], text: formatNumber(value), size: "small", anchor: "middle" },
      ];
    }),
    {
      type: "text",
      at: [(left + right) / 2, bottom + 36],
      text: `torque on the nut, ${units.torqueUnit.symbol}`,
      size: "small",
      ink: "pencil",
      anchor: "middle",
    },
  ];
}

/** A step of 1, 2 or 5 times a power of ten that gives about five ticks. */
function niceStep(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most / 5));
  return [1, 2, 5, 10].map((times) => times * power).find((step) => most / step <= 6)!;
}
