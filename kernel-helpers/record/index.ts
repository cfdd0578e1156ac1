// The rebuild folder: what a sheet reads from it and hands on through it.
export { canonicalJson } from "./canonical-json.js";
export { findRebuild, rebuildFileName } from "./find-rebuild.js";
export { findSheets, type SheetFile, templateFolder } from "./find-sheets.js";
export { type OpenRebuildOptions, openRebuild, type Published, type Rebuild } from "./open-rebuild.js";
export { demoFolder, type Versions, versions } from "./package-facts.js";
export { packageRoot, packageVersion } from "./package-root.js";
export { type RebuildFacts, RebuildFileFaults, readRebuildFile } from "./rebuild-file.js";
export type { ResultKinds } from "./result-kinds.js";
export { getSession, resetSession, type Session, setSession } from "./session.js";
export { publishedValue, readSheetRecord, recordFolder, type SheetRecord } from "./sheet-record.js";
export { restoreValue, storeValue } from "./stored-value.js";
export { writeFile } from "./write-file.js";
