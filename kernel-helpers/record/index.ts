// The rebuild folder: what a sheet reads from it and hands on through it.
export { canonicalJson } from "./canonical-json.js";
export { fileHash } from "./file-hash.js";
export { findRebuild, rebuildFileName } from "./find-rebuild.js";
export { findSheets, type SheetFile, templateFolder } from "./find-sheets.js";
export { type OpenRebuildOptions, openRebuild, type Published, type Rebuild } from "./open-rebuild.js";
export { demoFolder, type Versions, versions } from "./package-facts.js";
export { packageRoot, packageVersion } from "./package-root.js";
export { type RebuildFacts, RebuildFileFaults, readRebuildFile } from "./rebuild-file.js";
export type { ResultKinds } from "./result-kinds.js";
export { getSession, resetSession, type Session, setSession } from "./session.js";
export { type CodeOfCell, codeHash, codeSources } from "./sheet-code.js";
export {
  markMixed,
  readOutcome,
  type SheetFailure,
  type SheetOutcome,
  writeOutcome,
} from "./sheet-outcome.js";
export { forgetReads, readReads, type SheetReads } from "./sheet-reads.js";
export { publishedValue, readSheetRecord, recordFolder, type SheetRecord } from "./sheet-record.js";
export { type SheetNow, type SheetState, type SheetStateName, sheetStates } from "./sheet-state.js";
export { restoreValue, storeValue } from "./stored-value.js";
export { writeFile } from "./write-file.js";
