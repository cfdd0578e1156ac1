// The rebuild folder: what a sheet reads from it and hands on through it.
export { canonicalJson } from "./canonical-json.js";
export { cellHashesKey, cellHashesOf } from "./cell-hashes.js";
export { type CellCode, cellsOfCodeText, codeText } from "./code-text.js";
export type {
  Decision,
  DecisionFigure,
  DecisionFigures,
  DecisionGrounds,
  DecisionMade,
  DecisionOption,
  DecisionOptionGiven,
  DecisionRequest,
} from "./decision-types.js";
export { dropUnusedCopies } from "./drop-unused-copies.js";
export { fileHash } from "./file-hash.js";
export { findRebuild, rebuildFileName } from "./find-rebuild.js";
export { findSheets, type SheetFile, templateFolder } from "./find-sheets.js";
export type {
  CautionsInForce,
  DecisionBook,
  From,
  Handover,
  HandoverLists,
  Standing,
} from "./handover-types.js";
export { inSteps, type Step, type StepTeller, tellStepsTo } from "./in-steps.js";
export { inputsBehind, splitPlace } from "./inputs-behind.js";
export { keptText } from "./kept-inputs.js";
export { filesOfRebuild, manifestFile, readManifest, tagManifestFile, writeManifest } from "./manifest.js";
export { noteShown } from "./note-sheet.js";
export type {
  KeptNotes,
  NeededPart,
  Noted,
  NoteFigure,
  Notes,
  OpenItem,
  WantedReading,
} from "./note-types.js";
export { oneRunAtATime, type RunUnderWay, waitText } from "./one-run-at-a-time.js";
export { type OpenRebuildOptions, openRebuild, type Rebuild } from "./open-rebuild.js";
export { type LinkedSheet, type OrderOfRun, orderOfRun } from "./order-of-run.js";
export { demoFolder, type Versions, versions } from "./package-facts.js";
export { packageRoot, packageVersion } from "./package-root.js";
export { fileText } from "./read-text.js";
export { type RebuildFacts, RebuildFileFaults, readRebuildFile } from "./rebuild-file.js";
export type { ResultKinds } from "./result-kinds.js";
export { type EndedRun, sealSheet } from "./seal-sheet.js";
export { getSession, resetSession, type Session, setSession } from "./session.js";
export { type CodeOfCell, codeHash, codeSources } from "./sheet-code.js";
export type { Published } from "./sheet-desk.js";
export { type SheetLinks, sheetLinks } from "./sheet-links.js";
export {
  markMixed,
  outputPath,
  readOutcome,
  reportFile,
  type SheetFailure,
  type SheetOutcome,
  writeOutcome,
} from "./sheet-outcome.js";
export { forgetReads, readReads, type SheetReads } from "./sheet-reads.js";
export {
  hashOfRecalled,
  publishedValue,
  readRecords,
  readSheetRecord,
  recordFolder,
  recordPath,
  type SheetRecord,
  sheetsWithRecord,
} from "./sheet-record.js";
export { type SheetNow, type SheetState, type SheetStateName, sheetStates } from "./sheet-state.js";
export { restoreDecision, restoreGrounds, type StoredDecision } from "./stored-decision.js";
export { restoreValue, storeValue } from "./stored-value.js";
export { type FileFinding, type Verification, verifyRebuild } from "./verify-rebuild.js";
export { changesText, type InputChange, whatChanged } from "./what-changed.js";
export { writeFile } from "./write-file.js";
