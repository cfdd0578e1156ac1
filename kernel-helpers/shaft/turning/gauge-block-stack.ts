import { type Length, quantityFromSi } from "../../quantity/index.js";

/** The usual sets of gauge blocks. */
export type GaugeBlockSet = "inch 81" | "metric 88";

/** Blocks wrung together for a height. */
export interface GaugeBlockStack {
  readonly set: GaugeBlockSet;
  /** In the order they are chosen, the finest first. */
  readonly blocks: readonly Length[];
  readonly height: Length;
  /** Wanted less height: at most half a step of the set. */
  readonly rest: Length;
}

/** Sizes of each set in its own steps: finest series, fine series, coarse series, large blocks. */
const sets = {
  // Steps of 0.0001 in: 0.1001 to 0.1009, 0.101 to 0.149, 0.050 to 0.950, 1 to 4 in.
  "inch 81": {
    step: 2.54e-6,
    unit: "inch",
    series: [range(1001, 1009, 1), range(1010, 1490, 10), range(500, 9500, 500), range(10000, 40000, 10000)],
  },
  // Steps of 0.0005 mm: 1.0005, 1.001 to 1.009, 1.01 to 1.49, 0.5 to 9.5, 10 to 100 mm.
  "metric 88": {
    step: 0.5e-6,
    unit: "mm",
    series: [
      [2001],
      range(2002, 2018, 2),
      range(2020, 2980, 20),
      range(1000, 19000, 1000),
      range(20000, 200000, 20000),
    ],
  },
} as const satisfies Readonly<
  Record<GaugeBlockSet, { step: number; unit: "inch" | "mm"; series: readonly (readonly number[])[] }>
>;

/**
 * The fewest gauge blocks of a set that make a height, each block once.
 *
 * Inch, 81 blocks: 0.1001 to 0.1009 by 0.0001, 0.101 to 0.149 by 0.001, 0.050 to 0.950 by 0.050, 1 to 4 in. Metric, 88
 * blocks: 1.0005, 1.001 to 1.009 by 0.001, 1.01 to 1.49 by 0.01, 0.5 to 9.5 by 0.5, 10 to 100 by 10 mm.
 *
 * Valid when: the height can be made; what is left over is at most half a step, 0.00005 in or 0.00025 mm.
 *
 * @param height  wanted, > 0 [m]
 * @param set  "inch 81" or "metric 88"
 * @returns the blocks, their height and the rest [m]
 * @throws RangeError  no such set, or no stack makes that height
 * @example gaugeBlockStack(inch(0.2079), "inch 81").blocks.length // 2
 * @source sizes of the sets: common practice of gauge makers, no source; the choice: search for the fewest
 */
export function gaugeBlockStack(height: Length, set: GaugeBlockSet): GaugeBlockStack {
  if (!Object.hasOwn(sets, set))
    throw new RangeError(`gaugeBlockStack: set must be "inch 81" or "metric 88", got "${String(set)}"`);
  const { step, unit, series } = sets[set];
  const wanted = Math.round(height.si / step);
  const length = (steps: number): Length => quantityFromSi("length", steps * step, unit);
  // Blocks of a series add to few remainders, so that the search ends at once; large blocks may be several.
  const found = wanted > 0 ? fewest(wanted, series) : undefined;
  if (found === undefined)
    throw new RangeError(
      `gaugeBlockStack: no stack of the set "${set}" makes ${height}: take a longer sine bar, or add a block to both sides`,
    );
  return Object.freeze({
    set,
    blocks: Object.freeze(found.map(length)),
    height: length(wanted),
    rest: quantityFromSi("length", height.si - wanted * step, unit === "inch" ? "thou" : "micrometre"),
  });
}

/** At most one block of each series, but up to three of the largest. */
function fewest(wanted: number, series: readonly (readonly number[])[]): readonly number[] | undefined {
  const [first, ...rest] = series;
  if (first === undefined) return wanted === 0 ? [] : undefined;
  if (rest.length === 0) return largest(wanted, first);
  let best = fewest(wanted, rest);
  for (const block of first) {
    if (block > wanted) break;
    const others = fewest(wanted - block, rest);
    if (others !== undefined && (best === undefined || others.length + 1 < best.length))
      best = [block, ...others];
  }
  return best;
}

function largest(wanted: number, blocks: readonly number[]): readonly number[] | undefined {
  if (wanted === 0) return [];
  if (wanted % blocks[0]! !== 0) return undefined;
  const used: number[] = [];
  let left = wanted;
  for (const block of [...blocks].reverse())
    if (block <= left) {
      used.push(block);
      left -= block;
    }
  return left === 0 ? used : undefined;
}

function range(from: number, to: number, by: number): readonly number[] {
  return Array.from({ length: Math.round((to - from) / by) + 1 }, (_, i) => from + i * by);
}
