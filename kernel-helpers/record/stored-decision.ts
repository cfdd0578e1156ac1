import { canonicalJson } from "./canonical-json.js";
import type {
  Decision,
  DecisionFigure,
  DecisionFigures,
  DecisionGrounds,
  DecisionMade,
  DecisionOptionGiven,
  DecisionRequest,
} from "./decision-types.js";
import { restoreValue, storeValue } from "./stored-value.js";

/** A figure in a record. A list keeps the order, which canonical JSON does not. */
interface StoredFigure {
  readonly figure: string;
  readonly value: unknown;
}

/** Options and limits in a record. */
export interface StoredGrounds {
  readonly options: readonly {
    readonly name: string;
    readonly figures: readonly StoredFigure[];
    readonly breaks: readonly string[];
  }[];
  readonly limits?: readonly StoredFigure[];
}

/** What a decision stood on: all files behind it with the hashes of that day, and what computed with them. */
export interface DecisionBasis {
  readonly inputs: Readonly<Record<string, string>>;
  readonly versions: Readonly<Record<string, string>>;
  /** Sheet, and the hash of its code as run; filled in when the sheet has run through. */
  readonly code?: Readonly<Record<string, string>>;
}

/** A decision a person made, in a record, with the figures of that day. */
export interface StoredMade extends StoredGrounds {
  readonly question: string;
  readonly choice: string;
  readonly reason: string;
  readonly by: string;
  readonly on: string;
  readonly override?: string;
  readonly basis: DecisionBasis;
}

/** A decision in a record. */
export interface StoredDecision extends StoredMade {
  /** What the last run computed, where it is not what was decided on. */
  readonly now?: StoredGrounds;
  /** Set where the sheet ran through and did not make this decision any more. */
  readonly withdrawn?: true;
  /** Earlier ones, oldest first. */
  readonly superseded?: readonly StoredMade[];
}

/** A decision as a record keeps it. */
export function storeDecision(request: DecisionRequest, basis: DecisionBasis): StoredMade {
  const { question, choice, reason, by, on, override, options, limits } = request;
  return {
    question,
    choice,
    reason,
    by,
    on,
    ...(override !== undefined && { override }),
    options: options.map(({ name, figures, breaks }) => ({
      name,
      figures: storeFigures(figures, name),
      breaks: [...breaks],
    })),
    ...(limits !== undefined && { limits: storeFigures(limits, "limits") }),
    basis,
  };
}

/**
 * What the record keeps when a decision is made, given what it kept before.
 *
 * - The same decision again (question, choice, reason, initials, date, override): the figures of the day it was made
 *   stay; what they are now is put beside them where it differs.
 * - Another decision: it takes the place of the one before, which is kept among the superseded.
 */
export function mergeDecision(before: StoredDecision | undefined, made: StoredMade): StoredDecision {
  if (before === undefined) return made;
  const { now: _now, withdrawn: _withdrawn, superseded = [], ...current } = before;
  const all: readonly StoredMade[] = [...superseded, current];
  const known = all.find((other) => sameAct(other, made));
  const others = all.filter((other) => other !== known);
  return {
    ...(known ?? made),
    ...(known !== undefined && !sameGrounds(known, made) && { now: groundsOf(made) }),
    ...(others.length > 0 && { superseded: [...others].sort(byDate) }),
  };
}

/** A decision of a record as a value: quantities made anew, all frozen. */
export function restoreDecision(sheet: string, file: string, name: string, stored: StoredDecision): Decision {
  return Object.freeze({
    kind: "decision",
    name,
    sheet,
    file,
    ...restoreMade(stored),
    ...(stored.now !== undefined && { now: Object.freeze(restoreGrounds(stored.now)) }),
    withdrawn: stored.withdrawn === true,
    superseded: Object.freeze((stored.superseded ?? []).map((made) => Object.freeze(restoreMade(made)))),
  });
}

/** Whether two are one decision, whatever the figures. */
export function sameAct(a: StoredMade, b: StoredMade): boolean {
  return (["question", "choice", "reason", "by", "on", "override"] as const).every(
    (part) => a[part] === b[part],
  );
}

/** Whether two decisions stood on the same figures. */
export function sameGrounds(a: StoredGrounds, b: StoredGrounds): boolean {
  return canonicalJson(groundsOf(a)) === canonicalJson(groundsOf(b));
}

function groundsOf({ options, limits }: StoredGrounds): StoredGrounds {
  return { options, ...(limits !== undefined && { limits }) };
}

/** Options and limits of a record as values. */
export function restoreGrounds({ options, limits }: StoredGrounds): DecisionGrounds {
  return {
    options: Object.freeze(
      options.map(({ name, figures, breaks }) =>
        Object.freeze({ name, figures: restoreFigures(figures), breaks: Object.freeze([...breaks]) }),
      ),
    ),
    limits: restoreFigures(limits ?? []),
  };
}

function restoreMade(stored: StoredMade): DecisionMade {
  const { question, choice, reason, by, on, override } = stored;
  return {
    question,
    choice,
    reason,
    by,
    on,
    ...(override !== undefined && { override }),
    ...restoreGrounds(stored),
  };
}

function storeFigures(figures: DecisionOptionGiven["figures"], place: string): readonly StoredFigure[] {
  return Object.entries(figures)
    .filter(([, value]) => value !== undefined)
    .map(([figure, value]) => ({ figure, value: storeValue(value, `${place}: ${figure}`) }));
}

function restoreFigures(stored: readonly StoredFigure[]): DecisionFigures {
  return Object.freeze(
    Object.fromEntries(stored.map(({ figure, value }) => [figure, restoreValue(value) as DecisionFigure])),
  );
}

function byDate(a: StoredMade, b: StoredMade): number {
  if (a.on !== b.on) return a.on < b.on ? -1 : 1;
  return canonicalJson(a) < canonicalJson(b) ? -1 : 1;
}
