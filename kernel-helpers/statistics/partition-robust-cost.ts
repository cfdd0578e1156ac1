/** A stretch of levels on which the cost of the best division is one parabola: a (μ − m)² + c. */
export interface CostPiece {
  readonly low: number;
  readonly high: number;
  /** Curvature, 0 where the cost does not depend on the level. */
  readonly a: number;
  readonly m: number;
  readonly c: number;
  /** First reading of the segment that has this level. */
  readonly start: number;
}

/** Cost as a function of the level of the last segment: pieces side by side, ascending. */
export type Cost = readonly CostPiece[];

/** A reading with its weight 1/u², in whatever unit. */
export interface WeighedReading {
  readonly y: number;
  readonly w: number;
}

/** The cost with one more reading: min(w (y − μ)², limit²) added at every level μ. */
export function withReading(cost: Cost, { y, w }: WeighedReading, limit: number): Cost {
  const reach = limit / Math.sqrt(w);
  const [near, far] = [y - reach, y + reach];
  const pieces: CostPiece[] = [];
  for (const piece of cost) {
    let low = piece.low;
    for (const cut of [near, far, piece.high]) {
      const high = Math.min(cut, piece.high);
      if (!(high > low)) continue;
      const inside = low >= near && high <= far;
      pieces.push(
        inside ? withParabola(piece, low, high, y, w) : { ...piece, low, high, c: piece.c + limit * limit },
      );
      low = high;
    }
  }
  return pieces;
}

/** Sums of parabolas about their own middle, so that a large offset costs no digits. */
function withParabola(piece: CostPiece, low: number, high: number, y: number, w: number): CostPiece {
  const a = piece.a + w;
  const off = y - piece.m;
  return {
    low,
    high,
    a,
    m: piece.a === 0 ? y : piece.m + (w / a) * off,
    c: piece.c + (piece.a === 0 ? 0 : ((piece.a * w) / a) * off * off),
    start: piece.start,
  };
}

/** The lower of two costs at every level: where the pieces of one lie above, they are gone for good. */
export function lowerOf(one: Cost, other: Cost): Cost {
  const pieces: CostPiece[] = [];
  let last: CostPiece | undefined; // the piece that the last one was cut from
  const append = (from: CostPiece, low: number, high: number): void => {
    if (from === last) pieces[pieces.length - 1] = { ...pieces[pieces.length - 1]!, high };
    else pieces.push({ ...from, low, high });
    last = from;
  };
  let [i, j] = [0, 0];
  while (i < one.length && j < other.length) {
    const [p, q] = [one[i]!, other[j]!];
    let low = Math.max(p.low, q.low);
    const end = Math.min(p.high, q.high);
    for (const cut of [...crossings(p, q, low, end), end]) {
      if (!(cut > low)) continue;
      const middle = low + (cut - low) / 2;
      append(costAt(p, middle) <= costAt(q, middle) ? p : q, low, cut);
      low = cut;
    }
    if (p.high <= end) i += 1;
    if (q.high <= end) j += 1;
  }
  return pieces;
}

/** The level of least cost. */
export function leastOf(cost: Cost): {
  readonly criterion: number;
  readonly level: number;
  readonly start: number;
} {
  let least = { criterion: Number.POSITIVE_INFINITY, level: Number.NaN, start: -1 };
  for (const piece of cost) {
    const level = Math.min(Math.max(piece.m, piece.low), piece.high);
    const criterion = costAt(piece, level);
    if (criterion < least.criterion) least = { criterion, level, start: piece.start };
  }
  return least;
}

function costAt({ a, m, c }: CostPiece, level: number): number {
  return a * (level - m) ** 2 + c;
}

/** Levels between low and high at which two parabolas cross, ascending. */
function crossings(p: CostPiece, q: CostPiece, low: number, high: number): readonly number[] {
  const a = p.a - q.a;
  const half = p.a * (low - p.m) - q.a * (low - q.m);
  const c = costAt(p, low) - costAt(q, low);
  const inside = (t: number): boolean => t > 0 && t < high - low;
  const square = half * half - a * c;
  if (square < 0) return [];
  // The root that does not cancel first, the other from the product of the two.
  const sum = -(half + Math.sign(half || 1) * Math.sqrt(square));
  return [sum / a, c / sum]
    .filter(inside)
    .sort((t, s) => t - s)
    .map((t) => low + t);
}
