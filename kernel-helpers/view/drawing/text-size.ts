import type { TextSize } from "./drawing.js";

/** The size of letters [px]; large ones are bold. */
export const letterHeight: Readonly<Record<TextSize, number>> = Object.freeze({
  small: 11,
  normal: 13,
  large: 17,
});
