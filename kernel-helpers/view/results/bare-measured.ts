import { type Length, type Measured, measured } from "../../quantity/index.js";
import { plusMinus } from "../format-measured.js";
import type { ShownUnits } from "./shown-units.js";

/** Value and expanded uncertainty (95 %), for a column whose head names the unit: "4.31 ± 0.24". */
export function bareMeasured(length: Measured<Length>, unit: ShownUnits["size" | "small"]): string {
  const { value, standardUncertainty, degreesOfFreedom } = length;
  return plusMinus(measured(value.in(unit), standardUncertainty.in(unit), degreesOfFreedom));
}
