import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { rebuildFileName } from "../find-rebuild.js";
import { findSheets } from "../find-sheets.js";
import { manifestFile, tagManifestFile } from "../manifest.js";
import { sha256 } from "./bag.js";
import { bytesOf, type Files, textOf } from "./files.js";
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
  const added = findSheets(directory).filter(({ name }) => !files.has(`sheets/${name}.ipynb`));
  for (const { name, path } of added) files.set(`sheets/${name}.ipynb`, readFileSync(path));
  if (added.length > 0)
    listInManifest(
      files,
      added.map(({ name }) => `sheets/${name}.ipynb`),
    );
  return files;
}

/**
 * Puts files that come with the copy on the list by which the record vouches for its files; else they would be taken
 * for files that somebody added after the run. A list that is not as the run left it is not touched.
 */
function listInManifest(files: Map<string, Uint8Array>, paths: readonly string[]): void {
  const [manifest, tag] = [files.get(manifestFile), files.get(tagManifestFile)];
  if (manifest === undefined || tag === undefined || textOf(tag) !== tagOf(manifest)) return;
  const before = textOf(manifest)
    .split("\n")
    .filter((line) => line !== "");
  const lines = [...before, ...paths.map((path) => `${sha256(files.get(path)!)}  ${path}`)];
  const pathOf = (line: string): string => line.slice(line.indexOf("  ") + 2);
  lines.sort((a, b) => (pathOf(a) < pathOf(b) ? -1 : 1));
  const after = bytesOf(`${lines.join("\n")}\n`);
  files.set(manifestFile, after);
  files.set(tagManifestFile, bytesOf(tagOf(after)));
}

function tagOf(manifest: Uint8Array): string {
  return `${sha256(manifest)}  ${manifestFile}\n`;
}
