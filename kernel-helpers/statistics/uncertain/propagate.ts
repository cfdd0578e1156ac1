import type { AnyQuantity, Computed, Measured, Quantity } from "../../quantity/index.js";
import { asMeasured, type Distribution, isDistribution } from "../monte-carlo-distribution.js";
import { derivative } from "./derivative.js";
import { alike, dimensionOf, isPlain, type Plain, siOf } from "./plain-value.js";
import type { Source } from "./source.js";
import { uncertain } from "./uncertain.js";
import type { AnyUncertain, Uncertain } from "./uncertain-type.js";
import { derivativesOf, isUncertainValue, uncertainValue } from "./uncertain-value.js";

/** What a function may be given: something uncertain, or an exact value. */
export type UncertainInput = AnyUncertain | Measured<Plain> | Distribution<Plain> | Plain;

/** The plain values that a function sees in place of its inputs. */
export type PlainInputs<I> = { readonly [N in keyof I]: PlainInput<I[N]> };

type PlainInput<T> =
  T extends Measured<infer V>
    ? V
    : T extends Uncertain<infer K>
      ? Computed<K>
      : T extends Distribution<infer V>
        ? V
        : T extends number
          ? number
          : T;

/** The kind of the uncertain value that comes of a result. */
export type ResultKind<R> =
  R extends Uncertain<infer K> ? K : R extends Quantity<infer K> ? K : R extends number ? "number" : string;

/**
 * Carries uncertainty through any function of plain numbers and quantities, such as a helper.
 *
 * y = f(x₁, x₂, …); ∂y/∂(source) = Σᵢ ∂f/∂xᵢ · ∂xᵢ/∂(source)
 *
 * The derivatives of f are taken from its values (see `derivative`), those of uncertain inputs are exact, so
 * that correlation counts through the function too. What the function itself computes with uncertain values of
 * its surroundings, and returns as such, keeps its exact derivatives.
 *
 * Valid when: f is smooth and nearly straight within the uncertainties; `monteCarlo` tells whether it is.
 * A measured value or a distribution given here becomes a source named as the input.
 *
 * @param f       takes an object of plain values by name; called a few times for each uncertain input
 * @param inputs  uncertain or measured values, distributions, and exact values by name
 * @returns the result as an uncertain value
 * @throws TypeError   an input is of none of these forms, or the result is no value
 * @throws RangeError  f has a kink or a jump at the estimates, or is not defined about them
 * @example
 * const bore = measured(inch(2.4405), inch(0.0003));
 * const shaft = measured(inch(2.4375), inch(0.0004));
 * propagate((x) => x.bore.minus(x.shaft), { bore, shaft }).standardUncertainty.in("thou") // 0.5
 * @source JCGM 100:2008 (GUM), 5.1.2 and 5.1.3, note 2
 */
export function propagate<
  I extends Readonly<Record<string, UncertainInput>>,
  R extends AnyQuantity | number | AnyUncertain,
>(f: (inputs: PlainInputs<I>) => R, inputs: I): Uncertain<ResultKind<R>> {
  const names = Object.keys(inputs);
  const given = names.map((name) => asInput(name, inputs[name]));
  const valuesBut = (changed: string | undefined, value: Plain): PlainInputs<I> =>
    Object.fromEntries(
      names.map((name, i) => [name, name === changed ? value : estimateOf(given[i]!)]),
    ) as unknown as PlainInputs<I>;
  const result: unknown = f(valuesBut(undefined, 0));
  const value = plainResult(result);
  const derivatives = new Map<Source, number>(derivativesOf(result));
  names.forEach((input, i) => {
    const own = derivativesOf(given[i]);
    if (own.size === 0) return;
    const estimate = estimateOf(given[i]!);
    const width = siOf((given[i] as AnyUncertain).standardUncertainty);
    const slope = derivative(
      (si) => {
        const there = plainResult(f(valuesBut(input, alike(estimate, si))));
        if (dimensionOf(there) !== dimensionOf(value))
          throw new TypeError(`propagate: the function must give one kind, got ${value} and ${there}`);
        return siOf(there);
      },
      siOf(estimate),
      { where: "propagate", input, width },
    );
    for (const [source, d] of own) derivatives.set(source, (derivatives.get(source) ?? 0) + slope * d);
  });
  return uncertainValue(value, derivatives) as Uncertain<ResultKind<R>>;
}

function asInput(name: string, input: unknown): AnyUncertain | Plain {
  if (isUncertainValue(input) || isPlain(input)) return input;
  if (isDistribution(input)) return uncertain(asMeasured(input) as Measured<number>, name);
  if ((input as { kind?: unknown } | null | undefined)?.kind === "measured")
    return uncertain(input as Measured<number>, name);
  throw new TypeError(
    `propagate: ${name} must be an uncertain or measured value, a distribution, a quantity or a finite number, got ${String(input)}`,
  );
}

function estimateOf(input: AnyUncertain | Plain): Plain {
  return isUncertainValue(input) ? input.value : (input as Plain);
}

function plainResult(result: unknown): Plain {
  const value = isUncertainValue(result) ? result.value : result;
  if (isPlain(value)) return value;
  throw new TypeError(
    `propagate: the function must give a quantity or a finite number, got ${String(value)}`,
  );
}
