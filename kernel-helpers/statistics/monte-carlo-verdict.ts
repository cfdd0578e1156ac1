import type { LinearComparison } from "./monte-carlo-types.js";
import type { CoverageIntervals } from "./shortest-interval.js";
import { alike, type Plain } from "./uncertain/plain-value.js";

/**
 * Whether linear propagation will do in place of the simulation: both ends of its interval must agree with
 * those of the simulated one (equal tails) to half of the last digit of the uncertainty that matters.
 *
 * δ = ½·10^l, where u = c·10^l with c of one or two digits; |y ± U − ends| ≤ δ. When chance may have moved a
 * simulated end across that bound (twice its error), it cannot be told yet.
 *
 * @param linear     value, expanded uncertainty and standard uncertainty of linear propagation [SI]
 * @param simulated  intervals and standard uncertainty of the simulation [SI]
 * @param digits     significant digits that matter, 1 or 2 [-]
 * @param pattern    a value of the kind and unit to write the tolerance in
 * @source JCGM 101:2008, 7.9.2 and 8.1
 */
export function verdictOf<V extends Plain>(
  linear: { readonly value: number; readonly expanded: number },
  simulated: { readonly intervals: CoverageIntervals; readonly standardUncertainty: number },
  digits: 1 | 2,
  pattern: V,
): Pick<LinearComparison<V>, "tolerance" | "agrees" | "verdict"> {
  const { symmetric, symmetricError } = simulated.intervals;
  const power = Number(simulated.standardUncertainty.toExponential(digits - 1).split("e")[1]);
  const tolerance = 0.5 * 10 ** (power - digits + 1);
  const ends = [
    { name: "lower", off: symmetric.low - (linear.value - linear.expanded), error: symmetricError.low },
    { name: "upper", off: symmetric.high - (linear.value + linear.expanded), error: symmetricError.high },
  ] as const;
  const excess = (end: (typeof ends)[number]): number => Math.abs(end.off) - tolerance;
  const worst = excess(ends[0]) >= excess(ends[1]) ? ends[0] : ends[1];
  const unsure = ends.some((end) => Math.abs(excess(end)) <= 2 * end.error);
  const surelyOff = ends.some((end) => excess(end) > 2 * end.error);
  const agrees = surelyOff ? "no" : unsure ? "cannot tell yet" : "yes";
  const show = (si: number): string => String(alike(pattern, Number(Math.abs(si).toPrecision(2))));
  const direction = worst.off < 0 ? "below" : "above";
  const found = `the ${worst.name} end of the simulated interval lies ${show(worst.off)} ${direction} that of the linear one, ${show(tolerance)} is allowed`;
  const words = {
    yes: `Linear propagation will do: ${found}.`,
    no: `Linear propagation will not do, use the simulated interval: ${found}.`,
    "cannot tell yet": `Whether linear propagation will do cannot be told yet: ${found}, and chance moves the end by ${show(worst.error)}. More draws would tell.`,
  };
  return { tolerance: alike(pattern, tolerance) as V, agrees, verdict: words[agrees] };
}
