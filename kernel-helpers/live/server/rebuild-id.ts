import { createHash } from "node:crypto";
import { realpathSync } from "node:fs";

/**
 * Tells the rebuild in a folder from others that the same address may show at other times: text that was typed and not
 * saved is kept in the browser under it. The same for as long as the folder stays where it is, whatever its title.
 */
export function rebuildId(directory: string): string {
  return createHash("sha256").update(realpathSync(directory)).digest("hex").slice(0, 16);
}
