import { createHash } from "node:crypto";
import { closeSync, openSync, readSync } from "node:fs";

/** Read in pieces into one place: buffers as large as the files take longer to come by than to read. */
const piece = Buffer.allocUnsafeSlow(2 ** 18);

/** SHA-256 of a file's bytes; null where there is no file that can be read. */
export function fileHash(path: string): string | null {
  try {
    const file = openSync(path, "r");
    try {
      const hash = createHash("sha256");
      for (let read = readSync(file, piece); read > 0; read = readSync(file, piece))
        hash.update(piece.subarray(0, read));
      return hash.digest("hex");
    } finally {
      closeSync(file);
    }
  } catch {
    return null;
  }
}
