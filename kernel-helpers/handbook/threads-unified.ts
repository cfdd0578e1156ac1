import { inch } from "../quantity/index.js";
import { type StandardThread, threadOfForm } from "./standard-thread.js";
import { unifiedRows } from "./threads-unified-rows.js";

const tables = "ASME B1.1, Unified Inch Screw Threads (public reprints)";
const series = "ASME B1.1, constant-pitch series (rule and sizes from memory)";

/**
 * Unified coarse and fine threads, 60°. Before 1948 the coarse ones stood as American National and as Sellers or
 * United States standard threads: same size, pitch and angle, only root and crest a little different.
 *
 * @source ASME B1.1, tables of UNC and UNF; the names before 1948 from memory
 */
export const unifiedThreads: readonly StandardThread[] = Object.freeze(
  unifiedRows.map((row) => unified(row.series, row.size, row.majorDiameter, row.threadsPerInch, tables)),
);

/**
 * Unified threads of one pitch for many sizes: 8-UN from 1 1/8 to 4 in and 12-UN from 1 5/8 to 4 in by eighths,
 * 16-UN from 13/16 to 4 in. A 12-UN from 1 to 1 1/2 in is the UNF.
 *
 * @source ASME B1.1, constant-pitch series (rule and sizes from memory)
 */
export const constantPitchThreads: readonly StandardThread[] = Object.freeze([
  ...byEighths(9, 32).map((size) => unified("8-UN", fractionText(size), size, 8, series)),
  ...byEighths(13, 32).map((size) => unified("12-UN", fractionText(size), size, 12, series)),
  ...[13 / 16, 0.875, 15 / 16, ...byEighths(8, 32)].map((size) =>
    unified("16-UN", fractionText(size), size, 16, series),
  ),
]);

function unified(
  name: string,
  size: string,
  majorDiameter: number,
  threadsPerInch: number,
  source: string,
): StandardThread {
  return threadOfForm("unified", {
    name: `${size}-${threadsPerInch} ${name.replace(/^\d+-/, "")}`,
    series: name,
    majorDiameter: inch(majorDiameter),
    pitch: inch(1 / threadsPerInch),
    threadsPerInch,
    source,
  });
}

function byEighths(from: number, to: number): number[] {
  return Array.from({ length: to - from + 1 }, (_, i) => (from + i) / 8);
}

/** 1.375 as "1 3/8". */
function fractionText(inches: number): string {
  const whole = Math.floor(inches);
  let [over, under] = [Math.round((inches - whole) * 16), 16];
  if (over === 0) return `${whole}`;
  while (over % 2 === 0) [over, under] = [over / 2, under / 2];
  return `${whole === 0 ? "" : `${whole} `}${over}/${under}`;
}
