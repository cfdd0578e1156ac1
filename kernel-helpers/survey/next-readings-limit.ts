import { type Length, quantityFromSi } from "../quantity/index.js";
import { coverageFactor, normalCdf } from "../statistics/index.js";
import { type BandDesign, bandDesign, bandNumbered } from "./next-readings-band.js";
import { commonWarning } from "./next-readings-depth.js";
import { residualsAt } from "./next-readings-edge.js";
import { candidates, heightVariance, withReading } from "./next-readings-information.js";
import type { NextReading } from "./next-readings-types.js";
import type { WearBand, WearBands } from "./profile-types.js";

const mostShown = 5;

/** How a band stands against the limit now, and what more readings would bring. */
export interface LimitAnswer {
  readonly band: WearBand;
  readonly limit: Length;
  /** Smallest diameter of the band less limit. */
  readonly margin: Length;
  readonly before: Length;
  /** Whether the verdict is clear already: |margin| beyond its expanded uncertainty. */
  readonly clear: boolean;
  readonly readings: readonly NextReading[];
  readonly warnings: readonly string[];
}

/** The smallest diameter of a band: the fit at its smaller end, at the smallest angle where one stands out. */
interface Smallest {
  readonly design: BandDesign;
  readonly end: number;
  readonly margin: number;
  /** Variance of one reading at the smallest angle, and how many there are; 0 readings where no angle stands out. */
  readonly offset: { readonly variance: number; readonly count: number };
}

/**
 * Where to read so that the verdict against a limit becomes clear.
 *
 * margin m = smallest diameter − limit, u² = u²(fit at the smaller end) + u²(offset of the angle) + u²(common); clear where
 * |m| > k u (95 %, two-sided). Before further readings are taken the margin they will give is known to lie about m with
 * s² = u² − u'², so it will be clear with P = Φ((m − k u')/s) + Φ((−m − k u')/s).
 */
export function nextForLimit(
  where: string,
  wear: WearBands,
  limitAsked: Length | undefined,
  bandAsked: number | undefined,
): LimitAnswer {
  const limit = limitAsked ?? wear.limit;
  if (limit === undefined)
    throw new RangeError(
      `${where}: a limit must be given, got none; name it with { limit } or give it to wearBands`,
    );
  const common = wear.profile.commonUncertainty.si;
  const judged = (
    bandNumbered(where, wear, bandAsked) === undefined ? wear.bands : [bandNumbered(where, wear, bandAsked)!]
  ).map((band) => {
    const smallest = smallestOf(wear, band, limit);
    const u = uWith(smallest, undefined, common);
    const k = coverageFactor(0.95, band.diameter.degreesOfFreedom);
    return { smallest, u, k, clear: Math.abs(smallest.margin) > k * u };
  });
  // The verdict that is not clear and nearest to being so by a hair decides; else the tightest of the clear ones.
  const open = judged.filter(({ clear }) => !clear);
  const tightest = (open.length > 0 ? open : judged).reduce((worst, one) =>
    Math.abs(one.smallest.margin) / one.u < Math.abs(worst.smallest.margin) / worst.u ? one : worst,
  );
  const { smallest, u, k, clear } = tightest;
  const { design, end, margin } = smallest;
  const { band } = design;
  const lengthOf = (si: number): Length =>
    quantityFromSi("length", si, band.diameter.value.writtenIn as never);
  const clearWith = (after: number): number => {
    const s = Math.sqrt(Math.max(0, u ** 2 - after ** 2));
    if (s < 1e-9 * u) return clear ? 1 : 0;
    return normalCdf((margin - k * after) / s) + normalCdf((-margin - k * after) / s);
  };
  const readings = candidates(design.positions).map((position): NextReading => {
    const once = uWith(smallest, { position, times: 1 }, common);
    const thrice = uWith(smallest, { position, times: 3 }, common);
    return Object.freeze({
      station: quantityFromSi("length", position, band.from.writtenIn as never),
      angles: Object.freeze([...design.angles]),
      afterOne: lengthOf(once),
      afterThree: lengthOf(thrice),
      gain: 1 - once / u,
      clearAfterOne: clearWith(once),
      clearAfterThree: clearWith(thrice),
      reason: reasonFor(design, position, end),
    });
  });
  const nearest = (reading: NextReading): number => Math.abs(reading.station.si - end);
  return {
    band,
    limit,
    margin: lengthOf(margin),
    before: lengthOf(u),
    clear,
    readings: clear
      ? []
      : readings.sort((a, b) => b.gain - a.gain || nearest(a) - nearest(b)).slice(0, mostShown),
    warnings: clear ? [] : commonWarning(common, u),
  };
}

function smallestOf(wear: WearBands, band: WearBand, limit: Length): Smallest {
  const atTo = band.diameterAtTo < band.diameterAtFrom;
  const fit = (atTo ? band.diameterAtTo : band.diameterAtFrom).si;
  const design = bandDesign(wear, band);
  const residuals = band.smallestAngle === undefined ? [] : residualsAt(wear, band, band.smallestAngle.si);
  const mean = residuals.length === 0 ? 0 : residuals.reduce((sum, r) => sum + r, 0) / residuals.length;
  const variance = (wear.profile.readings[0]!.standardUncertainty.si * design.widened) ** 2;
  return {
    design,
    end: (atTo ? band.to : band.from).si,
    margin: fit + Math.min(0, mean) - limit.si,
    offset: { variance, count: residuals.length },
  };
}

function uWith(
  { design, end, offset }: Smallest,
  more: { readonly position: number; readonly times: number } | undefined,
  common: number,
): number {
  const information =
    more === undefined
      ? design.information
      : withReading(design.information, {
          position: more.position,
          weight: more.times * design.weight,
        });
  const ofAngle = offset.count === 0 ? 0 : offset.variance / (offset.count + (more?.times ?? 0));
  return Math.sqrt(heightVariance(information, end) + ofAngle + common ** 2);
}

function reasonFor({ band, information }: BandDesign, position: number, end: number): string {
  const angle =
    band.smallestAngle === undefined
      ? ""
      : ` At ${band.smallestAngle} at any rate: there the band is smallest.`;
  if (!information.sloping) return `The band is level: one more station counts alike anywhere in it.${angle}`;
  const length = band.to.si - band.from.si;
  return Math.abs(position - end) < 0.15 * length
    ? `Near the smaller end of the band, where the limit is tightest.${angle}`
    : `Farther from the smaller end of the band: the reading counts for less there.${angle}`;
}
