import { type Complex, conjugate, size, times } from "./complex.js";

/** A determinant smaller than this share of what it is made of counts as none. */
const singularBelow = 1e-9;

/**
 * The one or two complex numbers x for which matrix·x comes nearest to the right side (least squares).
 *
 * @throws RangeError  the columns are alike: nothing tells the unknowns apart
 */
export function solveComplex(
  where: string,
  matrix: readonly (readonly Complex[])[],
  right: readonly Complex[],
): readonly Complex[] {
  const columns = matrix[0]!.length;
  const dot = (a: (row: number) => Complex, b: (row: number) => Complex): Complex =>
    matrix.reduce(
      (sum, _, row) => {
        const { re, im } = times(conjugate(a(row)), b(row));
        return { re: sum.re + re, im: sum.im + im };
      },
      { re: 0, im: 0 },
    );
  const column =
    (j: number) =>
    (row: number): Complex =>
      matrix[row]![j]!;
  const rightAt = (row: number): Complex => right[row]!;
  const first = dot(column(0), column(0)).re;
  if (columns === 1) {
    if (first === 0) throw new RangeError(`${where}: no pickup answers the trial mass`);
    const { re, im } = dot(column(0), rightAt);
    return [{ re: re / first, im: im / first }];
  }
  const second = dot(column(1), column(1)).re;
  const cross = dot(column(0), column(1));
  const determinant = first * second - size(cross) ** 2;
  if (!(determinant > singularBelow * first * second))
    throw new RangeError(`${where}: the pickups answer both planes alike, so nothing tells the planes apart`);
  const [a, b] = [dot(column(0), rightAt), dot(column(1), rightAt)];
  const lift = (p: number, u: Complex, q: Complex, v: Complex): Complex => {
    const crossed = times(q, v);
    return { re: (p * u.re - crossed.re) / determinant, im: (p * u.im - crossed.im) / determinant };
  };
  return [lift(second, a, cross, b), lift(first, b, conjugate(cross), a)];
}
