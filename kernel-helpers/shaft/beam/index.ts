// The shaft as a beam: bending, and the speeds at which it whirls.
export type {
  BendingShare,
  BendingStation,
  ShaftBending,
  ShownLoad,
  SupportReaction,
} from "./bending-types.js";
export {
  type CriticalSpeed,
  type CriticalSpeeds,
  type CriticalSpeedsOptions,
  criticalSpeeds,
  type WhirlMet,
  type WhirlSense,
} from "./critical-speeds.js";
export { loadsAt } from "./loads-at.js";
export { shaftBending } from "./shaft-bending.js";
export type {
  MountedWheel,
  ShaftElasticity,
  ShaftModel,
  ShaftPull,
  ShaftSleeve,
  ShaftStretch,
  ShaftSupport,
  ShaftTorque,
} from "./shaft-model.js";
export { closeGaps, stretchesOf, taperedStretches, turnedDown } from "./shaft-stretches.js";
