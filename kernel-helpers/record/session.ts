import type { ShownCaution } from "./sheet-reads.js";
import type { RefusedDecision } from "./sheet-record.js";
import type { StoredMade } from "./stored-decision.js";

/** Which sheet is running, and in which rebuild folder; nothing is set outside a notebook. */
export interface Session {
  /** The sheet's name: its file name without `.ipynb`. */
  readonly sheet?: string;
  /** The folder the sheet runs in. */
  readonly directory?: string;
}

let session: Session = Object.freeze({});
/** What has been read so far from each rebuild folder. */
const reads = new Map<string, ReadSoFar>();
/** What each sheet has handed on so far, by rebuild folder and sheet. */
const handedOn = new Map<string, HandedOn>();

/** What the running sheet has shown so far: cautions, and sources named. */
let shown: ShownSoFar = { cautions: [], sources: [] };

/** Inputs and recalled results with their hashes, growing while a sheet runs; null for a file that is not there. */
export interface ReadSoFar {
  readonly inputs: Record<string, string | null>;
  readonly recalled: Record<string, string>;
}

export interface ShownSoFar {
  readonly cautions: ShownCaution[];
  readonly sources: string[];
}

/** What a sheet has handed on through its record since the last reset, and on what it stood. */
export interface HandedOn {
  readonly inputs: Record<string, string>;
  readonly recalled: Record<string, string>;
  /** Results, decisions and notes as a record keeps them. */
  readonly published: Record<string, unknown>;
  readonly decided: Record<string, StoredMade>;
  readonly refused: Record<string, RefusedDecision>;
  readonly notes: { readonly open: unknown[]; readonly parts: unknown[]; readonly measure: unknown[] };
}

/** What is running now. The kernel sets it; helpers that read or write the rebuild folder ask here. */
export function getSession(): Session {
  return session;
}

/** Sets what is given and keeps the rest. */
export function setSession(change: Session): void {
  session = Object.freeze({ ...session, ...change });
}

/** Forgets everything: the kernel calls this before each sheet. */
export function resetSession(): void {
  session = Object.freeze({});
  reads.clear();
  handedOn.clear();
  shown = { cautions: [], sources: [] };
}

/** All that has been read from a rebuild folder since the last reset, however often it was opened. */
export function readSoFar(directory: string): ReadSoFar {
  const known = reads.get(directory) ?? { inputs: {}, recalled: {} };
  reads.set(directory, known);
  return known;
}

/** All that a sheet has handed on in a rebuild folder since the last reset, however often it was opened. */
export function handedOnSoFar(directory: string, sheet: string): HandedOn {
  const key = JSON.stringify([directory, sheet]);
  const known = handedOn.get(key) ?? {
    inputs: {},
    recalled: {},
    published: {},
    decided: {},
    refused: {},
    notes: { open: [], parts: [], measure: [] },
  };
  handedOn.set(key, known);
  return known;
}

/** The cautions shown and the sources named since the last reset, growing while a sheet runs. */
export function shownSoFar(): ShownSoFar {
  return shown;
}

/** The rebuild folders that were opened since the last reset. */
export function openedSoFar(): readonly string[] {
  return [...reads.keys()];
}
