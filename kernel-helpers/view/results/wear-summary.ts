import type { WearBand, WearBands } from "../../survey/profile-types.js";
import { angleText } from "./angle-text.js";
import { countText, listText } from "./count-text.js";
import { percentText } from "./percent-text.js";
import {
  nominalText,
  type ShownUnits,
  sizeMeasured,
  smallMeasured,
  smallText,
  stationText,
} from "./shown-units.js";

/** The wear of a shaft in two or three sentences, as one would say it at the bench. */
export function wearSummary(wear: WearBands, units: ShownUnits): string {
  const { bands, gross, profile } = wear;
  const [first, last] = [bands[0], bands.at(-1)];
  if (first === undefined || last === undefined) return "No reading carries weight, so no band can be told.";
  const reach = `${stationText(first.from, units)} to ${stationText(last.to, units)} ${units.sizeSymbol}`;
  return [
    `From station ${reach} the shaft has ${countText(bands.length, "band")}${numberDoubt(wear)}.`,
    worst(wear, units),
    ...bands.flatMap((band) => oneSided(band, units)),
    gross.length === 0
      ? ""
      : `${countText(gross.length, "reading")} ${gross.length === 1 ? "is" : "are"} contradicted by the neighbours and given no weight: ${listText(
          gross.map(({ reading }) => `line ${profile.readings[reading]!.line}`),
        )}.`,
  ]
    .filter((sentence) => sentence !== "")
    .join(" ");
}

/** How probable the number of bands is, and which other number is the likeliest, where worked out. */
function numberDoubt({ bandCountProbability }: WearBands): string {
  if (bandCountProbability === undefined) return "";
  const { found, runnerUp } = bandCountProbability;
  const other =
    runnerUp === undefined || runnerUp.probability < 0.01
      ? ""
      : `, ${countText(runnerUp.bands, "band")} ${percentText(runnerUp.probability)}`;
  return ` (probability ${percentText(found)}${other})`;
}

function worst({ bands, nominal }: WearBands, units: ShownUnits): string {
  if (nominal === undefined) {
    const smallest = [...bands].sort((a, b) => a.diameter.value.si - b.diameter.value.si)[0]!;
    return `The smallest is band ${place(smallest, units)}: ${sizeMeasured(smallest.diameter, units)}. Without a nominal size, wear is not judged.`;
  }
  const name = nominalText(nominal, units);
  const worn = bands
    .filter(({ state }) => state === "worn")
    .sort((a, b) => deepestOf(b, nominal) - deepestOf(a, nominal));
  const deepest = worn[0];
  if (deepest?.depth === undefined) return `None is worn beyond its uncertainty from the nominal ${name}.`;
  const others = worn
    .slice(1)
    .map(({ number }) => number)
    .sort((a, b) => a - b);
  const sloping =
    deepest.shape === "sloping"
      ? `, ${smallText(nominal.minus(deepest.diameterAtFrom), units)} at its start and ${smallText(nominal.minus(deepest.diameterAtTo), units)} at its end`
      : "";
  const also =
    others.length === 0
      ? ""
      : ` Also worn: ${others.length === 1 ? "band" : "bands"} ${listText(others.map(String), 12)}.`;
  return `The deepest wear is band ${place(deepest, units)}: ${smallMeasured(deepest.depth, units)} (95 %) below the nominal ${name}, on diameter${sloping}.${also}`;
}

/** The depth of a band at its deeper end [m]. */
function deepestOf(band: WearBand, nominal: WearBand["from"]): number {
  return nominal.si - Math.min(band.diameterAtFrom.si, band.diameterAtTo.si);
}

function place({ number, from, to }: WearBand, units: ShownUnits): string {
  return `${number}, ${stationText(from, units)} to ${stationText(to, units)} ${units.sizeSymbol}`;
}

function oneSided({ number, state, smallestAngle, ovality }: WearBand, units: ShownUnits): string[] {
  if (state !== "worn" || smallestAngle === undefined || ovality === undefined) return [];
  return [
    `Band ${number} is worn out of round by ${smallText(ovality, units)}, smallest at ${angleText(smallestAngle)}: its depth is a mean over the angles.`,
  ];
}
