import type { AnyQuantity, Measured } from "../quantity/index.js";

/** A size or a count in a note: as computed, or in words. */
export type NoteFigure = Measured<AnyQuantity | number> | AnyQuantity | number | string;

/** A question that is still open. */
export interface OpenItem {
  readonly what: string;
  /** What must come first, e.g. "the second survey". */
  readonly waitsFor?: string;
}

/** A part or a consumable that the work needs. */
export interface NeededPart {
  readonly what: string;
  /** How many, or how much. */
  readonly count?: NoteFigure;
  readonly size?: NoteFigure;
  /** What it is for, e.g. "box next to the driven pulley". */
  readonly for?: string;
}

/** A reading still to be taken. */
export interface WantedReading {
  readonly what: string;
  readonly where?: NoteFigure;
  /** With which instrument. */
  readonly with?: string;
  readonly why?: string;
}

/** What a sheet has to tell whoever takes over: `rebuild.note(...)`. A plain text stands for its `what`. */
export interface Notes {
  readonly open?: readonly (string | OpenItem)[];
  readonly parts?: readonly (string | NeededPart)[];
  readonly measure?: readonly (string | WantedReading)[];
}

/** Notes as they are kept. */
export interface KeptNotes {
  readonly open: readonly OpenItem[];
  readonly parts: readonly NeededPart[];
  readonly measure: readonly WantedReading[];
}

/** What was noted, and where it is kept. */
export interface Noted extends KeptNotes {
  readonly kind: "noted";
  readonly sheet: string;
  /** The record's path within the rebuild. */
  readonly file: string;
}
