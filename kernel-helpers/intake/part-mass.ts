import type { Masses, PartMass } from "./masses-types.js";

/**
 * One part of the masses, by name.
 *
 * @param masses  as `massesOf` returns them
 * @param name  as the table calls it, in any case
 * @returns the part
 * @throws RangeError  the masses hold no such part; the message lists those there are
 * @example
 * const header = "part [text],piece [text],shape [text],count [-],across [in],far [in],inside [in],length [in],thick [in],along [in],material [text]";
 * const bytes = new TextEncoder().encode(`${header}\nflange,plate,ring,1,10,-,2,1,-,0,steel`);
 * partMass(massesOf(readTable(bytes, { name: "pieces", file: "pieces.csv" })), "Flange").pieces.length // 1
 */
export function partMass(masses: Masses, name: string): PartMass {
  const found = masses.parts.find(({ part }) => part.toLowerCase() === name.trim().toLowerCase());
  if (found === undefined)
    throw new RangeError(
      `partMass: "${name}" is no part of ${masses.title}; there are ${masses.parts.map(({ part }) => part).join(", ")}`,
    );
  return found;
}
