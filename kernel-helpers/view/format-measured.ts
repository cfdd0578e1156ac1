import {
  type AnyQuantity,
  formatNumber,
  formatWithUncertainty,
  type Measured,
  shownUnit,
  type UnitName,
  unitNamed,
} from "../quantity/index.js";
import { coverageFactor } from "../statistics/coverage-factor.js";

/** In which unit, and with which share covered. */
export interface MeasuredFormat {
  /** The unit shown; default the unit the value was written in, or the rebuild's. None for a plain number. */
  readonly unit?: UnitName;
  /** The share that the uncertainty covers, two-sided [-]; default 0.95. */
  readonly coverage?: number;
}

/**
 * The expanded uncertainty of a measured value.
 *
 * U = k u, with k from Student's t for the value's degrees of freedom
 *
 * @param measured the value with its standard uncertainty u
 * @param coverage share covered, two-sided [-], between 0 and 1, default 0.95
 * @returns U in SI units [SI of the value] and k [-]
 * @throws RangeError coverage is not between 0 and 1
 * @example expandedUncertainty(measured(inch(2.4332), inch(0.0001), 10)).k // 2.228138851986275
 * @source JCGM 100:2008 (GUM), 6.2.1 and G.3.2
 */
export function expandedUncertainty(
  { standardUncertainty, degreesOfFreedom }: Measured<AnyQuantity | number>,
  coverage: number = 0.95,
): { readonly expanded: number; readonly k: number } {
  const k = coverageFactor(coverage, degreesOfFreedom);
  return { expanded: k * Number(standardUncertainty.valueOf()), k };
}

/**
 * A measured value and its expanded uncertainty, both to two significant digits of the uncertainty, without
 * the words about coverage: for a table whose heading says them.
 *
 * @throws RangeError coverage is not between 0 and 1
 * @throws TypeError the unit does not measure that kind of value
 * @example plusMinus(measured(inch(2.433172), inch(0.000122))) // "2.43317 ± 0.00024 in"
 * @source JCGM 100:2008 (GUM), 7.2.6
 */
export function plusMinus(measured: Measured<AnyQuantity | number>, format: MeasuredFormat = {}): string {
  const { size, symbol } = unitOf("plusMinus", measured.value, format.unit);
  const { expanded } = expandedUncertainty(measured, format.coverage);
  const [value, uncertainty] = formatWithUncertainty(
    Number(measured.value.valueOf()) / size,
    expanded / size,
  );
  return `${value} ± ${uncertainty}${symbol}`;
}

/**
 * A measured value ready to read: value, expanded uncertainty, unit, the share covered and k.
 *
 * @throws RangeError coverage is not between 0 and 1
 * @throws TypeError the unit does not measure that kind of value
 * @example formatMeasured(measured(inch(2.433172), inch(0.000122))) // "2.43317 ± 0.00024 in (95 %, k = 2.0)"
 * @source JCGM 100:2008 (GUM), 7.2.3 and 7.2.6
 */
export function formatMeasured(
  measured: Measured<AnyQuantity | number>,
  format: MeasuredFormat = {},
): string {
  const { coverage = 0.95 } = format;
  const { expanded, k } = expandedUncertainty(measured, coverage);
  const how =
    expanded === 0
      ? "taken as exact"
      : `${formatNumber(coverage * 100)} %, k = ${k.toFixed(k < 9.95 ? 1 : 0)}`;
  return `${plusMinus(measured, format)} (${how})`;
}

function unitOf(
  caller: string,
  value: AnyQuantity | number,
  asked: UnitName | undefined,
): { size: number; symbol: string } {
  if (typeof value === "number") {
    if (asked !== undefined)
      throw new TypeError(
        `${caller}: a plain number is shown without a unit, got ${unitNamed(asked).symbol}`,
      );
    return { size: 1, symbol: "" };
  }
  const name = asked ?? shownUnit(value.dimension, value.writtenIn);
  if (name === undefined) return { size: 1, symbol: " (SI)" };
  const unit = unitNamed(name);
  if (unit.kind !== value.dimension)
    throw new TypeError(
      `${caller}: the unit must measure ${value.dimension}, got ${unit.symbol}, which measures ${unit.kind}`,
    );
  return { size: unit.si, symbol: unit.symbol === "°" ? "°" : ` ${unit.symbol}` };
}
