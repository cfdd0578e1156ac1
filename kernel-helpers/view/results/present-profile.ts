import { formatFixed, type Length } from "../../quantity/index.js";
import type { Profile, ProfileStation } from "../../survey/profile-types.js";
import type { Presentation, TableBlock } from "../blocks.js";
import { angleText } from "./angle-text.js";
import { countText, listText } from "./count-text.js";
import { cutNote, mostRows } from "./cut-rows.js";
import { correctionFact, uncertaintyFacts } from "./profile-facts.js";
import { profileFigure } from "./profile-figure.js";
import { type ShownUnits, shownUnits, smallNumber, stationText } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** What a diameter profile looks like: the figure, what is known of the readings, and the stations. */
export function presentProfile(profile: Profile): Presentation {
  const units = shownUnits(profile.unitSystem);
  const { stations, readings, angles, file } = profile;
  const angleList = angles.length === 0 ? "not said in the table" : listText(angles.map(angleText));
  return Object.freeze<Presentation>({
    title: `Diameter along the shaft: ${profile.title}`,
    blocks: [
      ...(readings.length === 0 ? [] : [profileFigure(profile)]),
      {
        type: "facts",
        facts: [
          {
            label: "readings",
            value: `${countText(readings.length, "reading")} at ${countText(stations.length, "station")}`,
            note: file,
          },
          { label: "angles round the shaft", value: angleList },
          correctionFact(profile),
          ...uncertaintyFacts(profile, units),
        ],
      },
      stationTable(profile, units),
      ...cutNote(stations.length, file),
      ...warningBlocks(profile.warnings),
    ],
  });
}

function stationTable(profile: Profile, units: ShownUnits): TableBlock {
  const angles = profile.angles.length === 0 ? [""] : profile.angles.map(angleText);
  // Where each station was read once there is neither a mean nor an ovality to tell.
  const several = profile.stations.some(({ readings }) => readings.length > 1);
  return {
    type: "table",
    caption: several
      ? "Diameters at 20 °C. Ovality is the largest less the smallest diameter over the angles. Mean and ovality are of all readings, as read: only the wear bands tell which of them are gross."
      : "Diameters at 20 °C, as read: only the wear bands tell which of them are gross.",
    columns: [
      { title: "station", unit: units.sizeSymbol, align: "right" },
      ...angles.map((angle) => ({
        title: angle === "" ? "diameter" : `at ${angle}`,
        unit: units.sizeSymbol,
        align: "right" as const,
      })),
      ...(several
        ? ([
            { title: "mean", unit: units.sizeSymbol, align: "right" },
            { title: "ovality", unit: units.smallSymbol, align: "right" },
          ] as const)
        : []),
      { title: several ? "lines" : "line", align: "left" },
      { title: "remark", align: "left" },
    ],
    rows: profile.stations
      .slice(0, mostRows)
      .map((s) => ({ cells: stationCells(s, profile, angles, units, several) })),
    showRows: 24,
  };
}

function stationCells(
  { station, mean, ovality, readings: indices }: ProfileStation,
  profile: Profile,
  angles: readonly string[],
  units: ShownUnits,
  several: boolean,
): string[] {
  const readings = indices.map((index) => profile.readings[index]!);
  const size = (length: Length): string => formatFixed(length.in(units.size), units.decimals);
  const remarks = [...new Set(readings.map(({ remark }) => remark).filter((remark) => remark !== ""))];
  return [
    stationText(station, units),
    // Several readings of one place and angle stand side by side; none is a hyphen, never an empty cell.
    ...angles.map((angle) => {
      const here = readings.filter((reading) => angleText(reading.angle) === angle);
      return here.length === 0 ? "–" : here.map(({ diameter }) => size(diameter)).join(", ");
    }),
    ...(several ? [size(mean), ovality === undefined ? "–" : smallNumber(ovality, units.small)] : []),
    [...new Set(readings.map(({ line }) => line))].join(", "),
    remarks.join("; "),
  ];
}
