/**
 * The checks every function of this folder makes first. Each names the function, the argument, the index
 * and the value found, and none of them mends anything.
 */

/** Rejects what is no number, NaN and the infinities. */
export function requireFinite(where: string, name: string, value: number): void {
  if (typeof value !== "number")
    throw new TypeError(`${where}: ${name} must be a number, got ${JSON.stringify(value)}`);
  if (!Number.isFinite(value))
    throw new RangeError(`${where}: ${name} must be a finite number, got ${value}`);
}

/** Rejects a list that is no list, is too short, or holds a NaN or an infinity. */
export function requireFiniteList(
  where: string,
  name: string,
  values: readonly number[],
  atLeast: number,
): void {
  if (!Array.isArray(values))
    throw new TypeError(`${where}: ${name} must be a list of numbers, got ${typeof values}`);
  if (values.length < atLeast)
    throw new RangeError(`${where}: ${name} needs at least ${atLeast} values, got ${values.length}`);
  // The name of the value is put together for the one that is refused alone: it would take longer than the check.
  for (let i = 0; i < values.length; i++)
    if (!Number.isFinite(values[i])) requireFinite(where, `${name}[${i}]`, values[i]!);
}

/** Rejects two lists of different length. */
export function requireSameLength(
  where: string,
  nameA: string,
  a: readonly number[],
  nameB: string,
  b: readonly number[],
): void {
  if (a.length !== b.length)
    throw new RangeError(
      `${where}: ${nameA} and ${nameB} must be equally long, got ${a.length} and ${b.length}`,
    );
}

/** Standard uncertainties as one a reading: a single number stands for all of them. */
export function uncertaintyList(
  where: string,
  name: string,
  u: number | readonly number[],
  length: number,
  zeroAllowed: boolean = false,
): readonly number[] {
  const list = typeof u === "number" ? new Array<number>(length).fill(u) : u;
  requireFiniteList(where, name, list, 0);
  if (list.length !== length)
    throw new RangeError(`${where}: ${name} must have one value a reading (${length}), got ${list.length}`);
  const rule = zeroAllowed ? "0 or greater" : "greater than 0";
  for (let i = 0; i < length; i++) {
    if (list[i]! < 0 || (list[i] === 0 && !zeroAllowed)) {
      const which = typeof u === "number" ? name : `${name}[${i}]`;
      throw new RangeError(`${where}: ${which} must be ${rule}, got ${list[i]}`);
    }
  }
  return list;
}

/** Rejects a probability outside the open interval 0 to 1. */
export function requireProbability(where: string, name: string, p: number): void {
  if (!(p > 0 && p < 1)) throw new RangeError(`${where}: ${name} must lie between 0 and 1, got ${p}`);
}

/** Rejects degrees of freedom that are not greater than 0; Infinity only where it is said to be allowed. */
export function requireDegreesOfFreedom(
  where: string,
  name: string,
  dof: number,
  infinityAllowed: boolean,
): void {
  if (!(dof > 0) || (dof === Number.POSITIVE_INFINITY && !infinityAllowed)) {
    const rule = infinityAllowed ? "greater than 0 (Infinity allowed)" : "greater than 0 and finite";
    throw new RangeError(`${where}: ${name} must be ${rule}, got ${dof}`);
  }
}

/** Rejects positions that are all alike: they define no slope. */
export function requireSpread(where: string, x: readonly number[]): void {
  if (x.every((v) => v === x[0]))
    throw new RangeError(`${where}: x must take at least two different values, got ${x[0]} for all of them`);
}
