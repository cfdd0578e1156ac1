/**
 * Whether two angles [rad] are one direction: the same, or whole turns apart. A thousandth of an arc second
 * is allowed for rounding, far below any reading.
 *
 * @example sameDirection(0, 2 * Math.PI) // true
 * @example sameDirection(0, Math.PI) // false
 */
export function sameDirection(a: number, b: number): boolean {
  return Math.abs(Math.sin((a - b) / 2)) < 2.5e-9;
}
