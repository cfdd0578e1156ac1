import type { PartsLedger } from "../intake/index.js";
import type { Decision } from "./decision-types.js";
import type { NeededPart, OpenItem, WantedReading } from "./note-types.js";
import type { ShownCaution } from "./sheet-reads.js";

/** Something a sheet noted, and which sheet. */
export type From<T> = T & { readonly sheet: string };

/** All decisions of a rebuild, and those its sheets wanted to make and may not. */
export interface DecisionBook {
  readonly kind: "decision book";
  readonly decisions: readonly Decision[];
  readonly refused: readonly From<{
    readonly name: string;
    readonly question: string;
    readonly choice: string;
    readonly why: string;
  }>[];
}

/** Open items, parts and consumables, and readings still to be taken, of all sheets. */
export interface HandoverLists {
  readonly kind: "handover lists";
  readonly open: readonly From<OpenItem>[];
  readonly parts: readonly From<NeededPart>[];
  readonly measure: readonly From<WantedReading>[];
}

/** The cautions that sheets showed, each once. */
export interface CautionsInForce {
  readonly kind: "cautions in force";
  readonly cautions: readonly (ShownCaution & { readonly sheets: readonly string[] })[];
}

/** How one decision or record stands to the files as they are now, without running anything again. */
export interface Standing {
  /** The decision's name, or the sheet's. */
  readonly of: string;
  readonly holds: boolean;
  /** In a sentence. */
  readonly text: string;
}

/** What whoever takes over must know: `rebuild.handover()`. */
export interface Handover {
  readonly kind: "handover";
  readonly title: string;
  /** The other sheets of the rebuild, and how their last runs ended. */
  readonly sheets: readonly { readonly name: string; readonly ended: string }[];
  readonly book: DecisionBook;
  readonly lists: HandoverLists;
  readonly cautions: CautionsInForce;
  /** The parts ledger as last published by another sheet; a sentence where none has published one. */
  readonly ledger: PartsLedger | string;
  /** Whether decisions and records still stand on the files as they are now. */
  readonly standings: readonly Standing[];
  /** The sources that sheets named, each once. */
  readonly sources: readonly string[];
}
