import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { canonicalJson } from "./canonical-json.js";
import { writeFile } from "./write-file.js";

/** What a sheet took in, with the hash of each as it was then. */
export interface SheetReads {
  /** Path within the rebuild, and SHA-256 of its bytes; null for a file that was asked for and not there. */
  readonly inputs: Readonly<Record<string, string | null>>;
  /** Results of other sheets: "04-shaft-survey: wear", and the hash of what was taken. */
  readonly recalled: Readonly<Record<string, string>>;
}

/** Where a hand could get hurt: what a sheet showed of it. */
export interface ShownCaution {
  readonly title: string;
  readonly points: readonly string[];
}

/** What a running sheet has done besides reading. */
export interface SheetDeeds {
  /** Whether it has written its record. */
  readonly wrote: boolean;
  /** The decisions it has made, by name. */
  readonly decided: readonly string[];
  /** The cautions it has shown. */
  readonly cautions: readonly ShownCaution[];
  /** The sources named in what it has shown. */
  readonly sources: readonly string[];
}

/** What a sheet noted, and which process it ran in. */
export interface NotedReads extends SheetReads, SheetDeeds {
  /** 0 where nothing was noted. */
  readonly process: number;
}

/** Within a rebuild: what is noted about the last run of each sheet. Derived, and made anew by running. */
export function stateFile(directory: string, sheet: string, what: "reads" | "run"): string {
  return join(directory, "out", "state", `${sheet}.${what}.json`);
}

/**
 * Notes what a running sheet has taken in so far, for whoever judges later whether its results still hold. Where
 * the folder cannot be written, only that judgement is lost: nothing is thrown.
 */
export function noteReads(directory: string, sheet: string, reads: SheetReads & SheetDeeds): void {
  try {
    writeFile(stateFile(directory, sheet, "reads"), canonicalJson({ ...reads, process: process.pid }));
  } catch {
    // The sheet itself goes on.
  }
}

/** What the sheet has noted since `forgetReads`; nothing where it noted nothing. */
export function readReads(directory: string, sheet: string): NotedReads {
  const nothing: NotedReads = {
    inputs: {},
    recalled: {},
    process: 0,
    wrote: false,
    decided: [],
    cautions: [],
    sources: [],
  };
  try {
    return { ...nothing, ...JSON.parse(readFileSync(stateFile(directory, sheet, "reads"), "utf8")) };
  } catch {
    return nothing;
  }
}

/** Before a sheet is run from clean state: what an earlier run took in counts no more. */
export function forgetReads(directory: string, sheet: string): void {
  rmSync(stateFile(directory, sheet, "reads"), { force: true });
}
