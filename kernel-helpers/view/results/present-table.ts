import { degree, formatNumber, unitNamed } from "../../quantity/index.js";
import type { Column, Instrument, Table } from "../../survey/table.js";
import type { Fact, Presentation, TableBlock, TableColumn } from "../blocks.js";
import { countText } from "./count-text.js";
import { cutNote, mostRows } from "./cut-rows.js";
import { type ShownUnits, shownUnits } from "./shown-units.js";
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
  const told = new Set(["instrument", "temperature", "part"]);
  return [
    { label: "file", value: table.file, note: countText(table.rowCount, "row") },
    ...Object.entries(instruments).map(([column, instrument]) => instrumentFact(column, instrument, units)),
    {
      label: "temperature",
      value: temperature === undefined ? "not given: nothing can be brought to 20 °C" : `${temperature}`,
      ...(temperatureUncertainty === undefined
        ? {}
        : { note: `standard uncertainty ${temperatureUncertainty}` }),
    },
    ...(part === undefined
      ? []
      : [{ label: "part", value: part.title, note: part.material ?? "material not given" }]),
    ...table.remarks
      .filter(({ key }) => !told.has(key.toLowerCase()))
      .map(({ key, value, line }) => ({ label: key, value, note: `line ${line}` })),
  ];
}

function instrumentFact(
  column: string,
  { title, resolution, repeatability, calibration }: Instrument,
  units: ShownUnits,
): Fact {
  const fine = (length: Instrument["resolution"]): string =>
    `${formatNumber(length.in(units.small), 3)} ${units.smallSymbol}`;
  const setting = calibration === undefined ? "its setting not given" : `its setting to ${fine(calibration)}`;
  return {
    label: `${column} read with`,
    value: title,
    note: `reads to ${fine(resolution)}, repeats to ${fine(repeatability)}, ${setting} (standard deviations)`,
  };
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
    showRows: 12,
  };
}

function heading({ name, dimension, unit, angle }: Column): TableColumn {
  const title = angle === undefined ? name : `${name} at ${formatNumber(angle / degree(1).si)}°`;
  const align = dimension === "text" ? "left" : "right";
  return unit === undefined ? { title, align } : { title, unit: unitNamed(unit).symbol, align };
}
