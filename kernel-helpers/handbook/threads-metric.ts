import { mm } from "../quantity/index.js";
import { type StandardThread, threadOfForm } from "./standard-thread.js";
import { type MetricRow, metricCoarseRows, metricFineRows } from "./threads-metric-rows.js";

/**
 * ISO metric threads, coarse and fine, 60°.
 *
 * @source ISO 261 and ISO 724 (coarse pitches to M42 seen in a public list, the rest from memory)
 */
export const metricThreads: readonly StandardThread[] = Object.freeze([
  ...metricCoarseRows.map((row) => metric("metric coarse", row)),
  ...metricFineRows.map((row) => metric("metric fine", row)),
]);

function metric(series: string, { majorDiameter, pitch }: MetricRow): StandardThread {
  return threadOfForm("ISO metric", {
    name: `M${majorDiameter} × ${pitch}`,
    series,
    majorDiameter: mm(majorDiameter),
    pitch: mm(pitch),
    threadsPerInch: undefined,
    source: series === "metric coarse" ? "ISO 261 and ISO 724" : "ISO 261 and ISO 262 (from memory)",
  });
}
