// Values that know what their uncertainty came from.
export { type Budget, type BudgetOptions, type BudgetRow, budget } from "./budget.js";
export { type AllUncertain, correlated } from "./correlated.js";
export type { Correlation } from "./correlation.js";
export { type DerivativeOptions, derivative } from "./derivative.js";
export { type PlainInputs, propagate, type ResultKind, type UncertainInput } from "./propagate.js";
export type { CorrelatedGroup, Source as UncertaintySource } from "./source.js";
export { fromReadings } from "./type-a.js";
export {
  type CertificateStatement,
  fromCertificate,
  fromLimits,
  fromResolution,
  fromTemperatureSwing,
} from "./type-b.js";
export { exactly, isUncertain, uncertain } from "./uncertain.js";
export type { AnyUncertain, SourceShare, Uncertain } from "./uncertain-type.js";
