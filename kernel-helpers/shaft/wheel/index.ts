// A wheel on its shaft, and its belt.
export {
  type BeltAlignment,
  type BeltAlignmentOptions,
  beltAlignment,
  type StringGaps,
} from "./belt-alignment.js";
export { type RimMetal, type RimSpeed, type RimSpeedOptions, rimSpeed } from "./rim-speed.js";
export { stringGaps } from "./string-gaps.js";
export { wheelRunOut } from "./wheel-run-out.js";
export type {
  RingLobes,
  RingRunOut,
  Towards,
  WheelRunOut,
  WheelRunOutOptions,
} from "./wheel-run-out-types.js";
