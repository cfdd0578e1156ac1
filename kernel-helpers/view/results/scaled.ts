import { type Measured, measured } from "../../quantity/index.js";

/** A measured number times an exact factor; its uncertainty goes with it. */
export function scaled(number: Measured<number>, factor: number): Measured<number> {
  const { value, standardUncertainty, degreesOfFreedom } = number;
  return measured(value * factor, standardUncertainty * Math.abs(factor), degreesOfFreedom);
}
