import { inch } from "../quantity/index.js";
import type { StandardTaper } from "./standard-taper.js";

/** One row of the Brown & Sharpe table, in inches as printed. */
export interface BrownSharpeRow {
  readonly number: number;
  readonly largeEnd: number;
  readonly smallEnd: number;
  readonly length: number;
  readonly taperPerFoot: number;
}

/**
 * The Brown & Sharpe tapers as printed: nominally 1/2 in per foot, number 10 0.5161.
 *
 * @source Machinery's Handbook, table of Brown & Sharpe tapers, read in public reprints (four digits)
 */
export const brownSharpeRows: readonly BrownSharpeRow[] = Object.freeze(
  [
    { number: 1, largeEnd: 0.2392, smallEnd: 0.2, length: 0.94, taperPerFoot: 0.502 },
    { number: 2, largeEnd: 0.2997, smallEnd: 0.25, length: 1.19, taperPerFoot: 0.502 },
    { number: 3, largeEnd: 0.3753, smallEnd: 0.3125, length: 1.5, taperPerFoot: 0.502 },
    { number: 4, largeEnd: 0.4207, smallEnd: 0.35, length: 1.69, taperPerFoot: 0.5024 },
    { number: 5, largeEnd: 0.5388, smallEnd: 0.45, length: 2.13, taperPerFoot: 0.5016 },
    { number: 6, largeEnd: 0.5996, smallEnd: 0.5, length: 2.38, taperPerFoot: 0.5033 },
    { number: 7, largeEnd: 0.7201, smallEnd: 0.6, length: 2.88, taperPerFoot: 0.5015 },
    { number: 8, largeEnd: 0.8987, smallEnd: 0.75, length: 3.56, taperPerFoot: 0.501 },
    { number: 9, largeEnd: 1.0775, smallEnd: 0.9001, length: 4.25, taperPerFoot: 0.5009 },
    { number: 10, largeEnd: 1.2597, smallEnd: 1.0447, length: 5.0, taperPerFoot: 0.5161 },
    { number: 11, largeEnd: 1.4978, smallEnd: 1.25, length: 5.94, taperPerFoot: 0.501 },
    { number: 12, largeEnd: 1.7968, smallEnd: 1.5001, length: 7.13, taperPerFoot: 0.4997 },
    { number: 13, largeEnd: 2.0731, smallEnd: 1.7501, length: 7.75, taperPerFoot: 0.5002 },
    { number: 14, largeEnd: 2.3438, smallEnd: 2.0, length: 8.25, taperPerFoot: 0.5 },
    { number: 15, largeEnd: 2.6146, smallEnd: 2.25, length: 8.75, taperPerFoot: 0.5 },
  ].map((row) => Object.freeze(row)),
);

/** The Brown & Sharpe tapers 1 to 15. */
export const brownSharpeTapers: readonly StandardTaper[] = Object.freeze(
  brownSharpeRows.map((row) =>
    Object.freeze<StandardTaper>({
      name: `Brown & Sharpe ${row.number}`,
      family: "Brown & Sharpe",
      taper: row.taperPerFoot / 12,
      largeEnd: inch(row.largeEnd),
      smallEnd: inch(row.smallEnd),
      length: inch(row.length),
      source: "Machinery's Handbook, Brown & Sharpe tapers (public reprints)",
    }),
  ),
);
