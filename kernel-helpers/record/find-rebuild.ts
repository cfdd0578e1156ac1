import { existsSync } from "node:fs";
import { dirname, join, resolve } from "node:path";

/** The file that makes a folder a rebuild. */
export const rebuildFileName = "rebuild.json";

/**
 * The rebuild folder a path lies in: the path itself or the nearest folder above it that holds a
 * rebuild.json; undefined when there is none.
 */
export function findRebuild(from: string): string | undefined {
  let folder = resolve(from);
  for (;;) {
    if (existsSync(join(folder, rebuildFileName))) return folder;
    const above = dirname(folder);
    if (above === folder) return undefined;
    folder = above;
  }
}
