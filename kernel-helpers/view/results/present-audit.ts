import type { Block, Presentation, VerdictBlock } from "../blocks.js";
import type { Audit, AuditedDecision, CarryingReadings, DecisionVerdict } from "./audit-types.js";
import { countText } from "./count-text.js";

/** What became of every decision, and what in the folder is not as it was left. */
export function presentAudit(audit: Audit): Presentation {
  return Object.freeze<Presentation>({
    title: `Audit of ${audit.title}`,
    blocks: [
      { type: "facts", facts: summary(audit) },
      ...fileBlocks(audit),
      ...failureBlocks(audit),
      ...audit.decisions.flatMap(decisionBlocks),
      ...methodBlocks(audit),
      ...resultBlocks(audit),
    ],
  });
}

function summary({ files, decisions, results, rerun, versions }: Audit): { label: string; value: string }[] {
  const verdicts = (["stands", "stands, figures moved", "no longer follows", "cannot be checked"] as const)
    .filter((verdict) => decisions.some((one) => one.verdict === verdict))
    .map((verdict) => verdictCount(verdict, decisions));
  return [
    {
      label: "files",
      value:
        files.findings.length > 0
          ? `${countText(files.compared, "file")} compared, ${countText(files.findings.length, "finding")}${notWholeText(files)}`
          : files.notWhole.length > 0
            ? `${countText(files.compared, "file")}, as the last run left them as far as can be told${notWholeText(files)}`
            : `${countText(files.compared, "file")}, all as the last run left them`,
    },
    { label: "decisions", value: decisions.length === 0 ? "none is on record" : verdicts.join("; ") },
    {
      label: "results",
      value: !rerun
        ? "not computed again"
        : results.length === 0
          ? "all come out again as recorded"
          : `${countText(results.length, "result")} come${results.length === 1 ? "s" : ""} out otherwise`,
    },
    {
      label: "computed with",
      value: Object.entries(versions)
        .map(([name, version]) => `${name} ${version}`)
        .join(", "),
    },
  ];
}

/** "1 stands: shaft", "2 no longer follow: nut, white metal". */
function verdictCount(verdict: DecisionVerdict, decisions: Audit["decisions"]): string {
  const names = decisions.filter((one) => one.verdict === verdict).map(({ name }) => name);
  const words =
    names.length === 1 ? verdict : verdict.replace("stands", "stand").replace("follows", "follow");
  return `${names.length} ${words}: ${names.join(", ")}`;
}

/** Sheets that failed; one that only misses what another would have published is named with that one. */
function failureBlocks({ failed }: Audit): readonly Block[] {
  const follows = failed.filter(({ why }, i) => i > 0 && /recall: no sheet has published/.test(why));
  const blocks = failed
    .filter((failure) => !follows.includes(failure))
    .map(
      ({ sheet, why }): Block => ({
        type: "warning",
        text: `${sheet} failed when it was run again: ${why}`,
      }),
    );
  if (follows.length === 0) return blocks;
  const names = follows.map(({ sheet }) => sheet).join(", ");
  const text = `${names} stopped too, for want of what ${follows.length === 1 ? "it takes" : "they take"} over from sheets before`;
  return [...blocks, { type: "warning", text }];
}

function notWholeText({ notWhole }: Audit["files"]): string {
  return notWhole.length === 0 ? "" : `; ${notWhole.length} cannot be checked, for something was left out`;
}

function fileBlocks({ files }: Audit): readonly Block[] {
  const columns = [
    { title: "file", align: "left" },
    { title: "what was found", align: "left" },
  ] as const;
  const blocks: Block[] = [];
  if (files.findings.length > 0)
    blocks.push({
      type: "table",
      caption: "Not as the last run left it",
      columns,
      rows: files.findings.map(({ file, text }) => ({
        cells: [file, withoutFile(text, file)],
        mark: "warn",
      })),
      showRows: 20,
      stacked: true,
    });
  if (files.notWhole.length > 0)
    blocks.push({
      type: "table",
      caption: "Cannot be checked in this copy, for something was left out when it was shared",
      columns: [columns[0], { title: "what is missing", align: "left" }],
      rows: files.notWhole.map(({ file, text }) => ({ cells: [file, text] })),
      showRows: 20,
      stacked: true,
    });
  return blocks;
}

/** The file stands in the column before. */
function withoutFile(text: string, file: string): string {
  return text.startsWith(`${file} `) ? text.slice(file.length + 1) : text;
}

const outcomes: Readonly<Record<DecisionVerdict, VerdictBlock["outcome"]>> = {
  stands: "yes",
  "stands, figures moved": "yes",
  "no longer follows": "no",
  "cannot be checked": "cannot tell yet",
};

