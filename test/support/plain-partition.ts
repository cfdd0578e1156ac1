/** Rules of the plain search: as in partition. */
export interface PlainRules {
  readonly penalty: number;
  readonly flat: boolean;
  readonly sloping: boolean;
  readonly minimumPoints: number;
  readonly minimumSlopingPoints: number;
}

/** A stretch of readings, first and last index inclusive. */
export interface PlainSegment {
  readonly from: number;
  readonly to: number;
  readonly shape: "flat" | "sloping";
}

/**
 * Optimal partitioning written down as it is defined: every start is tried for every end, costs from running
 * sums of w, wx, wy, wx², wxy, wy². No bound, no block, no gross errors: the peer to be faster than, and the
 * judge of exactness.
 *
 * @source B. Jackson et al., IEEE Signal Processing Letters 12 (2005) 105-108
 */
export function plainPartition(
  x: readonly number[],
  y: readonly number[],
  u: readonly number[],
  rules: PlainRules,
): { readonly segments: readonly PlainSegment[]; readonly criterion: number } {
  const n = x.length;
  const middleX = x.reduce((a, b) => a + b, 0) / n;
  const middleY = y.reduce((a, b) => a + b, 0) / n;
  const sums = Array.from({ length: 6 }, () => new Float64Array(n + 1));
  const [W, X, Y, XX, XY, YY] = sums as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const positions = new Int32Array(n + 1);
  for (let i = 0; i < n; i++) {
    const dx = x[i]! - middleX;
    const dy = y[i]! - middleY;
    const w = 1 / u[i]! ** 2;
    W[i + 1] = W[i]! + w;
    X[i + 1] = X[i]! + w * dx;
    Y[i + 1] = Y[i]! + w * dy;
    XX[i + 1] = XX[i]! + w * dx * dx;
    XY[i + 1] = XY[i]! + w * dx * dy;
    YY[i + 1] = YY[i]! + w * dy * dy;
    positions[i + 1] = positions[i]! + (i === 0 || x[i]! > x[i - 1]! ? 1 : 0);
  }
  const best = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
  const start = new Int32Array(n + 1);
  const sloping = new Uint8Array(n + 1);
  best[0] = 0;
  for (let t = 1; t <= n; t++) {
    if (t < n && x[t] === x[t - 1]) continue;
    for (let s = 0; s < t; s++) {
      if (best[s] === Number.POSITIVE_INFINITY || t - s < rules.minimumPoints) continue;
      const w = W[t]! - W[s]!;
      const wx = X[t]! - X[s]!;
      const wy = Y[t]! - Y[s]!;
      const yy = YY[t]! - YY[s]! - (wy * wy) / w;
      const flat = best[s]! + yy + 2 * rules.penalty;
      if (rules.flat && flat < best[t]!) {
        best[t] = flat;
        start[t] = s;
        sloping[t] = 0;
      }
      if (
        rules.sloping &&
        t - s >= rules.minimumSlopingPoints &&
        positions[t]! - positions[s + 1]! + 1 >= 3
      ) {
        const xx = XX[t]! - XX[s]! - (wx * wx) / w;
        const xy = XY[t]! - XY[s]! - (wx * wy) / w;
        const slope = best[s]! + yy - (xy * xy) / xx + 3 * rules.penalty;
        if (slope < best[t]!) {
          best[t] = slope;
          start[t] = s;
          sloping[t] = 1;
        }
      }
    }
  }
  const segments: PlainSegment[] = [];
  for (let t = n; t > 0; t = start[t]!) {
    segments.unshift({ from: start[t]!, to: t - 1, shape: sloping[t] === 1 ? "sloping" : "flat" });
  }
  return { segments, criterion: best[n]! };
}
