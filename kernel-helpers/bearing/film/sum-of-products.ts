/**
 * Σ a[from + k]·b[start + k] over k = 0…count − 1, in four sums that do not wait for each other.
 *
 * @param a, from  the first row and where it begins
 * @param b, start  the second
 * @param count  how many products
 */
export function sumOfProducts(
  a: Float64Array,
  from: number,
  b: Float64Array,
  start: number,
  count: number,
): number {
  let [s0, s1, s2, s3] = [0, 0, 0, 0];
  const fours = count - (count % 4);
  let k = 0;
  for (; k < fours; k += 4) {
    s0 += a[from + k]! * b[start + k]!;
    s1 += a[from + k + 1]! * b[start + k + 1]!;
    s2 += a[from + k + 2]! * b[start + k + 2]!;
    s3 += a[from + k + 3]! * b[start + k + 3]!;
  }
  for (; k < count; k++) s0 += a[from + k]! * b[start + k]!;
  return s0 + s1 + (s2 + s3);
}
