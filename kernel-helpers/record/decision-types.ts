import type { AnyQuantity, Measured, Temperature } from "../quantity/index.js";

/** A figure an option is judged by: measured, taken as exact, or in words. */
export type DecisionFigure = Measured<AnyQuantity | number> | AnyQuantity | Temperature | number | string;

/** Figures by name, in the order to show them. */
export type DecisionFigures = Readonly<Record<string, DecisionFigure>>;

/** One way to go on. A helper that works out options returns a list of these; the shape is all that counts. */
export interface DecisionOption {
  readonly name: string;
  readonly figures: DecisionFigures;
  /** The limits it violates, each in words; empty for one that violates none. */
  readonly breaks: readonly string[];
}

/** An option as a cell gives it: a figure that only other options have may be undefined, and is left out. */
export interface DecisionOptionGiven {
  readonly name: string;
  readonly figures: Readonly<Record<string, DecisionFigure | undefined>>;
  readonly breaks: readonly string[];
}

/** A decision to be written down: `rebuild.decide(...)`. */
export interface DecisionRequest {
  /** The name under which it is kept and superseded, e.g. "shaft". */
  readonly name: string;
  readonly question: string;
  /** As they were computed, the rejected ones too. */
  readonly options: readonly DecisionOptionGiven[];
  /** The name of the option taken. */
  readonly choice: string;
  readonly reason: string;
  /** Initials of who decided. */
  readonly by: string;
  /** The day it was decided: year-month-day. */
  readonly on: string;
  /** Why the option is taken although it violates a limit. */
  readonly override?: string;
  /** The limits the options were judged by. */
  readonly limits?: DecisionFigures;
}

/** Options and limits as one run computed them. */
export interface DecisionGrounds {
  readonly options: readonly DecisionOption[];
  readonly limits: DecisionFigures;
}

/** What a person decided, with the figures as they were on that day. */
export interface DecisionMade extends DecisionGrounds {
  readonly question: string;
  readonly choice: string;
  readonly reason: string;
  readonly by: string;
  readonly on: string;
  readonly override?: string;
}

/** A decision as it stands in a sheet and in the record. */
export interface Decision extends DecisionMade {
  readonly kind: "decision";
  readonly name: string;
  readonly sheet: string;
  /** The record's path within the rebuild. */
  readonly file: string;
  /** What the figures are now, where they are not those it was decided on. */
  readonly now?: DecisionGrounds;
  /** True where the sheet no longer makes this decision. */
  readonly withdrawn: boolean;
  /** Earlier decisions on the same question, oldest first. */
  readonly superseded: readonly DecisionMade[];
}
