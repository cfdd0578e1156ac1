import { escapeHtml } from "../../view/escape.js";
import type { ReportInput } from "./report-input.js";

interface Decided {
  readonly sheet: string;
  readonly question: string;
  readonly choice: string;
  /** Who decided, and when. */
  readonly signed: string;
  /** What a reader must know who sees no more than the choice. */
  readonly remarks: readonly string[];
}

/**
 * What people decided in this rebuild, in the order of the sheets, each with the way to where it is argued; "" where
 * nothing was decided. Records are not trusted: what is not of the form of a decision is passed over here, and stands
 * in the record all the same.
 *
 * @param idOf  the id of a sheet's section, by the sheet's place
 */
export function decidedSection({ sheets, records }: ReportInput, idOf: (index: number) => string): string {
  const all = records.flatMap(({ name, text }) => decidedIn(name, text));
  const entries = sheets.flatMap(({ name }, index) =>
    all.filter(({ sheet }) => sheet === name).map((decided) => entry(decided, idOf(index))),
  );
  if (entries.length === 0) return "";
  return `<section class="decided" aria-labelledby="decided-title">
<h2 id="decided-title">What was decided</h2>
<ol>
${entries.join("\n")}
</ol>
</section>
`;
}

function entry({ question, choice, signed, remarks }: Decided, id: string): string {
  const words = remarks.map((remark) => ` <em>${escapeHtml(remark)}</em>`).join("");
  return `<li><a href="#${id}">${escapeHtml(question)}</a><span><strong>${escapeHtml(choice)}</strong>${words}</span><span class="signed">${escapeHtml(signed)}</span></li>`;
}

function decidedIn(file: string, text: string): readonly Decided[] {
  const sheet = file.replace(/\.json$/, "");
  const record = objectOf(jsonOf(text));
  const made = Object.values(objectOf(record.decisions)).flatMap((value) => {
    const { question, choice, by, on, override, now, withdrawn } = objectOf(value);
    if (!areTexts([question, choice, by, on])) return [];
    const remarks = [
      ...(override === undefined ? [] : ["against a limit, on purpose"]),
      ...(now === undefined ? [] : ["its figures have moved since"]),
      ...(withdrawn === undefined ? [] : ["the sheet does not make it any more"]),
    ];
    return [{ sheet, question, choice, signed: `${by}, ${on}`, remarks } as Decided];
  });
  const refused = Object.values(objectOf(record.refused)).flatMap((value) => {
    const { question, choice } = objectOf(value);
    if (!areTexts([question, choice])) return [];
    return [{ sheet, question, choice, signed: "", remarks: ["refused: not decided"] } as Decided];
  });
  return [...made, ...refused];
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function objectOf(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null ? (value as Record<string, unknown>) : {};
}

function areTexts(values: readonly unknown[]): boolean {
  return values.every((value) => typeof value === "string");
}