function decisionBlocks(decision: AuditedDecision): readonly Block[] {
  const { name, sheet, question, choice, by, on, verdict, why, moved, because, carried } = decision;
  const blocks: Block[] = [
    {
      type: "verdict",
      outcome: outcomes[verdict],
      text: `${name}: ${verdict}`,
      because: `${question} “${choice}” (${by}, ${on}, ${sheet}). ${why}`,
    },
  ];
  if (moved.length > 0)
    blocks.push({
      type: "table",
      caption: `Figures of “${name}” that moved since ${on}; ± at 95 %`,
      columns: [
        { title: "option", align: "left" },
        { title: "figure", align: "left" },
        { title: "when decided", align: "right" },
        { title: "now", align: "right" },
        { title: "moved by", align: "left" },
      ],
      rows: moved.map(({ of, figure, before, after, by: move }) => ({
        cells: [of, figure, before, after, move],
      })),
      showRows: 12,
      stacked: true,
    });
  const how = verdict === "stands" ? "Changed behind it, without moving a figure of it" : "Because of";
  if (because.length > 0) blocks.push({ type: "text", text: `${how}: ${because.join(" · ")}` });
  if (carried !== undefined) blocks.push(...carriedBlocks(name, carried));
  return blocks;
}

function methodBlocks({ decisions }: Audit): readonly Block[] {
  const method = decisions.find(({ carried }) => carried !== undefined)?.carried?.method;
  return method === undefined ? [] : [{ type: "text", text: method }];
}

function carriedBlocks(
  name: string,
  { reach, readings, apart, moving, overturning, cells }: CarryingReadings,
): readonly Block[] {
  const behind = `${countText(readings, "reading")} ${readings === 1 ? "lies" : "lie"} behind “${name}”`;
  const unread =
    apart === 0
      ? ""
      : `, ${apart} of them in tables that nothing on the way to it reads and that cannot move it`;
  const flips =
    overturning.length === 0
      ? `None, moved by itself within ${reach}, overturns it.`
      : `${overturning.length} of them, moved by itself within ${reach}, would overturn it.`;
  const text = `${behind}${unread}. ${moving} of them ${moving === 1 ? "moves" : "move"} a figure of it. ${flips} ${cells}`;
  if (overturning.length === 0) return [{ type: "text", text }];
  return [
    { type: "text", text },
    {
      type: "table",
      caption: `How far a reading may move before “${name}” no longer follows; the nearest first`,
      columns: [
        { title: "reading", align: "left" },
        { title: "as read", align: "right" },
        { title: "flips at or below", align: "right" },
        { title: "flips at or above", align: "right" },
      ],
      rows: overturning.map(({ file, line, column, reading, flipsBelow, flipsAbove }) => ({
        cells: [`${file} line ${line}, ${column}`, reading, flipsBelow ?? "–", flipsAbove ?? "–"],
      })),
      showRows: 20,
    },
  ];
}

function resultBlocks({ results }: Audit): readonly Block[] {
  if (results.length === 0) return [];
  const table: Block = {
    type: "table",
    caption: "Results that do not come out as recorded, each with the place that moved most; ± at 95 %",
    columns: [
      { title: "result", align: "left" },
      { title: "place", align: "left" },
      { title: "on record", align: "right" },
      { title: "now", align: "right" },
      { title: "moved by", align: "left" },
      { title: "more places", align: "right" },
    ],
    rows: results.map(({ sheet, name, text, moved, remark }) => {
      const head = `${name} of ${sheet}${remark === undefined ? "" : ` (${remark})`}`;
      if (moved === undefined) return { cells: [head, text, "", "", "", ""] };
      const { where, before, after, by, others } = moved;
      return { cells: [head, where, before, after, by, others === 0 ? "" : String(others)] };
    }),
    showRows: 20,
    stacked: true,
  };
  // Sheets that take over from each other stand on the same changes: said once for all of them.
  const sheetsBy = new Map<string, Set<string>>();
  for (const { sheet, because } of results) {
    const changes = because.join(" · ");
    sheetsBy.set(changes, (sheetsBy.get(changes) ?? new Set()).add(sheet));
  }
  return [
    table,
    ...[...sheetsBy].map(([changes, sheets]): Block => {
      const which = sheetsBy.size === 1 ? "" : ` (${[...sheets].join(", ")})`;
      const text =
        changes === ""
          ? "nothing, so the sheet does not give the same twice or its record was altered"
          : changes;
      return { type: "text", text: `Changed behind these results${which}: ${text}` };
    }),
  ];
}
