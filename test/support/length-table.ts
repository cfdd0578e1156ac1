import { type Instrument, readTable, type Table } from "../../kernel-helpers/survey/index.js";

/** A table read by the real reader: header line as written, a row of numbers each, remarks on top. */
export function lengthTable(
  header: string,
  rows: readonly (readonly number[])[],
  options: {
    readonly remarks?: readonly string[];
    readonly instruments?: Readonly<Record<string, Instrument>>;
  } = {},
): Table {
  const { remarks = [], instruments } = options;
  const text = [...remarks.map((line) => `# ${line}`), header, ...rows.map((row) => row.join(","))].join(
    "\n",
  );
  return readTable(new TextEncoder().encode(text), {
    name: "bench",
    file: "tables/bench.csv",
    ...(instruments === undefined ? {} : { instruments }),
  });
}

/** Angles in equal steps round the shaft [deg]. */
export function equalAngles(count: number): number[] {
  return Array.from({ length: count }, (_, k) => (360 * k) / count);
}

/** Degrees in radians. */
export function rad(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
