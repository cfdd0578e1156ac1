import { existsSync, lstatSync, readdirSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { payloadFolder } from "./bag.js";

/** The file that marks a rebuild as unpacked from a bundle. */
export const foreignMark = "from-somebody-else.txt";

export const foreignMarkText: string = `This rebuild was unpacked from a bundle. Its worksheets are programs of somebody else, and Journalbox runs
them in a sandbox only. When you have read them and trust them, remove this file.
`;

/**
 * Whether the code of a rebuild is taken for somebody else's: it lies in a bag, or was unpacked from one. Every other
 * folder is taken for the user's own.
 */
export function isForeign(directory: string): boolean {
  const inBag = basename(directory) === payloadFolder && existsSync(join(dirname(directory), "bagit.txt"));
  return inBag || existsSync(join(directory, foreignMark));
}

/**
 * Refuses a folder that holds anything but files and folders: Node's permission model follows a link wherever it leads.
 *
 * @throws RangeError  there is a link or a device; the message names it
 */
export function refuseLinks(folder: string): void {
  if (!lstatSync(folder).isDirectory())
    throw new RangeError(`refuseLinks: a folder that is no link must be given, got ${folder}`);
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) refuseLinks(path);
    else if (!entry.isFile())
      throw new RangeError(
        `refuseLinks: there must be files and folders only, got a link or a device: ${path}`,
      );
  }
}
