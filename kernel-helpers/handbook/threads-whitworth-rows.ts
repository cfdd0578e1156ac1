/** One row of the Whitworth table, in inches as printed. */
export interface WhitworthRow {
  /** As the trade writes it: "1 1/2". */
  readonly size: string;
  readonly majorDiameter: number;
  readonly threadsPerInch: number;
  readonly pitchDiameter: number;
  /** At the root of the thread. */
  readonly coreDiameter: number;
}

/** One row of the British Standard Fine table: threads per inch for a size. */
export interface BritishFineRow {
  readonly size: string;
  readonly threadsPerInch: number;
}

/**
 * British Standard Whitworth threads as printed.
 *
 * @source BS 84, Parallel Screw Threads of Whitworth Form, table of BSW, read in a public reprint
 */
export const whitworthRows: readonly WhitworthRow[] = Object.freeze([
  row("1/8", 0.125, 40, 0.109, 0.093),
  row("3/16", 0.1875, 24, 0.1608, 0.1341),
  row("1/4", 0.25, 20, 0.218, 0.186),
  row("5/16", 0.3125, 18, 0.2769, 0.2414),
  row("3/8", 0.375, 16, 0.335, 0.295),
  row("7/16", 0.4375, 14, 0.3918, 0.346),
  row("1/2", 0.5, 12, 0.4467, 0.3933),
  row("9/16", 0.5625, 12, 0.5091, 0.4559),
  row("5/8", 0.625, 11, 0.5668, 0.5086),
  row("3/4", 0.75, 10, 0.686, 0.622),
  row("7/8", 0.875, 9, 0.8039, 0.7327),
  row("1", 1, 8, 0.92, 0.84),
  row("1 1/8", 1.125, 7, 1.0336, 0.9421),
  row("1 1/4", 1.25, 7, 1.1586, 1.0671),
  row("1 3/8", 1.375, 6, 1.2683, 1.1616),
  row("1 1/2", 1.5, 6, 1.3933, 1.2866),
  row("1 3/4", 1.75, 5, 1.622, 1.4939),
  row("2", 2, 4.5, 1.8578, 1.7155),
  row("2 1/4", 2.25, 4, 2.09, 1.9299),
  row("2 1/2", 2.5, 4, 2.34, 2.1799),
  row("3", 3, 3.5, 2.8172, 2.6342),
]);

/**
 * Threads per inch of British Standard Fine as printed; the diameters follow from the Whitworth form.
 *
 * @source BS 84, Parallel Screw Threads of Whitworth Form, table of BSF, read in public reprints
 */
export const britishFineRows: readonly BritishFineRow[] = Object.freeze([
  fine("3/16", 32),
  fine("7/32", 28),
  fine("1/4", 26),
  fine("5/16", 22),
  fine("3/8", 20),
  fine("7/16", 18),
  fine("1/2", 16),
  fine("9/16", 16),
  fine("5/8", 14),
  fine("11/16", 14),
  fine("3/4", 12),
  fine("7/8", 11),
  fine("1", 10),
  fine("1 1/8", 9),
  fine("1 1/4", 9),
  fine("1 3/8", 8),
  fine("1 1/2", 8),
  fine("1 3/4", 7),
  fine("2", 7),
  fine("2 1/4", 6),
  fine("2 1/2", 6),
  fine("3", 5),
]);

function row(
  size: string,
  majorDiameter: number,
  threadsPerInch: number,
  pitchDiameter: number,
  coreDiameter: number,
): WhitworthRow {
  return Object.freeze({ size, majorDiameter, threadsPerInch, pitchDiameter, coreDiameter });
}

function fine(size: string, threadsPerInch: number): BritishFineRow {
  return Object.freeze({ size, threadsPerInch });
}
