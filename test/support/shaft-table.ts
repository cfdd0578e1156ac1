import { readTable, type Table } from "../../kernel-helpers/survey/index.js";

/** One reading of an invented shaft, in inches and degrees. */
export interface ShaftReading {
  readonly station: number;
  readonly angle?: number;
  readonly diameter: number;
  readonly remark?: string;
}

export interface ShaftTableOptions {
  /** Unit of the file; the readings are turned from inches to it. */
  readonly unit?: "in" | "mm";
  /** Decimals of the diameters; default all. */
  readonly decimals?: number;
  /** Lines `# key: value` put on top. */
  readonly remarks?: readonly string[];
}

/** A table in the long form, read by the real reader: row i stands on line 2 + number of remarks + i. */
export function shaftTable(readings: readonly ShaftReading[], options: ShaftTableOptions = {}): Table {
  const { unit = "in", remarks = [] } = options;
  const angled = readings.some(({ angle }) => angle !== undefined);
  const rows = readings.map(({ station, angle, diameter, remark = "" }) =>
    [
      written(station, unit),
      ...(angled ? [angle === undefined ? "-" : String(angle)] : []),
      written(diameter, unit, options.decimals),
      remark,
    ].join(","),
  );
  const header = [`station [${unit}]`, ...(angled ? ["angle [deg]"] : []), `diameter [${unit}]`, "remark"];
  const text = [...remarks.map((line) => `# ${line}`), header.join(","), ...rows].join("\n");
  return tableFromText(text);
}

/** The same readings in the wide form, one column an angle; "-" where an angle is missing. */
export function wideShaftTable(readings: readonly ShaftReading[], options: ShaftTableOptions = {}): Table {
  const { unit = "in", remarks = [] } = options;
  const angles = [...new Set(readings.map(({ angle }) => angle!))];
  const stations = [...new Set(readings.map(({ station }) => station))];
  const rows = stations.map((station) =>
    [
      written(station, unit),
      ...angles.map((angle) => {
        const found = readings.find((r) => r.station === station && r.angle === angle);
        return found === undefined ? "-" : written(found.diameter, unit, options.decimals);
      }),
    ].join(","),
  );
  const header = [`station [${unit}]`, ...angles.map((angle) => `diameter @ ${angle} deg [${unit}]`)];
  return tableFromText([...remarks.map((line) => `# ${line}`), header.join(","), ...rows].join("\n"));
}

export function tableFromText(
  text: string,
  known: Omit<Parameters<typeof readTable>[1], "name" | "file"> = {},
): Table {
  return readTable(new TextEncoder().encode(text), { name: "shaft", file: "shaft.csv", ...known });
}

function written(inches: number, unit: "in" | "mm", decimals?: number): string {
  const value = unit === "in" ? inches : inches * 25.4;
  return decimals === undefined ? String(value) : value.toFixed(decimals);
}
