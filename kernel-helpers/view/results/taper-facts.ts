import { formatFixed, type Measured, measured } from "../../quantity/index.js";
import type { TaperFit } from "../../survey/profile-types.js";
import type { Fact } from "../blocks.js";
import { expandedUncertainty, formatMeasured, plusMinus } from "../format-measured.js";
import { degreesMinutesSeconds } from "./angle-text.js";
import { scaled } from "./scaled.js";
import { type ShownUnits, stationText } from "./shown-units.js";

/** A taper in all the ways it is named, each with its uncertainty and what it is measured on. */
export function taperFacts(fit: TaperFit, units: ShownUnits): Fact[] {
  const { taper, halfAngle, includedAngle } = fit;
  const perFoot = {
    label: "taper per foot",
    value: withUnit(scaled(taper, 12), "in per foot"),
    note: "on diameter",
  };
  const perCent = {
    label: "taper per cent",
    value: withUnit(scaled(taper, 100), "%"),
    note: "diameter over length",
  };
  const ratio = ratioFact(taper);
  return [
    ...(units.system === "inch" ? [perFoot, perCent, ratio] : [ratio, perCent, perFoot]),
    angleFact("half angle", halfAngle, "between surface and axis: set a compound slide to this"),
    angleFact("included angle", includedAngle, "between opposite surfaces"),
    endFact("small end", fit.smallEnd, units),
    endFact("large end", fit.largeEnd, units),
    {
      label: "length read",
      value: `${stationText(fit.length, units)} ${units.sizeSymbol}`,
      note: "along the axis, first to last reading",
    },
  ];
}

/** An angle in decimal degrees with its uncertainty, and in degrees, minutes and seconds. */
export function angleFact(label: string, angle: TaperFit["halfAngle"], note: string): Fact {
  return {
    label,
    value: `${plusMinus(angle, { unit: "degree" })} (95 %) = ${degreesMinutesSeconds(angle.value)}`,
    note,
  };
}

/** A plain number that stands for a length over a length, named by hand. */
export function withUnit(value: Measured<number>, unit: string): string {
  return formatMeasured(value).replace(" (", ` ${unit} (`);
}

/**
 * The taper as 1 : x. Where its uncertainty is small against it, x ± U; else the two ends of the interval, for
 * 1/t is no longer symmetric; where the interval takes in a straight shaft, no ratio at all.
 */
export function ratioFact(taper: Measured<number>): Fact {
  const label = "taper as a ratio";
  const size = Math.abs(taper.value);
  const { expanded } = expandedUncertainty(taper);
  if (expanded >= size) return { label, value: "none: within its uncertainty the shaft is straight" };
  if (expanded > 0.1 * size)
    return {
      label,
      value: `between 1 : ${formatFixed(1 / (size + expanded), 1)} and 1 : ${formatFixed(1 / (size - expanded), 1)} (95 %)`,
    };
  const ratio = measured(1 / size, taper.standardUncertainty / size ** 2, taper.degreesOfFreedom);
  return {
    label,
    value: `1 : ${plusMinus(ratio)} (95 %)`,
    note: "diameter 1 smaller for each x along the axis",
  };
}

function endFact(name: string, { station, diameter }: TaperFit["smallEnd"], units: ShownUnits): Fact {
  return {
    label: `${name}, at station ${stationText(station, units)} ${units.sizeSymbol}`,
    value: formatMeasured(diameter, { unit: units.size }),
    note: "diameter by the line, at 20 °C",
  };
}
