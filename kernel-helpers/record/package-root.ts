import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";

/** The name under which worksheets import this package. */
export const packageName = "journalbox";

/**
 * The folder of this installation: the nearest one above this file whose package.json names the package.
 * The same from the sources and from the built files.
 *
 * @throws Error no folder above holds the package
 */
export function packageRoot(): string {
  for (let folder = __dirname; ; folder = dirname(folder)) {
    if (packageNameIn(folder) === packageName) return folder;
    if (folder === dirname(folder))
      throw new Error(
        `packageRoot: a package.json of ${packageName} must lie above, got none above ${__dirname}`,
      );
  }
}

/** The version of this installation, e.g. "0.1.0". */
export function packageVersion(): string {
  return String(readPackage(packageRoot()).version);
}

function packageNameIn(folder: string): unknown {
  try {
    return readPackage(folder).name;
  } catch {
    return undefined; // no package.json here, or none that can be read
  }
}

function readPackage(folder: string): { readonly name?: unknown; readonly version?: unknown } {
  return JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
}
