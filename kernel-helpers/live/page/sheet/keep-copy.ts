import type { INotebookContent } from "@jupyterlab/nbformat";
import { Refused } from "../api/request.js";
import { saveSheet } from "../api/sheets.js";
import { withoutResults } from "./sheet-text.js";

/** What became of a copy. */
export type Copy =
  | { readonly kind: "sheet"; readonly name: string }
  | { readonly kind: "download"; readonly name: string };

/** So many names are tried. */
const mostCopies = 20;

/**
 * Puts a version of a sheet beside it, under a name that is free: "05-taper-copy", "05-taper-copy-2", and so on.
 * Where the server does not take it, the browser downloads it, so that it is in any case a file.
 */
export async function keepCopy(sheet: string, notebook: INotebookContent): Promise<Copy> {
  for (let count = 1; count <= mostCopies; count++) {
    const name = count === 1 ? `${sheet}-copy` : `${sheet}-copy-${count}`;
    try {
      const saved = await saveSheet(name, withoutResults(notebook), null);
      if (saved.kind === "saved") return { kind: "sheet", name };
    } catch (error) {
      if (!(error instanceof Refused)) throw error;
      break;
    }
  }
  return download(`${sheet}-copy.ipynb`, notebook);
}

function download(name: string, notebook: INotebookContent): Copy {
  const text = JSON.stringify(withoutResults(notebook), null, 1);
  const address = URL.createObjectURL(new Blob([text], { type: "application/x-ipynb+json" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  window.setTimeout(() => URL.revokeObjectURL(address), 10_000);
  return { kind: "download", name };
}
