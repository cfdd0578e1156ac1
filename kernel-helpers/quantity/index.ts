// How a quantity is made, computed with, read and shown.
export { setUnitSystem, shownUnit, systemOf, unitSystem, usualUnit } from "./display.js";
export { inFraction, inMicrometres, inThou, lengthWithUncertainty } from "./format-length.js";
export { formatFixedLimit, formatLimit, roundToLimit } from "./format-limit.js";
export {
  decimalsFor,
  formatFixed,
  formatNumber,
  formatWithUncertainty,
} from "./format-number.js";
export type { Product, Quotient, SquareRoot } from "./kind-algebra.js";
export { type Exponents, exponentsOf, type KindName, kindOf, siSymbol, withArticle } from "./kinds.js";
export * from "./make.js";
export { type Measured, measured } from "./measured.js";
export { isQuantity, quantity, quantityAlike, quantityFromJson, quantityFromSi } from "./quantity.js";
export type {
  Angle,
  AnyQuantity,
  Area,
  Computed,
  Density,
  Force,
  Length,
  Mass,
  Power,
  Pressure,
  Quantity,
  QuantityJson,
  RotationalSpeed,
  Speed,
  TemperatureDifference,
  ThermalExpansion,
  Time,
  Torque,
  Volume,
} from "./quantity-type.js";
export { readAngle, readAnyQuantity, readLength, readQuantity, readTemperature } from "./read.js";
export { numberFault, readNumber } from "./read-number.js";
export {
  degC,
  degF,
  isTemperature,
  referenceTemperature,
  type Temperature,
  type TemperatureJson,
  type TemperatureScale,
  temperature,
  temperatureFromJson,
} from "./temperature.js";
export type { KindOfUnit, UnitName, UnitOf } from "./unit-kinds.js";
export { type Unit, type UnitSystem, unitButForCapitals, unitNamed, unitSpelled, unitsOf } from "./units.js";
