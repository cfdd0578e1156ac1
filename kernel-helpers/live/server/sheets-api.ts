import { copyFileSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import { checkNotebook, NotebookFormatError } from "../../notebook/file/check-notebook.js";
import { type Notebook, notebookJson, readNotebook, writeNotebook } from "../../notebook/index.js";
import { bodyLimits } from "./body.js";
import { confinedPath, requirePlainName } from "./confined-path.js";
import { HttpError } from "./http-error.js";
import { type FoundSheet, listSheets, readBytes, sheetNamed, sheetsFolder } from "./rebuild-files.js";
import { type Route, route } from "./router.js";

/** Reading and saving worksheets. A sheet is saved without outputs, so that a diff shows the change of thought. */
export function sheetRoutes(directory: string, changed: () => void): readonly Route[] {
  return [
    route("GET", "/api/sheets/:name", ({ params }) => {
      const sheet = sheetNamed(directory, params.name!);
      return { json: { name: sheet.name, own: sheet.own, ...onDisk(sheet) } };
    }),
    route("PUT", "/api/sheets/:name", async ({ params, body }) => {
      const asked = await body(bodyLimits.sheet);
      const notebook = withoutOutputs(notebookFrom(asked.notebook, params.name!));
      const sheet = listSheets(directory).some(({ name }) => name === params.name)
        ? sheetNamed(directory, params.name!)
        : undefined;
      const there = sheet && readBytes(sheet.path);
      if ((asked.base ?? null) !== (there?.sha256 ?? null)) {
        const now = sheet === undefined ? { sha256: null, notebook: null } : whatIsThere(sheet);
        throw new HttpError(409, "the worksheet on disk is not the one that was loaded", now);
      }
      const path = sheet?.own ? sheet.path : takeOver(directory, params.name!);
      writeNotebook(path, notebook);
      changed();
      return { json: { sha256: readBytes(path)!.sha256 } };
    }),
  ];
}

/** A notebook as a page sends it: the JSON of a notebook file. */
export function notebookFrom(json: unknown, name: string): Notebook {
  try {
    return checkNotebook(json, `${name}.ipynb`);
  } catch (error) {
    if (error instanceof NotebookFormatError) throw new HttpError(400, error.message);
    throw error;
  }
}

/** A notebook as a page is sent it. */
export function jsonOf(notebook: Notebook): unknown {
  return JSON.parse(notebookJson(notebook));
}

function onDisk({ path, name }: FoundSheet): { readonly sha256: string; readonly notebook: unknown } {
  const file = readBytes(path);
  if (file === undefined) throw new HttpError(404, `there is no worksheet ${JSON.stringify(name)} any more`);
  try {
    return { sha256: file.sha256, notebook: jsonOf(readNotebook(path)) };
  } catch (error) {
    if (!(error instanceof NotebookFormatError)) throw error;
    throw new HttpError(422, error.message, { sha256: file.sha256, text: file.bytes.toString("utf8") });
  }
}

/** The same for a conflict, which must be told even where the file on disk is no notebook. */
function whatIsThere(sheet: FoundSheet): Readonly<Record<string, unknown>> {
  try {
    return onDisk(sheet);
  } catch (error) {
    if (error instanceof HttpError) return { ...error.details, notebook: null };
    throw error;
  }
}

function withoutOutputs(notebook: Notebook): Notebook {
  return {
    ...notebook,
    cells: notebook.cells.map((cell) =>
      cell.cell_type === "code" ? { ...cell, outputs: [], execution_count: null } : cell,
    ),
  };
}

/**
 * Where a sheet is to lie that the rebuild does not own yet. A rebuild with one sheet of its own is shown no
 * templates any more, so all of them are copied into it first.
 */
function takeOver(directory: string, name: string): string {
  requirePlainName(name);
  const target = confinedPath(directory, sheetsFolder, `${name}.ipynb`);
  mkdirSync(join(directory, sheetsFolder), { recursive: true });
  for (const sheet of listSheets(directory)) {
    if (sheet.name.toLowerCase() === name.toLowerCase() && sheet.name !== name)
      throw new HttpError(409, `there is a worksheet ${sheet.name} already`);
    if (!sheet.own && sheet.name !== name)
      copyFileSync(sheet.path, confinedPath(directory, sheetsFolder, `${sheet.name}.ipynb`));
  }
  return target;
}
