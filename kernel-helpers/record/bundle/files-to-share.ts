import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { rebuildFileName } from "../find-rebuild.js";
import { findSheets } from "../find-sheets.js";
import type { Files } from "./files.js";
import { leftOutFile } from "./left-out.js";

/**
 * The files of a rebuild that are shared: its facts, tables, worksheets, records and executed worksheets. The report is
 * made anew, and what is only noted about runs on this machine (out/state) stays here. Where the rebuild has no
 * worksheets of its own, those it is run with are put in.
 *
 * @param links  whether a link is followed, or refused because it may lead to something that nobody meant to share
 * @throws RangeError  a device lies among them, or a link where they are refused
 * @throws Error  a file cannot be read
 */
export function filesToShare(directory: string, links: "follow" | "refuse" = "refuse"): Files {
  const files = new Map<string, Uint8Array>();
  const take = (path: string): void => void files.set(path, readFileSync(join(directory, path)));
  const look = (folder: string, wanted: (path: string) => boolean): void => {
    if (!existsSync(join(directory, folder))) return;
    for (const entry of readdirSync(join(directory, folder), { withFileTypes: true })) {
      const path = `${folder}/${entry.name}`;
      if (entry.name.startsWith(".") || entry.name.endsWith(".tmp")) continue;
      if (entry.isDirectory()) look(path, wanted);
      else if (!wanted(path)) continue;
      else if (entry.isFile() || (links === "follow" && statSync(join(directory, path)).isFile())) take(path);
      else throw new RangeError(`filesToShare: only files are shared, got a link or a device: ${path}`);
    }
  };
  take(rebuildFileName);
  if (existsSync(join(directory, leftOutFile))) take(leftOutFile);
  look("tables", () => true);
  look("sheets", () => true);
  look("record", () => true);
  look("out", (path) => /^out\/[^/]+\.ipynb$/.test(path));
  for (const { name, path } of findSheets(directory))
    if (!files.has(`sheets/${name}.ipynb`)) files.set(`sheets/${name}.ipynb`, readFileSync(path));
  return files;
}
