import { type Length, type Mass, type Measured, measured, quantityFromSi } from "../quantity/index.js";
import type { Masses, PartMass } from "./masses-types.js";
import { partMass } from "./part-mass.js";

/**
 * Mass and centre of mass of several parts lifted in one piece: "shaft + second pulley".
 *
 * m = Σ mᵢ, u(m) = Σ u(mᵢ); x = Σ mᵢ xᵢ/m, u²(x) = Σ ((xᵢ − x)/m · u(mᵢ))² + Σ (mᵢ/m · u(xᵢ))²
 *
 * Valid when: the masses err together in the sum (one handbook density for all pieces of a metal), which is the safe side
 * for a lift; and each by itself in the centre.
 *
 * @param masses  as `massesOf` returns them
 * @param names  of the parts, at least one, none twice
 * @returns mass [kg] and centre along the axis [m]
 * @throws RangeError  the masses hold no such part, or a name stands twice
 * @example
 * const header = "part [text],piece [text],shape [text],count [-],across [in],far [in],inside [in],length [in],thick [in],along [in],material [text]";
 * const row = (part: string, along: number) => `${part},plate,ring,1,10,-,2,1,-,${along},steel`;
 * const bytes = new TextEncoder().encode([header, row("a", 0), row("b", 8)].join("\n"));
 * massesTogether(massesOf(readTable(bytes, { name: "pieces", file: "pieces.csv" })), ["a", "b"]).centre.value.in("inch") // 4.5
 * @source statics; JCGM 100:2008 (GUM), 5.1.2
 */
export function massesTogether(
  masses: Masses,
  names: readonly string[],
): { readonly mass: Measured<Mass>; readonly centre: Measured<Length> } {
  const twice = names.find((name, i) => names.indexOf(name) < i);
  if (names.length === 0 || twice !== undefined)
    throw new RangeError(
      `massesTogether: parts must be named, each once, got ${twice === undefined ? "none" : `"${twice}" twice`}`,
    );
  const parts: readonly PartMass[] = names.map((name) => partMass(masses, name));
  const first = parts[0]!;
  if (parts.length === 1) return Object.freeze({ mass: first.mass, centre: first.centre });
  const sum = (of: (part: PartMass) => number): number => parts.reduce((total, part) => total + of(part), 0);
  const m = sum(({ mass }) => mass.value.si);
  const x = sum(({ mass, centre }) => mass.value.si * centre.value.si) / m;
  const variance = sum(
    ({ mass, centre }) =>
      (((centre.value.si - x) / m) * mass.standardUncertainty.si) ** 2 +
      ((mass.value.si / m) * centre.standardUncertainty.si) ** 2,
  );
  const mass = (si: number): Mass => quantityFromSi("mass", si, first.mass.value.writtenIn);
  const place = (si: number): Length => quantityFromSi("length", si, first.centre.value.writtenIn);
  return Object.freeze({
    mass: measured(mass(m), mass(sum((part) => part.mass.standardUncertainty.si))),
    centre: measured(place(x), place(Math.sqrt(variance))),
  });
}
