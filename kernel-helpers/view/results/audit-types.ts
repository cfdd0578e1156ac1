/** What became of a decision when the rebuild was run again. */
export type DecisionVerdict = "stands" | "stands, figures moved" | "no longer follows" | "cannot be checked";

/** A figure that is not what it was when it was decided. */
export interface MovedFigure {
  /** The option it belongs to, or "limit". */
  readonly of: string;
  readonly figure: string;
  readonly before: string;
  readonly after: string;
  /** By how much, with unit and sign, and against its uncertainty; "" where that cannot be said. */
  readonly by: string;
}

/** A reading on which a decision hangs, and how far it may move. */
export interface CarryingReading {
  readonly file: string;
  readonly line: number;
  readonly column: string;
  readonly reading: string;
  /** The nearest reading below at which the decision no longer follows; undefined where none was found. */
  readonly flipsBelow?: string;
  /** The same above. */
  readonly flipsAbove?: string;
}

/** What carried a decision: readings that move its figures, and those that would overturn it. */
export interface CarryingReadings {
  /** How it was found, and where the search ends; the same for every decision of an audit. */
  readonly method: string;
  /** How far each reading was moved, in words. */
  readonly reach: string;
  /** Which cells were run for it, in a sentence or two. */
  readonly cells: string;
  /** How many readings lie behind the decision. */
  readonly readings: number;
  /** How many of them stand in tables that nothing on the way to the decision reads; they were not moved. */
  readonly apart: number;
  /** How many of them move a figure of it. */
  readonly moving: number;
  /** Those that overturn it within reach, the nearest first. */
  readonly overturning: readonly CarryingReading[];
}

/** A decision under audit. */
export interface AuditedDecision {
  readonly name: string;
  readonly sheet: string;
  readonly question: string;
  readonly choice: string;
  readonly by: string;
  readonly on: string;
  readonly verdict: DecisionVerdict;
  /** In a sentence or two. */
  readonly why: string;
  readonly moved: readonly MovedFigure[];
  /** Inputs, code or versions that moved it, each in words; where it stands unmoved, those that changed all the same. */
  readonly because: readonly string[];
  readonly carried?: CarryingReadings;
}

/** A published result that the run made now does not give as it is recorded. */
export interface AuditedResult {
  readonly sheet: string;
  readonly name: string;
  /** In a sentence. */
  readonly text: string;
  /** The place in it that moved most against its uncertainty, or the first; undefined where the result has gone. */
  readonly moved?: MovedPlace;
  /** What changed behind its sheet, each in words; empty where nothing did. */
  readonly because: readonly string[];
  /** What else a reader must know of it. */
  readonly remark?: string;
}

/** A place in a result whose value is not as recorded. */
export interface MovedPlace {
  /** In words: "bands 2, depth". */
  readonly where: string;
  readonly before: string;
  readonly after: string;
  /** By how much, as in a {@link MovedFigure}. */
  readonly by: string;
  /** How many more places of the result differ. */
  readonly others: number;
}

/** The outcome of an audit. */
export interface Audit {
  readonly kind: "audit";
  readonly schema: 1;
  readonly title: string;
  /** What the hashes say: files that are not as the last run left them. */
  readonly files: {
    readonly compared: number;
    readonly findings: readonly { readonly file: string; readonly what: string; readonly text: string }[];
    /** In a shared copy: files that are otherwise because something was left out, so that they cannot be checked. */
    readonly notWhole: readonly { readonly file: string; readonly text: string }[];
  };
  /** Whether the sheets were run again; without that, decisions cannot be checked. */
  readonly rerun: boolean;
  /** Sheets that failed when they were run again, each with its reason. */
  readonly failed: readonly { readonly sheet: string; readonly why: string }[];
  readonly decisions: readonly AuditedDecision[];
  readonly results: readonly AuditedResult[];
  /** What computed now. */
  readonly versions: Readonly<Record<string, string>>;
}
