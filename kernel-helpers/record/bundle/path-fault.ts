/** Names that Windows keeps for itself, with or without an ending. */
const reserved = /^(?:con|prn|aux|nul|com[0-9]|lpt[0-9])(?:\.|$)/i;

/** Longest path taken from or put into a bundle [characters]. */
const longest = 240;

/**
 * What keeps a path from being taken out of a bundle of somebody else: it could lead outside the folder it is unpacked
 * to, or mean another file on another machine. Undefined for a path that stays inside everywhere.
 *
 * @example pathFault("data/../../notes.txt") // "it has a part \"..\""
 * @example pathFault("data/tables/shaft-survey.csv") // undefined
 */
export function pathFault(path: string): string | undefined {
  if (path === "") return "it is empty";
  if (path.length > longest) return `it is longer than ${longest} characters`;
  if (path.startsWith("/")) return "it begins at the root of a disk";
  if (path.includes("\\")) return "it holds a backslash";
  if (/\p{Cc}/u.test(path)) return "it holds a control character";
  if (/[:*?"<>|]/.test(path)) return "it holds a sign that file names of some machines may not have";
  for (const part of path.split("/")) {
    if (part === "") return "it has an empty part";
    if (part === "." || part === "..") return `it has a part "${part}"`;
    if (/[. ]$/.test(part)) return `its part "${part}" ends in a dot or a space`;
    if (reserved.test(part)) return `its part "${part}" is a device's name on Windows`;
  }
  return undefined;
}
