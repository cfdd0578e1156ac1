import { join } from "node:path";
import {
  codeHash,
  fileHash,
  outputPath,
  readManifest,
  readOutcome,
  type SheetFile,
  type SheetNow,
  sheetStates,
} from "../record/index.js";
import { readNotebook } from "./file/notebook-file.js";

/**
 * Tells of each sheet, when its turn comes, why it has to be run; "" where it need not be, because its results still
 * follow from what is on disk and its executed notebook lies there as the run left it.
 */
export function whyToRun(directory: string, sheets: readonly SheetFile[]): (name: string) => string {
  const nows = sheets.map(sheetNow);
  return (name) => {
    // Asked anew each time: the sheets run before this one may have changed what it takes over.
    const { state, why } = sheetStates(directory, nows).find((sheet) => sheet.name === name)!;
    if (state !== "fresh") return why;
    const left = readOutcome(directory, name)?.output;
    const file = outputPath(name);
    const isLeft = left != null && fileHash(join(directory, file)) === left;
    return isLeft ? "" : `Since the last run ${file} was altered or has gone.`;
  };
}

/** Whether a file is as the manifest of the last run has it. */
export function isAsLeft(directory: string, file: string): boolean {
  const manifest = readManifest(directory);
  return manifest?.fault === undefined && manifest?.files.get(file) === fileHash(join(directory, file));
}

/** A sheet as it is now, for `sheetStates`. */
export function sheetNow({ name, path }: SheetFile): SheetNow {
  try {
    return { name, code: codeHash(readNotebook(path).cells) };
  } catch (error) {
    return { name, problem: error instanceof Error ? error.message : String(error) };
  }
}
