/** A place of a surface: where along the shaft, its centre across, and its diameter; any one unit of length. */
export interface SurfacePlace {
  readonly position: number;
  readonly x: number;
  readonly y: number;
  readonly diameter: number;
}

/** A straight axis by where it passes two positions. */
export interface StraightAxis {
  readonly first: { readonly position: number; readonly x: number; readonly y: number };
  readonly last: { readonly position: number; readonly x: number; readonly y: number };
}

/** The true cylinder that a group of places leaves about an axis: min (D − 2e). */
export function leftAbout(axis: StraightAxis, places: readonly SurfacePlace[]): number {
  return Math.min(
    ...places.map(({ position, x, y, diameter }) => {
      const at = axisAt(axis, position);
      return diameter - 2 * Math.hypot(x - at.x, y - at.y);
    }),
  );
}

/** Where an axis passes a position. */
export function axisAt({ first, last }: StraightAxis, position: number): { x: number; y: number } {
  const share = (position - first.position) / (last.position - first.position);
  return { x: first.x + share * (last.x - first.x), y: first.y + share * (last.y - first.y) };
}

const sharpenings = 14;
const rounds = 60;

/**
 * The straight axis about which the journals lose least in sum: the largest Σ over groups of min (D − 2e).
 *
 * The sum is concave in the four numbers of the axis, so that there is one best value. Its corners are rounded off
 * (min by a log-sum of exponentials, distance by a hyperbola), the rounded one is climbed by gradient steps with
 * backtracking, and the rounding halved until it is nothing beside a reading.
 *
 * Valid when: at least two groups apart along the shaft; one short group alone leaves the slope to its noise.
 *
 * @param groups  of places, each at least one [any one unit of length]
 * @param first   a position where the axis is given, e.g. a centre hole
 * @param last    another one
 * @returns the axis
 * @throws RangeError  no group, an empty one, or both positions the same
 */
export function leastCutAxis(
  groups: readonly (readonly SurfacePlace[])[],
  first: number,
  last: number,
): StraightAxis {
  if (groups.length === 0 || groups.some((group) => group.length === 0))
    throw new RangeError("leastCutAxis: each group must have at least one place");
  if (!(last > first))
    throw new RangeError(
      `leastCutAxis: the axis must run from a lower to a higher position, got ${first} to ${last}`,
    );
  const all = groups.flat();
  const size = Math.max(...all.map(({ x, y }) => Math.hypot(x, y)), 1e-12);
  let axis = [0, 0, 0, 0];
  let rounding = size;
  const share = ({ position }: SurfacePlace): number => (position - first) / (last - first);
  const judge = (p: readonly number[], eps: number): { value: number; slope: number[] } => {
    let value = 0;
    const slope = [0, 0, 0, 0];
    for (const group of groups) {
      const terms = group.map((place) => {
        const s = share(place);
        const dx = place.x - (p[0]! + s * (p[2]! - p[0]!));
        const dy = place.y - (p[1]! + s * (p[3]! - p[1]!));
        const e = Math.sqrt(dx * dx + dy * dy + eps * eps);
        return { s, dx, dy, e, left: place.diameter - 2 * e };
      });
      const least = Math.min(...terms.map(({ left }) => left));
      const weights = terms.map(({ left }) => Math.exp(-(left - least) / eps));
      const sum = weights.reduce((a, b) => a + b, 0);
      value += least - eps * Math.log(sum);
      terms.forEach(({ s, dx, dy, e }, i) => {
        const w = weights[i]! / sum;
        const gx = (2 * w * dx) / e;
        const gy = (2 * w * dy) / e;
        slope[0]! += gx * (1 - s);
        slope[1]! += gy * (1 - s);
        slope[2]! += gx * s;
        slope[3]! += gy * s;
      });
    }
    return { value, slope };
  };
  for (let k = 0; k < sharpenings; k++, rounding /= 2) {
    // Quasi-Newton (BFGS) on the rounded sum, from where the rounder one ended.
    let inverse = identity(rounding);
    let here = judge(axis, rounding);
    for (let i = 0; i < rounds; i++) {
      const way = inverse.map((row) => row.reduce((a, v, j) => a + v * here.slope[j]!, 0));
      const climb = way.reduce((a, v, j) => a + v * here.slope[j]!, 0);
      if (!(climb > 1e-9 * rounding)) break;
      let stride = 1;
      let next = axis;
      let there = here;
      for (let halvings = 0; halvings < 40; halvings++, stride /= 2) {
        next = axis.map((v, j) => v + stride * way[j]!);
        there = judge(next, rounding);
        if (there.value >= here.value + 1e-4 * stride * climb) break;
      }
      if (!(there.value > here.value)) break;
      inverse = updated(
        inverse,
        next.map((v, j) => v - axis[j]!),
        here.slope.map((v, j) => v - there.slope[j]!),
      );
      [axis, here] = [next, there];
    }
  }
  const [x0, y0, x1, y1] = axis as [number, number, number, number];
  return { first: { position: first, x: x0, y: y0 }, last: { position: last, x: x1, y: y1 } };
}

function identity(scale: number): number[][] {
  return [0, 1, 2, 3].map((i) => [0, 1, 2, 3].map((j) => (i === j ? scale : 0)));
}

/** BFGS: the inverse of the curvature after a step and the change of slope that it made. */
function updated(h: number[][], step: readonly number[], change: readonly number[]): number[][] {
  const sy = step.reduce((a, v, i) => a + v * change[i]!, 0);
  if (!(sy > 0)) return h;
  const hy = h.map((row) => row.reduce((a, v, j) => a + v * change[j]!, 0));
  const yhy = change.reduce((a, v, i) => a + v * hy[i]!, 0);
  return h.map((row, i) =>
    row.map(
      (v, j) =>
        v + ((sy + yhy) * step[i]! * step[j]!) / sy ** 2 - (hy[i]! * step[j]! + step[i]! * hy[j]!) / sy,
    ),
  );
}
