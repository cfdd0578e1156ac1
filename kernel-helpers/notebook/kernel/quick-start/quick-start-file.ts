import { createHash } from "node:crypto";
import { existsSync, rmSync, statSync } from "node:fs";
import { homedir } from "node:os";
import { dirname, join } from "node:path";
import { packageVersion } from "../../../record/package-root.js";

/** Switches the quick start off, for whoever suspects it: set to "off". */
const switchName = "JOURNALBOX_QUICK_START";

/** The program of a kernel's compiler, wherever npm has put it. */
export function compilerFile(): string {
  return require.resolve("@tslab/typescript-for-tslab", {
    paths: [dirname(require.resolve("tslab/package.json"))],
  });
}

/**
 * Where the prepared start of a kernel is kept: in the user's cache folder, under a name that holds for this very
 * Node.js, this version of the package and this compiler. Another of any of these looks for another file.
 */
export function quickStartFile(environment: NodeJS.ProcessEnv = process.env): string {
  const hash = createHash("sha256");
  for (const file of [process.execPath, compilerFile()]) {
    const { size, mtimeMs } = statSync(file);
    hash.update(`${file} ${size} ${mtimeMs}\n`);
  }
  hash.update(`${process.version} ${process.arch} ${process.platform} ${packageVersion()}`);
  return join(cacheFolder(environment), `kernel-${hash.digest("hex").slice(0, 16)}.blob`);
}

export function isSwitchedOff(environment: NodeJS.ProcessEnv = process.env): boolean {
  return environment[switchName] === "off";
}

/** The prepared start, where there is one and it is not switched off. */
export function readyQuickStart(environment: NodeJS.ProcessEnv = process.env): string | undefined {
  if (isSwitchedOff(environment)) return undefined;
  try {
    const file = quickStartFile(environment);
    return existsSync(file) ? file : undefined;
  } catch {
    return undefined; // it only saves time
  }
}

/** What Node is told in order to start from it. */
export function quickStartOption(file: string): readonly string[] {
  return [`--snapshot-blob=${file}`];
}

/** One that did not start a kernel is of no use to the next. */
export function dropQuickStart(file: string): void {
  try {
    rmSync(file, { force: true });
  } catch {
    // Somebody has it open; the kernel starts in the usual way all the same.
  }
}

/** @source XDG Base Directory Specification, cache; on the other platforms their usual folder, common practice */
function cacheFolder({ XDG_CACHE_HOME, LOCALAPPDATA }: NodeJS.ProcessEnv): string {
  if (process.platform === "darwin") return join(homedir(), "Library", "Caches", "journalbox");
  if (process.platform === "win32")
    return join(LOCALAPPDATA ?? join(homedir(), "AppData", "Local"), "journalbox", "cache");
  return join(XDG_CACHE_HOME || join(homedir(), ".cache"), "journalbox");
}
