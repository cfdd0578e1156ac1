import {
  type AnyQuantity,
  isQuantity,
  type Quantity,
  quantityFromSi,
  type UnitName,
} from "../quantity/index.js";
import { dimensionOf, type Plain, siOf } from "./uncertain/plain-value.js";

/** What the arithmetic of quantities does with one or two of them. */
type Operation = "plus" | "minus" | "times" | "over" | "squareRoot" | "absolute";

/** One operation, on two columns by their numbers (the same twice where it takes one). */
interface Step {
  readonly operation: Operation;
  readonly left: number;
  readonly right: number;
}

/** A model of quantities as the list of its operations, for draws in columns. */
export interface Recording {
  /** What a result measures; "number" for a plain number. */
  readonly dimension: string;
  /**
   * Evaluates the model for the first rows of the columns, one column an input recorded, in SI units.
   *
   * @returns false where a draw gives no finite number on the way, or a divisor of 0: the model itself says which
   */
  readonly evaluate: (columns: readonly Float64Array[], target: Float64Array) => boolean;
}

/** Columns are no longer than this. */
const mostRows = 4096;

class CannotRecord extends Error {}

function cannot(): never {
  throw new CannotRecord("the value of a quantity was looked at, so its operations do not tell all");
}

/** The operations so far, and how many columns they fill. */
class Tape {
  readonly steps: Step[] = [];
  readonly constants = new Map<number, number>();
  columns: number;

  constructor(inputs: number) {
    this.columns = inputs;
  }

  constant(si: number): number {
    this.constants.set(this.columns, si);
    return this.columns++;
  }

  step(operation: Operation, left: number, right: number): number {
    this.steps.push({ operation, left, right });
    return this.columns++;
  }
}

/**
 * Stands in for a quantity while a model is recorded: notes what is done with it. The arithmetic on estimates beside
 * it gives the kinds and refuses what does not go together. Whoever asks for its value ends the recording, so that a
 * model that decides by values is never recorded.
 */
class Recorded {
  readonly #tape: Tape;
  readonly column: number;
  readonly estimate: Plain;

  constructor(tape: Tape, column: number, estimate: Plain) {
    this.#tape = tape;
    this.column = column;
    this.estimate = estimate;
  }

  get dimension(): string {
    return dimensionOf(this.estimate);
  }

  plus(other: unknown): Recorded {
    return this.#done("plus", other);
  }

  minus(other: unknown): Recorded {
    return this.#done("minus", other);
  }

  times(factor: unknown): Recorded {
    return this.#done("times", factor);
  }

  over(divisor: unknown): Recorded {
    return this.#done("over", divisor);
  }

  squareRoot(): Recorded {
    return this.#alone("squareRoot");
  }

  absolute(): Recorded {
    return this.#alone("absolute");
  }

  as(unit: UnitName): Recorded {
    return new Recorded(this.#tape, this.column, (this.#quantity() as Quantity<"length">).as(unit as "inch"));
  }

  get si(): never {
    return cannot();
  }

  get writtenIn(): never {
    return cannot();
  }

  get shownIn(): never {
    return cannot();
  }

  in(): never {
    return cannot();
  }

  toString(): never {
    return cannot();
  }

  valueOf(): never {
    return cannot();
  }

  toJSON(): never {
    return cannot();
  }

  [Symbol.toPrimitive](): never {
    return cannot();
  }

  #quantity(): Record<Operation, (other?: unknown) => Plain> {
    if (typeof this.estimate === "number") return cannot();
    return this.estimate as unknown as Record<Operation, (other?: unknown) => Plain>;
  }

  #done(operation: "plus" | "minus" | "times" | "over", other: unknown): Recorded {
    const tape = this.#tape;
    const recorded = other instanceof Recorded;
    const estimate = this.#quantity()[operation](recorded ? other.estimate : other);
    const right = recorded ? other.column : tape.constant(siOf(other as Plain));
    return new Recorded(tape, tape.step(operation, this.column, right), estimate);
  }

  #alone(operation: "squareRoot" | "absolute"): Recorded {
    const estimate = this.#quantity()[operation]();
    return new Recorded(this.#tape, this.#tape.step(operation, this.column, this.column), estimate);
  }
}

// A quantity to whoever asks whether it is one, so that no function takes it for something else; all its own is above.
Object.setPrototypeOf(Recorded.prototype, Object.getPrototypeOf(quantityFromSi("length", 1)));

/**
 * Records the operations of a model of quantities, by calling it once with stand-ins.
 *
 * A model that is nothing but arithmetic of quantities (plus, minus, times, over, squareRoot, absolute, as) does the
 * same operations in every draw; done in columns they give the same numbers, to the last bit, without a quantity made
 * for each. A model that looks at a value, or gives quantities to other functions that do, is not recorded.
 *
 * @param f       the model
 * @param names   the uncertain inputs, in the order of their columns
 * @param centres  the estimate of every input by name, those of exact ones too
 * @returns null where the operations do not tell all
 */
export function recordingOf(
  f: (plain: never) => unknown,
  names: readonly string[],
  centres: Readonly<Record<string, Plain>>,
): Recording | null {
  const tape = new Tape(names.length);
  const given: Record<string, unknown> = { ...centres };
  for (const [column, name] of names.entries()) {
    if (!isQuantity(centres[name])) return null;
    given[name] = new Recorded(tape, column, centres[name] as AnyQuantity);
  }
  let result: unknown;
  try {
    result = f(Object.freeze(given) as never);
  } catch {
    return null;
  }
  if (!(result instanceof Recorded)) return null;
  return { dimension: result.dimension, evaluate: evaluatorOf(tape, result.column) };
}

function evaluatorOf(tape: Tape, last: number): Recording["evaluate"] {
  const { steps, constants } = tape;
  const first = tape.columns - steps.length - constants.size;
  const own = Array.from({ length: tape.columns - first }, () => new Float64Array(mostRows));
  for (const [column, si] of constants) own[column - first]!.fill(si);
  const results = Array.from({ length: tape.columns - first }, (_, k) => k + first).filter(
    (column) => !constants.has(column),
  );
  return (inputs, target) => {
    const rows = target.length;
    const columns = [...inputs, ...own];
    for (const [k, { operation, left, right }] of steps.entries())
      if (!computed(operation, columns[left]!, columns[right]!, columns[results[k]!]!, rows)) return false;
    const found = columns[last]!;
    for (let row = 0; row < rows; row++) target[row] = found[row]!;
    return true;
  };
}

/** One operation on columns; false where a result is not finite, or a divisor 0. */
function computed(
  operation: Operation,
  a: Float64Array,
  b: Float64Array,
  into: Float64Array,
  rows: number,
): boolean {
  if (operation === "plus") for (let i = 0; i < rows; i++) into[i] = a[i]! + b[i]!;
  else if (operation === "minus") for (let i = 0; i < rows; i++) into[i] = a[i]! - b[i]!;
  else if (operation === "times") for (let i = 0; i < rows; i++) into[i] = a[i]! * b[i]!;
  else if (operation === "over") for (let i = 0; i < rows; i++) into[i] = a[i]! / b[i]!;
  else if (operation === "squareRoot") for (let i = 0; i < rows; i++) into[i] = Math.sqrt(a[i]!);
  else for (let i = 0; i < rows; i++) into[i] = Math.abs(a[i]!);
  // The difference of a number from itself is 0, unless it is not finite; a divisor of 0 gives such a one.
  let check = 0;
  for (let i = 0; i < rows; i++) check += into[i]! - into[i]!;
  return check === 0;
}
