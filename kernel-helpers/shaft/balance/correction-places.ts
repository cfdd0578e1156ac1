import { columnsNamed, lengthsOf, quantitiesOf, type Table, textOf } from "../../survey/index.js";
import type { CorrectionPlace } from "./split-correction.js";

/**
 * The places of one wheel where a mass can be fastened, from a table with the columns `wheel`, `angle` and, where they
 * differ, `radius` and `most`.
 *
 * @param table  one row a place [text], [rad], [m], [kg]
 * @param wheel  as the table calls it, in any case
 * @returns the places as `splitCorrection` takes them, in the order of the table
 * @throws RangeError  the table has no place of that wheel, two at one angle, or a place without its angle
 * @example
 * const rows = ["pulley,0", "pulley,90", "pulley,180"];
 * const bytes = new TextEncoder().encode(["wheel [text],angle [deg]", ...rows].join("\n"));
 * correctionPlaces(readTable(bytes, { name: "places", file: "places.csv" }), "pulley").length // 3
 * @source the form of the table: ours
 */
export function correctionPlaces(table: Table, wheel: string): readonly CorrectionPlace[] {
  const wheels = textOf(table, "wheel").map((text) => text.trim().toLowerCase());
  const angles = quantitiesOf(table, "angle", "angle");
  const has = (name: string): boolean => columnsNamed(table, name).length > 0;
  const radii = has("radius") ? lengthsOf(table, "radius") : [];
  const most = has("most") ? quantitiesOf(table, "most", "mass") : [];
  const found = table.lines.flatMap((line, row): (CorrectionPlace & { readonly line: number })[] => {
    if (wheels[row] !== wheel.trim().toLowerCase()) return [];
    const angle = angles[row];
    if (angle === undefined)
      throw new RangeError(`correctionPlaces: ${table.file} line ${line}: a place needs its angle, got none`);
    return [{ angle, radius: radii[row], most: most[row], line }];
  });
  if (found.length === 0)
    throw new RangeError(
      `correctionPlaces: ${table.file} has no place of "${wheel}"; its wheels are ${[...new Set(wheels)].join(", ")}`,
    );
  const turn = 2 * Math.PI;
  const twice = found.find(({ angle }, i) =>
    found
      .slice(0, i)
      .some((other) => Math.abs(Math.sin((((angle.si - other.angle.si) % turn) / turn) * Math.PI)) < 1e-9),
  );
  if (twice !== undefined)
    throw new RangeError(
      `correctionPlaces: ${table.file} line ${twice.line}: ${twice.angle} stands twice for "${wheel}"`,
    );
  return Object.freeze(
    found.map(({ angle, radius, most: room }) => Object.freeze({ angle, radius, most: room })),
  );
}
