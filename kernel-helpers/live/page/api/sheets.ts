import type { INotebookContent } from "@jupyterlab/nbformat";
import { Refused, request } from "./request.js";

export interface LoadedSheet {
  readonly name: string;
  /** Whether it is the rebuild's own file; else a template that the first save copies. */
  readonly own: boolean;
  readonly sha256: string;
  readonly notebook: INotebookContent;
}

/** What became of a save; in a conflict the notebook is what lies on disk, null where that is no notebook. */
export type Saved =
  | { readonly kind: "saved"; readonly sha256: string }
  | { readonly kind: "conflict"; readonly sha256: string; readonly notebook: INotebookContent | null };

export async function fetchSheet(name: string): Promise<LoadedSheet> {
  return (await request<LoadedSheet>("GET", `/api/sheets/${encodeURIComponent(name)}`)).json;
}

/** Saves over the file only where that still is what `base` names; null for a file that is not there yet. */
export async function saveSheet(
  name: string,
  notebook: INotebookContent,
  base: string | null,
): Promise<Saved> {
  const path = `/api/sheets/${encodeURIComponent(name)}`;
  const { status, json } = await request<{ sha256: string; notebook: INotebookContent }>(
    "PUT",
    path,
    { notebook, base },
    [409],
  );
  return status === 409 ? { kind: "conflict", ...json } : { kind: "saved", sha256: json.sha256 };
}

/** The sheet as last run, where its code still is this sheet's. */
export async function fetchOutputs(name: string): Promise<INotebookContent | undefined> {
  try {
    const path = `/api/outputs/${encodeURIComponent(name)}`;
    const { status, json } = await request<{ notebook: INotebookContent }>("GET", path, undefined, [404]);
    return status === 404 ? undefined : json.notebook;
  } catch (error) {
    if (error instanceof Refused) return undefined; // Only looks are lost: the sheet itself is shown.
    throw error;
  }
}

export async function saveOutputs(name: string, notebook: INotebookContent): Promise<void> {
  await request("PUT", `/api/outputs/${encodeURIComponent(name)}`, { notebook });
}
