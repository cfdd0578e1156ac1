import { readFileSync } from "node:fs";
import { basename } from "node:path";
import { type ReadTableOptions, readTable } from "./read-table.js";
import type { Table } from "./table.js";

/**
 * Reads a table of readings from a CSV file; `readTable` says what it may hold. This is the only place of
 * the survey that touches a disk.
 *
 * @param path  of the file
 * @param options  as for `readTable`; name and file are taken from the path where they are not given
 * @throws TableFaults  as `readTable`
 * @throws Error        the file cannot be read
 */
export function readTableFile(path: string, options: Partial<ReadTableOptions> = {}): Table {
  const file = options.file ?? basename(path);
  const name = options.name ?? basename(path).replace(/\.csv$/i, "");
  return readTable(bytesOf(path), { ...options, name, file });
}

function bytesOf(path: string): Uint8Array {
  try {
    return readFileSync(path);
  } catch (cause) {
    const missing = cause instanceof Error && "code" in cause && cause.code === "ENOENT";
    const rule = missing ? "there is no such file" : "the file cannot be read";
    throw new Error(`readTableFile: ${rule}, got ${path}`, { cause });
  }
}
