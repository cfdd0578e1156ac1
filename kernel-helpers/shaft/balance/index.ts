// Unbalance of a rotor: found, judged, corrected.
export { type Balance, balance, type PlaneCorrection } from "./balance.js";
export { type BalanceOnWays, type BalanceOnWaysOptions, balanceOnWays } from "./balance-on-ways.js";
export {
  type BalanceRun,
  type BalanceRuns,
  type BalanceRunsOptions,
  balanceRuns,
  type PhaseSense,
} from "./balance-runs.js";
export {
  type BalanceWithoutPhase,
  type BalanceWithoutPhaseOptions,
  balanceWithoutPhase,
} from "./balance-without-phase.js";
export { correctionPlaces } from "./correction-places.js";
export { drilledDepth } from "./drilled-depth.js";
export { type DrilledHoles, type DrilledHolesOptions, drilledHoles } from "./drilled-holes.js";
export { judgeUnbalance, type UnbalanceVerdict } from "./judge-unbalance.js";
export {
  balanceGrades,
  type PermissibleUnbalance,
  type PermissibleUnbalanceOptions,
  permissibleUnbalance,
} from "./permissible-unbalance.js";
export { type PlacedMass, resultantUnbalance } from "./resultant-unbalance.js";
export {
  type CorrectionPlace,
  type CorrectionShare,
  type SplitCorrection,
  type SplitCorrectionOptions,
  splitCorrection,
} from "./split-correction.js";
export type { MeasuredUnbalance, UnbalanceVector } from "./unbalance-vector.js";
