import {
  type Angle,
  type KindName,
  type Length,
  type Quantity,
  quantityFromSi,
  type Temperature,
  type TemperatureScale,
  temperature,
} from "../quantity/index.js";
import { sameDirection } from "./same-direction.js";
import type { Column, Table } from "./table.js";

/** Which column is meant where several have one name. */
export interface ColumnChoice {
  /** In the wide form: where round the shaft it was read. */
  readonly angle?: Angle | undefined;
}

/**
 * The columns of one name, in the order of the file: several in the wide form (`diameter @ 0 deg [in]`,
 * `diameter @ 90 deg [in]`), otherwise one; none where the table has no such column.
 */
export function columnsNamed(table: Table, name: string): readonly Column[] {
  const wanted = name.trim().toLowerCase();
  return table.columns.filter((column) => column.name === wanted);
}

/**
 * The column of a name.
 *
 * @param table  as `readTable` returns it
 * @param name  without unit and angle, in any case: "diameter"
 * @param choice.angle  in the wide form, which of them [rad]
 * @throws RangeError  there is no such column, or several; the message lists those there are
 * @example
 * const bytes = new TextEncoder().encode("station [in],bore @ 0 deg [in],bore @ 90 deg [in]\n1,2.01,2.02");
 * column(readTable(bytes, { name: "box", file: "box.csv" }), "bore", { angle: degree(90) }).text // ["2.02"]
 */
export function column(table: Table, name: string, choice: ColumnChoice = {}): Column {
  const named = columnsNamed(table, name);
  const { angle } = choice;
  const fitting =
    angle === undefined
      ? named
      : named.filter((one) => one.angle !== undefined && sameDirection(one.angle, angle.si));
  if (fitting.length === 1) return fitting[0]!;
  const wanted = `"${name}"${angle === undefined ? "" : ` at ${angle}`}`;
  const columns = table.columns.map(({ header }) => `"${header}"`).join(", ");
  throw new RangeError(
    fitting.length === 0
      ? `column: ${table.name} has no column ${wanted}; its columns are ${columns}`
      : `column: ${table.name} has ${fitting.length} columns ${wanted}, say which with { angle }; its columns are ${columns}`,
  );
}

/**
 * The lengths of a column, one a row; undefined where no reading was taken (`-`).
 *
 * @throws TypeError   the column holds something else
 * @throws RangeError  as `column`
 * @example
 * const bytes = new TextEncoder().encode("station [in],diameter [in]\n0.5,2.4332\n1.0,-");
 * const survey = readTable(bytes, { name: "survey", file: "survey.csv" });
 * lengthsOf(survey, "diameter")[0] // 2.4332 in
 * lengthsOf(survey, "diameter")[1] // undefined
 */
export function lengthsOf(
  table: Table,
  name: string,
  choice: ColumnChoice = {},
): readonly (Length | undefined)[] {
  return quantitiesOf(table, name, "length", choice);
}

/** The angles of a column (default "angle"), one a row; undefined where none was noted. Throws as `lengthsOf`. */
export function anglesOf(table: Table, name: string = "angle"): readonly (Angle | undefined)[] {
  return quantitiesOf(table, name, "angle", {});
}

/**
 * The quantities of a column, one a row, of any kind; undefined where no reading was taken.
 *
 * @throws TypeError, RangeError  as `lengthsOf`
 * @example
 * const bytes = new TextEncoder().encode("pull [lbf]\n120");
 * quantitiesOf(readTable(bytes, { name: "pulls", file: "pulls.csv" }), "pull", "force")[0] // 120 lbf
 */
export function quantitiesOf<K extends KindName>(
  table: Table,
  name: string,
  kind: K,
  choice: ColumnChoice = {},
): readonly (Quantity<K> | undefined)[] {
  const { values, unit } = columnOf(table, name, kind, choice);
  return Object.freeze(
    values.map((si) => (Number.isNaN(si) ? undefined : quantityFromSi(kind, si, unit as never))),
  );
}

/**
 * The temperatures of a column (`pulley box [degF]`), one a row; undefined where none was read. Throws as `lengthsOf`.
 *
 * @example
 * const bytes = new TextEncoder().encode("time [min],room [degC]\n0,18.5");
 * temperaturesOf(readTable(bytes, { name: "run-in", file: "run-in.csv" }), "room")[0] // 18.5 °C
 */
export function temperaturesOf(
  table: Table,
  name: string,
  choice: ColumnChoice = {},
): readonly (Temperature | undefined)[] {
  const { values, scale } = columnOf(table, name, "temperature", choice);
  return Object.freeze(
    values.map((kelvin) => (Number.isNaN(kelvin) ? undefined : temperature(onScale(kelvin, scale!), scale!))),
  );
}

/** The reading on a scale, without the rounding that going to kelvin and back leaves in the last digits. */
function onScale(kelvin: number, scale: TemperatureScale): number {
  return Number(temperature(kelvin, "kelvin").in(scale).toPrecision(12));
}

/** The plain numbers of a column [-], NaN where no reading was taken. Throws as `lengthsOf`. */
export function numbersOf(table: Table, name: string): readonly number[] {
  return columnOf(table, name, "number", {}).values;
}

/** The cells of a column as written, whatever they hold. @throws RangeError as `column` */
export function textOf(table: Table, name: string, choice: ColumnChoice = {}): readonly string[] {
  return column(table, name, choice).text;
}

function columnOf(table: Table, name: string, dimension: string, choice: ColumnChoice): Column {
  const found = column(table, name, choice);
  if (found.dimension !== dimension)
    throw new TypeError(
      `column "${found.header}" of ${table.name}: must hold ${plural(dimension)}, got ${plural(found.dimension)}`,
    );
  return found;
}

function plural(dimension: string): string {
  return dimension === "text" ? "words" : dimension === "mass" ? "masses" : `${dimension}s`;
}
