/** A size and pitch of the ISO metric thread, in millimetres as printed. */
export interface MetricRow {
  readonly majorDiameter: number;
  readonly pitch: number;
}

/**
 * ISO metric coarse threads: size and pitch as printed. The other diameters follow from the profile.
 *
 * @source ISO 261, General plan; pitches of M6 to M42 seen in a public list, larger ones from memory
 */
export const metricCoarseRows: readonly MetricRow[] = Object.freeze([
  row(6, 1),
  row(8, 1.25),
  row(10, 1.5),
  row(12, 1.75),
  row(14, 2),
  row(16, 2),
  row(18, 2.5),
  row(20, 2.5),
  row(22, 2.5),
  row(24, 3),
  row(27, 3),
  row(30, 3.5),
  row(33, 3.5),
  row(36, 4),
  row(39, 4),
  row(42, 4.5),
  row(45, 4.5),
  row(48, 5),
]);

/**
 * ISO metric fine threads met on shafts: size and pitch.
 *
 * @source ISO 261 and ISO 262 (from memory)
 */
export const metricFineRows: readonly MetricRow[] = Object.freeze(
  [
    [8, 1],
    [10, 1.25, 1],
    [12, 1.5, 1.25],
    [14, 1.5],
    [16, 1.5],
    [18, 2, 1.5],
    [20, 2, 1.5],
    [22, 2, 1.5],
    [24, 2, 1.5],
    [27, 2, 1.5],
    [30, 3, 2, 1.5],
    [33, 3, 2, 1.5],
    [36, 3, 2, 1.5],
    [39, 3, 2, 1.5],
    [42, 4, 3, 2, 1.5],
    [45, 4, 3, 2, 1.5],
    [48, 4, 3, 2, 1.5],
    [52, 4, 3, 2, 1.5],
    [56, 4, 3, 2, 1.5],
    [60, 4, 3, 2, 1.5],
    [64, 4, 3, 2, 1.5],
  ].flatMap(([size, ...pitches]) => pitches.map((pitch) => row(size!, pitch))),
);

function row(majorDiameter: number, pitch: number): MetricRow {
  return Object.freeze({ majorDiameter, pitch });
}
