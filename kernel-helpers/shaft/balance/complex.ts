/** A vector in the plane of rotation, as a complex number: `re` along angle 0, `im` a quarter turn on. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/**
 * A vector from its size and direction.
 *
 * @param size  [any one unit]
 * @param angle  [rad]
 * @example polar(2, Math.PI / 2).im // 2
 * @source definition
 */
export function polar(size: number, angle: number): Complex {
  return { re: size * Math.cos(angle), im: size * Math.sin(angle) };
}

export function add(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im };
}

export function times(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

/** The same vector turned about: counted the other way round. */
export function conjugate({ re, im }: Complex): Complex {
  return { re, im: -im };
}

export function size({ re, im }: Complex): number {
  return Math.hypot(re, im);
}

/** Direction, from 0 to below a whole turn [rad]. */
export function direction({ re, im }: Complex): number {
  const angle = Math.atan2(im, re);
  // A direction a hair below 0 must not round up to a whole turn.
  return angle < 0 ? (angle + 2 * Math.PI) % (2 * Math.PI) : angle;
}
