/**
 * Every division of a few readings into bands, each weighed by prior and likelihood: what bandPosterior must
 * give, by listing instead of by recursion, and by the covariance of the readings instead of by sums.
 */
export interface DivisionRules {
  readonly shapes: readonly ("flat" | "sloping")[];
  readonly minimumPoints: number;
  readonly minimumSlopingPoints: number;
  readonly bandCountPrior: readonly number[];
  readonly edgePrior: "gaps" | "length";
  readonly levelCentre: number;
  readonly levelSpread: number;
  readonly slopeSpread: number;
  /** Default 1. */
  readonly minimumPositions?: number;
  /** The row of each reading and how far rows stand off from the band's line; default one row. */
  readonly rows?: readonly number[];
  readonly rowSpread?: number;
}

/** One division: its starts, its probability, and the level it gives at each position asked for. */
export interface Division {
  readonly starts: readonly number[];
  readonly probability: number;
}

/** A height at a position: normal, given by a division. */
interface Height {
  readonly mean: number;
  readonly variance: number;
}

export interface EveryDivision {
  readonly divisions: readonly Division[];
  readonly logEvidence: number;
  /** Mean and standard deviation of the level at a position within the readings. */
  readonly level: (position: number) => { readonly mean: number; readonly sd: number };
}

export function everyDivision(
  x: readonly number[],
  y: readonly number[],
  u: readonly number[],
  rules: DivisionRules,
): EveryDivision {
  const n = x.length;
  const allowed: { starts: number[]; weight: number; logLikelihood: number }[] = [];
  for (let mask = 0; mask < 2 ** (n - 1); mask++) {
    const starts = [0];
    for (let i = 1; i < n; i++) if (mask & (1 << (i - 1))) starts.push(i);
    if (starts.some((s) => s > 0 && x[s] === x[s - 1])) continue;
    let logLikelihood = 0;
    for (const [k, s] of starts.entries()) {
      const parts = shapesOf(s, starts[k + 1] ?? n);
      logLikelihood +=
        parts.length === 0
          ? Number.NEGATIVE_INFINITY
          : Math.log(parts.reduce((sum, { density }) => sum + density / parts.length, 0));
    }
    if (logLikelihood === Number.NEGATIVE_INFINITY) continue;
    const widths = starts.slice(1).map((s) => x[s]! - x[s - 1]!);
    const weight = rules.edgePrior === "gaps" ? 1 : widths.reduce((a, b) => a * b, 1);
    allowed.push({ starts, weight, logLikelihood });
  }
  const weightOf = (k: number): number =>
    allowed.filter(({ starts }) => starts.length === k).reduce((sum, { weight }) => sum + weight, 0);
  const priors = rules.bandCountPrior.map((p, k) => (weightOf(k + 1) > 0 ? p : 0));
  const priorTotal = priors.reduce((a, b) => a + b, 0);
  const joint = allowed.map(
    ({ starts, weight, logLikelihood }) =>
      (((priors[starts.length - 1] ?? 0) / priorTotal) * weight * Math.exp(logLikelihood)) /
      weightOf(starts.length),
  );
  const total = joint.reduce((a, b) => a + b, 0);
  const divisions = allowed.map(({ starts }, i) => ({ starts, probability: joint[i]! / total }));

  return {
    divisions,
    logEvidence: Math.log(total),
    level: (position) => {
      const parts = divisions.flatMap(({ starts, probability }) =>
        starts.flatMap((s, k) => {
          const t = starts[k + 1] ?? n;
          const covered = probability * coverOf(position, s, t);
          if (covered === 0) return [];
          const shapes = shapesOf(s, t);
          const sum = shapes.reduce((a, { density }) => a + density, 0);
          return shapes.map(({ density, heightAt }) => ({
            weight: (covered * density) / sum,
            ...heightAt(position),
          }));
        }),
      );
      const mean = parts.reduce((sum, part) => sum + part.weight * part.mean, 0);
      const square = parts.reduce(
        (sum, part) => sum + part.weight * (part.variance + (part.mean - mean) ** 2),
        0,
      );
      return { mean, sd: Math.sqrt(square) };
    },
  };

  /** The allowed shapes of a band: density of its readings, and the height at a position given them. */
  function shapesOf(s: number, t: number): { density: number; heightAt: (p: number) => Height }[] {
    const different = new Set(x.slice(s, t)).size;
    if (different < (rules.minimumPositions ?? 1)) return [];
    return rules.shapes
      .filter((shape) =>
        shape === "flat"
          ? t - s >= rules.minimumPoints
          : t - s >= Math.max(rules.minimumPoints, rules.minimumSlopingPoints) && different >= 3,
      )
      .map((shape) => {
        const weights = u.slice(s, t).map((v) => v ** -2);
        const xs = x.slice(s, t);
        const middleOf = (of: (i: number) => boolean): number => {
          const sum = (what: (i: number) => number): number =>
            xs.reduce((all, _, i) => all + (of(i) ? what(i) : 0), 0);
          return sum((i) => weights[i]! * xs[i]!) / sum((i) => weights[i]!);
        };
        const middle = middleOf(() => true);
        const row = (i: number): number => rules.rows?.[s + i] ?? 0;
        const rowSpread = rules.rowSpread ?? 0;
        const rowSlope = (rowSpread / rules.levelSpread) * rules.slopeSpread;
        const shared = (a: number, b: number): number =>
          rules.levelSpread ** 2 +
          (shape === "flat" ? 0 : rules.slopeSpread ** 2 * (a - middle) * (b - middle));
        const ofRow = (i: number, j: number): number => {
          if (row(i) !== row(j)) return 0;
          const own = middleOf((k) => row(k) === row(i));
          const slope = shape === "flat" ? 0 : rowSlope ** 2 * (xs[i]! - own) * (xs[j]! - own);
          return rowSpread ** 2 + slope;
        };
        const factor = cholesky(
          xs.map((a, i) => xs.map((b, j) => shared(a, b) + ofRow(i, j) + (i === j ? u[s + i]! ** 2 : 0))),
        );
        const off = solve(
          factor,
          y.slice(s, t).map((v) => v - rules.levelCentre),
        );
        const density = off.reduce(
          (product, v, i) => (product * Math.exp(-0.5 * v * v)) / factor[i]![i]! / Math.sqrt(2 * Math.PI),
          1,
        );
        const heightAt = (p: number): Height => {
          const link = solve(
            factor,
            xs.map((a) => shared(a, p)),
          );
          return {
            mean: rules.levelCentre + link.reduce((sum, v, i) => sum + v * off[i]!, 0),
            variance: shared(p, p) - link.reduce((sum, v) => sum + v * v, 0),
          };
        };
        return { density, heightAt };
      });
  }

  /** Probability that the band of readings s … t−1 covers a position, edges lying anywhere in their gaps alike. */
  function coverOf(p: number, s: number, t: number): number {
    if (p >= x[s]! && p <= x[t - 1]!) return 1;
    if (t < n && p > x[t - 1]! && p < x[t]!) return (x[t]! - p) / (x[t]! - x[t - 1]!);
    if (s > 0 && p < x[s]! && p > x[s - 1]!) return (p - x[s - 1]!) / (x[s]! - x[s - 1]!);
    return 0;
  }
}

/** Lower triangle L of a covariance matrix, L Lᵀ. */
function cholesky(matrix: readonly (readonly number[])[]): number[][] {
  const factor: number[][] = [];
  for (const [i, row] of matrix.entries()) {
    factor.push([]);
    for (let j = 0; j <= i; j++) {
      let sum = row[j]!;
      for (let k = 0; k < j; k++) sum -= factor[i]![k]! * factor[j]![k]!;
      factor[i]!.push(i === j ? Math.sqrt(sum) : sum / factor[j]![j]!);
    }
  }
  return factor;
}

/** Solves L z = b. */
function solve(factor: readonly (readonly number[])[], b: readonly number[]): number[] {
  const z: number[] = [];
  for (const [i, value] of b.entries()) {
    let sum = value;
    for (let k = 0; k < i; k++) sum -= factor[i]![k]! * z[k]!;
    z.push(sum / factor[i]![i]!);
  }
  return z;
}
