/** Where a part is in the work. */
export type PartState = "in place" | "removed" | "out for work" | "back" | "ready" | "refitted";

/** A part of the machine as the ledger keeps it. */
export interface LedgerPart {
  readonly part: string;
  readonly state: PartState;
  /** The parts that must be off before this one comes off. */
  readonly comesOffAfter: readonly string[];
  /** The parts that must be ready or refitted before this one is refitted, besides those of the order. */
  readonly waitsFor: readonly string[];
  /** Match marks, side, which way round: where it was. */
  readonly marks: string;
  readonly remark: string;
  /** The line of the file. */
  readonly line: number;
}

/** A part that cannot be taken on yet, and what must come first. */
export interface BlockedPart {
  readonly part: string;
  readonly by: readonly string[];
}

/** The order in which a machine comes apart and goes together, and how far it has come. */
export interface PartsLedger {
  readonly kind: "parts ledger";
  readonly title: string;
  readonly parts: readonly LedgerPart[];
  /** All parts in an order in which they can come off; what is free first, then by the order of the table. */
  readonly removal: readonly string[];
  /** All parts in an order in which they can be refitted. */
  readonly refitting: readonly string[];
  /** In place, with nothing before them: may come off now. */
  readonly removeNext: readonly string[];
  /** Ready, with all that goes on before them refitted: may go on now. */
  readonly refitNext: readonly string[];
  readonly blockedOff: readonly BlockedPart[];
  readonly blockedOn: readonly BlockedPart[];
  readonly counts: Readonly<Record<PartState, number>>;
  readonly warnings: readonly string[];
}
