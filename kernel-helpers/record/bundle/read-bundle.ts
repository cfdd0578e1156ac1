import { lstatSync, readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { Files } from "./files.js";
import { readZip } from "./read-zip.js";

/** A bundle as it lies on the disk: a bag in a folder or in a ZIP archive. Nothing in it is trusted. */
export interface Bundle {
  /** The name of its outermost folder. */
  readonly name: string;
  /** Its files by path within the bag, e.g. "data/rebuild.json". */
  readonly files: Files;
}

/** Whether a path is a bundle: a ZIP archive, or a folder with a bagit.txt. */
export function isBundle(path: string): boolean {
  try {
    const entry = lstatSync(path);
    if (entry.isDirectory())
      return lstatSync(join(path, "bagit.txt"), { throwIfNoEntry: false }) !== undefined;
    return entry.isFile() && path.toLowerCase().endsWith(".zip");
  } catch {
    return false; // nothing is there
  }
}

/** So much of a folder is taken [bytes]. */
const mostBytes = 500e6;

/**
 * Reads all files of a bundle. Nothing in it is run or followed: a link is a reason to refuse it.
 *
 * @throws RangeError  it is too large, damaged, or holds a link or a path that leads outside
 * @throws Error  it cannot be read
 */
export function readBundle(path: string): Bundle {
  if (!lstatSync(path).isDirectory()) return bagIn(readZip(readFileSync(path)), basename(path, ".zip"));
  const files = new Map<string, Uint8Array>();
  let bytes = 0;
  const look = (folder: string): void => {
    for (const entry of readdirSync(join(path, folder), { withFileTypes: true })) {
      const inside = folder === "" ? entry.name : `${folder}/${entry.name}`;
      if (entry.isDirectory()) look(inside);
      else if (!entry.isFile())
        throw new RangeError(`readBundle: ${inside} is a link or a device; only files are taken`);
      else {
        const content = readFileSync(join(path, inside));
        bytes += content.length;
        if (bytes > mostBytes)
          throw new RangeError(`readBundle: at most ${mostBytes / 1e6} MB are taken, ${path} holds more`);
        files.set(inside, content);
      }
    }
  };
  look("");
  return Object.freeze({ name: basename(path), files });
}

/** An archive holds the bag as a folder of its own, or is the bag itself. */
function bagIn(files: Files, name: string): Bundle {
  if (files.has("bagit.txt")) return Object.freeze({ name, files });
  const tops = new Set([...files.keys()].map((path) => path.slice(0, path.indexOf("/") + 1)));
  const [top = ""] = tops;
  if (tops.size !== 1 || !files.has(`${top}bagit.txt`))
    throw new RangeError(
      `readBundle: an archive must hold one bag with its bagit.txt, got ${name}.zip without`,
    );
  const inside = [...files].map(([path, content]) => [path.slice(top.length), content] as const);
  return Object.freeze({ name: top.slice(0, -1), files: new Map(inside) });
}
