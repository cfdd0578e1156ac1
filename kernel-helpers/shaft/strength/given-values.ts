import { isQuantity, type Measured, measured, type Quantity, quantityFromSi } from "../../quantity/index.js";
import { isUncertain, type UncertainInput } from "../../statistics/index.js";

/** An input as it goes into propagation, with its estimate and standard uncertainty. */
export interface GivenValue<K extends string> {
  readonly input: UncertainInput;
  readonly measured: Measured<Quantity<K>>;
  /** [SI] */
  readonly si: number;
  readonly u: number;
}

/**
 * A quantity of a kind given plain, measured or uncertain.
 *
 * @throws TypeError   it is none of these, or of another kind
 * @throws RangeError  it is below its bound
 */
export function givenValue<K extends "length" | "torque or energy" | "force" | "pressure">(
  where: string,
  field: string,
  value: unknown,
  kind: K,
  bound: "more than 0" | "0 or more",
): GivenValue<K> {
  const kindOf = (value as { kind?: unknown } | null | undefined)?.kind;
  const carried = isUncertain(value) ? value.toMeasured() : kindOf === "measured" ? value : undefined;
  const plain = carried === undefined ? value : (carried as Measured<Quantity<K>>).value;
  if (!isQuantity(plain, kind))
    throw new TypeError(
      `${where}: ${field} must be a ${kind === "torque or energy" ? "moment or torque" : kind} with its unit, plain or measured, got ${String(plain)}`,
    );
  const quantity = plain as Quantity<K>;
  if (bound === "more than 0" ? !(quantity.si > 0) : !(quantity.si >= 0))
    throw new RangeError(`${where}: ${field} must be ${bound}, got ${quantity}`);
  const known =
    (carried as Measured<Quantity<K>> | undefined) ??
    measured(quantity, quantityFromSi(kind, 0, quantity.writtenIn) as never as Quantity<K>);
  return {
    input: value as UncertainInput,
    measured: known,
    si: quantity.si,
    u: known.standardUncertainty.si,
  };
}
