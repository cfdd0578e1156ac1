import type { Block, Fact, Presentation, TableBlock } from "../blocks.js";
import { figureMoves, type ShownGrounds } from "./decision-moves.js";
import { figureText, isUncertainFigure, type ShownFigure } from "./figure-text.js";

/** A decision a person made, with the figures of that day. */
export interface ShownMade extends ShownGrounds {
  readonly question: string;
  readonly choice: string;
  readonly reason: string;
  readonly by: string;
  readonly on: string;
  readonly override?: string;
}

/** A decision as it stands in a sheet or in the handover. */
export interface ShownDecision extends ShownMade {
  readonly kind: "decision";
  readonly name: string;
  readonly now?: ShownGrounds;
  readonly withdrawn: boolean;
  readonly superseded: readonly ShownMade[];
}

/** The question, the options side by side, what was taken and why, and what has changed since. */
export function presentDecision(decision: ShownDecision): Presentation {
  return Object.freeze<Presentation>({
    title: `Decision: ${decision.question}`,
    blocks: decisionBlocks(decision),
  });
}

/** The blocks of a decision, also for a book of several. */
export function decisionBlocks(decision: ShownDecision): readonly Block[] {
  const blocks: Block[] = [optionTable(decision)];
  for (const { name, breaks } of decision.options)
    if (breaks.length > 0) blocks.push({ type: "text", text: `“${name}” breaks: ${breaks.join("; ")}.` });
  blocks.push({ type: "facts", facts: decisionFacts(decision) });
  if (decision.withdrawn)
    blocks.push({ type: "warning", text: "The sheet does not make this decision any more; it is kept." });
  blocks.push(...sinceBlocks(decision));
  if (decision.superseded.length > 0) blocks.push(supersededTable(decision.superseded));
  return blocks;
}

/** One option a column, so that figures of one name stand side by side. */
function optionTable({ options, choice }: ShownMade): TableBlock {
  const names = [...new Set(options.flatMap(({ figures }) => Object.keys(figures)))];
  const rows = names.map((name) => ({
    cells: [name, ...options.map(({ figures }) => textOf(figures[name]))],
  }));
  const words = options.some(({ figures }) => Object.values(figures).some(isLong));
  const anyBroken = options.some(({ breaks }) => breaks.length > 0);
  return {
    type: "table",
    caption: `The options as computed, side by side${options.some(hasUncertain) ? "; ± expanded uncertainty, 95 %" : ""}`,
    columns: [
      { title: "", align: "left" },
      ...options.map(({ name }) => ({
        title: name === choice ? `${name} (chosen)` : name,
        // Words that wrap are read from the left.
        align: words ? ("left" as const) : ("right" as const),
      })),
    ],
    stacked: true,
    rows: [
      ...rows,
      {
        cells: [
          "limits broken",
          ...options.map(({ breaks }) => (breaks.length === 0 ? "none" : `${breaks.length}`)),
        ],
        ...(anyBroken && { mark: "warn" as const }),
      },
    ],
  };
}

/** Words of more than a line of a column. */
function isLong(figure: ShownFigure): boolean {
  return typeof figure === "string" && figure.length > 16;
}

function hasUncertain({ figures }: ShownGrounds["options"][number]): boolean {
  return Object.values(figures).some(isUncertainFigure);
}

function textOf(figure: ShownFigure | undefined): string {
  return figure === undefined ? "–" : figureText(figure);
}

function decisionFacts({ choice, reason, by, on, override, limits }: ShownMade): readonly Fact[] {
  return [
    { label: "chosen", value: choice },
    { label: "reason", value: reason },
    ...(override === undefined
      ? []
      : [
          { label: "against the limit because", value: override, note: "the limit is overridden on purpose" },
        ]),
    { label: "decided", value: `${by}, ${on}` },
    ...Object.entries(limits).map(([name, figure]) => ({
      label: `limit: ${name}`,
      value: figureText(figure),
    })),
  ];
}

/** What has moved since the decision, and whether the choice may still be taken. */
function sinceBlocks(decision: ShownDecision): readonly Block[] {
  const { now, on, choice, options, override } = decision;
  if (now === undefined) return [];
  const moves = figureMoves(decision, now);
  const blocks: Block[] = [];
  const chosen = now.options.find(({ name }) => name === choice);
  const newly = chosen?.breaks.filter(
    (limit) => !options.find(({ name }) => name === choice)?.breaks.includes(limit),
  );
  if (chosen === undefined)
    blocks.push({ type: "warning", text: `“${choice}” is no option any more. Decide anew.` });
  else if (newly !== undefined && newly.length > 0)
    blocks.push({
      type: "warning",
      text: `Since it was decided, “${choice}” has come to break ${override === undefined ? "a limit" : "another limit"}: ${newly.join("; ")}. Decide anew.`,
    });
  if (moves.length > 0)
    blocks.push({
      type: "table",
      caption: `Figures that have moved since ${on}; the options above show them as they were then`,
      columns: [
        { title: "option", align: "left" },
        { title: "figure", align: "left" },
        { title: "when decided", align: "right" },
        { title: "now", align: "right" },
        { title: "moved by", align: "left" },
      ],
      rows: moves.map(({ of, figure, before, after, by }) => ({
        cells: [of, figure, before, after, by],
        mark: "warn",
      })),
      showRows: 12,
      stacked: true,
    });
  return blocks;
}

function supersededTable(superseded: readonly ShownMade[]): TableBlock {
  return {
    type: "table",
    caption: "Decided before on this question, and superseded",
    columns: [
      { title: "on", align: "left" },
      { title: "by", align: "left" },
      { title: "chosen", align: "left" },
      { title: "reason", align: "left" },
    ],
    rows: superseded.map(({ on, by, choice, reason }) => ({ cells: [on, by, choice, reason] })),
    stacked: true,
  };
}
