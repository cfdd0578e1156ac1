import { inch } from "../quantity/index.js";
import { readNumber } from "../quantity/read-number.js";
import { type StandardThread, threadOfForm } from "./standard-thread.js";
import { britishFineRows, whitworthRows } from "./threads-whitworth-rows.js";

/**
 * British Standard Whitworth and British Standard Fine threads, 55° with rounded crest and root. From 1/4 to 3 in a
 * Whitworth thread often has the threads per inch of the UNC of its size: then only the angle tells them apart.
 *
 * @source BS 84, Parallel Screw Threads of Whitworth Form (public reprints)
 */
export const whitworthThreads: readonly StandardThread[] = Object.freeze([
  ...whitworthRows.map(({ size, threadsPerInch }) => whitworth("BSW", size, threadsPerInch)),
  ...britishFineRows.map(({ size, threadsPerInch }) => whitworth("BSF", size, threadsPerInch)),
]);

function whitworth(series: "BSW" | "BSF", size: string, threadsPerInch: number): StandardThread {
  return threadOfForm("Whitworth", {
    name: `${size} in ${series}`,
    series,
    majorDiameter: inch(readNumber(size)),
    pitch: inch(1 / threadsPerInch),
    threadsPerInch,
    source: `BS 84, Parallel Screw Threads of Whitworth Form, table of ${series} (public reprints)`,
  });
}
