import type { Ovality } from "../../survey/roundness-types.js";
import type { Fact, Presentation } from "../blocks.js";
import { formatMeasured } from "../format-measured.js";
import { countText } from "./count-text.js";
import { shownUnits } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** The ovality of a stretch: the answer in words, then the numbers and what they are. */
export function presentOvality(found: Ovality): Presentation {
  const units = shownUnits(found.unitSystem);
  const { bound, ovality, largestAt, smallestAt, from, to, stationCount, angleCount } = found;
  const facts: Fact[] = [
    {
      label: bound === "measured" ? "ovality" : "ovality, at least",
      value: formatMeasured(ovality, { unit: units.small }),
      note: "largest less smallest diameter, on diameter",
    },
    ...(largestAt === undefined
      ? []
      : [{ label: "largest diameter at", value: formatMeasured(largestAt, { unit: "degree" }) }]),
    ...(smallestAt === undefined
      ? []
      : [
          {
            label: "smallest diameter at",
            value: formatMeasured(smallestAt, { unit: "degree" }),
            note: "and half a turn on: a diameter has no side",
          },
        ]),
    {
      label: "from",
      value: `${countText(stationCount, "station")}, ${countText(angleCount, "direction")}`,
      note: from.si === to.si ? `at ${from}` : `${from} to ${to}`,
    },
  ];
  return Object.freeze<Presentation>({
    title: `Ovality of ${found.title}`,
    blocks: [
      { type: "text", text: found.text },
      { type: "facts", facts },
      {
        type: "text",
        text: "Diameters do not show odd lobes: a three-lobed shaft has one diameter all round.",
      },
      ...warningBlocks(found.warnings),
    ],
  });
}
