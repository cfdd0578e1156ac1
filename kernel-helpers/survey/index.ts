// Tables of readings, instruments and their temperature.

// Questions asked of a result: the same number a second way, the deepest band, where a taper runs out.
export { asMadeDiameter, bandAt, deepestBand } from "./band-questions.js";
export {
  anglesOf,
  type ColumnChoice,
  column,
  columnsNamed,
  lengthsOf,
  numbersOf,
  quantitiesOf,
  textOf,
} from "./columns.js";
export { type Comparison, compareMeasured } from "./compare-measured.js";
export type { KnownThings } from "./conditions.js";
export { instrumentFrom, partFrom, readingUncertainty } from "./instrument.js";
export { meanBetween } from "./mean-between.js";
// The shape of a shaft: diameters along it, bands of wear, tapers.
export { type ProfileOptions, profileOf } from "./profile.js";
export type {
  BandEdge,
  DiameterReading,
  GrossReading,
  Profile,
  ProfileStation,
  ResidualShape,
  TaperFit,
  TaperReading,
  WearBand,
  WearBands,
} from "./profile-types.js";
export { type ReadTableOptions, readTable } from "./read-table.js";
export { readTableFile } from "./read-table-file.js";
export {
  type LengthAtReference,
  type MeasuringTemperature,
  referenceTemperatureFactor,
  toReferenceTemperature,
} from "./reference-temperature.js";
export { stationOfDiameter } from "./station-of-diameter.js";
export type { Column, Conditions, Instrument, Part, Remark, Table } from "./table.js";
export { type TableFault, TableFaults } from "./table-faults.js";
export { halfAngleOf } from "./taper-angle.js";
export { type FitTaperOptions, fitTaper } from "./taper-fit.js";
export { identifyTaper } from "./taper-identity.js";
export { type TaperSettingOptions, taperSetting } from "./taper-setting.js";
export type { TaperIdentity, TaperMatch, TaperSetting } from "./taper-setting-types.js";
export { type WearBandsOptions, wearBands } from "./wear-bands.js";
