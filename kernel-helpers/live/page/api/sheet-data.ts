import type { INotebookContent } from "@jupyterlab/nbformat";
import { fetchRebuild, type Rebuild } from "./rebuild.js";
import { fetchOutputs, fetchSheet, type LoadedSheet } from "./sheets.js";

/** What the server knows of a sheet when its page is opened. */
export interface SheetData {
  readonly loaded: LoadedSheet;
  readonly executed: INotebookContent | undefined;
  readonly rebuild: Rebuild;
}

export async function fetchSheetData(name: string): Promise<SheetData> {
  const [loaded, executed, rebuild] = await Promise.all([
    fetchSheet(name),
    fetchOutputs(name),
    fetchRebuild(),
  ]);
  return { loaded, executed, rebuild };
}
