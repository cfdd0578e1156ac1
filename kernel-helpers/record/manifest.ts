import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileHash } from "./file-hash.js";
import { rebuildFileName } from "./find-rebuild.js";
import { keptFolder } from "./kept-inputs.js";
import { outputPath, readOutcomes, reportFile } from "./sheet-outcome.js";
import { recordFolder, recordPath } from "./sheet-record.js";
import { writeFile } from "./write-file.js";

/**
 * Within a rebuild: the SHA-256 of every file as the last run left it, one a line, in the form that `sha256sum -c`
 * reads. Standing in the rebuild's folder, that command verifies it without this program.
 */
export const manifestFile: string = `${recordFolder}/manifest-sha256.txt`;
/** The SHA-256 of the manifest, in the same form, so that an alteration of the manifest itself is told from others. */
export const tagManifestFile: string = `${recordFolder}/tagmanifest-sha256.txt`;

/** Path within the rebuild, and SHA-256. */
export type Manifest = ReadonlyMap<string, string>;

/** The files of a rebuild that a manifest covers, in the order of paths: all but the notes on states in out/state. */
export function filesOfRebuild(directory: string): readonly string[] {
  const found: string[] = existsSync(join(directory, rebuildFileName)) ? [rebuildFileName] : [];
  const look = (folder: string, fits: (path: string) => boolean): void => {
    if (!existsSync(join(directory, folder))) return;
    for (const entry of readdirSync(join(directory, folder), { withFileTypes: true })) {
      const path = `${folder}/${entry.name}`;
      if (entry.isDirectory()) look(path, fits);
      else if (entry.isFile() && !path.endsWith(".tmp") && fits(path)) found.push(path);
    }
  };
  look("tables", () => true);
  look("sheets", (path) => !path.includes(".ipynb_checkpoints"));
  look(recordFolder, (path) => path !== manifestFile && path !== tagManifestFile);
  look("out", (path) => !path.startsWith("out/state/"));
  return found.sort();
}

/**
 * Writes the manifest after a run. A record and an executed notebook stand in it as the run of their sheet left them,
 * by that run's own notes, so that an alteration since then stays to be seen however often other sheets are run.
 *
 * @param report  whether this run wrote the report; else it keeps the hash it had
 */
export function writeManifest(directory: string, report: "written" | "left"): void {
  const before = readManifest(directory)?.files ?? new Map<string, string>();
  const left = leftBySheets(directory);
  const kept = (path: string): string | undefined => {
    if (path === reportFile) return report === "left" ? before.get(path) : undefined;
    return left.get(path) ?? (path.startsWith(`${keptFolder}/`) ? before.get(path) : undefined);
  };
  const lines = filesOfRebuild(directory).map(
    (path) => `${kept(path) ?? fileHash(join(directory, path))}  ${path}\n`,
  );
  const text = lines.join("");
  writeFile(join(directory, manifestFile), text);
  writeFile(join(directory, tagManifestFile), `${sha256(text)}  ${manifestFile}\n`);
}

/** What the last run of each sheet left: its record and its executed notebook. */
function leftBySheets(directory: string): Manifest {
  const left = new Map<string, string>();
  for (const { sheet, record, output } of readOutcomes(directory)) {
    if (record !== null) left.set(recordPath(sheet), record);
    if (output != null) left.set(outputPath(sheet), output);
  }
  return left;
}

export interface ReadManifest {
  readonly files: Manifest;
  /** What is wrong with the manifest itself; undefined where it is as it was written. */
  readonly fault: string | undefined;
}

/** Reads the manifest; undefined where there is none. */
export function readManifest(directory: string): ReadManifest | undefined {
  const text = textOf(join(directory, manifestFile));
  if (text === undefined) return undefined;
  const files = new Map<string, string>();
  let fault: string | undefined;
  for (const [i, line] of text.split("\n").entries()) {
    const entry = /^([0-9a-f]{64}) {2}(.+)$/.exec(line);
    if (entry !== null) files.set(entry[2]!, entry[1]!);
    else if (line !== "") fault ??= `line ${i + 1} is not in its form`;
  }
  const tag = textOf(join(directory, tagManifestFile));
  if (tag === undefined) fault = `${tagManifestFile}, which vouches for it, is missing`;
  else if (tag !== `${sha256(text)}  ${manifestFile}\n`)
    fault ??= `it or ${tagManifestFile} was altered after the run`;
  return { files, fault };
}

function textOf(path: string): string | undefined {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return undefined;
  }
}

function sha256(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}
