import { type Material, material } from "../handbook/index.js";
import type { Instrument } from "../survey/index.js";
import { lengthsOf, numbersOf, readingUncertainty, type Table, textOf } from "../survey/index.js";
import { type SolidShape, type SolidSize, solidFigures, solidForms } from "./solid.js";

/** A row of a table of pieces, checked. */
export interface Piece {
  readonly part: string;
  readonly piece: string;
  readonly shape: SolidShape;
  readonly count: number;
  readonly material: Material;
  /** Station of the near end [m]. */
  readonly along: number;
  /** The sizes that the shape has [m]. */
  readonly sizes: Readonly<Partial<Record<SolidSize, number>>>;
  readonly line: number;
}

const sizeNames: readonly SolidSize[] = ["across", "far", "inside", "length", "thick"];

/**
 * The rows of a table of pieces.
 *
 * @throws RangeError  a row names no part, no known shape or metal, lacks a size or has one that its shape has not; the
 * message names file and line
 */
export function piecesOf(table: Table): readonly Piece[] {
  const [parts, pieces, shapes, metals] = ["part", "piece", "shape", "material"].map((name) =>
    textOf(table, name),
  );
  const counts = numbersOf(table, "count");
  const along = lengthsOf(table, "along");
  const columns = sizeNames.map((name) => lengthsOf(table, name));
  return parts!.map((part, row): Piece => {
    const where = `masses: ${table.file} line ${table.lines[row]}`;
    const shape = shapes![row] as SolidShape;
    if (part === "" || part === "-")
      throw new RangeError(`${where}, column "part": found nothing, expected the part's name; write it`);
    if (!Object.hasOwn(solidForms, shape))
      throw new RangeError(
        `${where}, column "shape": found "${shape}", expected one of ${Object.keys(solidForms).join(", ")}; put the part together from these`,
      );
    const count = counts[row] ?? Number.NaN;
    if (!(Number.isInteger(count) && count >= 1))
      throw new RangeError(
        `${where}, column "count": found ${counts[row] ?? "nothing"}, expected a whole number from 1; write how many there are`,
      );
    const station = along[row];
    if (station === undefined)
      throw new RangeError(
        `${where}, column "along": found nothing, expected the station of the near end; measure it from one mark for all parts`,
      );
    const given = sizeNames.flatMap((name, i): [SolidSize, number][] => {
      const size = columns[i]![row];
      return size === undefined ? [] : [[name, size.si]];
    });
    const form = solidForms[shape];
    const stray = given.find(([name]) => ![...form.sizes, ...form.optional].includes(name));
    if (stray !== undefined)
      throw new RangeError(
        `${where}, column "${stray[0]}": found a size, expected - for a ${shape} (${form.words})`,
      );
    const sizes = Object.freeze(Object.fromEntries(given));
    try {
      solidFigures(shape, sizes);
      const metal = material(metals![row]!);
      return {
        part,
        piece: pieces![row]!,
        shape,
        count,
        material: metal,
        along: station.si,
        sizes,
        line: table.lines[row]!,
      };
    } catch (error) {
      throw new RangeError(`${where}: ${(error as Error).message}`);
    }
  });
}

/** Standard uncertainty of a size by the instrument of its column, with its calibration [m]; undefined where none is named. */
export function sizeUncertainty(table: Table, name: SolidSize | "along"): number | undefined {
  const instrument: Instrument | undefined = table.conditions.instruments[name];
  if (instrument === undefined) return undefined;
  return Math.hypot(readingUncertainty(instrument).si, instrument.calibration?.si ?? 0);
}
