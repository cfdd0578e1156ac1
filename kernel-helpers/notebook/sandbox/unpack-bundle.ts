import { existsSync, mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import {
  type Bundle,
  foreignMark,
  foreignMarkText,
  pathFault,
  payloadFolder,
} from "../../record/bundle/index.js";

/**
 * Writes the rebuild in a bundle into a folder of its own, which must not be there or be empty. Only plain files with
 * paths that stay inside come of it. The folder is marked, so that its code is kept in a sandbox later too.
 *
 * @throws RangeError  the folder is not empty, a path leads outside, or there is no rebuild.json
 */
export function unpackBundle({ files }: Bundle, folder: string): void {
  if (existsSync(folder) && readdirSync(folder).length > 0)
    throw new RangeError(`unpackBundle: the folder must be empty or not be there, got ${folder}`);
  const start = `${payloadFolder}/`;
  if (!files.has(`${start}rebuild.json`))
    throw new RangeError("unpackBundle: the bundle must hold data/rebuild.json, got none");
  const inside = [...files].filter(([path]) => path.startsWith(start));
  for (const [path] of inside) {
    const fault = pathFault(path);
    if (fault !== undefined)
      throw new RangeError(`unpackBundle: each path must stay inside, got ${JSON.stringify(path)}: ${fault}`);
  }
  for (const [path, content] of inside) {
    const target = join(folder, path.slice(start.length));
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, content, { flag: "wx" });
  }
  writeFileSync(join(folder, foreignMark), foreignMarkText);
}
