import { isQuantity, type Length, measured, quantityFromSi, type UnitSystem } from "../quantity/index.js";
import { fitLine, predictLine, repeatsTest } from "../statistics/index.js";
import { columnOf, lengthColumn } from "./instrument-study-columns.js";
import type { CalibrationLine, CorrectedReading } from "./instrument-study-types.js";
import { plainSmall, smallText, uncertaintyText } from "./run-out-text.js";
import { scattersTooMuch, scatterWarning } from "./scatter-test.js";
import type { Column, Instrument, Table } from "./table.js";

/** An error of more than twice its standard uncertainty is more than was stated. */
const allowance = 2;

export interface CalibrationOptions {
  /** The column of readings; default "reading". */
  readonly readingColumn?: string;
  /** The column of reference sizes, from the certificate of the gauges; default "reference". */
  readonly referenceColumn?: string;
  /** Known standard uncertainty of one error, reading and reference together; without it the scatter judges. */
  readonly uncertainty?: Length;
  /** Standard uncertainty common to all references, added to each correction at the end; default 0. */
  readonly common?: Length;
}

/**
 * The line of an instrument's error against its reading, from readings of gauges of known size.
 *
 * error = reading − reference = a + b·reading, least squares; value = reading − error(reading)
 *
 * With `uncertainty` the points are weighted by it, and widened where they scatter more (chi-square, 1 %); without it
 * the scatter about the line judges, n − 2 degrees of freedom.
 *
 * Valid when: the error runs straight over the range; errors of the points are independent. What all references share
 * (the certificate) goes into `common`, for a line cannot shrink it. Beyond the range a warning is given.
 *
 * @param table  one row a gauge: reading, reference [m]
 * @param options.readingColumn  name of the readings' column [-]
 * @param options.referenceColumn  name of the references' column [-]
 * @param options.uncertainty  standard uncertainty of one error, > 0 [m]
 * @param options.common  standard uncertainty all references share, ≥ 0 [m]
 * @returns line, and corrections at the ends and middle of the range [m]
 * @throws RangeError  fewer than 3 gauges (2 with `uncertainty`), all readings alike, an uncertainty out of bounds,
 * without `uncertainty` errors exactly on a line, or with it errors of one gauge that contradict each other
 * @example
 * const rows = ["0.0001,0", "1.0003,1", "2.0005,2"].join("\n");
 * const bytes = new TextEncoder().encode(`reading [in],reference [in]\n${rows}`);
 * const mic = calibrationLine(readTable(bytes, { name: "m", file: "m.csv" }), { uncertainty: thou(0.05) });
 * correctedReading(mic, inch(1.5)).error.value.in("thou") // 0.4
 * @source ISO/TS 28037:2010, clause 6, annex E; worked case: JCGM 100:2008 (GUM), H.3
 */
export function calibrationLine(table: Table, options: CalibrationOptions = {}): CalibrationLine {
  const where = "calibrationLine";
  const { readingColumn = "reading", referenceColumn = "reference", uncertainty } = options;
  if (uncertainty !== undefined && (!isQuantity(uncertainty, "length") || !(uncertainty.si > 0)))
    throw new RangeError(`${where}: uncertainty must be a length greater than 0, got ${uncertainty}`);
  const common = options.common?.si ?? 0;
  if (!(common >= 0)) throw new RangeError(`${where}: common must be 0 or more, got ${options.common}`);
  const column = lengthColumn(where, table, readingColumn);
  const references = lengthColumn(where, table, referenceColumn);
  const points = column.values.flatMap((reading, row) => {
    const reference = references.values[row]!;
    return Number.isNaN(reading) || Number.isNaN(reference)
      ? []
      : [{ reading, reference, error: reading - reference, line: table.lines[row]! }];
  });
  const needed = uncertainty === undefined ? 3 : 2;
  if (points.length < needed)
    throw new RangeError(
      `${where}: at least ${needed} gauges are needed${uncertainty === undefined ? " (2 with { uncertainty })" : ""}, got ${points.length} in ${columnOf(table, column)} and "${references.header}"`,
    );
  const x = points.map(({ reading }) => reading);
  const y = points.map(({ error }) => error);
  if (x.every((reading) => reading === x[0]))
    throw new RangeError(
      `${where}: gauges of two sizes at least are needed to tell a line, got ${points.length} readings all alike in ${columnOf(table, column)}`,
    );
  if (uncertainty === undefined) requireScatter(where, table, column, x, y);
  else requireAgreeingGauges(where, table, points, uncertainty);
  const known = uncertainty === undefined ? {} : { u: uncertainty.si, contradictions: "keep" as const };
  const first = fitLine(x, y, known);
  const tooMuch = first.chiSquare !== null && scattersTooMuch(first.chiSquare, first.degreesOfFreedom);
  const line = tooMuch ? fitLine(x, y, { ...known, scaleByScatter: true }) : first;
  const lengthOf = (si: number): Length => quantityFromSi("length", si, column.unit as never);
  const [low, high] = [Math.min(...x), Math.max(...x)];
  const bare = { line, from: lengthOf(low), to: lengthOf(high), common };
  const corrections = [low, (low + high) / 2, high].map((at) => corrected(bare, lengthOf(at)));
  const system = table.unitSystem ?? "metric";
  const [, middle] = corrections;
  const instrument = table.conditions.instruments[column.name];
  return Object.freeze<CalibrationLine>({
    kind: "calibration line",
    title: table.name,
    instrument,
    unitSystem: system,
    line,
    count: points.length,
    from: bare.from,
    to: bare.to,
    common: lengthOf(common),
    corrections: Object.freeze(corrections),
    text: `In the middle of its range, at ${middle!.reading}, the instrument reads too large by ${smallText(middle!.error, system)} (95 %; below 0 is too small). Take that off a reading there.${asStated(middle!.error, instrument, system)}`,
    warnings: Object.freeze([
      ...table.warnings,
      ...(tooMuch ? [scatterWarning(first.noiseRatio!)] : []),
      ...(points.length < 5
        ? [`${points.length} gauges do not show whether the error runs straight; 5 or more are handy.`]
        : []),
    ]),
  });
}

