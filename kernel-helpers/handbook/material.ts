import { bronzes } from "./material-bronzes.js";
import { irons } from "./material-irons.js";
import { steels } from "./material-steels.js";
import type { Material } from "./material-type.js";
import { whiteMetals } from "./material-white-metals.js";

/**
 * The metals of the trade, each property with the source it stands in.
 *
 * @example materials.length // 19
 */
export const materials: readonly Material[] = Object.freeze([
  ...steels,
  ...irons,
  ...bronzes,
  ...whiteMetals,
]);

/**
 * A metal of the handbook by its name: modulus, Poisson's ratio, expansion, strengths, density, specific heat,
 * conductivity, and how hot it may be made.
 *
 * Valid when: near room temperature, for sound metal as the standards of today have it. Iron and steel of a
 * century ago scatter more; where a decision hangs on a strength, take the low end of the range or test the metal.
 * "Cast iron" without a class is taken for the weakest, class 20.
 *
 * @param name  e.g. "steel", "grey iron class 20", "bronze C93200", "Babbitt 2"; capitals, spaces and
 *   the spelling of grey do not count
 * @returns the metal; each property with its range and its source
 * @throws RangeError  there is no such metal in the handbook; the message lists those there are
 * @example material("Gray iron class 20").tensile!.value.in("ksi") // 20
 * @source each property names its own
 */
export function material(name: string): Material {
  const wanted = plain(String(name));
  const found = materials.find((metal) => [metal.name, ...metal.also].map(plain).includes(wanted));
  if (found === undefined)
    throw new RangeError(
      `material: must be one of ${materials.map((metal) => metal.name).join(", ")}, got "${name}"`,
    );
  return found;
}

function plain(name: string): string {
  return name
    .trim()
    .toLowerCase()
    .replace(/\bgray\b/g, "grey")
    .replace(/\s+/g, " ");
}
