import { formatNumber, unitNamed } from "../quantity/index.js";
import type { Column } from "./table.js";
import { valueFor } from "./value-for.js";

/** One sentence naming the rows whose station goes against the direction of its walk. */
export function stationsOutOfOrder(
  station: Column,
  walks: readonly number[],
  lines: readonly number[],
): readonly string[] {
  const rowsOfWalk = new Map<number, number[]>();
  for (const [row, walk] of walks.entries())
    if (!Number.isNaN(station.values[row]!)) valueFor(rowsOfWalk, walk, () => []).push(row);
  const odd = [...rowsOfWalk.values()].flatMap((rows) => oddOnes(station.values, rows));
  if (odd.length === 0) return [];
  const places = odd.sort((a, b) => a - b).map((row) => `line ${lines[row]} (${stationText(station, row)})`);
  return [
    `Stations out of order: ${listed(places)}. They are kept as written; a digit may be wrong, or the shaft was walked back.`,
  ];
}

function oddOnes(stations: readonly number[], rows: readonly number[]): number[] {
  let up = 0;
  for (let i = 1; i < rows.length; i++) up += Math.sign(stations[rows[i]!]! - stations[rows[i - 1]!]!);
  const forward = up >= 0 ? 1 : -1;
  const ahead = (a: number, b: number): number => forward * (stations[rows[b]!]! - stations[rows[a]!]!);
  const odd: number[] = [];
  for (let i = 1; i < rows.length; i++) {
    if (ahead(i - 1, i) >= 0) continue;
    // Of the two rows of a backward step, the one that does not fit the row before them is odd.
    const thisFits = i === 1 || ahead(i - 2, i) >= 0;
    odd.push(thisFits ? rows[i - 1]! : rows[i]!);
  }
  return odd;
}

/** In the long form: which stations lack an angle that more than half of all stations have. */
export function anglesMissing(
  station: Column,
  angle: Column | undefined,
  lines: readonly number[],
): readonly string[] {
  if (angle === undefined) return [];
  const firstRow = new Map<number, number>();
  const stationsAt = new Map<number, Set<number>>();
  for (let row = 0; row < lines.length; row++) {
    const [place, turned] = [station.values[row]!, angle.values[row]!];
    if (Number.isNaN(place) || Number.isNaN(turned)) continue;
    if (!firstRow.has(place)) firstRow.set(place, row);
    valueFor(stationsAt, turned, () => new Set<number>()).add(place);
  }
  const missing: string[] = [];
  for (const [turned, read] of stationsAt) {
    if (read.size === firstRow.size || read.size <= firstRow.size / 2) continue;
    const { si, symbol } = unitNamed(angle.unit!);
    for (const [place, row] of firstRow)
      if (!read.has(place))
        missing.push(
          `${stationText(station, row)} at ${formatNumber(turned / si)}${symbol === "°" ? "" : " "}${symbol} (line ${lines[row]})`,
        );
  }
  return missing.length === 0
    ? []
    : [`Stations not read at an angle that most others have: ${listed(missing)}.`];
}

/** The station of a row as it is said. */
export function stationText(station: Column, row: number): string {
  const { si, symbol } = unitNamed(station.unit!);
  return `${formatNumber(station.values[row]! / si)} ${symbol}`;
}

// A longer list is not read; the first ones show what is the matter.
const listedAtMost = 8;

function listed(parts: readonly string[]): string {
  const more = parts.length - listedAtMost;
  return parts.slice(0, listedAtMost).join(", ") + (more > 0 ? ` and ${more} more` : "");
}