/** Whether the error is one that the calibration stated allows; nothing where none is stated. */
function asStated(
  error: CorrectedReading["error"],
  instrument: Instrument | undefined,
  system: UnitSystem,
): string {
  if (instrument?.calibration === undefined) return "";
  const allowed = instrument.calibration.times(allowance);
  const stated = `the calibration stated in rebuild.json, ± ${uncertaintyText(allowed, system)} (k = 2)`;
  return error.value.absolute() > allowed
    ? ` That is more than ${stated}: set it anew, and read the gauges again.`
    : ` That is within ${stated}.`;
}

/** Errors on one line, but for the rounding of the sizes they are differences of, tell no uncertainty. */
function requireScatter(
  where: string,
  table: Table,
  column: Column,
  x: readonly number[],
  y: readonly number[],
): void {
  // Any u gives the same line; only its residuals are looked at.
  const { residuals } = fitLine(x, y, { u: 1 });
  const rounding = 8 * Number.EPSILON * Math.max(...x.map(Math.abs));
  if (residuals.every((residual) => Math.abs(residual) <= rounding))
    throw new RangeError(
      `${where}: errors must scatter about their line for their uncertainty to be learnt, got ${x.length} exactly on it in ${columnOf(table, column)}; give { uncertainty }: for readings rounded to a step at least step/√12, with that of the gauges`,
    );
}

/** One gauge read twice, or two gauges read alike, must not have errors that contradict each other. */
function requireAgreeingGauges(
  where: string,
  table: Table,
  points: readonly CalibrationPoint[],
  uncertainty: Length,
): void {
  const errors = points.map(({ error }) => error);
  for (const one of ["reference", "reading"] as const) {
    const { contradictory, worst, noiseRatio } = repeatsTest(
      points.map((point) => point[one]),
      errors,
      uncertainty.si,
    );
    if (!contradictory) continue;
    const [a, b] = worst!.indices.map((i) => points[i]!) as [CalibrationPoint, CalibrationPoint];
    const small = (si: number): string =>
      plainSmall(quantityFromSi("length", si), table.unitSystem ?? "metric");
    throw new RangeError(
      `${where}: errors at one ${one} must agree within their uncertainty, got ${small(a.error)} on line ${a.line} and ${small(b.error)} on line ${b.line} of ${table.file}, ${Number(worst!.differenceInU.toPrecision(2))} standard uncertainties of a difference apart; read that gauge once more and strike the wrong line, or give the uncertainty that they show, ${small(noiseRatio! * uncertainty.si)}`,
    );
  }
}

interface CalibrationPoint {
  readonly reading: number;
  readonly reference: number;
  readonly error: number;
  readonly line: number;
}

/**
 * A reading with the instrument's error taken off.
 *
 * value = reading − error(reading); u² = u²(line there) + u²(common) + u²(reading)
 *
 * Valid when: the reading lies in the range calibrated; beyond it a warning is given.
 *
 * @param calibration  as `calibrationLine` gives it
 * @param reading  as read [m]
 * @param u  standard uncertainty of the reading itself, ≥ 0, default 0 [m]
 * @returns error and corrected value with uncertainty [m]
 * @throws RangeError  u is negative
 * @example
 * const rows = ["0.0001,0", "1.0003,1", "2.0005,2"].join("\n");
 * const bytes = new TextEncoder().encode(`reading [in],reference [in]\n${rows}`);
 * const mic = calibrationLine(readTable(bytes, { name: "m", file: "m.csv" }), { uncertainty: thou(0.05) });
 * correctedReading(mic, inch(1.0003)).value.value.in("inch") // 1
 * @source ISO/TS 28037:2010, clause 11.2 (evaluation of a line); JCGM 100:2008 (GUM), H.3.4
 */
export function correctedReading(
  calibration: CalibrationLine,
  reading: Length,
  u: Length | undefined = undefined,
): CorrectedReading {
  if (u !== undefined && !(u.si >= 0))
    throw new RangeError(`correctedReading: u must be 0 or more, got ${u}`);
  return corrected({ ...calibration, common: calibration.common.si }, reading, u?.si);
}

function corrected(
  { line, from, to, common }: Pick<CalibrationLine, "line" | "from" | "to"> & { readonly common: number },
  reading: Length,
  u = 0,
): CorrectedReading {
  const there = predictLine(line, reading.si);
  const like = (si: number): Length => quantityFromSi("length", si, reading.writtenIn as never);
  // Welch–Satterthwaite: only the line's own part rests on few readings.
  const uLine = there.standardUncertainty;
  const uError = Math.hypot(uLine, common);
  const dof = (total: number): number =>
    line.scaled && uLine > 0 ? line.degreesOfFreedom * (total / uLine) ** 4 : Number.POSITIVE_INFINITY;
  const uValue = Math.hypot(uError, u);
  const inside = reading >= from && reading <= to;
  return Object.freeze<CorrectedReading>({
    kind: "corrected reading",
    reading,
    error: measured(like(there.value), like(uError), dof(uError)),
    value: measured(like(reading.si - there.value), like(uValue), dof(uValue)),
    warnings: Object.freeze(
      inside
        ? []
        : [
            `${reading} lies beyond the range calibrated, ${from} to ${to}: the correction rests on the belief that the line goes on straight.`,
          ],
    ),
  });
}
