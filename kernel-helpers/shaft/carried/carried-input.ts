import {
  type AnyQuantity,
  isQuantity,
  type KindName,
  type Measured,
  type Quantity,
  type UnitName,
} from "../../quantity/index.js";
import { isUncertain } from "../../statistics/index.js";

/** A quantity known exactly, or as measured. */
export type MaybeMeasured<Q extends AnyQuantity> = Q | Measured<Q>;

/** An input as plain numbers: estimate, standard uncertainty [SI], degrees of freedom, and the unit it was written in. */
export interface CarriedNumber {
  readonly name: string;
  readonly si: number;
  readonly u: number;
  readonly degreesOfFreedom: number;
  readonly unit: UnitName | undefined;
}

/**
 * A quantity of a kind, plain, measured or uncertain, as plain numbers.
 *
 * @param where  the helper that asks, for the message
 * @param field  what it is asked for, for the message and as the name of the source
 * @param bound  what the estimate must be
 * @throws TypeError   it is none of these, or of another kind
 * @throws RangeError  it is beyond its bound
 * @example carriedInput("belt", "diameter", inch(6), "length", "more than 0").u // 0
 */
export function carriedInput(
  where: string,
  field: string,
  value: unknown,
  kind: KindName,
  bound: "more than 0" | "0 or more" | "any",
): CarriedNumber {
  const given = isUncertain(value) ? value.toMeasured() : value;
  const isMeasured = (given as { kind?: unknown } | null | undefined)?.kind === "measured";
  const {
    value: plain,
    standardUncertainty,
    degreesOfFreedom,
  } = isMeasured
    ? (given as Measured<AnyQuantity>)
    : { value: given, standardUncertainty: undefined, degreesOfFreedom: Number.POSITIVE_INFINITY };
  if (!isQuantity(plain, kind))
    throw new TypeError(
      `${where}: ${field} must be a ${kind} with its unit, plain or measured, got ${String(plain)}`,
    );
  const quantity = plain as Quantity<string>;
  if ((bound === "more than 0" && !(quantity.si > 0)) || (bound === "0 or more" && !(quantity.si >= 0)))
    throw new RangeError(`${where}: ${field} must be ${bound}, got ${quantity}`);
  return {
    name: field,
    si: quantity.si,
    u: standardUncertainty?.si ?? 0,
    degreesOfFreedom,
    unit: quantity.writtenIn,
  };
}
