// What strength a worn or turned shaft has left.
export { type BearingPressure, type BearingService, bearingPressure } from "./bearing-pressure.js";
export { type DeepestCut, deepestCut } from "./deepest-cut.js";
export {
  type EnduranceConditions,
  type EnduranceLimit,
  enduranceLimit,
  type SurfaceFinish,
} from "./endurance-limit.js";
export { type FatigueCriterion, fatigueFactorOfSafety, type SwingingStress } from "./fatigue-criteria.js";
export { type FatigueFactors, fatigueFactors } from "./fatigue-factors.js";
export type { CornerRadius, ShaftFeature, StressConcentration, StressPeak } from "./feature-types.js";
export { featureWords } from "./feature-words.js";
export {
  type KeyCheck,
  type KeyForm,
  type KeyInSeats,
  type KeyLoad,
  type KeyStrength,
  keyStrength,
} from "./key-strength.js";
export { type KeyseatAfterCut, keyseatAfterCut } from "./keyseat-after-cut.js";
export { notchSensitivity } from "./notch-sensitivity.js";
export { safetyFactors } from "./safety-factors.js";
export type {
  LengthGiven,
  SafetyFactor,
  SafetyVerdict,
  ShaftDuty,
  ShaftPlace,
  ShaftSafety,
  ShaftStrength,
  TorqueGiven,
} from "./safety-types.js";
export { shaftSafety } from "./shaft-safety.js";
export {
  type AssumedSteelName,
  assumedSteel,
  type ShaftSteel,
  shaftSteel,
  steelOfHardness,
} from "./shaft-steel.js";
export { type LoadsAtStation, type PlaceAlong, strengthAlong } from "./strength-along.js";
export { stressConcentration } from "./stress-concentration.js";
export { weakestPlace } from "./weakest-place.js";
