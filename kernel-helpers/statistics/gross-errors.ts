import type { SearchRules, SegmentShape, Stretch } from "./partition-search.js";
import { fitSegment, residualInU, standOff, suffices } from "./segment.js";

/** Readings along a line, ready for computing: ascending positions, values, weights 1/u². */
export interface Readings {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly w: Float64Array;
}

/**
 * First look for gross errors: readings that nothing beside them bears out.
 *
 * A reading stands out when it lies beyond both its neighbours by more than the limit (in standard
 * uncertainties of the difference), and does not lie on the line through the two readings before it or the
 * two after it either. So the edge of a step, a steep slope, the tip of a ridge and a band of two readings
 * are all borne out. Put-aside readings no longer count as neighbours, and the look is repeated until nothing
 * new is found. The two end readings, which have a neighbour on one side alone, come last.
 *
 * It is a start only: what is put aside is settled by {@link settleGross}.
 *
 * @param readings positions, values and weights
 * @param limit how far a reading must stand off [standard uncertainties]
 * @returns for each reading 1 where it stands out, else 0
 * @source own; comparing each reading with those around it is after F. R. Hampel, JASA 69 (1974) 383-393
 */
export function screenGross(readings: Readings, limit: number): Uint8Array {
  const { x } = readings;
  const n = x.length;
  const gross = new Uint8Array(n);
  for (;;) {
    const kept = keptIndices(gross);
    const found: number[] = [];
    for (let k = 1; k < kept.length - 1; k++) {
      if (standsOut(readings, kept, k, limit)) {
        found.push(kept[k]!);
        k += 1; // the next one is judged again once this one is out of the way
      }
    }
    if (found.length === 0) break;
    for (const i of found) gross[i] = 1;
  }
  const kept = keptIndices(gross);
  if (kept.length > 3) {
    for (const k of [0, kept.length - 1]) {
      if (standsOut(readings, kept, k, limit)) gross[kept[k]!] = 1;
    }
  }
  return gross;
}

function standsOut(readings: Readings, kept: readonly number[], k: number, limit: number): boolean {
  const { y, w } = readings;
  const i = kept[k]!;
  const sides = [kept[k - 1], kept[k + 1]].filter((j) => j !== undefined);
  const signed = sides.map((j) => (y[i]! - y[j]!) / Math.sqrt(1 / w[i]! + 1 / w[j]!));
  const beyond = signed.every((d) => d > limit) || signed.every((d) => d < -limit);
  if (!beyond) return false;
  const before = onLineOf(readings, i, kept[k - 1], kept[k - 2], limit);
  const after = onLineOf(readings, i, kept[k + 1], kept[k + 2], limit);
  return !before && !after;
}

/** Whether reading i lies on the line through readings j (near) and k (far), within the limit. */
function onLineOf(
  readings: Readings,
  i: number,
  j: number | undefined,
  k: number | undefined,
  limit: number,
): boolean {
  const { x, y, w } = readings;
  if (j === undefined || k === undefined || x[j] === x[k]) return false;
  const reach = (x[i]! - x[j]!) / (x[j]! - x[k]!);
  const expected = y[j]! + reach * (y[j]! - y[k]!);
  const variance = 1 / w[i]! + (1 + reach) ** 2 / w[j]! + reach ** 2 / w[k]!;
  return Math.abs(y[i]! - expected) <= limit * Math.sqrt(variance);
}

/** Indices of the readings that are not put aside. */
export function keptIndices(gross: Uint8Array): number[] {
  const kept: number[] = [];
  for (let i = 0; i < gross.length; i++) if (gross[i] === 0) kept.push(i);
  return kept;
}

/**
 * Stretches of kept readings widened so that every reading belongs to one: a put-aside reading between two
 * stretches goes to the one it stands off less from. Readings of equal position stay together.
 */
export function coverAll(
  readings: Readings,
  kept: readonly number[],
  stretches: readonly Stretch[],
): Stretch[] {
  const { x, y, w } = readings;
  const n = x.length;
  const lines = stretches.map((s) => fitSegment(x, y, w, kept.slice(s.from, s.to + 1), s.shape));
  const starts = [0];
  for (let k = 1; k < stretches.length; k++) {
    const last = kept[stretches[k - 1]!.to]!;
    const first = kept[stretches[k]!.from]!;
    let bestSplit = -1;
    let bestCost = Number.POSITIVE_INFINITY;
    for (let split = last + 1; split <= first; split++) {
      if (x[split] === x[split - 1]) continue;
      let cost = 0;
      for (let i = last + 1; i < first; i++) {
        cost += standOff(lines[i < split ? k - 1 : k]!, x[i]!, y[i]!, w[i]!, false);
      }
      if (cost < bestCost) {
        bestCost = cost;
        bestSplit = split;
      }
    }
    starts.push(bestSplit);
  }
  return stretches.map((s, k) => ({ from: starts[k]!, to: (starts[k + 1] ?? n) - 1, shape: s.shape }));
}

/**
 * Puts readings aside and takes them in again, each segment staying where it is, until every reading kept
 * stands off by at most the limit and every reading put aside by more.
 *
 * One reading at a time, the worst first, the line refitted after each. Putting aside a reading that stands
 * off by d lowers chi-square by d²; so with limit² charged for each reading put aside the total falls at
 * every turn, and the turns end. A segment is never left with fewer readings than its shape needs.
 *
 * @param readings positions, values and weights
 * @param segments stretches that cover all readings
 * @param gross 1 for each reading now put aside
 * @param limit how far a reading may stand off [standard uncertainties]
 * @param fewest fewest readings of a flat and of a sloping segment
 * @returns which readings are put aside now
 */
