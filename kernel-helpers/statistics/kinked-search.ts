/** What a search found: knots (indices of positions, ends included) and their cost. */
export interface KinkedSearch {
  readonly knots: readonly number[];
  /** Σ w (y − line)² plus the cost of the inner knots. */
  readonly criterion: number;
}

/** The best cost of one choice of earlier knots, as a function of the height h at the last one: a·h² + b·h + c. */
interface Way {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  /** Last knot, and the way that led there; null at the first. */
  readonly knot: number;
  readonly before: Way | null;
}

/**
 * The line without jumps, straight between knots at positions, that has the least chi-square plus cost of knots:
 * exact over every choice of knots.
 *
 * fₜ(h) = min over s < t, g of [fₛ(g) + Σ_{s<i≤t} wᵢ (yᵢ − g − (h − g)(xᵢ − xₛ)/(xₜ − xₛ))²] + cost: the best up to
 * a knot at t is a function of the height there, since the next piece hangs on it. It is kept as the least of a few
 * parabolas, one for each choice of earlier knots that is best for some height; the others can never win again and
 * are dropped.
 *
 * Valid when: positions ascend, no two alike, weights are > 0 (the caller checks); y about 0, so that no digits
 * cancel.
 *
 * @param x positions [unit of x]
 * @param y readings [unit of y]
 * @param w weights [1/unit of y²]
 * @param knotCost cost of each inner knot [-]
 * @param fewestSteps fewest steps from one knot to the next, ≥ 1 [-]
 * @returns the best choice of knots, the two ends included
 * @source R. Maidstone, P. Fearnhead, A. Letchford, Detecting changes in slope with an L0 penalty, Journal of
 * Computational and Graphical Statistics 28 (2019) 265-275 (functional pruning; from memory)
 */
export function searchKinked(
  x: Float64Array,
  y: Float64Array,
  w: Float64Array,
  knotCost: number,
  fewestSteps: number,
): KinkedSearch {
  const last = x.length - 1;
  const ways: Way[][] = [[{ a: w[0]!, b: -2 * w[0]! * y[0]!, c: w[0]! * y[0]! ** 2, knot: 0, before: null }]];
  for (let t = 1; t <= last; t++) {
    ways.push([]);
    // The end must be reached: a knot too near to it leads nowhere.
    if (t !== last && last - t < fewestSteps) continue;
    const arriving: Way[] = [];
    const piece = { share2: 0, share1: 0, rest2: 0, ofShare: 0, ofRest: 0, squares: 0 };
    for (let s = t - 1; s >= 0; s--) {
      const whole = s === 0 && t === last; // no kink at all is always allowed
      if ((t - s < fewestSteps && !whole) || ways[s]!.length === 0) continue;
      piecesSums(piece, x, y, w, s, t);
      const cost = s === 0 ? 0 : knotCost;
      for (const way of ways[s]!) {
        // Quadratic in the heights g at s and h at t; the best g for each h is put in.
        const gg = way.a + piece.rest2;
        const g = way.b + piece.ofRest;
        arriving.push({
          a: piece.share2 - piece.share1 ** 2 / gg,
          b: piece.ofShare - (piece.share1 * g) / gg,
          c: way.c + piece.squares + cost - (g * g) / (4 * gg),
          knot: t,
          before: way,
        });
      }
    }
    ways[t] = t === last || arriving.length === 0 ? arriving : bestSomewhere(arriving);
  }
  let best: Way | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const way of ways[last]!) {
    const value = lowest(way);
    if (value < least) [best, least] = [way, value];
  }
  const knots: number[] = [];
  for (let way = best; way !== null; way = way.before) knots.push(way.knot);
  return { knots: knots.reverse(), criterion: least };
}

/**
 * Sums of one piece, s < i ≤ t, for Σ w (y − g(1 − r) − h r)², r the share of the way: coefficients of h², 2·gh
 * halved, g², h, g and the constant.
 */
