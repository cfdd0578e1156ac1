import {
  degree,
  formatNumber,
  type Length,
  type TemperatureDifference,
  unitNamed,
} from "../../quantity/index.js";
import type { Column, Instrument, Table } from "../../survey/table.js";
import type { Fact, Presentation, TableBlock, TableColumn } from "../blocks.js";
import { countText } from "./count-text.js";
import { cutNote, mostRows } from "./cut-rows.js";
import { nominalText, type ShownUnits, shownUnits } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** What a table of readings looks like: under what conditions it was read, and every cell as it was written. */
export function presentTable(table: Table): Presentation {
  return Object.freeze<Presentation>({
    title: `Readings: ${table.name}`,
    blocks: [
      { type: "facts", facts: facts(table) },
      readings(table),
      ...cutNote(table.rowCount, table.file),
      ...warningBlocks(table.warnings),
    ],
  });
}

function facts(table: Table): Fact[] {
  const { instruments, temperature, temperatureUncertainty, part } = table.conditions;
  const units = shownUnits(table.unitSystem);
  // What the remarks say of the conditions is told above them, resolved; the rest as it stands.
  const isTold = (key: string): boolean => /^(instrument|temperature|part)\b/i.test(key);
  return [
    { label: "file", value: table.file, note: countText(table.rowCount, "row") },
    ...Object.entries(instruments).map(([column, instrument]) => instrumentFact(column, instrument, units)),
    {
      label: "temperature",
      value: temperature === undefined ? "not given: nothing can be brought to 20 °C" : `${temperature}`,
      ...(temperatureUncertainty === undefined
        ? {}
        : { note: `standard uncertainty ${differenceText(temperatureUncertainty, units)}` }),
    },
    ...(part === undefined
      ? []
      : [{ label: "part", value: part.title, note: part.material ?? "material not given" }]),
    ...table.remarks
      .filter(({ key }) => !isTold(key))
      .map(({ key, value, line }) => ({ label: key === "" ? "remark" : key, value, note: `line ${line}` })),
  ];
}

function instrumentFact(
  column: string,
  { title, resolution, repeatability, calibration }: Instrument,
  units: ShownUnits,
): Fact {
  const fine = (length: Length): string => fineText(length, units);
  const set = calibration === undefined ? "its setting is not given" : `set to ${fine(calibration)}`;
  return {
    label: `${column} read with`,
    value: title,
    note: `reads to ${fine(resolution)}; one standard deviation: repeats to ${fine(repeatability)}, ${set}`,
  };
}

/** What an instrument can do: "0.15 thou", "10 µm", of a tape "1/32 in". */
function fineText(length: Length, units: ShownUnits): string {
  const coarse = length.in(units.small) >= (units.small === "thou" ? 5 : 100);
  return coarse
    ? nominalText(length, units)
    : `${formatNumber(length.in(units.small), 3)} ${units.smallSymbol}`;
}

function differenceText(difference: TemperatureDifference, { system }: ShownUnits): string {
  const [unit, symbol] = system === "inch" ? (["deltaF", "°F"] as const) : (["deltaC", "°C"] as const);
  return `${formatNumber(difference.in(unit), 2)} ${symbol}`;
}

function readings(table: Table): TableBlock {
  const shown = table.lines.slice(0, mostRows);
  return {
    type: "table",
    caption: "As written in the file",
    columns: [{ title: "line", align: "right" }, ...table.columns.map(heading)],
    rows: shown.map((line, row) => ({
      cells: [String(line), ...table.columns.map(({ text }) => text[row] ?? "")],
    })),
    showRows: 24,
  };
}

const scaleSymbols = { degC: "°C", degF: "°F", kelvin: "K" } as const;

function heading({ name, dimension, unit, scale, angle }: Column): TableColumn {
  const title = angle === undefined ? name : `${name} at ${formatNumber(angle / degree(1).si)}°`;
  const align = dimension === "text" ? "left" : "right";
  const symbol = scale === undefined ? unit && unitNamed(unit).symbol : scaleSymbols[scale];
  return symbol === undefined ? { title, align } : { title, unit: symbol, align };
}
