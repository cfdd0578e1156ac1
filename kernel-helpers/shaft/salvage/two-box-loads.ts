/** A force across the shaft at a position; x to the right, y up, seen from where the positions begin. */
export interface ForceAcross {
  readonly position: number;
  readonly x: number;
  readonly y: number;
}

/** A force spread evenly from one position to another: in all, x to the right, y up. */
export interface EvenForce {
  readonly from: number;
  readonly to: number;
  readonly x: number;
  readonly y: number;
}

/** What a shaft on two boxes carries: SI numbers. */
export interface TwoBoxes {
  /** The loads' pressure on each box: equal and opposite to what the box gives back. */
  readonly onFirst: { readonly x: number; readonly y: number };
  readonly onSecond: { readonly x: number; readonly y: number };
  /** Resultant bending moment at a position. */
  readonly momentAt: (position: number) => number;
}

/**
 * Forces on two boxes and the bending moment along a shaft, by the balance of forces and moments alone: two supports
 * need no stiffness.
 *
 * R₂ = ΣF(z − z₁)/(z₂ − z₁), R₁ = ΣF − R₂; M(z) = |Σ F(z − zᵢ) over all that lies before z|; of an
 * even force the part before z, at its middle
 *
 * Valid when: each box holds the shaft as a hinge at its middle. Long boxes hold its slope too, and take some of the
 * moment from the middle of the span.
 *
 * @param first   position of one box [m]
 * @param second  of the other, not the same [m]
 * @param forces  across the shaft [m, N]
 * @param even    spread along it, e.g. its own weight [m, N]
 * @returns forces [N], moment [N·m]
 * @throws RangeError  both boxes in one place
 * @source statics
 */
export function twoBoxes(
  first: number,
  second: number,
  forces: readonly ForceAcross[],
  even: readonly EvenForce[] = [],
): TwoBoxes {
  if (!(second > first))
    throw new RangeError(`twoBoxes: the second box must lie beyond the first, got ${first} and ${second}`);
  const sum = { x: 0, y: 0 };
  const onSecond = { x: 0, y: 0 };
  const middles = even.map(({ from, to, x, y }) => ({ position: (from + to) / 2, x, y }));
  for (const { position, x, y } of [...forces, ...middles]) {
    sum.x += x;
    sum.y += y;
    const share = (position - first) / (second - first);
    onSecond.x += share * x;
    onSecond.y += share * y;
  }
  const onFirst = { x: sum.x - onSecond.x, y: sum.y - onSecond.y };
  const all = [
    ...forces,
    { position: first, x: -onFirst.x, y: -onFirst.y },
    { position: second, x: -onSecond.x, y: -onSecond.y },
  ];
  return {
    onFirst,
    onSecond,
    momentAt: (position) => {
      let [x, y] = [0, 0];
      for (const force of all)
        if (force.position < position) {
          x += force.x * (position - force.position);
          y += force.y * (position - force.position);
        }
      for (const force of even) {
        const before = Math.min(position, force.to) - force.from;
        if (before <= 0) continue;
        const arm = (before / (force.to - force.from)) * (position - force.from - before / 2);
        x += force.x * arm;
        y += force.y * arm;
      }
      return Math.hypot(x, y);
    },
  };
}
