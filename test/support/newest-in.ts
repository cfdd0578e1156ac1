import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";

/** When the file changed last of all below a folder was changed [ms]. */
export function newestIn(folder: string): number {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) =>
    entry.isFile(),
  );
  return Math.max(...files.map((entry) => statSync(join(entry.parentPath, entry.name)).mtimeMs));
}
