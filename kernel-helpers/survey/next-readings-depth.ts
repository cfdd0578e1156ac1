import { type Length, quantityFromSi } from "../quantity/index.js";
import { type BandDesign, bandDesign, bandNumbered } from "./next-readings-band.js";
import { candidates, heightVariance, type Information, withReading } from "./next-readings-information.js";
import type { NextReading } from "./next-readings-types.js";
import type { WearBand, WearBands } from "./profile-types.js";

const mostShown = 5;

/** What is asked of a band's depth, and the places to read. */
export interface DepthAnswer {
  readonly band: WearBand;
  readonly before: Length;
  readonly readings: readonly NextReading[];
  readonly warnings: readonly string[];
}

/**
 * Where to read to know a band's depth better: u² = u²(height at its middle) + u²(common), before and after one more
 * station with all its angles. What is common to all readings (setting, temperature) no reading takes away.
 */
export function nextForDepth(where: string, wear: WearBands, asked: number | undefined): DepthAnswer {
  const band = bandNumbered(where, wear, asked) ?? deepest(where, wear);
  const design = bandDesign(wear, band);
  const middle = design.information.reference;
  const common = wear.profile.commonUncertainty.si;
  const uWith = (information: Information): number =>
    Math.sqrt(heightVariance(information, middle) + common ** 2);
  const lengthOf = (si: number): Length =>
    quantityFromSi("length", si, band.diameter.value.writtenIn as never);
  const before = uWith(design.information);
  const places = design.information.sloping ? candidates(design.positions) : [widestGap(design)];
  const readings = places.map((position): NextReading => {
    const once = withReading(design.information, { position, weight: design.weight });
    const thrice = withReading(design.information, { position, weight: 3 * design.weight });
    return Object.freeze({
      station: quantityFromSi("length", position, band.from.writtenIn as never),
      angles: Object.freeze([...design.angles]),
      afterOne: lengthOf(uWith(once)),
      afterThree: lengthOf(uWith(thrice)),
      gain: 1 - uWith(once) / before,
      clearAfterOne: undefined,
      clearAfterThree: undefined,
      reason: reasonFor(design, position),
    });
  });
  return {
    band,
    before: lengthOf(before),
    readings: readings.sort((a, b) => b.gain - a.gain || a.station.si - b.station.si).slice(0, mostShown),
    warnings: commonWarning(common, before),
  };
}

/** What to say where more readings cannot help much. */
export function commonWarning(common: number, total: number): string[] {
  return common ** 2 > 0.5 * total ** 2
    ? [
        "Most of the uncertainty is common to all readings, setting and temperature, which no further reading takes away: set the instrument on a standard of known size, at one temperature with the shaft.",
      ]
    : [];
}

function deepest(where: string, { bands, nominal }: WearBands): WearBand {
  if (nominal === undefined)
    throw new RangeError(
      `${where}: a depth needs a nominal diameter, got none; name one band with { band } or give wearBands a nominal`,
    );
  return bands.reduce((most, band) => (band.depth!.value > most.depth!.value ? band : most));
}

/** Midway in the widest gap between a band's stations. */
function widestGap({ positions }: BandDesign): number {
  let [best, width] = [positions[0]!, -1];
  positions.slice(1).forEach((position, i) => {
    const gap = position - positions[i]!;
    if (gap > width * (1 + 1e-9)) [best, width] = [positions[i]! + gap / 2, gap];
  });
  return best;
}

function reasonFor({ band, positions, information }: BandDesign, position: number): string {
  const angle =
    band.smallestAngle === undefined
      ? ""
      : ` Read at ${band.smallestAngle} at any rate, where the band is smallest.`;
  if (!information.sloping)
    return `The band is level, so one more station counts alike anywhere in it; here its stations lie farthest apart.${angle}`;
  const off = Math.abs(position - information.reference) / (positions[positions.length - 1]! - positions[0]!);
  return off < 0.15
    ? `Near the middle of the band, where its depth is stated.${angle}`
    : `Away from the middle of the band: part of the reading goes into its slope.${angle}`;
}
