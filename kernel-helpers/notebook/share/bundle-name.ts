/** Longest name of a bundle's folder [characters]. */
const longest = 60;

/**
 * A name for a file or folder, made of a title: small letters and digits with hyphens between, the same on every
 * machine. A title without any of these gives "rebuild".
 *
 * @example bundleName("Line shaft of a grist mill") // "line-shaft-of-a-grist-mill"
 * @example bundleName("Räder № 2") // "rader-2"
 */
export function bundleName(title: string): string {
  const name = title
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, longest)
    .replace(/^-+|-+$/g, "");
  return name === "" ? "rebuild" : name;
}
