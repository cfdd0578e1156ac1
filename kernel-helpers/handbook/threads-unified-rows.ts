/** One row of the unified tables, in inches as printed. */
export interface UnifiedRow {
  readonly series: "UNC" | "UNF";
  /** As the trade writes it: "1 1/2". */
  readonly size: string;
  readonly majorDiameter: number;
  readonly threadsPerInch: number;
  readonly pitchDiameter: number;
  /** Tensile stress area, in². */
  readonly stressArea: number;
}

/**
 * Unified coarse and fine threads as printed: basic pitch diameter and tensile stress area.
 *
 * @source ASME B1.1, Unified Inch Screw Threads, tables of UNC and UNF, read in public reprints
 */
export const unifiedRows: readonly UnifiedRow[] = Object.freeze([
  row("UNC", "1/4", 0.25, 20, 0.2175, 0.0318),
  row("UNC", "5/16", 0.3125, 18, 0.2764, 0.0524),
  row("UNC", "3/8", 0.375, 16, 0.3344, 0.0775),
  row("UNC", "7/16", 0.4375, 14, 0.3911, 0.1063),
  row("UNC", "1/2", 0.5, 13, 0.45, 0.1419),
  row("UNC", "9/16", 0.5625, 12, 0.5084, 0.182),
  row("UNC", "5/8", 0.625, 11, 0.566, 0.226),
  row("UNC", "3/4", 0.75, 10, 0.685, 0.334),
  row("UNC", "7/8", 0.875, 9, 0.8028, 0.462),
  row("UNC", "1", 1, 8, 0.9188, 0.606),
  row("UNC", "1 1/8", 1.125, 7, 1.0322, 0.763),
  row("UNC", "1 1/4", 1.25, 7, 1.1572, 0.969),
  row("UNC", "1 3/8", 1.375, 6, 1.2667, 1.155),
  row("UNC", "1 1/2", 1.5, 6, 1.3917, 1.405),
  row("UNC", "1 3/4", 1.75, 5, 1.6201, 1.9),
  row("UNC", "2", 2, 4.5, 1.8557, 2.5),
  row("UNC", "2 1/4", 2.25, 4.5, 2.1057, 3.25),
  row("UNC", "2 1/2", 2.5, 4, 2.3376, 4.0),
  row("UNC", "3", 3, 4, 2.8376, 5.97),
  row("UNF", "1/4", 0.25, 28, 0.2268, 0.0364),
  row("UNF", "5/16", 0.3125, 24, 0.2854, 0.058),
  row("UNF", "3/8", 0.375, 24, 0.3479, 0.0878),
  row("UNF", "7/16", 0.4375, 20, 0.405, 0.1187),
  row("UNF", "1/2", 0.5, 20, 0.4675, 0.1599),
  row("UNF", "9/16", 0.5625, 18, 0.5264, 0.203),
  row("UNF", "5/8", 0.625, 18, 0.5889, 0.256),
  row("UNF", "3/4", 0.75, 16, 0.7094, 0.373),
  row("UNF", "7/8", 0.875, 14, 0.8286, 0.509),
  row("UNF", "1", 1, 12, 0.9459, 0.663),
  row("UNF", "1 1/8", 1.125, 12, 1.0709, 0.856),
  row("UNF", "1 1/4", 1.25, 12, 1.1959, 1.073),
  row("UNF", "1 3/8", 1.375, 12, 1.3209, 1.315),
  row("UNF", "1 1/2", 1.5, 12, 1.4459, 1.581),
]);

function row(
  series: "UNC" | "UNF",
  size: string,
  majorDiameter: number,
  threadsPerInch: number,
  pitchDiameter: number,
  stressArea: number,
): UnifiedRow {
  return Object.freeze({ series, size, majorDiameter, threadsPerInch, pitchDiameter, stressArea });
}
