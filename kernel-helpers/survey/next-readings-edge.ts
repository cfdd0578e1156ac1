import { type Length, quantityFromSi } from "../quantity/index.js";
import { normalCdf } from "../statistics/index.js";
import { bandDesign } from "./next-readings-band.js";
import type { NextReading } from "./next-readings-types.js";
import type { BandEdge, WearBand, WearBands } from "./profile-types.js";
import { plainSmall } from "./run-out-text.js";
import { sameDirection } from "./same-direction.js";

/** One reading may place the edge on the wrong side so often, and is still trusted. */
const wrongBelow = 0.025;

/** What is asked of an edge, and the one place to read. */
export interface EdgeAnswer {
  readonly edge: BandEdge;
  readonly number: number;
  readonly before: Length;
  readonly readings: readonly NextReading[];
  readonly warnings: readonly string[];
}

/**
 * Where to read to find an edge: the middle of its gap.
 *
 * The edge is equally likely anywhere in the gap of width g: u = g/√12. A reading in the middle that is put to the
 * nearer of the two bands is wrong with p = Φ(−h/(2u_r)), h the step there, u_r the reading's uncertainty:
 * u'² = g²/48 + p (1 − p) g²/4, which halves u for a plain step and leaves it as it was where p = ½. Three readings,
 * each in the middle of what is left, give u/8 where p ≤ 2.5 %; else all three go to the middle, their mean's u_r/√3.
 */
export function nextForEdge(where: string, wear: WearBands, asked: number | undefined): EdgeAnswer {
  const { edges, bands, profile } = wear;
  if (edges.length === 0)
    throw new RangeError(`${where}: the shaft must have at least 2 bands for an edge, got ${bands.length}`);
  const widest = edges.reduce(
    (worst, { position }, i) =>
      position.standardUncertainty > edges[worst]!.position.standardUncertainty ? i : worst,
    0,
  );
  const number = asked ?? widest + 1;
  const edge = edges[number - 1];
  if (edge === undefined || !Number.isInteger(number))
    throw new RangeError(`${where}: edge must be a whole number from 1 to ${edges.length}, got ${number}`);
  const [left, right] = [bands[number - 1]!, bands[number]!];
  const design = bandDesign(wear, left);
  const steps = (profile.angles.length === 0 ? [undefined] : profile.angles).map((angle) => ({
    angle,
    step: Math.abs(
      left.diameterAtTo.si -
        right.diameterAtFrom.si +
        offsetAt(wear, left, angle?.si) -
        offsetAt(wear, right, angle?.si),
    ),
  }));
  const { angle, step } = steps.reduce((most, one) => (one.step > most.step ? one : most));
  const u = readingU(wear) * design.widened;
  const gap = edge.before.si - edge.after.si;
  const wrong = (readings: number): number => normalCdf((-step * Math.sqrt(readings)) / (2 * u));
  const after = (p: number): number => Math.sqrt(gap ** 2 / 48 + (p * (1 - p) * gap ** 2) / 4);
  const plain = wrong(1) <= wrongBelow;
  const place = (si: number): Length => quantityFromSi("length", si, edge.after.writtenIn as never);
  const before = gap / Math.sqrt(12);
  const small = quantityFromSi("length", step, profile.unitSystem === "inch" ? "inch" : "mm");
  const at = angle === undefined ? "" : ` at ${angle}, where it is largest,`;
  const reason = plain
    ? `Middle of the gap from ${edge.after} to ${edge.before}: the step of ${plainSmall(small, profile.unitSystem)}${at} tells at once on which side the edge lies, and the gap halves. Three readings, each in the middle of what is left, leave an eighth.`
    : `Middle of the gap from ${edge.after} to ${edge.before}; but the step of ${plainSmall(small, profile.unitSystem)}${at} is so small that one reading lands on the wrong side in ${(100 * wrong(1)).toFixed(0)} % of cases. Read there several times and take the mean.`;
  const spanned = edge.interval;
  const beyond =
    spanned !== undefined &&
    (spanned.after.si < edge.after.si - 1e-9 || spanned.before.si > edge.before.si + 1e-9);
  return {
    edge,
    number,
    before: place(before),
    readings: [
      Object.freeze<NextReading>({
        station: place((edge.after.si + edge.before.si) / 2),
        angles: Object.freeze(angle === undefined ? [] : [angle]),
        afterOne: place(after(wrong(1))),
        afterThree: place(plain ? before / 8 : after(wrong(3))),
        gain: 1 - after(wrong(1)) / before,
        clearAfterOne: undefined,
        clearAfterThree: undefined,
        reason,
      }),
    ],
    warnings: beyond
      ? [
          `The edge may lie outside its gap: from ${spanned.after} to ${spanned.before} with a probability of ${(100 * spanned.probability).toFixed(0)} %. Read the stations of that stretch once more first.`,
        ]
      : [],
  };
}

function readingU({ profile }: WearBands): number {
  return profile.readings[0]!.standardUncertainty.si;
}

/** Mean of a band's readings at an angle less the band's fit there [m]; 0 where it was not read at that angle. */
export function offsetAt(wear: WearBands, band: WearBand, angle: number | undefined): number {
  const residuals = residualsAt(wear, band, angle);
  return residuals.length === 0 ? 0 : residuals.reduce((sum, r) => sum + r, 0) / residuals.length;
}

/** The band's sound readings at an angle less its fit [m]. */
export function residualsAt(
  { profile, gross }: WearBands,
  { from, to, diameterAtFrom, diameterAtTo }: WearBand,
  angle: number | undefined,
): readonly number[] {
  const aside = new Set(gross.map(({ reading }) => reading));
  return profile.readings.flatMap((reading, i) => {
    const { station } = reading;
    const there =
      angle === undefined || (reading.angle !== undefined && sameDirection(reading.angle.si, angle));
    if (aside.has(i) || !there || station.si < from.si - 1e-9 || station.si > to.si + 1e-9) return [];
    const share = to.si === from.si ? 0 : (station.si - from.si) / (to.si - from.si);
    return [reading.diameter.si - diameterAtFrom.si - share * (diameterAtTo.si - diameterAtFrom.si)];
  });
}
