import { headingOf } from "../../notebook/file/heading-of.js";
import { readNotebook } from "../../notebook/index.js";
import { codeHash, type SheetNow, type SheetState, sheetStates } from "../../record/index.js";
import { type FoundSheet, listSheets, sheetNamed } from "./rebuild-files.js";

/** A sheet as the overview lists it. */
export interface ListedSheet extends SheetState {
  /** Its first heading, or its name. */
  readonly title: string;
  readonly own: boolean;
}

/** The sheets of a rebuild with their titles and states. */
export function listedSheets(directory: string): readonly ListedSheet[] {
  const sheets = listSheets(directory).map((sheet) => look(directory, sheet));
  const states = sheetStates(
    directory,
    sheets.map(({ now }) => now),
  );
  return sheets.map(({ title, own }, i) => ({ ...states[i]!, title, own }));
}

function look(directory: string, { name, own }: FoundSheet): { now: SheetNow; title: string; own: boolean } {
  try {
    const { cells } = readNotebook(sheetNamed(directory, name).path);
    return { now: { name, code: codeHash(cells) }, title: headingOf(cells) ?? name, own };
  } catch (error) {
    return {
      now: { name, problem: error instanceof Error ? error.message : String(error) },
      title: name,
      own,
    };
  }
}
