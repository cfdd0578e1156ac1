import {
  type Length,
  type Measured,
  measured,
  quantityFromSi,
  type UnitSystem,
} from "../../quantity/index.js";
import type { TaperFit } from "../../survey/index.js";

/** What else is known of the taper. */
export interface TaperCleanUpOptions {
  /** Run-out of the taper about the axis it would be turned on, as TOTAL indicator reading; without it none is counted. */
  readonly runOut?: Measured<Length>;
  /** How far the hub can still go up the taper. */
  readonly room?: Measured<Length>;
}

/** What it takes to make a taper true again, and where the hub then sits. */
export interface TaperCleanUp {
  readonly kind: "taper clean-up";
  readonly unitSystem: UnitSystem;
  /** To come off, on DIAMETER, all along, so that the lowest reading cleans up. */
  readonly stock: Measured<Length>;
  /** How much of it the run-out asks for, on diameter; undefined where none was given. */
  readonly ofRunOut: Length | undefined;
  /** How much farther the hub goes up the taper. */
  readonly shift: Measured<Length>;
  readonly room: Measured<Length> | undefined;
  /** Room that is left after that; undefined where none was given. */
  readonly left: Measured<Length> | undefined;
  /** Station of the lowest reading. */
  readonly decidedAt: Length;
}

/**
 * The stock that must come off a taper until it is true, and how far the hub then goes farther up.
 *
 * stock = max (line − D) + TIR, on DIAMETER: the run-out's eccentricity counts twice, as it does in a cylinder;
 * shift = stock/|taper|, taper the change of diameter per length; left = room − shift
 *
 * Valid when: the same taper is cut again, by the same amount all along, and the hub is not bored. The surface between
 * the readings is taken as no lower than the lowest read.
 *
 * @param taper  as `fitTaper` returns it
 * @param options.runOut  total indicator reading ≥ 0 [m]
 * @param options.room    how far the hub can still go [m]
 * @returns stock on diameter, shift and room left along the axis [m], each with its uncertainty
 * @throws RangeError  a taper that runs the same diameter all along, or a run-out below 0
 * @example
 * const bytes = new TextEncoder().encode("station [in],diameter [in]\n0,2.0000\n1,2.0625\n2,2.1240\n3,2.1875\n4,2.2500");
 * const survey = readTable(bytes, { name: "taper-survey", file: "taper-survey.csv" });
 * const taper = fitTaper(profileOf(survey, { readingUncertainty: thou(0.5), stationUncertainty: thou(1) }));
 * taperCleanUp(taper).shift.value.in("inch").toFixed(3) // "0.013"
 * @source geometry; JCGM 100:2008 (GUM), 5.1.2
 */
export function taperCleanUp(taper: TaperFit, options: TaperCleanUpOptions = {}): TaperCleanUp {
  const { runOut, room } = options;
  const steep = Math.abs(taper.taper.value);
  if (!(steep > 2 * taper.taper.standardUncertainty))
    throw new RangeError(
      `taperCleanUp: the taper must be told from a cylinder to reckon a shift, got ${taper.taper.value.toPrecision(3)} ± ${taper.taper.standardUncertainty.toPrecision(2)}`,
    );
  if (runOut !== undefined && !(runOut.value.si >= 0))
    throw new RangeError(`taperCleanUp: the run-out must be 0 or more, got ${runOut.value}`);
  const unit = taper.profile.unitSystem === "inch" ? "inch" : "mm";
  const lengthOf = (si: number): Length => quantityFromSi("length", si, unit);
  const gross = new Set(taper.gross.map(({ reading }) => reading));
  const kept = taper.readings.filter((_, i) => !gross.has(i));
  const lowest = kept.reduce((a, b) => (a.residual.si <= b.residual.si ? a : b));
  const hollow = Math.max(0, -lowest.residual.si);
  const stock = hollow + (runOut?.value.si ?? 0);
  const uStock = Math.hypot(lowest.standardUncertainty.si, runOut?.standardUncertainty.si ?? 0);
  const shift = stock / steep;
  const uShift = Math.hypot(uStock / steep, (shift * taper.taper.standardUncertainty) / steep);
  return Object.freeze<TaperCleanUp>({
    kind: "taper clean-up",
    unitSystem: taper.profile.unitSystem,
    stock: measured(lengthOf(stock), lengthOf(uStock)),
    ofRunOut: runOut?.value,
    shift: measured(lengthOf(shift), lengthOf(uShift)),
    room,
    left:
      room === undefined
        ? undefined
        : measured(
            lengthOf(room.value.si - shift),
            lengthOf(Math.hypot(room.standardUncertainty.si, uShift)),
          ),
    decidedAt: lowest.station,
  });
}