function piecesSums(
  piece: { share2: number; share1: number; rest2: number; ofShare: number; ofRest: number; squares: number },
  x: Float64Array,
  y: Float64Array,
  w: Float64Array,
  s: number,
  t: number,
): void {
  let [share2, share1, rest2, ofShare, ofRest, squares] = [0, 0, 0, 0, 0, 0];
  const step = 1 / (x[t]! - x[s]!);
  for (let i = s + 1; i <= t; i++) {
    const r = (x[i]! - x[s]!) * step;
    const q = 1 - r;
    const wi = w[i]!;
    const yi = y[i]!;
    share2 += wi * r * r;
    share1 += wi * r * q;
    rest2 += wi * q * q;
    ofShare -= 2 * wi * r * yi;
    ofRest -= 2 * wi * q * yi;
    squares += wi * yi * yi;
  }
  piece.share2 = share2;
  piece.share1 = share1;
  piece.rest2 = rest2;
  piece.ofShare = ofShare;
  piece.ofRest = ofRest;
  piece.squares = squares;
}

/** The least value of a way over all heights. */
function lowest({ a, b, c }: Way): number {
  return c - (b * b) / (4 * a);
}

/** Those ways that are least for some height, from the lowest height to the highest. */
function bestSomewhere(ways: readonly Way[]): Way[] {
  const kept = undominated(ways);
  // Far down the flattest parabola is the least, of alike ones that which falls least steeply towards there.
  let now = kept.reduce((best, way) =>
    way.a !== best.a
      ? way.a < best.a
        ? way
        : best
      : way.b !== best.b
        ? way.b > best.b
          ? way
          : best
        : way.c < best.c
          ? way
          : best,
  );
  let height = Number.NEGATIVE_INFINITY;
  const envelope = [now];
  for (;;) {
    let next: Way | null = null;
    let nextHeight = Number.POSITIVE_INFINITY;
    for (const way of kept) {
      if (way === now) continue;
      const cross = crossingBehind(now, way, height);
      if (cross < nextHeight || (cross === nextHeight && next !== null && way.a < next.a))
        [next, nextHeight] = [way, cross];
    }
    if (next === null) return [...new Set(envelope)];
    [now, height] = [next, nextHeight];
    envelope.push(now);
    if (envelope.length > 4 * kept.length + 4) return kept; // rounding leads round in circles: keep all
  }
}

/** Leaves out ways that lie above another one everywhere. */
function undominated(ways: readonly Way[]): Way[] {
  const sorted = ways.map((way) => ({ way, low: lowest(way) })).sort((p, q) => p.low - q.low);
  const kept: Way[] = [];
  for (const { way } of sorted) {
    const over = kept.findIndex((other) => liesAbove(way, other));
    if (over === -1) kept.push(way);
    else if (over > 0) {
      // One that lies below many is asked first the next time.
      const [busy] = kept.splice(over, 1);
      kept.unshift(busy!);
    }
  }
  return kept;
}

function liesAbove(way: Way, other: Way): boolean {
  const [a, b, c] = [way.a - other.a, way.b - other.b, way.c - other.c];
  return a > 0 ? b * b <= 4 * a * c : a === 0 && b === 0 && c >= 0;
}

/** The first height beyond `from` where the other way begins to be lower; Infinity where it never does. */
function crossingBehind(now: Way, other: Way, from: number): number {
  const [a, b, c] = [other.a - now.a, other.b - now.b, other.c - now.c];
  if (a === 0) {
    if (b >= 0) return Number.POSITIVE_INFINITY;
    const at = -c / b;
    return at > from ? at : Number.POSITIVE_INFINITY;
  }
  const square = b * b - 4 * a * c;
  if (!(square > 0)) return Number.POSITIVE_INFINITY;
  // a > 0: lower between the roots, from the smaller on. a < 0: lower beyond the larger.
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(square)) / 2;
  const [one, two] = q === 0 ? [0, 0] : [q / a, c / q];
  const at = a > 0 ? Math.min(one, two) : Math.max(one, two);
  return at > from ? at : Number.POSITIVE_INFINITY;
}
