// Turning set-up: what is there, the cuts, the taper.

export { correctTaper, metalByGauge, type TaperCorrection, type TrialCut } from "./correct-taper.js";
export { cutPlan } from "./cut-plan.js";
export type {
  CutPlan,
  CutPlanInput,
  DialCounts,
  LatheSetting,
  PassName,
  TurningPass,
} from "./cut-plan-types.js";
export { type CuttingForce, cuttingForce } from "./cutting-force.js";
export {
  type FitsToMake,
  type FitsToMakeInput,
  type FitToMake,
  fitsToMake,
  type SizeLimits,
} from "./fits-to-make.js";
export { type GaugeBlockSet, type GaugeBlockStack, gaugeBlockStack } from "./gauge-block-stack.js";
export { type IndicatorSchedule, indicatorSchedule } from "./indicator-schedule.js";
export { type LatheGiven, latheSetting } from "./lathe-setting.js";
export { type DrawnStretch, type ShaftDrawing, shaftDrawing } from "./shaft-drawing.js";
export { spindleSpeed } from "./spindle-speed.js";
export { type StretchesGiven, stretchesToTurn } from "./stretches-to-turn.js";
export { type TaperOption, taperOptions } from "./taper-options.js";
export {
  type TaperWay,
  type TaperWayName,
  type TaperWays,
  type TaperWaysInput,
  taperWays,
} from "./taper-ways.js";
export { trialCutOf } from "./trial-cut.js";
export { type TurnedRoughness, turnedRoughness } from "./turned-roughness.js";
export { type TurningStock, turningStock } from "./turning-stock.js";
export { growthBySpringing, longestFreeLength, type WorkBetweenCentres } from "./work-deflection.js";
