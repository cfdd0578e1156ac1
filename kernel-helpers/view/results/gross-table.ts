import { formatFixed, type Length } from "../../quantity/index.js";
import type { GrossReading, Profile } from "../../survey/profile-types.js";
import type { TableBlock } from "../blocks.js";
import { angleText } from "./angle-text.js";
import { offText, type ShownUnits, stationText } from "./shown-units.js";

/** The readings that their neighbours contradict, each with its line, what was expected, and the likely slip. */
export function grossTable(
  profile: Profile,
  gross: readonly GrossReading[],
  units: ShownUnits,
): TableBlock[] {
  if (gross.length === 0) return [];
  const anyRemark = gross.some(({ reading }) => profile.readings[reading]!.remark !== "");
  const size = (length: Length): string => formatFixed(length.in(units.size), units.decimals);
  return [
    {
      type: "table",
      caption: `Contradicted by their neighbours: shown, given no weight, to be read again. Lines of ${profile.file}; sizes at 20 °C.`,
      columns: [
        { title: "line", align: "right" },
        { title: "station", unit: units.sizeSymbol, align: "right" },
        { title: "angle", align: "right" },
        { title: "read", unit: units.sizeSymbol, align: "right" },
        { title: "expected", unit: units.sizeSymbol, align: "right" },
        { title: "off by", align: "right" },
        { title: "times u", align: "right" },
        { title: "likely slip", align: "left" },
        ...(anyRemark ? [{ title: "remark", align: "left" } as const] : []),
      ],
      rows: gross.map(({ reading: index, residual, residualInU, likely }) => {
        const { line, station, angle, diameter, remark } = profile.readings[index]!;
        return {
          mark: "bad",
          cells: [
            String(line),
            stationText(station, units),
            angleText(angle),
            size(diameter),
            size(diameter.minus(residual)),
            offText(residual, units),
            formatFixed(Math.abs(residualInU), 0),
            likely === "" ? "none evident" : likely,
            ...(anyRemark ? [remark] : []),
          ],
        };
      }),
      showRows: 12,
    },
  ];
}
