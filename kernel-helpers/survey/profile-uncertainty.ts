import { isQuantity, type Length } from "../quantity/index.js";
import { readingUncertainty } from "./instrument.js";
import type { Table } from "./table.js";

/** Standard uncertainty of one reading: as given, else the instrument's. See `profileOf`. */
export function uncertaintyOfReading(table: Table, column: string, given: Length | undefined): Length {
  if (given !== undefined) {
    if (!isQuantity(given, "length") || !(given.si > 0))
      throw new RangeError(`profileOf: readingUncertainty must be a length greater than 0, got ${given}`);
    return given;
  }
  const instrument = table.conditions.instruments[column];
  if (instrument === undefined)
    throw new RangeError(
      `profileOf: how good a reading is must be known, got no instrument for "${column}" in ${table.file}; add a line "# instrument ${column}: …" to the table, or give { readingUncertainty: thou(0.2) }`,
    );
  return readingUncertainty(instrument);
}

/** Standard uncertainty of a station [m]; undefined where nothing is known of it. */
export function uncertaintyOfStation(
  table: Table,
  column: string,
  given: Length | undefined,
): number | undefined {
  if (given !== undefined) {
    if (!isQuantity(given, "length") || !(given.si >= 0))
      throw new RangeError(`profileOf: stationUncertainty must be a length of 0 or more, got ${given}`);
    return given.si;
  }
  const instrument = table.conditions.instruments[column];
  return instrument === undefined ? undefined : readingUncertainty(instrument).si;
}
