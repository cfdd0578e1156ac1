import { existsSync, readdirSync } from "node:fs";
import { basename, join } from "node:path";
import { packageRoot } from "./package-root.js";

/** A worksheet: its name (the file name without `.ipynb`) and its file. */
export interface SheetFile {
  readonly name: string;
  readonly path: string;
}

/** The folder of the templates. */
export function templateFolder(): string {
  return join(packageRoot(), "worksheets");
}

/**
 * The worksheets of a rebuild, in the order of their names: those in its sheets/ folder or, where it has
 * none of its own, the templates.
 */
export function findSheets(directory: string): readonly SheetFile[] {
  const own = sheetsIn(join(directory, "sheets"));
  return own.length > 0 ? own : sheetsIn(templateFolder());
}

function sheetsIn(folder: string): readonly SheetFile[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((file) => file.endsWith(".ipynb"))
    .sort()
    .map((file) => ({ name: basename(file, ".ipynb"), path: join(folder, file) }));
}
