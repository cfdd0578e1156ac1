import { formatFixed, type Length } from "../../quantity/index.js";
import type { GrossReading, Profile } from "../../survey/profile-types.js";
import type { TableBlock } from "../blocks.js";
import { angleText } from "./angle-text.js";
import { percentText } from "./percent-text.js";
import { offText, type ShownUnits, stationText } from "./shown-units.js";

/**
 * The readings that their neighbours contradict, each with its line, what was expected, how probably it is gross, and the
 * likely slip; and below them those that count although they may be gross.
 */
export function grossTable(
  profile: Profile,
  gross: readonly GrossReading[],
  units: ShownUnits,
  doubtful: readonly GrossReading[] = [],
): TableBlock[] {
  const all = [...gross, ...doubtful];
  if (all.length === 0) return [];
  const aside = new Set(gross);
  const anyProbability = all.some(({ probability }) => probability !== undefined);
  const anyRemark = all.some(({ reading }) => profile.readings[reading]!.remark !== "");
  const size = (length: Length): string => formatFixed(length.in(units.size), units.decimals);
  return [
    {
      type: "table",
      caption: `${captionOf(gross.length > 0, doubtful.length > 0)} Lines of ${profile.file}; sizes at 20 °C.`,
      columns: [
        { title: "line", align: "right" },
        { title: "station", unit: units.sizeSymbol, align: "right" },
        { title: "angle", align: "right" },
        { title: "read", unit: units.sizeSymbol, align: "right" },
        { title: "expected", unit: units.sizeSymbol, align: "right" },
        { title: "off by", align: "right" },
        { title: "times u", align: "right" },
        ...(anyProbability ? [{ title: "gross error?", align: "right" } as const] : []),
        ...(doubtful.length > 0 ? [{ title: "weight", align: "left" } as const] : []),
        { title: "likely slip", align: "left" },
        ...(anyRemark ? [{ title: "remark", align: "left" } as const] : []),
      ],
      rows: all.map((one) => {
        const { reading: index, residual, residualInU, probability, likely } = one;
        const { line, station, angle, diameter, remark } = profile.readings[index]!;
        return {
          mark: aside.has(one) ? "bad" : "warn",
          cells: [
            String(line),
            stationText(station, units),
            angleText(angle),
            size(diameter),
            size(diameter.minus(residual)),
            offText(residual, units),
            formatFixed(Math.abs(residualInU), 0),
            ...(anyProbability
              ? [probability === undefined ? "angles agree" : percentText(probability)]
              : []),
            ...(doubtful.length > 0 ? [aside.has(one) ? "none" : "counts"] : []),
            likely === "" ? "none evident" : likely,
            ...(anyRemark ? [remark] : []),
          ],
        };
      }),
      showRows: 12,
    },
  ];
}

function captionOf(anyGross: boolean, anyDoubtful: boolean): string {
  const aside = "Contradicted by their neighbours: shown, given no weight, to be read again.";
  const kept =
    "May be gross errors and count all the same, so that edges and depths are the less sure: read again.";
  if (!anyDoubtful) return aside;
  return anyGross
    ? `${aside} Those with weight may be gross, too, and make edges and depths less sure.`
    : kept;
}
