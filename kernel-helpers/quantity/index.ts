// How a quantity is made, computed with, read and shown.
export { setUnitSystem, systemOf, type UnitSystem, unitSystem, usualUnit } from "./display.js";
export { inFraction, inMicrometres, inThou, lengthWithUncertainty } from "./format-length.js";
export { decimalsFor, formatFixed, formatNumber, formatWithUncertainty } from "./format-number.js";
export {
  type Exponents,
  exponentsOf,
  type KindName,
  kindOf,
  type Product,
  type Quotient,
  type SquareRoot,
} from "./kinds.js";
export * from "./make.js";
export { type Measured, measured } from "./measured.js";
export {
  type Angle,
  type AnyQuantity,
  type Area,
  type Computed,
  type Density,
  type Force,
  isQuantity,
  type Length,
  type Mass,
  type Power,
  type Pressure,
  type Quantity,
  type QuantityJson,
  quantity,
  quantityFromJson,
  quantityFromSi,
  type RotationalSpeed,
  type Speed,
  shownUnit,
  type TemperatureDifference,
  type ThermalExpansion,
  type Time,
  type Torque,
  type Volume,
  withArticle,
} from "./quantity.js";
export {
  numberFault,
  readAngle,
  readLength,
  readNumber,
  readQuantity,
  readTemperature,
  readUnit,
} from "./read.js";
export {
  degC,
  degF,
  isTemperature,
  referenceTemperature,
  type Temperature,
  type TemperatureJson,
  type TemperatureScale,
  temperature,
} from "./temperature.js";
export { type Unit, type UnitName, type UnitOf, unitNamed, unitSpelled, unitsOf } from "./units.js";
