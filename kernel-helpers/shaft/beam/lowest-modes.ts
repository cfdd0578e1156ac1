import { type BandedMatrix, factorOf, solved, times } from "./banded-matrix.js";

/** A speed at which a shape goes on by itself, squared [1/s²], and the shape. */
export interface Mode {
  readonly omegaSquared: number;
  readonly shape: Float64Array;
}

/**
 * The lowest positive ω² of K u = ω² M u, K positive definite, M symmetric and of any sign (a gyroscopic disc makes
 * some of it negative): inverse iteration of a block of shapes, each round with the best of the block by Rayleigh and
 * Ritz.
 *
 * @param count     wanted; fewer come back where there are no more
 * @param negative  how many negative ω² there may be: so many shapes are carried along besides
 * @returns undefined where K is not positive definite
 * @source K.-J. Bathe & E. L. Wilson, subspace iteration; e.g. K.-J. Bathe, Finite Element Procedures, 1996, section
 * 11.6 (from memory)
 */
export function lowestModes(
  k: BandedMatrix,
  m: BandedMatrix,
  count: number,
  negative: number,
): readonly Mode[] | undefined {
  const factor = factorOf(k);
  if (factor === undefined) return undefined;
  const { size } = k;
  const block = Math.min(size, 2 * count + negative + 2);
  // Any block does that is not blind to a wanted shape; a fixed mixture, so that a run repeats.
  let shapes = Array.from({ length: block }, (_, b) =>
    Float64Array.from({ length: size }, (_, i) => Math.sin((i + 1) * (b + 1) * 0.7548776662 + b * b)),
  );
  let last: readonly number[] = [];
  let modes: Mode[] = [];
  for (let round = 0; round < 200; round++) {
    const next = shapes.map((x) => solved(factor, times(m, x)));
    // With y = K⁻¹ M x: yᵀ K y = yᵀ M x.
    const pushed = shapes.map((x) => times(m, x));
    const small = next.map((y) => pushed.map((p) => dot(y, p)));
    const mass = next.map((y) => {
      const my = times(m, y);
      return next.map((other) => dot(other, my));
    });
    const { values, vectors } = generalised(mass, small);
    const order = values.map((_, i) => i).sort((a, b) => Math.abs(values[b]!) - Math.abs(values[a]!));
    shapes = order.map((column) => {
      const shape = new Float64Array(size);
      next.forEach((y, b) => {
        const part = vectors[b]![column]!;
        for (let i = 0; i < size; i++) shape[i]! += part * y[i]!;
      });
      const scale = 1 / Math.sqrt(dot(shape, shape));
      return shape.map((x) => x * scale);
    });
    const positive = order.flatMap((column, place) =>
      values[column]! > 0 ? [{ value: values[column]!, place }] : [],
    );
    modes = positive
      .slice(0, count)
      .map(({ value, place }) => ({ omegaSquared: 1 / value, shape: shapes[place]! }));
    const now = modes.map(({ omegaSquared }) => omegaSquared);
    const still = now.length === last.length && now.every((w, i) => Math.abs(w - last[i]!) <= 1e-11 * w);
    last = now;
    if (still && now.length > 0) break;
  }
  return modes;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** λ of A v = λ B v for small A, B symmetric, B positive definite; directions that B hardly sees are left out. */
function generalised(
  a: readonly (readonly number[])[],
  b: readonly (readonly number[])[],
): { readonly values: readonly number[]; readonly vectors: readonly (readonly number[])[] } {
  const n = a.length;
  const scale = b.map((row, i) => 1 / Math.sqrt(Math.abs(row[i]!) || 1));
  const even = (m: readonly (readonly number[])[]): number[][] =>
    m.map((row, i) => row.map((x, j) => 0.5 * (x + m[j]![i]!) * scale[i]! * scale[j]!));
  const [as, bs] = [even(a), even(b)];
  const metric = jacobi(bs);
  const kept = metric.values.flatMap((value, i) => (value > 1e-12 ? [i] : []));
  const basis = kept.map((i) => metric.vectors.map((row) => row[i]! / Math.sqrt(metric.values[i]!)));
  const reduced = basis.map((p) => {
    const ap = as.map((row) => row.reduce((sum, x, j) => sum + x * p[j]!, 0));
    return basis.map((q) => q.reduce((sum, x, j) => sum + x * ap[j]!, 0));
  });
  const found = jacobi(reduced);
  const vectors = Array.from({ length: n }, (_, i) =>
    kept.map((_, c) => scale[i]! * basis.reduce((sum, p, k) => sum + p[i]! * found.vectors[k]![c]!, 0)),
  );
  return { values: found.values, vectors };
}

/** All eigenvalues of a small symmetric matrix, with the eigenvectors as columns, by Jacobi's rotations. */
function jacobi(of: readonly (readonly number[])[]): {
  readonly values: readonly number[];
  readonly vectors: readonly (readonly number[])[];
} {
  const n = of.length;
  const a = of.map((row) => [...row]);
  const v = a.map((_, i) => a.map((_, j): number => (i === j ? 1 : 0)));
  const total = Math.sqrt(a.reduce((sum, row) => sum + row.reduce((s, x) => s + x * x, 0), 0));
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) off += a[p]![q]! ** 2;
    if (Math.sqrt(off) <= 1e-15 * total) break;
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) {
        const apq = a[p]![q]!;
        if (apq === 0) continue;
        const theta = (a[q]![q]! - a[p]![p]!) / (2 * apq);
        const t = Math.sign(theta || 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
        const c = 1 / Math.sqrt(t * t + 1);
        const s = t * c;
        for (let i = 0; i < n; i++) {
          const [x, y] = [a[i]![p]!, a[i]![q]!];
          a[i]![p] = c * x - s * y;
          a[i]![q] = s * x + c * y;
        }
        for (let i = 0; i < n; i++) {
          const [x, y] = [a[p]![i]!, a[q]![i]!];
          a[p]![i] = c * x - s * y;
          a[q]![i] = s * x + c * y;
          const [g, h] = [v[i]![p]!, v[i]![q]!];
          v[i]![p] = c * g - s * h;
          v[i]![q] = s * g + c * h;
        }
      }
  }
  return { values: a.map((row, i) => row[i]!), vectors: v };
}
