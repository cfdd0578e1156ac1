import {
  foot,
  formatFixed,
  inch,
  isQuantity,
  type Length,
  type Measured,
  measured,
  micrometre,
  mm,
  quantityFromSi,
  systemOf,
  thou,
  type UnitSystem,
  unitSystem,
} from "../quantity/index.js";
import { coverageFactor } from "../statistics/index.js";
import type { TaperFit } from "./profile-types.js";
import { halfAngleOf } from "./taper-angle.js";
import type { TaperSetting } from "./taper-setting-types.js";

/** What the lathe and the bench have. */
export interface TaperSettingOptions {
  /** Whole length of the work between its centres, for the tailstock set-over. */
  readonly betweenCentres?: Length;
  /** Length of the sine bar, roll centre to roll centre. */
  readonly sineBar?: Length;
  /** Travels along the axis for the indicator; default 1, 2 and 3 in, or 25, 50 and 75 mm. */
  readonly travels?: readonly Length[];
}

/** A set-over beyond this share of the length between centres is called large. Common practice, no source. */
const largeSetOver = 1 / 50;

/**
 * What to dial in to cut a taper or its mate, each value with its uncertainty.
 *
 * - compound slide: half angle atan(C/2) from the axis, NOT the included angle
 * - taper attachment: C · 12 in, diameter per foot; it does not depend on the work's length
 * - tailstock set-over: L · C/2 with L the WHOLE length between centres, NOT the length of the tapered part
 * - indicator against the flank, across the axis: rise = travel · C/2, on RADIUS
 * - sine bar: stack = bar · sin(included angle), the part lying on one flank
 * - draw-up: axial = ΔD/C for each thousandth of an inch (or 10 µm) on diameter
 *
 * C is diameter per length, taken without sign: which end is large is for the eye. Uncertainties: first order from
 * u(C); lengths given are taken as exact.
 *
 * Valid when: tool at centre height. The set-over is approximate, for the centres no longer sit true in their
 * holes; the error grows with the taper, and a warning says when it is large.
 *
 * @param from  a fitted taper, or a taper with its uncertainty: diameter per length [-]
 * @param options.betweenCentres  whole length between centres [m]
 * @param options.sineBar  length of the sine bar [m]
 * @param options.travels  travels along the axis [m]
 * @returns the settings; angles [rad], lengths [m]
 * @throws RangeError  the taper is 0, or a length is not greater than 0
 * @example taperSetting({ taper: measured(1 / 12, 0) }, { betweenCentres: inch(9) }).tailstockSetOver.value.in("inch") // 0.375
 * @source F. D. Jones, Turning and Boring, Industrial Press, 1914/1919 (set-over by the whole length); set-over
 * approximate, attachment independent of length: common practice, no source; the others: geometry
 */
export function taperSetting(
  from: TaperFit | { readonly taper: Measured<number> },
  options: TaperSettingOptions = {},
): TaperSetting {
  const { betweenCentres, sineBar } = options;
  const system = systemFor(from, options);
  const travels = options.travels ?? (system === "inch" ? [1, 2, 3].map(inch) : [25, 50, 75].map(mm));
  requireLengths({ betweenCentres, sineBar });
  travels.forEach((travel, i) => {
    requireLengths({ [`travels[${i}]`]: travel });
  });
  const { value, standardUncertainty: u, degreesOfFreedom: dof } = from.taper;
  if (!Number.isFinite(value) || value === 0)
    throw new RangeError(`taperSetting: taper must be a finite number other than 0, got ${value}`);
  const taper = measured(Math.abs(value), u, dof);
  const unit = system === "inch" ? "inch" : "mm";
  const lengthOf = (si: number): Length => quantityFromSi("length", si, unit);
  /** A length proportional to the taper. */
  const times = (length: Length, factor: number): Measured<Length> =>
    measured(lengthOf(length.si * taper.value * factor), lengthOf(length.si * u * factor), dof);

  const halfAngle = halfAngleOf(taper);
  const included = 2 * halfAngle.value.si;
  const onDiameter = system === "inch" ? thou(1) : micrometre(10);
  return Object.freeze<TaperSetting>({
    kind: "taper setting",
    taper,
    compoundAngle: halfAngle,
    attachmentPerFoot: times(foot(1), 1),
    tailstockSetOver: betweenCentres && times(betweenCentres, 1 / 2),
    betweenCentres,
    indicator: Object.freeze(travels.map((travel) => Object.freeze({ travel, rise: times(travel, 1 / 2) }))),
    sineBar:
      sineBar &&
      Object.freeze({
        barLength: sineBar,
        stack: measured(
          lengthOf(sineBar.si * Math.sin(included)),
          lengthOf(sineBar.si * Math.abs(Math.cos(included)) * 2 * halfAngle.standardUncertainty.si),
          dof,
        ),
      }),
    drawUp: Object.freeze({
      onDiameter,
      axial: measured(
        lengthOf(onDiameter.si / taper.value),
        lengthOf((onDiameter.si / taper.value ** 2) * u),
        dof,
      ),
    }),
    warnings: Object.freeze(warningsFor(taper, betweenCentres, system)),
  });
}

function setOverText(setOver: Length, system: UnitSystem): string {
  return system === "inch"
    ? `${formatFixed(setOver.in("inch"), 2)} in`
    : `${formatFixed(setOver.in("mm"), 1)} mm`;
}

function warningsFor(
  taper: Measured<number>,
  betweenCentres: Length | undefined,
  system: UnitSystem,
): string[] {
  const warnings: string[] = [];
  if (taper.value <= coverageFactor(0.95, taper.degreesOfFreedom) * taper.standardUncertainty)
    warnings.push("The taper is no larger than its uncertainty; these settings say little.");
  if (betweenCentres !== undefined && taper.value / 2 > largeSetOver)
    warnings.push(
      `A set-over of ${setOverText(betweenCentres.times(taper.value / 2), system)} is more than 1/50 of the length between centres: the centres no longer sit true in their holes and the taper comes out a little off. Use ball centres, the taper attachment or the compound slide, and check with the indicator.`,
    );
  return warnings;
}

function requireLengths(lengths: Readonly<Record<string, Length | undefined>>): void {
  for (const [name, length] of Object.entries(lengths))
    if (length !== undefined && !(isQuantity(length, "length") && length.si > 0))
      throw new RangeError(`taperSetting: ${name} must be a length greater than 0, got ${String(length)}`);
}

/** The readings' system; without readings that of the lengths given, then the one quantities are shown in. */
function systemFor(
  from: TaperFit | { readonly taper: Measured<number> },
  { betweenCentres, sineBar, travels }: TaperSettingOptions,
): UnitSystem {
  if ("profile" in from) return from.profile.unitSystem;
  const written = [betweenCentres, sineBar, travels?.[0]].map((l) => l?.writtenIn && systemOf(l.writtenIn));
  const system = written.find((s) => s === "inch" || s === "metric");
  return system ?? unitSystem() ?? "inch";
}
