import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";

/** The folder this installation lies in, found from this file upwards. */
export function packageRoot(): string {
  let folder = __dirname;
  for (;;) {
    const file = join(folder, "package.json");
    if (existsSync(file) && JSON.parse(readFileSync(file, "utf8")).name === "journalbox") return folder;
    const above = dirname(folder);
    if (above === folder) throw new Error(`packageRoot: no journalbox package above ${__dirname}`);
    folder = above;
  }
}

/** The folder of the demo rebuild. */
export function demoFolder(): string {
  return join(packageRoot(), "worksheets", "demo");
}

/** What computed a result: the versions of the helpers, of Node and of the kernel's converter. */
export interface Versions {
  readonly journalbox: string;
  readonly node: string;
  readonly tslab: string;
}

/** The versions in force. */
export function versions(): Versions {
  const versionIn = (file: string): string => JSON.parse(readFileSync(file, "utf8")).version;
  return Object.freeze({
    journalbox: versionIn(join(packageRoot(), "package.json")),
    node: process.versions.node,
    tslab: versionIn(require.resolve("tslab/package.json")),
  });
}
