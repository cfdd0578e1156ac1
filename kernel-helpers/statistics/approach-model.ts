import { leastSquares } from "./least-squares.js";

/** Readings and what is known beside them. */
export interface Problem {
  readonly t: readonly number[];
  readonly y: readonly number[];
  readonly u: readonly number[];
  readonly start: number | undefined;
  readonly foretold: { readonly end: number; readonly u: number } | undefined;
  readonly span: number;
  readonly others: readonly Problem[];
}

/** An approach: end, value at time 0, time constant. */
export interface Curve {
  readonly end: number;
  readonly first: number;
  readonly tau: number;
}

/** The curve at a time. */
export function valueAt({ end, first, tau }: Curve, t: number): number {
  return end + (first - end) * Math.exp(-t / tau);
}

/** Over uncertainties; others that share the time constant at their best with it. */
export function sumOfSquares({ t, y, u, foretold, others }: Problem, curve: Curve): number {
  const ofOthers = others.reduce((sum, other) => {
    const best = linearFit(other, curve.tau);
    return sum + (best === undefined ? Number.POSITIVE_INFINITY : sumOfSquares(other, best));
  }, 0);
  const ofReadings = y.reduce((sum, value, i) => sum + ((value - valueAt(curve, t[i]!)) / u[i]!) ** 2, 0);
  return (
    ofOthers + ofReadings + (foretold === undefined ? 0 : ((curve.end - foretold.end) / foretold.u) ** 2)
  );
}

/** Best end and start for a time constant: linear. Undefined where they cannot be told apart. */
export function linearFit({ t, y, u, start, foretold }: Problem, tau: number): Curve | undefined {
  // Normal equations of at most two unknowns, about the first reading so that no large numbers cancel.
  const origin = y[0]!;
  let [aa, ab, bb, ay, by] = [0, 0, 0, 0, 0];
  const take = (a: number, b: number, value: number, weight: number): void => {
    aa += weight * a * a;
    ab += weight * a * b;
    bb += weight * b * b;
    ay += weight * a * value;
    by += weight * b * value;
  };
  for (let i = 0; i < t.length; i++) {
    const fade = Math.exp(-t[i]! / tau);
    const known = start === undefined ? 0 : fade * (start - origin);
    take(-Math.expm1(-t[i]! / tau), start === undefined ? fade : 0, y[i]! - origin - known, 1 / u[i]! ** 2);
  }
  if (foretold !== undefined) take(1, 0, foretold.end - origin, 1 / foretold.u ** 2);
  if (start !== undefined) return aa > 0 ? { end: origin + ay / aa, first: start, tau } : undefined;
  const determinant = aa * bb - ab * ab;
  if (!(determinant > 1e-13 * aa * bb)) return undefined;
  return {
    end: origin + (bb * ay - ab * by) / determinant,
    first: origin + (aa * by - ab * ay) / determinant,
    tau,
  };
}

/** One row a reading: slopes of the curve over u, by end, start, time constant. */
function slopes({ t, u, start }: Problem, { end, first, tau }: Curve): number[][] {
  return t.map((time, i) => {
    const fade = Math.exp(-time / tau);
    const byTau = ((first - end) * fade * time) / tau ** 2;
    return [1 - fade, ...(start === undefined ? [fade] : []), byTau].map((slope) => slope / u[i]!);
  });
}

/** The readings, the foretold end and what others tell of the time constant, each a row; and what is missed in it. */
export function linearised(problem: Problem, curve: Curve): { design: number[][]; misses: number[] } {
  const { t, y, u, start, foretold, others } = problem;
  const design = slopes(problem, curve);
  const misses = y.map((value, k) => (value - valueAt(curve, t[k]!)) / u[k]!);
  const ofStart = start === undefined ? [0] : [];
  if (foretold !== undefined) {
    design.push([1 / foretold.u, ...ofStart, 0]);
    misses.push((foretold.end - curve.end) / foretold.u);
  }
  for (const other of others) {
    const best = linearFit(other, curve.tau);
    if (best === undefined) continue;
    const { root, miss } = ofTimeConstant(other, best);
    if (!(root > 0)) continue;
    design.push([0, ...ofStart, root]);
    misses.push(miss);
  }
  return { design, misses };
}

/** What readings tell of the time constant when their end and start are fitted: its slopes clear of those two. */
function ofTimeConstant(problem: Problem, best: Curve): { root: number; miss: number } {
  const rows = slopes(problem, best);
  const byTau = rows.map((row) => row[2]!);
  const missed = problem.y.map((value, k) => (value - valueAt(best, problem.t[k]!)) / problem.u[k]!);
  const along = leastSquares(
    rows.map((row) => [row[0]!, row[1]!]),
    byTau,
    { weights: byTau.map(() => 1), knownUncertainty: true },
  ).coefficients;
  const clear = rows.map((row) => row[2]! - along[0]! * row[0]! - along[1]! * row[1]!);
  const root = Math.hypot(...clear);
  return { root, miss: root > 0 ? clear.reduce((sum, a, k) => sum + a * missed[k]!, 0) / root : 0 };
}
