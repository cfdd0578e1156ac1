import type { PartState, PartsLedger } from "../../intake/index.js";
import type { Drawing, Fill, Point, Shape } from "../drawing/drawing.js";

// Narrow, so that a telephone shows it at full size.
const [left, right, top, step, height] = [34, 264, 62, 42, 32];
const lane = 11;

const fills: Readonly<Record<PartState, Fill>> = {
  "in place": "metal",
  removed: "none",
  "out for work": "hatch",
  back: "shade",
  ready: "shade",
  refitted: "iron",
};

/**
 * The order in which the machine comes apart, read downwards, and goes together, read upwards. A line at the right leads
 * from a part to those that must be off before it.
 */
export function ledgerDrawing(ledger: PartsLedger): Drawing {
  const row = new Map(ledger.removal.map((name, i) => [name, i]));
  const lanes = lanesOf(ledger, row);
  const wide = Math.max(0, ...lanes.map(({ lane: at }) => at + 1));
  const bottom = top + step * ledger.removal.length;
  return {
    width: right + 20 + lane * wide + 20,
    height: bottom + 14,
    shapes: [
      { type: "text", at: [left, 22], text: "Off: downwards", size: "normal", ink: "force" },
      { type: "text", at: [right, 22], text: "On: upwards", size: "normal", ink: "force", anchor: "end" },
      { type: "text", at: [left, 44], text: "> may be done next", size: "small", ink: "pencil" },
      { type: "arrow", from: [12, top], to: [12, bottom - 10], pen: "force", both: true },
      ...ledger.removal.flatMap((name, i) => box(ledger, name, i)),
      ...lanes.flatMap((one) => link(one)),
    ],
  };
}

/** The drawing in words. */
export function ledgerDrawingAlt({ removal, parts }: PartsLedger): string {
  const state = new Map(parts.map((part) => [part.part, part.state]));
  return `Order of removal from top to bottom, of refitting from bottom to top: ${removal
    .map((name) => `${name} (${state.get(name)})`)
    .join(", ")}. Lines join each part to those that must be off before it.`;
}

function box({ parts, removeNext, refitNext }: PartsLedger, name: string, i: number): Shape[] {
  const { state } = parts.find(({ part }) => part === name)!;
  const y = top + step * i;
  const next = removeNext.includes(name) || refitNext.includes(name);
  const corners: readonly Point[] = [
    [left, y],
    [right, y],
    [right, y + height],
    [left, y + height],
  ];
  return [
    // The state's own hatch stands beside the words, which stay clear.
    { type: "polygon", points: corners, pen: next ? "outline" : "thin", fill: "none" },
    {
      type: "polygon",
      points: [
        [left, y],
        [left + 12, y],
        [left + 12, y + height],
        [left, y + height],
      ],
      pen: "thin",
      fill: fills[state],
    },
    { type: "text", at: [left + 20, y + 14], text: `${next ? "> " : ""}${i + 1}  ${clipped(name)}` },
    { type: "text", at: [left + 20, y + 27], text: state, size: "small", ink: "pencil" },
  ];
}

interface Link {
  readonly from: number;
  readonly to: number;
  readonly lane: number;
}

/** Each link in the first lane that is free along its way. */
function lanesOf(ledger: PartsLedger, row: ReadonlyMap<string, number>): readonly Link[] {
  const placed: Link[] = [];
  const links = ledger.parts
    .flatMap(({ part, comesOffAfter }) =>
      comesOffAfter.map((before) => ({ from: row.get(before)!, to: row.get(part)! })),
    )
    .sort((a, b) => a.to - a.from - (b.to - b.from) || a.from - b.from);
  for (const { from, to } of links) {
    let at = 0;
    while (placed.some((one) => one.lane === at && one.from < to && from < one.to)) at++;
    placed.push({ from, to, lane: at });
  }
  return placed;
}

function link({ from, to, lane: at }: Link): Shape[] {
  const x = right + 14 + lane * at;
  const [a, b] = [top + step * from + height / 2 + 5, top + step * to + height / 2 - 5];
  return [
    {
      type: "polyline",
      points: [
        [right, a],
        [x, a],
        [x, b],
      ],
      pen: "thin",
    },
    { type: "arrow", from: [x, b], to: [right, b], pen: "thin" },
  ];
}

function clipped(name: string): string {
  return name.length > 28 ? `${name.slice(0, 27)}…` : name;
}
