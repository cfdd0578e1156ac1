import { type Notebook, NotebookFormatError, readNotebook, writeExecuted } from "../../notebook/index.js";
import { codeHash, markMixed, readReads, sealSheet, writeManifest } from "../../record/index.js";
import { bodyLimits } from "./body.js";
import { confinedPath } from "./confined-path.js";
import { HttpError } from "./http-error.js";
import type { KernelRoom } from "./kernels/kernel-room.js";
import type { LiveKernel } from "./kernels/live-kernel.js";
import { outcomeOfPage } from "./outcome-of-page.js";
import { readBytes, sheetNamed } from "./rebuild-files.js";
import { type Route, route } from "./router.js";
import { listedSheets } from "./sheet-states.js";
import { jsonOf, notebookFrom } from "./sheets-api.js";

/** The outputs of a sheet: they lie in out/ as an executed notebook, and never in the sheet itself. */
export function outputRoutes(directory: string, kernels: KernelRoom, changed: () => void): readonly Route[] {
  const pathOf = (name: string): string => confinedPath(directory, "out", `${name}.ipynb`);
  return [
    route("GET", "/api/outputs/:name", ({ params }) => {
      const { name, path } = sheetNamed(directory, params.name!);
      const executed = readBytes(pathOf(name)) && readable(pathOf(name));
      if (executed === undefined || codeHash(executed.cells) !== codeHash(readNotebook(path).cells))
        throw new HttpError(404, "there are no outputs of this code");
      return { json: { notebook: jsonOf(executed) } };
    }),
    route("PUT", "/api/outputs/:name", async ({ params, body }) => {
      const { name, path } = sheetNamed(directory, params.name!);
      const { notebook: json } = await body(bodyLimits.outputs);
      const notebook = notebookFrom(json, name);
      writeExecuted(pathOf(name), notebook);
      noteRun(directory, name, notebook, { saved: readNotebook(path), kernel: kernels.ofSheet(name) });
      changed();
      const { state, why } = listedSheets(directory).find((sheet) => sheet.name === name)!;
      return { json: { state, why } };
    }),
  ];
}

/** Notes how a run from the page ended, where what it ran is the sheet on disk. */
function noteRun(
  directory: string,
  sheet: string,
  notebook: Notebook,
  { saved, kernel }: { readonly saved: Notebook; readonly kernel: LiveKernel | undefined },
): void {
  const code = codeHash(notebook.cells);
  if (code !== codeHash(saved.cells) || kernel === undefined) return;
  // What was read must have been read by this kernel, not by another run of the same sheet since.
  const reader = readReads(directory, sheet).process;
  if (reader !== 0 && reader !== kernel.pid) return;
  const outcome = outcomeOfPage(notebook, kernel.log.executions);
  if (outcome !== undefined) {
    sealSheet(directory, { sheet, cells: notebook.cells, ...outcome });
    writeManifest(directory, "left");
  }
  if (outcome === undefined && reader !== 0) markMixed(directory, sheet);
}

function readable(path: string): Notebook | undefined {
  try {
    return readNotebook(path);
  } catch (error) {
    if (error instanceof NotebookFormatError) return undefined;
    throw error;
  }
}
