// Tables of readings, instruments and their temperature.

// Questions asked of a result: the same number a second way, the deepest band, where a taper runs out.
export { asMadeDiameter, asMadeIfLeft, bandAt, deepestBand, smallestBand } from "./band-questions.js";
export {
  anglesOf,
  type ColumnChoice,
  column,
  columnsNamed,
  lengthsOf,
  numbersOf,
  quantitiesOf,
  temperaturesOf,
  textOf,
} from "./columns.js";
export { type Comparison, compareMeasured } from "./compare-measured.js";
export type { KnownThings } from "./conditions.js";
export { instrumentFrom, partFrom, readingUncertainty } from "./instrument.js";
// Instruments: repeatability, comparison, calibration, and what they can settle.
export {
  type CalibrationOptions,
  calibrationLine,
  correctedReading,
} from "./instrument-study-calibration.js";
export { type CompareInstrumentsOptions, compareInstruments } from "./instrument-study-compare.js";
export { type RepeatabilityOptions, repeatabilityStudy } from "./instrument-study-repeat.js";
export { canSettle, type SettleQuestion } from "./instrument-study-settle.js";
export type {
  CalibrationLine,
  CorrectedReading,
  InstrumentComparison,
  InstrumentVerdict,
  RepeatabilityStudy,
} from "./instrument-study-types.js";
export { judgeLimit, type LimitJudgement, type ToDecide } from "./limit-judgement.js";
// The shape of a shaft: diameters along it, bands of wear, tapers.
export { meanBetween } from "./mean-between.js";
// Where to read next.
export { nextReadings } from "./next-readings.js";
export type { NextReading, NextReadings, NextReadingsQuestion, OutlinePoint } from "./next-readings-types.js";
// Diameters along the shaft.
export { type ProfileOptions, profileOf } from "./profile.js";
export type {
  BandCountProbability,
  BandEdge,
  CommonSource,
  DiameterReading,
  EdgeReach,
  EdgeStretch,
  GrossReading,
  Profile,
  ProfileStation,
  ResidualShape,
  TaperFit,
  TaperKink,
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
// Roundness of a section, and run-out along the shaft.
export { type RoundnessOptions, roundnessOf } from "./roundness.js";
export { ovalityOf } from "./roundness-ovality.js";
export type { Lobes, Ovality, Roundness, SetUp } from "./roundness-types.js";
export { veeFactor } from "./roundness-vee.js";
export { type RunOutOptions, runOut } from "./run-out.js";
export type { IndicatorOptions } from "./run-out-readings.js";
export type { OffCentre, RunOut, RunOutStation } from "./run-out-types.js";
export { type WornPlace, type WornSide, type WornSideOptions, wornSide } from "./run-out-worn-side.js";
export { stationOfDiameter } from "./station-of-diameter.js";
export { depthBudget, taperBudget } from "./survey-budget.js";
export { surveyReport } from "./survey-report.js";
export type { SurveyReport, SurveyReportRow } from "./survey-report-types.js";
export type { Column, Conditions, Instrument, Part, Remark, Table } from "./table.js";
export { type TableFault, TableFaults } from "./table-faults.js";
export { halfAngleOf } from "./taper-angle.js";
export { type FitTaperOptions, fitTaper } from "./taper-fit.js";
export { identifyTaper } from "./taper-identity.js";
export { type TaperSettingOptions, taperSetting } from "./taper-setting.js";
export type { TaperIdentity, TaperMatch, TaperSetting } from "./taper-setting-types.js";
export { type WearBandsOptions, wearBands } from "./wear-bands.js";
