import { readFileSync } from "node:fs";
import { join } from "node:path";
import { packageRoot, packageVersion } from "./package-root.js";

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
  return Object.freeze({
    journalbox: packageVersion(),
    node: process.versions.node,
    tslab: JSON.parse(readFileSync(require.resolve("tslab/package.json"), "utf8")).version,
  });
}
