import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";

/** SHA-256 of a file's bytes; null where there is no file that can be read. */
export function fileHash(path: string): string | null {
  try {
    return createHash("sha256").update(readFileSync(path)).digest("hex");
  } catch {
    return null;
  }
}
