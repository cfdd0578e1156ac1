import type { SheetStateName } from "../../record/sheet-state.js";

/**
 * What the server tells its pages without being asked, as JSON: on `GET /api/events` as server-sent events
 * and, on the same address, over a WebSocket. Browsers keep at most six connections of the first kind to one
 * server, over all tabs, but many of the second.
 */
export type LiveEvent =
  | HelloEvent
  | FileChangedEvent
  | StateEvent
  | ProgressEvent
  | RunStartedEvent
  | RunEndedEvent
  | KernelEvent;

/** The first event of each connection; another `server` than before says that the server was started anew. */
export interface HelloEvent {
  readonly type: "hello";
  readonly server: string;
}

/** A file is not what it was, whoever changed it; who knows the hash already may ignore it. */
export interface FileChangedEvent {
  readonly type: "file-changed";
  readonly kind: "sheet" | "table" | "rebuild" | "outputs";
  /** Of the sheet or table, as in its address; "rebuild.json" for that file. */
  readonly name: string;
  /** SHA-256 of its bytes; null where the file is gone. */
  readonly sha256: string | null;
}

/** The states of all sheets, after at least one has changed. */
export interface StateEvent {
  readonly type: "state";
  readonly sheets: readonly { readonly name: string; readonly state: SheetStateName; readonly why: string }[];
}

/** How far a run of sheets has come. */
export interface ProgressEvent {
  readonly type: "progress";
  readonly stage: "waiting" | "kernel-started" | "sheet-started" | "cell-started" | "sheet-ended";
  /** Not given while another run is waited for or the kernel starts. */
  readonly sheet?: string;
  /** The cell at work, counted from 0 over all cells of the sheet. */
  readonly index?: number;
  readonly cells?: number;
  /** How the sheet ended. */
  readonly status?: "ok" | "failed";
  /** Why it failed: cell, source and error. */
  readonly failure?: string;
}

export interface RunStartedEvent {
  readonly type: "run-started";
  readonly sheets: readonly string[];
}

export interface RunEndedEvent {
  readonly type: "run-ended";
  readonly failed: readonly string[];
  /** Whether out/report.html was written: only where every sheet was run. */
  readonly report: boolean;
  /** Why the run came to nothing; not given where it reached its end. */
  readonly error?: string;
}

/** What became of the kernel of a sheet. */
export interface KernelEvent {
  readonly type: "kernel";
  readonly id: string;
  readonly sheet: string;
  readonly state: "started" | "restarted" | "dead" | "ended";
  /** How it died. */
  readonly why?: string;
}
