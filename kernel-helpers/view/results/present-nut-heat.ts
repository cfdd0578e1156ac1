import type { HeatNut, NeighbourLimit } from "../../joint/heat-nut.js";
import { formatFixed, formatNumber, type Temperature, type Time, unitSystem } from "../../quantity/index.js";
import type { Presentation, TableRow } from "../blocks.js";
import { shownUnits } from "./shown-units.js";

/** What warming the nut gives, which neighbour stops it, and how long it lasts. */
export function presentNutHeat(heat: HeatNut): Presentation {
  const inch = heat.thread.threadsPerInch !== undefined;
  const units = shownUnits(inch ? "inch" : "metric");
  const fahrenheit = (unitSystem() ?? (inch ? "inch" : "metric")) === "inch";
  const degrees = (at: Temperature): string =>
    `${formatFixed(at.in(fahrenheit ? "degF" : "degC"), 0)} °${fahrenheit ? "F" : "C"}`;
  const ceilingText = (most: Temperature): string =>
    `${formatFixed(Math.floor(most.in(fahrenheit ? "degF" : "degC") + 1e-9), 0)} °${fahrenheit ? "F" : "C"}`;
  const small = (length: HeatNut["growth"]): string =>
    `${formatNumber(length.in(units.small), 2)} ${units.smallSymbol}`;
  const first = heat.limits[0]!;
  return Object.freeze<Presentation>({
    title: `Warming the nut to ${ceilingText(heat.nut)}`,
    blocks: [
      {
        type: "verdict",
        outcome: "yes",
        text: `The nut may be made ${ceilingText(heat.hottest)} hot, and no hotter: ${first.name} stops it.`,
        because: `${first.name}: ${first.why}. At ${ceilingText(heat.nut)} the nut's bore has grown ${small(heat.growth)} over a cold stud.`,
      },
      {
        type: "facts",
        facts: [
          {
            label: "growth of the bore",
            value: small(heat.growth),
            note: `on diameter, stud left cold; ${small(heat.growthPerStep)} for each ${inch ? "100 °F" : "50 °C"}. The crack of the rust counts for as much as the room.`,
          },
          {
            label: "half of it is gone after",
            value: minutes(heat.halfGone),
            note: "in still air, the longest it can take; on a cold hub several times sooner: warm, pull, and pull at once",
          },
          {
            label: "may be touched after",
            value: heat.touchable.high.si === 0 ? "at once" : minutes(heat.touchable),
            note: `down to ${degrees(heat.touch)}, bare metal for a second; hold the back of the hand near it first`,
          },
        ],
      },
      {
        type: "table",
        stacked: true,
        caption:
          "What is near, and how hot it lets the nut become; the first row is reached first. The share of the nut's rise that reaches it is a judgement: watch it with a temperature stick.",
        columns: [
          { title: "near the nut", align: "left" },
          { title: "its ceiling", align: "right" },
          { title: "share of the rise", align: "right" },
          { title: "nut no hotter than", align: "right" },
          { title: "above that", align: "left" },
        ],
        rows: heat.limits.map((limit) => row(limit, ceilingText)),
      },
    ],
  });
}

function row(
  { name, ceiling, share, nutAt, why }: NeighbourLimit,
  most: (ceiling: Temperature) => string,
): TableRow {
  return {
    cells: [name, most(ceiling), `${formatNumber(share * 100, 2)} %`, most(nutAt), why],
  };
}

function minutes({ low, high }: { readonly low: Time; readonly high: Time }): string {
  const text = (time: Time): string => formatNumber(time.in("minute"), 2);
  return `${text(low)} to ${text(high)} min`;
}
