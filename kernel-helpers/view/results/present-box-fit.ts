import type { BoxAlignment, BoxFit, ContactSpots, FittedBox } from "../../bearing/index.js";
import { formatFixed, type Length, type Measured, measured, unitNamed } from "../../quantity/index.js";
import type { Block, Presentation, VerdictBlock } from "../blocks.js";
import { plusMinus } from "../format-measured.js";
import { fitFigure, lineFigure } from "./box-fit-figure.js";
import { inUnit, jointUnits } from "./joint-text.js";
import { percentText } from "./percent-text.js";

const answers = {
  fits: { outcome: "yes", text: "fits" },
  "does not fit": { outcome: "no", text: "does not fit" },
  "cannot tell yet": { outcome: "cannot tell yet", text: "cannot be told yet" },
} as const;

/** Each box's verdict with what to do next, its figures, and the gaps along it. */
export function presentBoxFit(fit: BoxFit): Presentation {
  const { tolerance, taperLimit, unread, boxes } = fit;
  const units = jointUnits(tolerance);
  const small = (length: Length): string => inUnit(length, units.small, 3);
  const within = (value: Measured<Length>): string => plusMinus(value, { unit: units.small });
  const shim = ({ shim: change }: FittedBox): string =>
    change.si === 0
      ? "leave"
      : `${change.si > 0 ? "add" : "take out"} ${bare(small(change.si > 0 ? change : change.times(-1)))}`;
  const scrape = ({ scrape: at }: FittedBox): string =>
    at === undefined ? "nothing" : `${small(at.depth)} on diameter at ${inUnit(at.at, units.size, 4)}`;
  const inSmall = { align: "right", unit: unitNamed(units.small).symbol } as const;
  const columns: readonly {
    readonly title: string;
    readonly align: "left" | "right";
    /** In the head, once, where every cell of the column has it. */
    readonly unit?: string;
    readonly of: (box: FittedBox) => string | undefined;
  }[] = [
    { title: "box", align: "left", of: ({ name }) => name },
    {
      title: "bore half-way",
      align: "right",
      unit: unitNamed(units.size).symbol,
      of: ({ bore }) => bore && bare(plusMinus(bore, { unit: units.size })),
    },
    { title: "clearance, diametral", ...inSmall, of: ({ clearance }) => bare(within(clearance)) },
    { title: "differs end to end", ...inSmall, of: ({ taper }) => bare(within(taper)) },
    { title: "by its tilt", ...inSmall, of: ({ tilt }) => tilt && bare(within(tilt.part)) },
    { title: "of its own", ...inSmall, of: ({ tilt }) => tilt && bare(within(tilt.own)) },
    { title: "shims, both sides", ...inSmall, align: "left", of: shim },
    { title: "leaves", ...inSmall, of: ({ afterShim }) => bare(small(afterShim)) },
    { title: "scrape for taper", align: "left", of: scrape },
  ];
  // A column of which no box knows anything is left out.
  const shown = columns.filter(({ of }) => boxes.some((box) => of(box) !== undefined));
  return Object.freeze<Presentation>({
    title: `Fit of the boxes, from ${fit.table}`,
    blocks: [
      ...boxes.map(
        (box): VerdictBlock => ({
          type: "verdict",
          outcome: answers[box.verdict].outcome,
          text: `${box.name}: ${answers[box.verdict].text}`,
          because: `DIAMETRAL clearance ${within(box.clearance)} (95 %)${askewText(box, within)}, wanted ${small(box.wanted)} ± ${small(tolerance)}: within in ${percentText(box.chance)} of the cases. Next: ${box.next}.`,
        }),
      ),
      {
        type: "table",
        caption: `What to change; the clearance may differ by ${small(taperLimit)} from end to end`,
        columns: shown.map(({ of: _, ...column }) => column),
        stacked: true,
        rows: boxes.map((box) => ({
          cells: shown.map(({ of }) => of(box) ?? "not known"),
          ...(box.verdict === "does not fit" ? { mark: "bad" as const } : {}),
        })),
      },
      ...(unread.length === 0
        ? []
        : [{ type: "warning" as const, text: `No gaps yet of ${unread.join(" and ")}.` }]),
      fitFigure(fit, units.size, units.small),
    ],
  });
}

/** A length without its unit, which the column's head has. */
function bare(text: string): string {
  return text.replace(/ \S+$/, "");
}

/** What the tilt makes of the clearance, where the box is to be set in line first. */
function askewText({ askew, tilt }: FittedBox, within: (value: Measured<Length>) => string): string {
  return tilt === undefined || !askew ? "" : ` as it stands, ${within(tilt.onceInLine)} once it lies in line`;
}

/** Whether each box bears, by its spots. */
export function presentContactSpots({ table, wanted, boxes }: ContactSpots): Presentation {
  const outcome = { bears: "yes", "scrape on": "no", "cannot tell yet": "cannot tell yet" } as const;
  return Object.freeze<Presentation>({
    title: `Contact spots, from ${table}`,
    blocks: boxes.map(
      (box): Block => ({
        type: "verdict",
        outcome: outcome[box.verdict],
        text: `${box.name}: ${box.verdict}`,
        because: `${formatFixed(box.mean, 1)} ± ${formatFixed(2 * box.standardUncertainty, 1)} spots a square inch (95 %) in ${box.squares} squares, ${box.least} to ${box.most}; wanted ${wanted}. ${box.because[0]!.toUpperCase()}${box.because.slice(1)}.`,
      }),
    ),
  });
}

/** Whether the boxes lie in one line, and what to put under. */
export function presentBoxAlignment(alignment: BoxAlignment): Presentation {
  const { table, limit, sag, boxes } = alignment;
  const units = jointUnits(limit);
  const outcome = { "in line": "yes", "out of line": "no", "cannot tell yet": "cannot tell yet" } as const;
  const taken =
    sag === undefined ? "" : ` Sag of the wire taken out, ${inUnit(sag, units.small, 2)} in the middle.`;
  return Object.freeze<Presentation>({
    title: `Alignment of the boxes, from ${table}`,
    blocks: [
      ...boxes.map(
        ({ name, tilt, offset, verdict, shim }): Block => ({
          type: "verdict",
          outcome: outcome[verdict],
          text: `${name}: ${verdict}`,
          because: `It ${tilt.value.si < 0 ? "falls" : "rises"} ${plusMinus(upright(tilt), { unit: units.small })} (95 %) over its length against the line through all boxes, allowed ${inUnit(limit, units.small, 2)}; its middle stands ${plusMinus(upright(offset), { unit: units.small })} ${offset.value.si < 0 ? "under" : "over"} it.${shim === undefined ? "" : ` Shim ${inUnit(shim.thickness, units.small, 2)} under the end at ${inUnit(shim.under, units.size, 4)}, more where its feet stand further apart than the heights.`}${taken}`,
        }),
      ),
      lineFigure(alignment, units.size, units.small),
    ],
  });
}

/** Without its sign, which the words tell. */
function upright({ value, standardUncertainty }: Measured<Length>): Measured<Length> {
  return measured(value.si < 0 ? value.times(-1) : value, standardUncertainty);
}
