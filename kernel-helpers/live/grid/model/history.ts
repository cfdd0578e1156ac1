import type { CsvDocument } from "./csv-document.js";

/** Every state of a document since it was opened, with the place each step was made at. */
export interface History<Place> {
  readonly past: readonly Step<Place>[];
  readonly present: CsvDocument;
  readonly future: readonly Step<Place>[];
}

export interface Step<Place> {
  /** The document on the other side of the step. */
  readonly document: CsvDocument;
  /** What was done, e.g. "row deleted". */
  readonly what: string;
  /** Where it was done. */
  readonly place: Place;
}

export function startHistory<Place>(document: CsvDocument): History<Place> {
  return Object.freeze({ past: [], present: document, future: [] });
}

/** A new state; what had been undone before is gone. The same document makes no step. */
export function record<Place>(
  history: History<Place>,
  document: CsvDocument,
  what: string,
  place: Place,
): History<Place> {
  if (document === history.present) return history;
  const step = Object.freeze({ document: history.present, what, place });
  const past = [...history.past, step].slice(-stepsKept(document));
  return Object.freeze({ past, present: document, future: [] });
}

/** One step back, and the step that was undone; undefined at the beginning. */
export function undo<Place>(
  history: History<Place>,
): { readonly history: History<Place>; readonly step: Step<Place> } | undefined {
  const step = history.past.at(-1);
  if (step === undefined) return undefined;
  const forward = Object.freeze({ ...step, document: history.present });
  const past = history.past.slice(0, -1);
  return {
    history: Object.freeze({ past, present: step.document, future: [forward, ...history.future] }),
    step,
  };
}

/** One step forward again, and the step that was redone; undefined at the end. */
export function redo<Place>(
  history: History<Place>,
): { readonly history: History<Place>; readonly step: Step<Place> } | undefined {
  const step = history.future[0];
  if (step === undefined) return undefined;
  const back = Object.freeze({ ...step, document: history.present });
  const future = history.future.slice(1);
  return { history: Object.freeze({ past: [...history.past, back], present: step.document, future }), step };
}

/** Each step keeps a list of all pieces: a thousand steps, fewer for a table that would fill the memory. */
function stepsKept(document: CsvDocument): number {
  return Math.min(1000, Math.max(30, Math.floor(1e7 / (document.pieces.length + 1))));
}
