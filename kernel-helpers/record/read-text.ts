import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** The text of a file of a rebuild; undefined where there is none. */
export function fileText(directory: string, file: string): string | undefined {
  const path = join(directory, file);
  return existsSync(path) ? readFileSync(path, "utf8") : undefined;
}
