import { randomBytes } from "node:crypto";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { renameOver } from "./rename-over.js";

let waits = true;

/** Whether files written from now on are waited for until they are safe on disk; false in a copy that is thrown away. */
export function waitForDisk(wait: boolean): void {
  waits = wait;
}

/**
 * Writes a file whole or not at all: to a temporary file beside it, then renamed over it. What stood there
 * before is lost only when the new content is safe on disk. Missing folders are made.
 *
 * @throws Error  the folder or file cannot be written; the message names it
 */
export function writeFile(path: string, content: string | Uint8Array): void {
  const temporary = `${path}.${randomBytes(6).toString("hex")}.tmp`;
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(temporary, content, { flush: canFlush() });
    renameOver(temporary, path);
  } catch (cause) {
    rmSync(temporary, { force: true });
    throw new Error(`${path} cannot be written: ${cause instanceof Error ? cause.message : String(cause)}`, {
      cause,
    });
  }
}

/** Where Node's permission model is in force, as in the sandbox, it has no call that waits for the disk. */
function canFlush(): boolean {
  return waits && (process as { readonly permission?: unknown }).permission === undefined;
}
