import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { findSheets, templateFolder } from "../../record/index.js";
import { confinedPath, isPlainName, requirePlainName } from "./confined-path.js";
import { HttpError } from "./http-error.js";

/** A worksheet as the page may open it. */
export interface FoundSheet {
  readonly name: string;
  readonly path: string;
  /** Whether it lies in the rebuild; else it is a template of the package, which is never written. */
  readonly own: boolean;
}

/** The folder of a rebuild's own worksheets. */
export const sheetsFolder = "sheets";
export const tablesFolder = "tables";

/** The worksheets of a rebuild: its own, or the templates where it has none. */
export function listSheets(directory: string): readonly FoundSheet[] {
  const ownFolder = join(directory, sheetsFolder);
  return findSheets(directory).map(({ name, path }) => ({ name, path, own: path.startsWith(ownFolder) }));
}

/**
 * A worksheet by name, at its real place.
 *
 * @throws HttpError 404 there is none of this name; 403 it leads out of its folder
 */
export function sheetNamed(directory: string, name: string): FoundSheet {
  const found = listSheets(directory).find((sheet) => sheet.name === name);
  if (found === undefined) throw new HttpError(404, `there is no worksheet ${JSON.stringify(name)}`);
  const file = `${name}.ipynb`;
  const path = found.own
    ? confinedPath(directory, sheetsFolder, file)
    : confinedPath(templateFolder(), basename(file));
  return { ...found, path };
}

/** The names of the tables there are, in order. */
export function listTables(directory: string): readonly string[] {
  try {
    return readdirSync(join(directory, tablesFolder))
      .filter((file) => file.endsWith(".csv"))
      .map((file) => basename(file, ".csv"))
      .filter(isPlainName)
      .sort();
  } catch {
    return []; // no tables yet
  }
}

/**
 * The real path of a table, which need not be there.
 *
 * @throws HttpError 404 no file may be called so; 403 it leads out of the rebuild
 */
export function tablePath(directory: string, name: string): string {
  requirePlainName(name);
  return confinedPath(directory, tablesFolder, `${name}.csv`);
}

/** The bytes of a file and their SHA-256; undefined where there is none. */
export function readBytes(path: string): { readonly bytes: Buffer; readonly sha256: string } | undefined {
  try {
    const bytes = readFileSync(path);
    return { bytes, sha256: sha256(bytes) };
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw error;
  }
}

export function sha256(bytes: Uint8Array | string): string {
  return createHash("sha256").update(bytes).digest("hex");
}
