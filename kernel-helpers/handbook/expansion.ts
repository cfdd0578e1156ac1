import { perC, type ThermalExpansion } from "../quantity/index.js";

/** How much a material grows with heat. */
export interface MaterialExpansion {
  readonly material: string;
  /** Other names it goes by. */
  readonly also: readonly string[];
  /** Mean linear expansion near room temperature. */
  readonly expansion: ThermalExpansion;
  readonly source: string;
}

const callister =
  "W. D. Callister, Materials Science and Engineering, appendix B, table B.6 (linear coefficient of thermal expansion)";
const sheets = "public material sheet, two figures";

/**
 * Linear thermal expansion of the materials of a shop, per °C, near room temperature.
 *
 * @source each row names its own
 */
export const materialExpansions: readonly MaterialExpansion[] = Object.freeze([
  row("steel", ["mild steel", "steel 1020", "steel A36"], 11.7, `${callister}, A36 and 1020`),
  row("steel 1040", ["medium carbon steel"], 11.3, `${callister}, 1040`),
  row("steel 4140", ["alloy steel"], 12.3, `${callister}, 4140`),
  row("grey cast iron", ["gray cast iron", "cast iron", "grey iron"], 11.4, `${callister}, gray irons`),
  row("bronze", ["bearing bronze", "bronze C93200"], 18.0, `${callister}, bronze C93200`),
  row("tin", [], 23.8, `${callister}, tin`),
  row("Babbitt 2", ["tin Babbitt"], 21, `${sheets}, UNS L13890`),
  row("Babbitt 3", [], 21, `${sheets}, UNS L13840`),
  row("Babbitt 7", ["lead Babbitt"], 26, `${sheets}, UNS L53585`),
]);

/**
 * The linear thermal expansion of a material, from the handbook's table.
 *
 * Valid when: near room temperature; the mean up to 100 °C is a few per cent larger. One bar differs from the
 * next by several per cent, so a fit that hangs on the last digit needs a measured value.
 *
 * @param material  its name, capitals and spaces not counted, e.g. "steel", "grey cast iron", "Babbitt 2"
 * @returns expansion, length per length and temperature difference [1/°C]
 * @throws RangeError  the table has no such material; the message lists those it has
 * @example expansionOf("steel").in("perC") // 1.17e-5
 * @source the row's own, see `materialExpansions`
 */
export function expansionOf(material: string): ThermalExpansion {
  const wanted = plain(material);
  const found = materialExpansions.find((row) => [row.material, ...row.also].map(plain).includes(wanted));
  if (found === undefined)
    throw new RangeError(
      `expansionOf: material must be one of ${materialExpansions.map((m) => m.material).join(", ")}, got "${material}"`,
    );
  return found.expansion;
}

function row(
  material: string,
  also: readonly string[],
  millionthsPerC: number,
  source: string,
): MaterialExpansion {
  return Object.freeze({
    material,
    also: Object.freeze([...also]),
    expansion: perC(millionthsPerC / 1e6),
    source,
  });
}

function plain(name: string): string {
  return name.trim().toLowerCase().replace(/\s+/g, " ");
}
