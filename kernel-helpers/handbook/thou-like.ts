import { type Length, quantityFromSi } from "../quantity/index.js";

/**
 * A deviation printed in thousandths of an inch, told in micrometres where the nominal size is in millimetres.
 *
 * @param nominal  the size it belongs to [m]
 * @param printed  the deviation as the table has it [thou]
 */
export function thouLike(nominal: Length, printed: number): Length {
  const metric = nominal.writtenIn === "mm" || nominal.writtenIn === "micrometre";
  return quantityFromSi("length", Number(printed.toFixed(6)) * 25.4e-6, metric ? "micrometre" : "thou");
}
