import { type Length, measured, quantityFromSi } from "../quantity/index.js";
import { fitLine, fitLineBothErrors, type LineFit, predictLine } from "../statistics/index.js";
import { combined } from "./combined.js";
import { grossAboutLine } from "./gross-about-line.js";
import { grossReadings } from "./gross-readings.js";
import type { Profile, ResidualShape, TaperFit, TaperReading } from "./profile-types.js";
import { withoutGross } from "./profile-without.js";
import { requireAgreeingReadings } from "./repeated-readings.js";
import { residualShapeOf } from "./residual-shape.js";
import { scattersTooMuch, scatterWarning, shapeWarning, widening } from "./scatter-test.js";
import { screenReadings } from "./screen-readings.js";
import { type StationMean, stationMeans } from "./station-means.js";
import { stationWarnings } from "./station-warnings.js";
import { halfAngleOf } from "./taper-angle.js";
import { roughSlope, taperStretch } from "./taper-stretch.js";
import { unitOf } from "./unit-of.js";

/** How a taper is fitted, and over which stretch. */
export interface FitTaperOptions {
  /** "errors in both" (York, the default) reckons with errors of station and diameter, "least squares" of diameter alone. */
  readonly method?: TaperFit["method"];
  /** First station to use; default the first read. */
  readonly from?: Length;
  /** Last station to use; default the last read. */
  readonly to?: Length;
}

/**
 * The taper of a stretch of shaft, from paired readings of station and diameter.
 *
 * D = D₀ + C·z; taper C = slope of the DIAMETER on the station, half angle = atan(C/2), included angle twice that
 *
 * 1. Gross readings are looked for angle by angle: a reading that stands off by more than 6 standard uncertainties
 *    (more where all scatter) from a line drawn by the others at its angle is flagged; it is listed and has no weight.
 * 2. The line goes through station means over the angles, not through single readings: those of one station share
 *    the error of its position. u(mean) = √(Σu²)/m in diameter, the profile's stationUncertainty along the shaft.
 * 3. Where the means scatter about the line more than honest noise does in one survey of four, all uncertainties are
 *    widened by that (see `widening`); a warning comes where it does so once in a hundred surveys (chi-square).
 *
 * Signs: the taper is positive when the diameter grows with the station; angles have its sign. The bow is positive
 * for a barrel. Residuals are diameter less line, on diameter. The profile's common uncertainty (calibration,
 * temperature) moves both ends together: it is in the ends' diameters and not in the taper.
 *
 * Valid when: station errors are independent; an error of scale of the station's instrument is not in them.
 *
 * @param profile  the diameter along the shaft
 * @param options.method  which errors to reckon with [-]
 * @param options.from  first station to use [m]
 * @param options.to  last station to use [m]
 * @returns taper [-], half and included angle [rad], diameters at the ends and residuals of every reading [m], shape
 * of the flanks
 * @throws RangeError  fewer than 3 stations in the stretch, from is not before to, or readings of one place that
 * contradict each other where nothing tells which is wrong
 * @example
 * const bytes = new TextEncoder().encode("station [in],diameter [in]\n0,0.7800\n1,0.8302\n2,0.8804\n3,0.9306");
 * const survey = readTable(bytes, { name: "taper-survey", file: "taper-survey.csv" });
 * const profile = profileOf(survey, { readingUncertainty: thou(0.1), stationUncertainty: thou(1) });
 * fitTaper(profile).taper.value * 12 // 0.6024, inches of diameter per foot
 * @source line: see `fitLineBothErrors` and `fitLine`; widening: ISO/TS 28037:2010, annex E
 */
