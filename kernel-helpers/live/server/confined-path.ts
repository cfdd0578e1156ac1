import { lstatSync, realpathSync } from "node:fs";
import { basename, dirname, join, relative, sep } from "node:path";
import { HttpError } from "./http-error.js";

/** Names that mean a device on Windows, with any ending. */
const deviceName = /^(con|prn|aux|nul|conin\$|conout\$|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)/i;

/** What no file name may hold: separators, signs that Windows keeps for itself, control characters. */
const oddCharacter = /[/\\:*?"<>|\p{Cc}]/u;

/**
 * Whether a name is that of one file in a folder on every platform: no path, nothing hidden, no device, no ending
 * that Windows drops.
 */
export function isPlainName(name: string): boolean {
  return (
    name.length > 0 &&
    name.length <= 120 &&
    !oddCharacter.test(name) &&
    !/^\.|[. ]$/.test(name) &&
    !deviceName.test(name)
  );
}

/**
 * The real path of a file inside a folder, whether it is there or not. Names are single steps; links are followed,
 * and must not lead out of the folder.
 *
 * @throws HttpError 404 a name is none a file may have here; 403 a link leads out of the folder
 */
export function confinedPath(folder: string, ...names: readonly string[]): string {
  for (const name of names) requirePlainName(name);
  const real = realPathOf(join(folder, ...names));
  const inside = relative(realpathSync(folder), real);
  if (inside === ".." || inside.startsWith(`..${sep}`) || inside.includes(":"))
    throw new HttpError(403, `${names.join("/")} leads out of the folder`);
  return real;
}

/** @throws HttpError 404 the name is none a file may have here */
export function requirePlainName(name: string): void {
  if (!isPlainName(name)) throw new HttpError(404, `there is nothing called ${JSON.stringify(name)}`);
}

/** The real path, of which the last steps need not be there yet. */
function realPathOf(path: string): string {
  try {
    return realpathSync(path);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== "ENOENT") throw error;
    // A link to something that is not there leads wherever it says, once that is made.
    if (lstatSync(path, { throwIfNoEntry: false }) !== undefined)
      throw new HttpError(403, `${basename(path)} leads nowhere`);
    return join(realPathOf(dirname(path)), basename(path));
  }
}
