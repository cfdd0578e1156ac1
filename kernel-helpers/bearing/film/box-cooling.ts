import { type Quantity, quantityFromSi } from "../../quantity/index.js";

const coefficients = {
  "still air": 11.4,
  "shaft-stirred air": 15.3,
  "moving air": 33.5,
} as const;

/** What the air does round a box. */
export type AirRoundBox = keyof typeof coefficients;

/**
 * Heat that a square metre of a bearing box gives up for a kelvin over the room, radiation and convection together:
 * 2.0, 2.7 and 5.9 Btu/(h·ft²·°F); moving air is at 500 ft/min.
 *
 * @param air  "still air", "shaft-stirred air" or "moving air"
 * @returns the coefficient [W/(m²·K)]
 * @throws RangeError  no such air
 * @example boxCooling("still air").si // 11.4
 * @source J. E. Shigley & C. R. Mischke, Mechanical Engineering Design, section 12-10 (from memory)
 */
export function boxCooling(air: string): Quantity<"heat transfer coefficient"> {
  if (!Object.hasOwn(coefficients, air))
    throw new RangeError(
      `boxCooling: air must be one of ${Object.keys(coefficients).join(", ")}, got ${air}`,
    );
  return quantityFromSi("heat transfer coefficient", coefficients[air as AirRoundBox]);
}
