import { type StudyRow, shareInterval, shareOf } from "./study-row.js";

const header = ["shaft", "promise", "trials", "wished", "stated, mean", "found", "95 % interval of it"];

/** The rows as a Markdown table, its columns of even width. */
export function studyTable(rows: readonly StudyRow[]): string {
  const cells = rows.map((row) => [
    row.shaft,
    row.promise,
    row.surveys === row.trials ? `${row.trials}` : `${row.trials} in ${row.surveys} surveys`,
    wishedText(row),
    row.stated === undefined ? "" : percent(row.stated),
    percent(shareOf(row)),
    shareInterval(row.kept, row.trials).map(percent).join(" to "),
  ]);
  const widths = header.map((title, k) => Math.max(title.length, ...cells.map((row) => row[k]!.length)));
  const line = (row: readonly string[]): string =>
    `| ${row.map((cell, k) => cell.padEnd(widths[k]!)).join(" | ")} |`;
  return [line(header), line(widths.map((width) => "-".repeat(width))), ...cells.map(line)].join("\n");
}

/** Whether the share found lies in the range wished for; true where nothing is promised. */
export function asWished(row: StudyRow): boolean {
  const [least, most] = row.wished ?? [0, 1];
  return shareOf(row) >= least && shareOf(row) <= most;
}

function wishedText({ wished }: StudyRow): string {
  if (wished === undefined) return "no promise";
  const [least, most] = wished.map((share) => Math.round(100 * share));
  return most === 100 ? `at least ${least} %` : `${least} to ${most} %`;
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)} %`;
}
