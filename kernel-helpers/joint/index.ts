// Joints: threads and their nuts, hubs on shafts, and the rig that presses them off.

export { type BreakLooseTwoWays, breakLooseTwoWays } from "./break-loose-two-ways.js";
export { type CylinderLoad, type CylinderStress, cylinderStress } from "./cylinder-stress.js";
export { drawUp } from "./draw-up.js";
export type { DrawUp, DrawUpInput, DrawUpStop } from "./draw-up-types.js";
export { type NutRemovalInput, nutRemoval } from "./fastener-removal.js";
export { studYieldTorque } from "./fastener-stud.js";
export { type NutFriction, nutTorque, screwTorque, torqueRange } from "./fastener-torque.js";
export type { FirstReached, NutRemoval, TorqueSpan, WrenchRow } from "./fastener-types.js";
export { type NutWay, nutWays } from "./fastener-ways.js";
export { wrenchPull, wrenchTorque } from "./fastener-wrench.js";
export { type FitAtSpeed, fitAtSpeed } from "./fit-at-speed.js";
export { type FitByFormula, fitByFormula } from "./fit-by-formula.js";
export {
  type FitToOpen,
  interferenceWarmed,
  temperatureToOpen,
  type WarmedFit,
} from "./fit-heat.js";
export type { FitInput } from "./fit-input.js";
export {
  type InterferenceByPractice,
  interferenceByPractice,
  interferenceFromDrawUp,
  interferenceFromReadings,
  type LengthRange,
} from "./fit-interference.js";
export { type FitPair, type FitPressure, fitPressure } from "./fit-pressure.js";
export { type SeatOnTaper, seatOnTaper } from "./fit-seat.js";
export { interferenceLostBySpinning, type SpinningFit, type SpinningPart } from "./fit-speed.js";
export { type NutDutyWords, predictHand } from "./hand-predict.js";
export { type HandSeen, threadHand } from "./hand-seen.js";
export type {
  Hand,
  HandPrediction,
  NutDuty,
  ThreadHand,
  Turning,
} from "./hand-types.js";
export { type HeatCeiling, heatCeiling } from "./heat-ceilings.js";
export { type CoolingBody, coolingTime, stillAir } from "./heat-cooling.js";
export { heatNeighbours } from "./heat-neighbours.js";
export {
  type HeatNeighbour,
  type HeatNut,
  type HeatNutInput,
  heatNut,
  type NeighbourLimit,
} from "./heat-nut.js";
export { heatingPlan, jointConductance } from "./heating-plan.js";
export type { HeatingCase, HeatingInput, HeatingMoment, HeatingPlan } from "./heating-types.js";
export { hubFit } from "./hub-fit.js";
export type { HubFit, HubFitInput, HubFitOptions, HubOnShaft, Narrowing } from "./hub-fit-types.js";
export { nutLock } from "./nut-lock.js";
export type { NutLock, NutLockInput } from "./nut-lock-types.js";
export { pressRig, rigFactors } from "./press-rig.js";
export { type JackOil, pressStores } from "./press-stores.js";
export { releaseOf } from "./release.js";
export type { Release, ReleaseOption } from "./release-types.js";
export type { BeamSection, PressRig, Rig, RigCheck, RigFactors, RigPart } from "./rig-types.js";
export { chanceNotAbove, type Spread, spreadOf } from "./spread.js";
export { type FitForces, type FitSeat, taperFitForces } from "./taper-fit-forces.js";
export { type IdentifyThreadOptions, identifyThread } from "./thread-identity.js";
export { threadOf } from "./thread-of.js";
export { type ThreadReadingsOptions, threadReadings } from "./thread-readings.js";
export type { ThreadIdentity, ThreadMatch, ThreadQuestion, ThreadReadings } from "./thread-types.js";
