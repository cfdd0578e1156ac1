/** An affine map of the plane, in the order of SVG's matrix(a b c d e f): x' = a·x + c·y + e, y' = b·x + d·y + f. */
export type Affine = readonly [number, number, number, number, number, number];

export const identity: Affine = [1, 0, 0, 1, 0, 0];

/** The map that applies `inner` first, then `outer`. */
export function compose(outer: Affine, inner: Affine): Affine {
  const [a, b, c, d, e, f] = outer;
  const [p, q, r, s, t, u] = inner;
  return [a * p + c * q, b * p + d * q, a * r + c * s, b * r + d * s, a * t + c * u + e, b * t + d * u + f];
}

export function applyTo(map: Affine, x: number, y: number): readonly [number, number] {
  return [map[0] * x + map[2] * y + map[4], map[1] * x + map[3] * y + map[5]];
}

/** Reads an SVG transform attribute, e.g. "translate(80,60) rotate(-90)". No attribute is no movement. */
export function parseTransform(attribute: string | null): Affine {
  let map = identity;
  for (const [, name, list] of (attribute ?? "").matchAll(/(\w+)\s*\(([^)]*)\)/g)) {
    const numbers = list!
      .split(/[\s,]+/)
      .filter((word) => word !== "")
      .map(Number);
    map = compose(map, oneTransform(name!, numbers));
  }
  return map;
}

function oneTransform(name: string, numbers: readonly number[]): Affine {
  const [first = 0, second, third = 0] = numbers;
  switch (name) {
    case "translate":
      return [1, 0, 0, 1, first, second ?? 0];
    case "scale":
      return [first, 0, 0, second ?? first, 0, 0];
    case "rotate":
      return rotationAbout(first, second ?? 0, third);
    case "matrix":
      return numbers as unknown as Affine;
    default:
      return identity;
  }
}

function rotationAbout(degrees: number, x: number, y: number): Affine {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y];
}
