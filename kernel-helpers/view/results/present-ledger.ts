import type { PartState, PartsLedger } from "../../intake/index.js";
import type { Presentation } from "../blocks.js";
import { ledgerDrawing, ledgerDrawingAlt } from "./ledger-drawing.js";
import { warningBlocks } from "./warning-blocks.js";

/** The parts ledger: what is next, what blocks the rest, the order as a drawing, and every part with its marks. */
export function presentLedger(ledger: PartsLedger): Presentation {
  const { parts, removal, removeNext, refitNext, blockedOff, blockedOn, counts, warnings } = ledger;
  const needed = new Map(parts.map(({ part, waitsFor }) => [part, waitsFor]));
  const later = (part: string): string =>
    needed.get(part)!.length === 0 ? "" : `; back when ${needed.get(part)!.join(", ")} is ready`;
  const blockers = new Map([
    ...blockedOff.map(({ part, by }) => [part, `off after ${by.join(", ")}${later(part)}`] as const),
    ...blockedOn.map(({ part, by }) => [part, `on after ${by.join(", ")}`] as const),
  ]);
  const none = "nothing";
  return Object.freeze<Presentation>({
    title: "Parts ledger",
    blocks: [
      {
        type: "facts",
        facts: [
          { label: "may come off next", value: removeNext.join(", ") || none },
          {
            label: "may go on next",
            value: refitNext.join(", ") || none,
            note: "ready, with all below it on",
          },
          {
            label: "where the parts are",
            value: (Object.entries(counts) as [PartState, number][])
              .filter(([, count]) => count > 0)
              .map(([state, count]) => `${count} ${state}`)
              .join(", "),
            note: `of ${parts.length}`,
          },
        ],
      },
      {
        type: "drawing",
        drawing: ledgerDrawing(ledger),
        alt: ledgerDrawingAlt(ledger),
        caption: "A line leads to each part from one that must be off before it. > may be done next.",
      },
      {
        type: "table",
        stacked: true,
        caption: "In the order of removal; refitting backwards",
        columns: [
          { title: "part", align: "left" },
          { title: "state", align: "left" },
          { title: "waits", align: "left" },
          { title: "where and which way round", align: "left" },
          { title: "remark", align: "left" },
        ],
        rows: removal.map((name, i) => {
          const { state, marks, remark } = parts.find(({ part }) => part === name)!;
          return {
            cells: [`${i + 1}  ${name}`, state, blockers.get(name) ?? "", marks, remark],
          };
        }),
      },
      ...warningBlocks(warnings),
    ],
  });
}
