// What has come in: what it weighs, how it is lifted, what is stored in it, in which order it comes apart.

export { handLiftLimit } from "./hand-lift.js";
export { type Hang, hangOf, type Tipping, tippingOf } from "./hang.js";
export type { BlockedPart, LedgerPart, PartState, PartsLedger } from "./ledger-types.js";
export { type LiftOptions, liftOf } from "./lift.js";
export { liftPlan } from "./lift-plan.js";
export type { LiftPlan, PlannedLift, Slinging } from "./lift-plan-types.js";
export type { Lift, LiftLeg, LiftVerdict } from "./lift-types.js";
export { massesOf } from "./masses.js";
export { massesTogether } from "./masses-together.js";
export type { Masses, MomentOfInertia, PartMass, PieceMass } from "./masses-types.js";
export { orderOfParts } from "./order-of-parts.js";
export { partMass } from "./part-mass.js";
export { partsLedger } from "./parts-ledger.js";
export { slingPull } from "./sling-pull.js";
export {
  type SolidFigures,
  type SolidForm,
  type SolidShape,
  type SolidSize,
  solidFigures,
  solidForms,
} from "./solid.js";
export {
  type ExactOrMeasured,
  hollowEnergy,
  oilEnergy,
  raisedEnergy,
  springEnergy,
  storedEnergies,
  turningEnergy,
} from "./stored-energy.js";
export { beforeWork } from "./stored-energy-before.js";
export type { EnergyStore, StoredEnergies, StoredEnergy } from "./stored-energy-types.js";
export { type SupportLoads, supportLoads } from "./support-loads.js";
