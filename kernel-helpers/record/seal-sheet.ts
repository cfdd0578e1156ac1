import { type CellToKeep, codeText } from "./code-text.js";
import { keepContent, keepInputs } from "./kept-inputs.js";
import { versions } from "./package-facts.js";
import { codeHash } from "./sheet-code.js";
import { type SheetFailure, type SheetOutcome, writeOutcome } from "./sheet-outcome.js";
import { readReads } from "./sheet-reads.js";
import { readSheetRecord, type SheetRecord, writeSheetRecord } from "./sheet-record.js";
import type { StoredDecision } from "./stored-decision.js";

/** How a sheet's run from its first cell to its last ended. */
export interface EndedRun {
  readonly sheet: string;
  readonly status: "ok" | "failed";
  readonly failure?: SheetFailure;
  /** The cells as run; not given where the file could not be read. */
  readonly cells?: readonly CellToKeep[];
  /** "to come" where the executed notebook of this run has still to be written; it has been where not given. */
  readonly output?: "to come" | "written";
}

/**
 * Closes a sheet's run: its record gets the code that was run and how it ended, copies of the inputs are kept, and the
 * outcome is noted for `sheetStates`. A record that this run did not write holds nothing of it, and is written anew;
 * only decisions stay, marked as withdrawn where a run that went through did not make them any more.
 */
export function sealSheet(directory: string, run: EndedRun): SheetOutcome {
  const { sheet, status, failure, cells = [] } = run;
  const reads = readReads(directory, sheet);
  keepInputs(directory, reads.inputs);
  // A sheet that failed before it wrote anything leaves what an earlier run wrote; its outcome says that it failed.
  if (status === "ok" || reads.wrote) {
    const code = keepContent(directory, `${sheet}.ts`, codeText(cells));
    writeSheetRecord(directory, sealed(directory, run, code));
  }
  const outcome = { sheet, status, code: codeHash(cells), ...(failure && { failure }) };
  return writeOutcome(directory, outcome, run.output);
}

function sealed(directory: string, { sheet, status }: EndedRun, code: string): Omit<SheetRecord, "schema"> {
  const { inputs, recalled, wrote, decided, cautions, sources } = readReads(directory, sheet);
  const before = readSheetRecord(directory, sheet);
  const written = wrote ? before : undefined;
  const decisions = Object.entries(before?.decisions ?? {}).map(([name, decision]) => {
    const withdrawn = status === "ok" && !decided.includes(name);
    return [name, { ...withCode(decision, sheet, code), ...(withdrawn && { withdrawn }) }] as const;
  });
  return {
    sheet,
    inputs: Object.fromEntries(
      Object.entries(inputs).filter((input): input is [string, string] => input[1] !== null),
    ),
    recalled,
    versions: { ...versions() },
    published: written?.published ?? {},
    decisions: Object.fromEntries(decisions),
    refused: written?.refused ?? {},
    notes: written?.notes ?? {},
    cautions,
    // Those of what was handed on are in the record; what was shown after that comes to them.
    sources: [...new Set([...(written?.sources ?? []), ...sources])].sort(),
    code,
    ended: status === "ok" ? "ran through" : "failed",
  };
}

/** A decision first made in this run learns the code of the sheet that made it. */
function withCode(decision: StoredDecision, sheet: string, code: string): StoredDecision {
  const { basis } = decision;
  if (basis.code !== undefined && Object.hasOwn(basis.code, sheet)) return decision;
  return { ...decision, basis: { ...basis, code: { ...basis.code, [sheet]: code } } };
}