export function settleGross(
  readings: Readings,
  segments: readonly Stretch[],
  gross: Uint8Array,
  limit: number,
  fewest: { readonly flat: number; readonly sloping: number },
): Uint8Array {
  const { x, y, w } = readings;
  const next = gross.slice();
  for (const segment of segments) {
    for (let turns = 4 * (segment.to - segment.from + 1); turns > 0; turns--) {
      const members = membersOf(segment, next);
      const line = fitSegment(x, y, w, members, segment.shape);
      const few = !suffices(x, members, segment.shape, fewest[segment.shape] + 1);
      let change = -1;
      let most = 0;
      for (let i = segment.from; i <= segment.to; i++) {
        const member = next[i] === 0;
        if (member && few) continue;
        const off = standOff(line, x[i]!, y[i]!, w[i]!, member);
        const gain = member ? off - limit : limit - off;
        if (gain > most && (!member || sufficesWithout(x, members, i, segment, fewest))) {
          most = gain;
          change = i;
        }
      }
      if (change < 0) break;
      next[change] = next[change] === 0 ? 1 : 0;
    }
  }
  return next;
}

/**
 * Readings whose putting aside would let a small segment vanish, at a gain.
 *
 * A gross reading can draw one or two good neighbours into a segment of their own. So for each segment that
 * has at most one reading to spare, each of its readings is put aside on trial and the others join the
 * segment before, the one behind, some this and some that, or all of them become one. Where that lowers
 * chi-square plus costs by more than limit², the reading is named.
 *
 * @param readings positions, values and weights
 * @param segments stretches that cover all readings
 * @param gross 1 for each reading now put aside
 * @param limit price of a reading put aside is limit² [standard uncertainties]
 * @param rules fewest readings and costs of the shapes
 * @returns indices of the readings to put aside; the segments they change do not overlap
 */
export function strayReadings(
  readings: Readings,
  segments: readonly Stretch[],
  gross: Uint8Array,
  limit: number,
  rules: SearchRules,
): number[] {
  const strays: number[] = [];
  for (let k = 0; k < segments.length; k++) {
    const segment = segments[k]!;
    const members = membersOf(segment, gross);
    const fewest = segment.shape === "flat" ? rules.fewestFlat : rules.fewestSloping;
    if (members.length > fewest + 1) continue;
    const before = segments[k - 1];
    const behind = segments[k + 1];
    const costOf = (list: readonly number[], shape: SegmentShape): number =>
      chiSquareOf(readings, list, shape) + (shape === "flat" ? rules.flatCost : rules.slopingCost);
    const left = before === undefined ? [] : membersOf(before, gross);
    const right = behind === undefined ? [] : membersOf(behind, gross);
    const costLeft = before === undefined ? 0 : costOf(left, before.shape);
    const costRight = behind === undefined ? 0 : costOf(right, behind.shape);
    const now = costLeft + costOf(members, segment.shape) + costRight;
    let stray = -1;
    let least = now - 1e-6 * (1 + now);
    for (const i of members) {
      const others = members.filter((j) => j !== i);
      const ways: number[] = [];
      for (let cut = 0; cut <= others.length; cut++) {
        if (cut > 0 && before === undefined) continue;
        if (cut < others.length && behind === undefined) continue;
        if (cut > 0 && cut < others.length && readings.x[others[cut]!] === readings.x[others[cut - 1]!])
          continue;
        const toLeft = cut === 0 ? costLeft : costOf([...left, ...others.slice(0, cut)], before!.shape);
        const toRight =
          cut === others.length ? costRight : costOf([...others.slice(cut), ...right], behind!.shape);
        ways.push(toLeft + toRight);
      }
      if (before !== undefined && behind !== undefined) {
        const all = [...left, ...others, ...right];
        ways.push(costOf(all, before.shape));
        if (behind.shape !== before.shape) ways.push(costOf(all, behind.shape));
      }
      for (const way of ways) {
        if (way + limit * limit < least) {
          least = way + limit * limit;
          stray = i;
        }
      }
    }
    if (stray >= 0) {
      strays.push(stray);
      k += 2;
    }
  }
  return strays;
}

function chiSquareOf(readings: Readings, members: readonly number[], shape: SegmentShape): number {
  const { x, y, w } = readings;
  const line = fitSegment(x, y, w, members, shape);
  let sum = 0;
  for (const i of members) sum += residualInU(line, x[i]!, y[i]!, w[i]!) ** 2;
  return sum;
}

/** Indices of the readings of a stretch that are not put aside. */
export function membersOf(stretch: Stretch, gross: Uint8Array): number[] {
  const members: number[] = [];
  for (let i = stretch.from; i <= stretch.to; i++) if (gross[i] === 0) members.push(i);
  return members;
}

function sufficesWithout(
  x: Float64Array,
  members: readonly number[],
  without: number,
  segment: Stretch,
  fewest: { readonly flat: number; readonly sloping: number },
): boolean {
  return suffices(
    x,
    members.filter((i) => i !== without),
    segment.shape,
    fewest[segment.shape],
  );
}
