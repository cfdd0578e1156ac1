import { type Length, quantityFromSi } from "../../quantity/index.js";
import type { FitsToMake, FitToMake, SizeLimits } from "../../shaft/index.js";
import type { Presentation } from "../blocks.js";
import { formatMeasured } from "../format-measured.js";
import { nominalText, type ShownUnits, shownUnits, sizeLimits, smallText } from "./shown-units.js";
import { warningBlocks } from "./warning-blocks.js";

/** What new parts are bored to, by their fits: on a new shaft, and on the one that is kept. */
export function presentFitsToMake(result: FitsToMake): Presentation {
  const units = shownUnits(result.unitSystem);
  const between = (limits: SizeLimits): string => sizeLimits(limits, units).replace(/ \S+ to/, " to");
  return Object.freeze<Presentation>({
    title: `Fits of new parts on ${nominalText(result.nominal, units)}`,
    blocks: [
      {
        type: "facts",
        facts: [
          {
            label: "the shaft as it is",
            value: formatMeasured(result.asMeasured, { unit: units.size }),
            note: `on diameter, at station ${nominalText(result.station, units)}`,
          },
        ],
      },
      {
        type: "table",
        caption:
          "On diameter, at 20 °C. A bore for the shaft as it is gives the same clearance, whatever in its 95 % the shaft has.",
        columns: [
          { title: "part", align: "left" },
          { title: "fit", align: "left" },
          { title: "between them", align: "left" },
          { title: "new shaft", align: "left" },
          { title: "bore for a new shaft", align: "left" },
          { title: "bore for the shaft as it is", align: "left" },
        ],
        stacked: true,
        rows: result.fits.map((fit) => ({
          cells: [
            fit.part,
            fit.fit,
            betweenText(fit, units),
            between(fit.shaft),
            between(fit.hole),
            fit.boreForTheShaft === undefined ? "measure closer" : between(fit.boreForTheShaft),
          ],
          ...(fit.boreForTheShaft === undefined ? { mark: "warn" as const } : {}),
        })),
      },
      { type: "text", text: `Limits: ${[...new Set(result.fits.map(({ source }) => source))].join("; ")}.` },
      ...warningBlocks(result.warnings),
    ],
  });
}

function betweenText({ type, least, most }: FitToMake, units: ShownUnits): string {
  const text = (length: Length): string =>
    smallText(quantityFromSi("length", Math.abs(length.si), length.writtenIn), units);
  if (type === "clearance") return `clearance ${text(least)} to ${text(most)}`;
  if (type === "interference") return `interference ${text(most)} to ${text(least)}`;
  return `interference ${text(least)} to clearance ${text(most)}`;
}
