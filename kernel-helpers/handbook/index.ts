// Published tables, each row with its source.
export { type Babbitt, babbitt, babbitts, type Percent } from "./babbitts.js";
export { type BoltGrade, type BoltGradeRow, boltGrade, boltGradeRows } from "./bolt-grades.js";
export { type BrownSharpeRow, brownSharpeRows, brownSharpeTapers } from "./brown-sharpe-tapers.js";
export {
  type CuttingForceConstants,
  type CuttingSpeed,
  cuttingForceConstants,
  cuttingSpeed,
  leastChip,
  type ToolMaterial,
} from "./cutting-values.js";
export { expansionOf, type MaterialExpansion, materialExpansions } from "./expansion.js";
export {
  type FitFriction,
  type FitSurface,
  fitFriction,
  fitFrictions,
} from "./fit-friction.js";
export { type ForceFit, type ForceFitClass, standardForceFit } from "./force-fit.js";
export { type BeltFriction, beltFriction, beltFrictions } from "./friction-belt.js";
export { type NutFactor, nutFactorOf, nutFactors } from "./friction-nut-factor.js";
export {
  type ThreadFriction,
  type ThreadSurface,
  threadFriction,
  threadFrictions,
} from "./friction-thread.js";
export { type IsoFit, type IsoZone, isoFit, isoTolerance, isoZone } from "./iso-tolerance.js";
export { jarnoSeries, jarnoTaper } from "./jarno-tapers.js";
export {
  type LocationalFit,
  type LocationalFitClass,
  type RunningLimitsClass,
  standardLocationalFit,
  standardRunningLimits,
} from "./locational-fit.js";
export { material, materials } from "./material.js";
export type { Material, MaterialFamily, MaterialProperty } from "./material-type.js";
export { type MorseRow, morseRows, morseTapers } from "./morse-tapers.js";
export { type Oil, oil, oils, viscosity } from "./oils.js";
export {
  type RunningFit,
  type RunningFitClass,
  runningFitByThumb,
  standardRunningFit,
} from "./running-clearance.js";
export { type StandardKey, standardKey, standardKeys } from "./standard-keys.js";
export type { StandardTaper } from "./standard-taper.js";
export { type StandardThread, type ThreadFamily, type ThreadSize, threadOfForm } from "./standard-thread.js";
export { perFootTapers, ratioTapers } from "./taper-series.js";
export { standardTapers } from "./tapers.js";
export { type HeatColour, heatColourAt, heatColours } from "./temper-colours.js";
export { standardThreads, threadNamed } from "./threads.js";
export { metricThreads } from "./threads-metric.js";
export { type MetricRow, metricCoarseRows, metricFineRows } from "./threads-metric-rows.js";
export { constantPitchThreads, unifiedThreads } from "./threads-unified.js";
export { type UnifiedRow, unifiedRows } from "./threads-unified-rows.js";
export { whitworthThreads } from "./threads-whitworth.js";
export {
  type BritishFineRow,
  britishFineRows,
  type WhitworthRow,
  whitworthRows,
} from "./threads-whitworth-rows.js";
