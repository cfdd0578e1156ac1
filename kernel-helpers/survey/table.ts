import type {
  Length,
  Temperature,
  TemperatureDifference,
  TemperatureScale,
  ThermalExpansion,
  UnitName,
  UnitSystem,
} from "../quantity/index.js";

/**
 * A table of readings as it stands in a file: every row with its line, every cell as it was written, and
 * its value in SI units. Nothing is dropped; what was not read is said so in the file.
 */
export interface Table {
  readonly kind: "table";
  /** The name a worksheet calls it by, e.g. "shaft-survey". */
  readonly name: string;
  /** The file it was read from, as named by the caller. */
  readonly file: string;
  /** The `# key: value` remarks, in order. */
  readonly remarks: readonly Remark[];
  readonly columns: readonly Column[];
  readonly rowCount: number;
  /** The line of the file each row stands on, counted from 1. */
  readonly lines: readonly number[];
  /** Inch or metric, from the units of its length columns; undefined when it has none. */
  readonly unitSystem: UnitSystem | undefined;
  /** What the remarks say of the readings, resolved against the rebuild's instruments and parts. */
  readonly conditions: Conditions;
  /** Doubts that keep nothing from being read, each a sentence that names its lines. */
  readonly warnings: readonly string[];
  /** SHA-256 of the file's bytes, in hexadecimal. */
  readonly sha256: string;
}

export interface Remark {
  readonly key: string;
  readonly value: string;
  readonly line: number;
}

/** One column: its name, what it measures, and its values. */
export interface Column {
  /** The name without unit and angle, in lower case: "diameter". */
  readonly name: string;
  /** The header as written: "diameter @ 90 deg [in]". */
  readonly header: string;
  /** "length", "angle", … "temperature", "number" for a plain number, "text" for words. */
  readonly dimension: string;
  /** The unit of the readings, as in the header; undefined for plain numbers, temperatures and words. */
  readonly unit: UnitName | undefined;
  /** The scale of a column of temperatures, as in the header. */
  readonly scale?: TemperatureScale;
  /** Where a column of the wide form was read round the shaft [rad]. */
  readonly angle: number | undefined;
  /** Values in SI units, temperatures in kelvin; NaN where the file says that no reading was taken. Empty for words. */
  readonly values: readonly number[];
  /** Every cell as written, without the spaces round it. */
  readonly text: readonly string[];
}

/** Under what conditions the readings were taken. */
export interface Conditions {
  /** The instrument of each column, by column name, where a remark names one. */
  readonly instruments: Readonly<Record<string, Instrument>>;
  /** The temperature of part and instrument while measuring, where a remark gives it. */
  readonly temperature: Temperature | undefined;
  /** Its standard uncertainty. */
  readonly temperatureUncertainty: TemperatureDifference | undefined;
  /** The part measured, where a remark names one. */
  readonly part: Part | undefined;
}

/** A measuring instrument and what can be expected of it. */
export interface Instrument {
  readonly kind: "instrument";
  /** The short name remarks use, e.g. "mic-2-3". */
  readonly id: string;
  readonly title: string;
  /** The smallest step that is read off. */
  readonly resolution: Length;
  /** The standard deviation of repeated readings of one place (n − 1). */
  readonly repeatability: Length;
  /** The standard uncertainty of its setting or calibration, common to all its readings. */
  readonly calibration: Length | undefined;
  /** The expansion of its frame or scale; without it no temperature correction is made. */
  readonly expansion: ThermalExpansion | undefined;
}

/** A part of the machine and what it is made of. */
export interface Part {
  readonly id: string;
  readonly title: string;
  readonly material: string | undefined;
  readonly expansion: ThermalExpansion | undefined;
}
