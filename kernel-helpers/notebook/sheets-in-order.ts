import {
  codeSources,
  findSheets,
  type LinkedSheet,
  orderOfRun,
  type SheetFile,
  sheetLinks,
} from "../record/index.js";
import { readNotebook } from "./file/notebook-file.js";

/** The sheets of a rebuild in the order in which they are run, and what some of them will miss. */
export interface SheetsInOrder {
  readonly sheets: readonly SheetFile[];
  readonly missing: readonly string[];
}

/**
 * The worksheets of a rebuild in the order of their run, which follows from what each publishes and recalls. A sheet
 * that cannot be read is taken to need nothing.
 *
 * @throws RangeError  sheets take over from each other in a ring
 */
export function sheetsInOrder(directory: string): SheetsInOrder {
  const sheets = findSheets(directory);
  const { order, missing } = orderOfRun(sheets.map(linked));
  return { sheets: order.map((name) => sheets.find((sheet) => sheet.name === name)!), missing };
}

function linked({ name, path }: SheetFile): LinkedSheet {
  try {
    return { name, links: sheetLinks(codeSources(readNotebook(path).cells)) };
  } catch {
    return { name, links: sheetLinks([]) };
  }
}
