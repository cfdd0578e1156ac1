import type { Measured, Quantity } from "../../quantity/index.js";
import { type Correlation, correlationMatrix } from "./correlation.js";
import type { Plain } from "./plain-value.js";
import type { Uncertain } from "./uncertain-type.js";
import { uncertainValue } from "./uncertain-value.js";

/** The uncertain value that each measured one becomes. */
export type AllUncertain<M> = {
  readonly [N in keyof M]: M[N] extends Measured<infer V>
    ? V extends Quantity<infer K>
      ? Uncertain<K>
      : Uncertain<"number">
    : never;
};

/**
 * Makes measured values that are correlated with each other the start of a computation, e.g. the intercept and
 * slope of one line.
 *
 * Valid when: the coefficients are those of the estimates (of their errors), not of the readings. Correlated
 * sources count as one in the effective degrees of freedom, with the smallest of theirs.
 *
 * @param inputs        measured values by the name of their source
 * @param coefficients  pairs of names and the correlation coefficient of each, −1 to 1; others are 0 [-]
 * @returns the uncertain values by name
 * @throws TypeError   an input is no measured value
 * @throws RangeError  a name is not among the inputs, a pair stands twice, a coefficient lies beyond ±1, or the
 * coefficients contradict each other
 * @example
 * const line = { intercept: measured(mm(-0.17), mm(0.003)), rise: measured(mm(0.02), mm(0.004)) };
 * const { intercept, rise } = correlated(line, [["intercept", "rise", -1]]);
 * intercept.plus(rise).standardUncertainty.in("mm") // 0.001
 * @source JCGM 100:2008 (GUM), 5.2.2
 */
export function correlated<M extends Readonly<Record<string, Measured<Plain>>>>(
  inputs: M,
  coefficients: readonly Correlation[],
): AllUncertain<M> {
  const names = Object.keys(inputs);
  for (const name of names)
    if (inputs[name]?.kind !== "measured")
      throw new TypeError(`correlated: ${name} must be a measured value, got ${String(inputs[name])}`);
  const group = Object.freeze({ coefficients: correlationMatrix("correlated", names, coefficients) });
  const made = names.map((name, index) => {
    const { value, standardUncertainty, degreesOfFreedom } = inputs[name]!;
    const source = Object.freeze({
      name,
      standardUncertainty,
      degreesOfFreedom,
      correlated: Object.freeze({ group, index }),
    });
    return [name, uncertainValue(value, new Map([[source, 1]]))] as const;
  });
  return Object.freeze(Object.fromEntries(made)) as unknown as AllUncertain<M>;
}
