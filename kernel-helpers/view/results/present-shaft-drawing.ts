import type { ShaftDrawing } from "../../shaft/index.js";
import type { Presentation } from "../blocks.js";
import { shaftDrawingOf } from "./shaft-drawing-sheet.js";
import { inWords, lengthText, limitsText, raText, size, taperText } from "./shaft-drawing-words.js";
import { type ShownUnits, shownUnits, sizeText } from "./shown-units.js";

/** A shaft to be made: its drawing with sizes, limits, finish and title block, and the same figures as a table. */
export function presentShaftDrawing(shaft: ShaftDrawing): Presentation {
  const units = shownUnits(shaft.unitSystem);
  return Object.freeze<Presentation>({
    title: `Drawing: ${shaft.title}`,
    blocks: [
      {
        type: "drawing",
        drawing: shaftDrawingOf(shaft, units, "wide"),
        narrow: shaftDrawingOf(shaft, units, "narrow"),
        alt: `Shaft, ${lengthText(shaft.length, units)} long, from left to right: ${shaft.stretches.map(({ name, diameter }) => `${name} of ${sizeText(diameter, units)}`).join(", ")}.`,
        caption:
          "Neither lengths nor steps to scale. Numbers in circles lead to the table; lines as ISO 128, dimensions as ISO 129, a thread's root as a thin line as ISO 6410 draws it.",
      },
      {
        type: "table",
        caption: `All sizes in ${inWords(units)}, diameters at 20 °C.`,
        columns: [
          { title: "stretch", align: "left" },
          { title: "length", align: "right" },
          { title: "diameter", align: "right" },
          { title: "limits", align: "left" },
          { title: "Ra at most", align: "right" },
          { title: "", align: "left" },
        ],
        stacked: true,
        rows: shaft.stretches.map((stretch, i) => ({
          cells: [
            `${i + 1} ${stretch.name}`,
            lengthText(stretch.length, units),
            stretch.endDiameter === undefined
              ? size(stretch.diameter, units)
              : `${size(stretch.diameter, units)} to ${size(stretch.endDiameter, units)}`,
            stretch.limits === undefined
              ? ""
              : `${limitsText(stretch.limits, units, " to ")} (${stretch.tolerance})`,
            stretch.roughness === undefined ? "" : raText(stretch.roughness, units),
            remarks(stretch, units),
          ],
        })),
      },
      ...shaft.notes.map((text) => ({ type: "text" as const, text })),
    ],
  });
}

function remarks(stretch: ShaftDrawing["stretches"][number], units: ShownUnits): string {
  const { taper, thread, keyseat, fillet: radius, floorToFarSide, remark } = stretch;
  return [
    ...(taper === undefined ? [] : [taperText(taper)]),
    ...(thread === undefined ? [] : [`thread ${thread.name}`]),
    ...(keyseat === undefined
      ? []
      : [
          `keyseat ${lengthText(keyseat.width, units)} wide, ${lengthText(keyseat.length, units)} long, its middle ${lengthText(keyseat.middle, units)} from the left; floor to far side ${lengthText(floorToFarSide!, units)}${keyseat.floor === undefined ? "" : ` there, floor ${keyseat.floor}`}`,
        ]),
    ...(radius === undefined ? [] : [`fillets R ${lengthText(radius, units)}`]),
    ...(remark === undefined ? [] : [remark]),
  ].join("; ");
}
