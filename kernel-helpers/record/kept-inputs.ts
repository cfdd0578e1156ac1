import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { basename, extname, join } from "node:path";
import { recordFolder } from "./sheet-record.js";
import { writeFile } from "./write-file.js";

/** Within a rebuild: copies of tables, rebuild.json and code as they were when results were computed from them. */
export const keptFolder: string = `${recordFolder}/inputs`;

/**
 * The path, within a rebuild, of the copy of a file in the state that a hash names, e.g.
 * "record/inputs/shaft-survey.3f2a91c07b11.csv".
 */
export function keptPath(file: string, sha256: string): string {
  const ending = extname(file);
  return `${keptFolder}/${basename(file, ending)}.${sha256.slice(0, 12)}${ending}`;
}

/** Keeps a content, once. */
export function keepContent(directory: string, file: string, content: string | Uint8Array): string {
  const sha256 = hashOf(content);
  const path = join(directory, keptPath(file, sha256));
  if (!existsSync(path)) writeFile(path, content);
  return sha256;
}

/** Keeps each input that is still in the state in which it was read; one that has changed since cannot be kept. */
export function keepInputs(directory: string, inputs: Readonly<Record<string, string | null>>): void {
  for (const [file, sha256] of Object.entries(inputs)) {
    if (sha256 === null || existsSync(join(directory, keptPath(file, sha256)))) continue;
    const bytes = bytesOf(join(directory, file));
    if (bytes !== undefined && hashOf(bytes) === sha256)
      writeFile(join(directory, keptPath(file, sha256)), bytes);
  }
}

/** The text of a file in the state a hash names; undefined where it was not kept, or the copy was altered. */
export function keptText(directory: string, file: string, sha256: string): string | undefined {
  const bytes = bytesOf(join(directory, keptPath(file, sha256)));
  return bytes !== undefined && hashOf(bytes) === sha256 ? bytes.toString("utf8") : undefined;
}

/** A copy that no record refers to is removed after this time: another run may be about to refer to it [ms]. */
const restOfCopies = 3_600_000;

/** Removes copies that nothing refers to any more. */
export function dropUnused(directory: string, used: ReadonlySet<string>, now: number): void {
  const folder = join(directory, keptFolder);
  if (!existsSync(folder)) return;
  for (const name of readdirSync(folder)) {
    const path = join(folder, name);
    if (!used.has(`${keptFolder}/${name}`) && now - statSync(path).mtimeMs > restOfCopies)
      rmSync(path, { force: true });
  }
}

function bytesOf(path: string): Buffer | undefined {
  try {
    return readFileSync(path);
  } catch {
    return undefined;
  }
}

function hashOf(content: string | Uint8Array): string {
  return createHash("sha256").update(content).digest("hex");
}