export function fitTaper(profile: Profile, options: FitTaperOptions = {}): TaperFit {
  const { method = "errors in both" } = options;
  if (method !== "errors in both" && method !== "least squares")
    throw new RangeError(`fitTaper: method must be "errors in both" or "least squares", got "${method}"`);
  const stations = taperStretch(profile, options.from, options.to);
  const ux = method === "errors in both" ? profile.stationUncertainty.si : 0;

  // The steepness is needed to know what a station's error does to a diameter; its own error hardly matters there.
  const steepness = Math.abs(roughSlope(stations));
  const gross = screenReadings(profile, stations, (x, y, u) =>
    grossAboutLine(
      x,
      y,
      u.map((ui) => Math.hypot(ui, steepness * profile.stationUncertainty.si)),
    ),
  );
  requireAgreeingReadings("fitTaper", { ...profile, stations }, gross);
  const means = stationMeans(profile, stations, gross);
  if (means.length < 3)
    throw new RangeError(
      `fitTaper: at least 3 stations with a sound reading are needed, got ${means.length}`,
    );
  const line = lineThrough(means, ux);
  const noiseRatio = line.noiseRatio!;
  const tooMuch = scattersTooMuch(line.chiSquare!, line.degreesOfFreedom);
  const { factor: widened, degreesOfFreedom: dof } = widening(line.chiSquare!, line.degreesOfFreedom);
  const uOf = (uDiameter: number): number => Math.hypot(uDiameter, line.slope * ux);

  const unit = unitOf(profile);
  const lengthOf = (si: number): Length => quantityFromSi("length", si, unit);
  const end = ({ station, position }: StationMean): TaperFit["smallEnd"] => {
    const { value, standardUncertainty } = predictLine(line, position);
    const { u, degreesOfFreedom } = combined(
      standardUncertainty * widened,
      dof,
      profile.commonUncertainty.si,
    );
    return Object.freeze({
      station: station.station,
      diameter: measured(lengthOf(value), lengthOf(u), degreesOfFreedom),
    });
  };
  const ends = [end(means[0]!), end(means[means.length - 1]!)] as const;
  const [smallEnd, largeEnd] = line.slope < 0 ? [ends[1], ends[0]] : ends;
  const listed = grossReadings(profile, gross, (index) => {
    const { station, standardUncertainty } = profile.readings[index]!;
    return {
      diameter: predictLine(line, station.si).value,
      u: uOf(standardUncertainty.si) * widened,
    };
  });
  const taper = measured(line.slope, line.uSlope * widened, dof);
  const halfAngle = halfAngleOf(taper);
  const residualShape = residualShapeOf(
    means.map(({ position }) => position),
    line.residuals,
    means.map(({ u }) => uOf(u)),
    line.slope,
    profile.unitSystem,
  );
  return Object.freeze<TaperFit>({
    kind: "taper",
    profile: withoutGross(profile, means, gross),
    method,
    taper,
    halfAngle,
    includedAngle: measured(halfAngle.value.times(2), halfAngle.standardUncertainty.times(2), dof),
    smallEnd,
    largeEnd,
    length: ends[1].station.minus(ends[0].station),
    readings: Object.freeze(
      stations.flatMap((station) =>
        station.readings.map((index): TaperReading => {
          const { angle, diameter, standardUncertainty, line: row } = profile.readings[index]!;
          const residual = diameter.si - predictLine(line, station.station.si).value;
          return Object.freeze({
            station: station.station,
            diameter,
            residual: lengthOf(residual),
            standardUncertainty: lengthOf(uOf(standardUncertainty.si)),
            line: row,
            angle,
          });
        }),
      ),
    ),
    gross: listed,
    residualShape,
    noiseRatio,
    degreesOfFreedom: line.degreesOfFreedom,
    warnings: Object.freeze([
      ...profile.warnings,
      ...(tooMuch ? [isStraight(residualShape) ? scatterWarning(noiseRatio) : shapeWarning(noiseRatio)] : []),
      ...notStraight(residualShape),
      ...stationWarnings(profile, stations, means, listed),
    ]),
  });

  function lineThrough(through: readonly StationMean[], stationU: number): LineFit {
    const x = through.map(({ position }) => position);
    const y = through.map(({ diameter }) => diameter);
    const u = through.map((mean) => mean.u);
    return method === "errors in both"
      ? fitLineBothErrors(x, y, { ux: stationU, uy: u })
      : fitLine(x, y, { u });
  }
}

function isStraight({ shape }: ResidualShape): boolean {
  return shape === "straight" || shape === "cannot tell";
}

function notStraight(residualShape: ResidualShape): string[] {
  if (isStraight(residualShape)) return [];
  if (residualShape.shape === "kinked")
    return [
      "The flanks are kinked; the taper is that of the best straight line through all of them. For the taper of one side alone give `from` and `to`.",
    ];
  return ["The flanks are not straight; the taper is that of the best straight line through them."];
}
