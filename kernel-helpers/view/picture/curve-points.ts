/** Points in order, the start left out, the end given. */
type Points = readonly (readonly [number, number])[];

const stepsOfCurve = 16;
const stepsOfArc = 24;

/** Points of a cubic Bézier curve from (x, y) with the controls a and b. */
export function cubic(
  x: number,
  y: number,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  endX: number,
  endY: number,
): Points {
  const points: [number, number][] = [];
  for (let step = 1; step <= stepsOfCurve; step++) {
    const t = step / stepsOfCurve;
    const u = 1 - t;
    const [w0, w1, w2, w3] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
    points.push([w0 * x + w1 * ax + w2 * bx + w3 * endX, w0 * y + w1 * ay + w2 * by + w3 * endY]);
  }
  return points;
}

/** A quadratic curve is the cubic whose controls lie two thirds of the way to its one control. */
export function quadratic(x: number, y: number, cx: number, cy: number, endX: number, endY: number): Points {
  const towards = (from: number, to: number): number => from + (2 / 3) * (to - from);
  return cubic(x, y, towards(x, cx), towards(y, cy), towards(endX, cx), towards(endY, cy), endX, endY);
}

/**
 * Points of an elliptical arc given by its ends.
 * @source Scalable Vector Graphics (SVG) 1.1, second edition, appendix F.6.5 and F.6.6
 */
export function arc(
  x: number,
  y: number,
  radiusX: number,
  radiusY: number,
  tiltDegrees: number,
  large: boolean,
  sweep: boolean,
  endX: number,
  endY: number,
): Points {
  let [rx, ry] = [Math.abs(radiusX), Math.abs(radiusY)];
  if (rx === 0 || ry === 0) return [[endX, endY]];
  const tilt = (tiltDegrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(tilt), Math.sin(tilt)];

  // Half the chord, in axes along the ellipse.
  const [halfX, halfY] = [(x - endX) / 2, (y - endY) / 2];
  const [hx, hy] = [cos * halfX + sin * halfY, cos * halfY - sin * halfX];
  if (hx === 0 && hy === 0) return [];

  // Radii too small to span the chord are enlarged until they do.
  const overreach = (hx / rx) ** 2 + (hy / ry) ** 2;
  if (overreach > 1) {
    rx *= Math.sqrt(overreach);
    ry *= Math.sqrt(overreach);
  }
  const reach = (hx / rx) ** 2 + (hy / ry) ** 2;
  const side = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, 1 / reach - 1));
  const [cx, cy] = [(side * rx * hy) / ry, (-side * ry * hx) / rx];
  const centreX = cos * cx - sin * cy + (x + endX) / 2;
  const centreY = sin * cx + cos * cy + (y + endY) / 2;

  const from = Math.atan2((hy - cy) / ry, (hx - cx) / rx);
  let turn = Math.atan2((-hy - cy) / ry, (-hx - cx) / rx) - from;
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;

  const points: [number, number][] = [];
  for (let step = 1; step <= stepsOfArc; step++) {
    const angle = from + (turn * step) / stepsOfArc;
    const [px, py] = [rx * Math.cos(angle), ry * Math.sin(angle)];
    points.push([centreX + px * cos - py * sin, centreY + px * sin + py * cos]);
  }
  return points;
}
