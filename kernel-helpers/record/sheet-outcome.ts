import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { canonicalJson } from "./canonical-json.js";
import { fileHash } from "./file-hash.js";
import { versions } from "./package-facts.js";
import { readReads, type SheetReads, stateFile } from "./sheet-reads.js";
import { recordFolder } from "./sheet-record.js";
import { writeFile } from "./write-file.js";

/** Where a sheet failed, and why. */
export interface SheetFailure {
  /** Not given where the file itself could not be read. */
  readonly cell?: {
    readonly id: string;
    /** Counted from 1 over all cells of the sheet. */
    readonly number: number;
  };
  readonly message: string;
}

/** How the last run of a sheet from its first cell to its last ended, and on what it stood. */
export interface SheetOutcome extends SheetReads {
  readonly schema: 1;
  readonly sheet: string;
  readonly status: "ok" | "failed";
  /** The hash of the code that was run, as `codeHash` gives it; "" where the file could not be read. */
  readonly code: string;
  readonly failure?: SheetFailure;
  /** Set where some cells were run again later, by themselves and on other inputs. */
  readonly mixed?: true;
  /** SHA-256 of the sheet's record as the run left it; null where there was none. */
  readonly record: string | null;
  /** SHA-256 of the executed notebook as the run left it; null where there was none. */
  readonly output?: string | null;
  readonly versions: Readonly<Record<string, string>>;
}

/** The executed notebook of a sheet, within the rebuild. */
export function outputPath(sheet: string): string {
  return `out/${sheet}.ipynb`;
}

/** The report, within the rebuild. */
export const reportFile = "out/report.html";

/** Writes down how a sheet's run ended, with what it read and which record it left. */
export function writeOutcome(
  directory: string,
  run: Pick<SheetOutcome, "sheet" | "status" | "code" | "failure">,
  output: "to come" | "written" = "written",
): SheetOutcome {
  const { inputs, recalled } = readReads(directory, run.sheet);
  const outcome: SheetOutcome = {
    ...run,
    schema: 1,
    inputs,
    recalled,
    record: recordHash(directory, run.sheet),
    output: output === "written" ? fileHash(join(directory, outputPath(run.sheet))) : null,
    versions: { ...versions() },
  };
  writeFile(stateFile(directory, run.sheet, "run"), canonicalJson(outcome));
  return outcome;
}

/**
 * Marks an outcome when cells were run again by themselves since: what is shown then may stand on other inputs than
 * the rest. On the same inputs they give the same, and nothing is marked.
 */
export function markMixed(directory: string, sheet: string): void {
  const outcome = readOutcome(directory, sheet);
  if (outcome === undefined) return;
  const now = readReads(directory, sheet);
  const others = (["inputs", "recalled"] as const).some((kind) =>
    Object.entries(now[kind]).some(([what, hash]) => outcome[kind][what] !== hash),
  );
  if (others) writeFile(stateFile(directory, sheet, "run"), canonicalJson({ ...outcome, mixed: true }));
}

/** How the last run ended; undefined where there was none, or nothing legible was left of it. */
export function readOutcome(directory: string, sheet: string): SheetOutcome | undefined {
  try {
    const outcome: SheetOutcome = JSON.parse(readFileSync(stateFile(directory, sheet, "run"), "utf8"));
    const legible =
      outcome.schema === 1 &&
      typeof outcome.code === "string" &&
      typeof outcome.versions === "object" &&
      typeof outcome.inputs === "object" &&
      typeof outcome.recalled === "object";
    return legible ? outcome : undefined;
  } catch {
    return undefined;
  }
}

/** How the last run of each sheet ended, for all of which that is known. */
export function readOutcomes(directory: string): readonly SheetOutcome[] {
  const folder = join(directory, "out", "state");
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((file) => file.endsWith(".run.json"))
    .sort()
    .flatMap((file) => readOutcome(directory, file.slice(0, -".run.json".length)) ?? []);
}

/** SHA-256 of a sheet's record file; null where there is none. */
export function recordHash(directory: string, sheet: string): string | null {
  return fileHash(join(directory, recordFolder, `${sheet}.json`));
}
