// The table of contents: what a worksheet may import from "journalbox".

// Poured bearings: run-in.
export * from "./bearing/index.js";
// Published tables with their sources.
export * from "./handbook/index.js";
// What has come in: masses, lifting, stored energy, the parts and their order.
export * from "./intake/index.js";
// Threads and their nuts, fits, press rigs.
export * from "./joint/index.js";
// Values with units, and how they are read and shown.
export * from "./quantity/index.js";
// The rebuild folder: facts, tables, what sheets hand on.
export {
  type Decision,
  type DecisionFigure,
  type DecisionFigures,
  type DecisionGrounds,
  type DecisionMade,
  type DecisionOption,
  type DecisionOptionGiven,
  type DecisionRequest,
  type Handover,
  inSteps,
  type KeptNotes,
  type NeededPart,
  type Noted,
  type NoteFigure,
  type Notes,
  type OpenItem,
  type OpenRebuildOptions,
  openRebuild,
  type Published,
  type Rebuild,
  type RebuildFacts,
  type ResultKinds,
  type Step,
  type WantedReading,
} from "./record/index.js";
// The shaft and what turns with it.
export * from "./shaft/index.js";
// Lines, errors in both variables, change points, distributions: plain numbers, no trade.
export * from "./statistics/index.js";
// Tables of readings, instruments, the diameter along the shaft, wear bands, tapers.
export * from "./survey/index.js";
// Cautions where a hand would get hurt.
export { type Caution, type CautionTopic, caution } from "./view/caution.js";
// What stands where a reading is still to be taken.
export { notYet } from "./view/not-yet.js";
