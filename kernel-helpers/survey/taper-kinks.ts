import { formatWithUncertainty, measured, quantityFromSi, type UnitSystem } from "../quantity/index.js";
import { coverageFactor, type KinkedLine, kinkedLine } from "../statistics/index.js";
import type { TaperKink } from "./profile-types.js";
import { scattersTooMuch } from "./scatter-test.js";

/** A kink needs two steps between stations on either side, and something left to judge it by. */
const fewestStations = 6;
const mostStations = 500;

/**
 * The cost of a parameter is so many times ln n, as for wear bands: then straight flanks are taken for kinked in about
 * 1 of 100 surveys (found by trial, 6 to 40 stations).
 */
const penaltyFactor = 2;

/** Kinks of a taper, and how they compare with a bow. */
export interface KinksFound {
  readonly kinks: readonly TaperKink[];
  /** Whether kinks explain the readings better than a bow that has one parameter, at the same cost of each. */
  readonly beatsBow: boolean;
}

/**
 * Whether a taper is two (or more) that meet, from what is left once one straight line is taken away.
 *
 * `kinkedLine` with penalty 2 ln n. Where even the kinked line leaves more scatter than stated (chi-square test, 1 %),
 * it is made anew with the uncertainties widened by that ratio, with its degrees of freedom.
 *
 * Valid when: the flank is straight between kinks. A rounded change of slope is shown as one kink or several.
 *
 * @param x  stations [m]
 * @param residuals  diameter less line, on diameter [m]
 * @param u  standard uncertainty of each [m]
 * @param taper  slope of the line taken away, of diameter on station [-]
 * @param bowChiSquare  Σ (residual/u)² about a parabola [-]
 * @param unitSystem  unit in which stations are written [-]
 * @returns the kinks, each with station and the tapers on both sides; none where one straight line will do
 * @source see `kinkedLine`
 */
export function taperKinks(
  x: readonly number[],
  residuals: readonly number[],
  u: readonly number[],
  taper: number,
  bowChiSquare: number,
  unitSystem: UnitSystem,
): KinksFound {
  if (x.length < fewestStations || x.length > mostStations) return { kinks: [], beatsBow: false };
  const order = x.map((_, i) => i).sort((a, b) => x[a]! - x[b]!);
  const sorted = (list: readonly number[]): number[] => order.map((i) => list[i]!);
  const penalty = penaltyFactor * Math.log(x.length);
  const fitWith = (widened: number): KinkedLine =>
    kinkedLine(sorted(x), sorted(residuals), { u: sorted(u).map((ui) => ui * widened), penalty });
  const first = fitWith(1);
  const tooMuch = scattersTooMuch(first.chiSquare, first.degreesOfFreedom);
  const widened = tooMuch ? first.noiseRatio! : 1;
  const fit = tooMuch ? fitWith(widened) : first;
  const dof = tooMuch ? first.degreesOfFreedom : Number.POSITIVE_INFINITY;
  const lengthOf = (si: number) => quantityFromSi("length", si, unitSystem === "inch" ? "inch" : "mm");
  const sideOf = (k: number) => measured(taper + fit.pieces[k]!.slope, fit.pieces[k]!.uSlope, dof);
  return {
    kinks: fit.kinks.map(({ position, uPosition }, k) =>
      Object.freeze({
        station: measured(lengthOf(position), lengthOf(uPosition), dof),
        offLine: lengthOf(fit.pieces[k]!.end),
        before: sideOf(k),
        behind: sideOf(k + 1),
      }),
    ),
    beatsBow: fit.criterion < bowChiSquare / widened ** 2 + 3 * penalty,
  };
}

/** The kinks in the words of the trade. */
export function kinkSentence(kinks: readonly TaperKink[], unitSystem: UnitSystem): string {
  const inches = unitSystem === "inch";
  const within = (value: number, u: number, dof: number): string =>
    formatWithUncertainty(value, coverageFactor(0.95, dof) * u).join(" ± ");
  const slope = ({ value, standardUncertainty, degreesOfFreedom }: TaperKink["before"]): string => {
    const factor = inches ? 12 : 100;
    return `${within(value * factor, standardUncertainty * factor, degreesOfFreedom)} ${inches ? "in per foot" : "%"}`;
  };
  const places = kinks.map(({ station: { value, standardUncertainty, degreesOfFreedom } }) => {
    const unit = inches ? "inch" : "mm";
    return `${within(value.in(unit), standardUncertainty.in(unit), degreesOfFreedom)} ${inches ? "in" : "mm"}`;
  });
  const sides = [kinks[0]!.before, ...kinks.map(({ behind }) => behind)].map(slope);
  return kinks.length === 1
    ? `The flanks have a kink at station ${places[0]}: ${sides[0]} before it, ${sides[1]} behind it. These are two tapers, not one.`
    : `The flanks have ${kinks.length} kinks, at stations ${places.join(", ")}; the tapers between them are ${sides.join(", ")}.`;
}
